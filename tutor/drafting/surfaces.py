"""On what does a roller roll, and on what does a joint rest: a slope, a wall, a floor?"""

from __future__ import annotations

import math
from collections.abc import Sequence

from tutor.drafting.names import SUPPORT_WORDS, joint_meant
from tutor.drafting.words import Bad, Word, exact
from tutor.model import Problem
from tutor.notation import Exact


def slope_or_wall(problem: Problem, joint: str, words: Sequence[Word]) -> Bad | None:
    """A roller on a wall or a slope, which leaves open to which side it pushes; None elsewhere."""
    for place, word in enumerate(words):
        if word.lower in ("wall", "vertical", "vertically", "horizontal", "horizontally"):
            return Bad(
                word.text,
                "it does not say to which side the roller pushes",
                f"write {joint} roller up, {joint} roller right or {joint} roller left, the way in "
                "which it pushes on the truss",
                word,
            )
        if word.lower in ("slope", "incline", "inclined", "plane"):
            angle = _inclination(words[place:])
            cure = f"write {joint} roller 120, the way it pushes, in degrees from +x"
            if angle is not None and 0 < angle < 90:
                cure = (
                    f"write {joint} roller {90 + angle:.6g} where the slope rises to the right, and "
                    f"{joint} roller {90 - angle:.6g} where it falls"
                )
            message = "a roller pushes perpendicular to what it rolls on"
            return Bad(word.text, message, cure, word)
    return None


def _inclination(words: Sequence[Word]) -> float | None:
    """How steep a slope is, in degrees, from an angle or from rise and run (3/4, 3 4, 3 in 4)."""
    found = [exact(w.text) for w in words if w.is_number]
    sizes = [number.value for number in found if isinstance(number, Exact)]
    if not sizes:
        return None
    ratio = len(sizes) > 1 or any(w.is_number and "/" in w.text for w in words)
    rise, run = (sizes[0], sizes[1] if len(sizes) > 1 else 1.0)
    return math.degrees(math.atan2(rise, run)) if ratio else sizes[0]


def surface(problem: Problem, words: Sequence[Word], place: int) -> Bad | None:
    """A wall or a floor that a joint touches; what it is held by is no matter where a support is named."""
    joint = next((name for w in words if (name := joint_meant(problem, w.text)) is not None), "B")
    if on_roller(words):
        return slope_or_wall(problem, joint, words)
    kind = next((SUPPORT_WORDS[w.lower].name for w in words if w.lower in SUPPORT_WORDS), None)
    if kind is not None:
        what = words[place].lower
        return Bad(what, f"a {kind} needs no {what}", f"write {joint} {kind}", words[place])
    return Bad(
        words[place].text,
        "how it holds the joint is not said: a smooth one only pushes, at a right angle",
        f"write {joint} roller up for a smooth floor, {joint} roller right or {joint} roller left for a "
        f"smooth wall, {joint} pin where it holds both ways",
        words[place],
    )


def on_roller(words: Sequence[Word]) -> bool:
    """Whether the words name a roller."""
    kinds = (SUPPORT_WORDS.get(word.lower) for word in words)
    return any(kind is not None and kind.takes == "angle" for kind in kinds)

"""What does a student draw that no truss has, and what would a teacher say to it?

Each answer is a sentence on why not, and the cure: what stands for it in a truss.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping, Sequence

from tutor.drafting.names import joint_meant, member_meant
from tutor.drafting.surfaces import on_roller, slope_or_wall, surface
from tutor.drafting.words import FORCES, LENGTHS, UNITS, Bad, Word, exact
from tutor.model import Problem
from tutor.notation import Exact

Pair = tuple[str, str]
PER_LENGTH = re.compile(
    rf"(?:\S*\d)?(?:{'|'.join((*FORCES, 'k', 'kips', 'lbs'))})"
    rf"(?:/|\s*per\s*)(?:{'|'.join(LENGTHS)})|(?:\S*\d)?(?:plf|klf)",
    re.IGNORECASE,
)
RESULT = re.compile(r"(?:[FSNT]_?\{?[A-Za-z]\w*(?:-\w+)?\}?|[A-Za-z]\w*_\{?\w+\}?)")
LETTERS = ("t", "c", "tension", "compression")


def unfit(problem: Problem, text: str, words: Sequence[Word]) -> Bad | None:
    """What to say to a statement that asks for something no truss has, or None."""
    for place, word in enumerate(words):
        answer = ANSWERS.get(word.lower)
        if answer is None or joint_meant(problem, word.text) is not None:
            continue
        if (refused := answer(problem, words, place)) is not None:
            return refused
    spread = next((word for word in words if PER_LENGTH.fullmatch(word.text)), None)
    if spread is not None:
        return _spread(problem, words, spread)
    return _result(problem, text, words)


def _fixed(problem: Problem, words: Sequence[Word], place: int) -> Bad:
    joint = _joint(problem, words) or "A"
    return Bad(
        words[place].text,
        "a fixed end holds against turning, and the joint of a truss cannot: its members turn "
        "freely about it",
        f"write {joint} pin, and hold a second joint with a roller or a link",
        words[place],
    )


def _moment(problem: Problem, words: Sequence[Word], place: int) -> Bad:
    joint = _joint(problem, words) or "C"
    return Bad(
        words[place].text,
        "no moment can act on the joint of a truss, since its members turn freely about it",
        f"put two equal and opposite forces at {joint} and another joint, whose moment is the same",
        words[place],
    )


def _cable(problem: Problem, words: Sequence[Word], place: int) -> Bad:
    member = _member(problem, words)
    cure = (
        f"write {''.join(member)} for it and see that its force comes out as tension"
        if member is not None
        else f"write a link from the joint to the fixed point, like "
        f"{_joint(problem, words) or 'C'} link -1 4, or a member between two joints"
    )
    what = words[place].lower
    return Bad(what, f"a {what} is drawn as a member or a link that pulls", cure, words[place])


def _spring(problem: Problem, words: Sequence[Word], place: int) -> Bad:
    joint = _joint(problem, words) or "B"
    return Bad(
        words[place].text,
        "a spring gives way by its stiffness, which is no matter of a truss here",
        f"write {joint} roller, or {joint} link and a fixed point, which push and pull the same way",
        words[place],
    )


def _bends(problem: Problem, words: Sequence[Word], place: int) -> Bad:
    what = words[place].lower
    return Bad(
        words[place].text,
        f"a {what} bends; the members of a truss are straight and carry a pull or a push alone",
        "write members between the joints, like AB BC CA",
        words[place],
    )


def _pulley(problem: Problem, words: Sequence[Word], place: int) -> Bad:
    joint = _joint(problem, words) or "C"
    return Bad(
        words[place].text,
        "a pulley is no part of a truss: its rope pulls the joint along both of its parts",
        f"load the joint with both pulls, like {joint} 5 down and {joint} 5 at 210",
        words[place],
    )


def _level(problem: Problem, words: Sequence[Word], place: int) -> Bad:
    joint = _joint(problem, words) or "C"
    refused = slope_or_wall(problem, joint, words) if on_roller(words) else None
    return refused or Bad(
        words[place].text,
        "it does not say to which side, or from which side an angle is",
        f"write up, down, left or right, like {joint} 12 right, or an angle from +x, "
        f"counter-clockwise, like {joint} 5 at 210",
        words[place],
    )


def _hinge(problem: Problem, words: Sequence[Word], place: int) -> Bad:
    return Bad(
        words[place].text,
        "every joint of a truss is a hinge already, and no member goes on through it",
        "leave it out, and write the members from joint to joint",
        words[place],
    )


def _reaction(problem: Problem, words: Sequence[Word], place: int) -> Bad:
    joint = _joint(problem, words) or "A"
    return Bad(
        words[place].text,
        "reactions follow from the supports and are not drawn",
        f"write how the joint is held: {joint} pin, {joint} roller, or {joint} link -1 4",
        words[place],
    )


def _none(problem: Problem, words: Sequence[Word], place: int) -> Bad:
    return Bad(
        words[place].text,
        "whether a member carries no force is found, and not drawn",
        "write the member alone, like AB",
        words[place],
    )


def _angle(problem: Problem, words: Sequence[Word], place: int) -> Bad | None:
    if place:
        return None
    return Bad(
        words[place].text,
        "angles follow from the places of the joints",
        "place a joint by a length and an angle, like C 5 at 30 from A",
        words[place],
    )


def _all_along(problem: Problem, words: Sequence[Word], place: int) -> Bad | None:
    if any(PER_LENGTH.fullmatch(word.text) for word in words):
        return None
    return _spread(problem, words, words[place])


ANSWERS: Mapping[str, Callable[[Problem, Sequence[Word], int], Bad | None]] = {
    **dict.fromkeys(
        ("fixed", "fix", "clamped", "clamp", "encastre", "built-in", "rigid", "welded"), _fixed
    ),
    **dict.fromkeys(("moment", "moments", "couple", "torque"), _moment),
    **dict.fromkeys(("cable", "rope", "wire", "chain", "string"), _cable),
    **dict.fromkeys(("spring", "springs"), _spring),
    **dict.fromkeys(("beam", "frame", "arch", "curved"), _bends),
    **dict.fromkeys(("horizontal", "vertical", "horizontally", "vertically", "x-axis"), _level),
    **dict.fromkeys(("pulley", "pulleys"), _pulley),
    **dict.fromkeys(("wall", "floor", "ground"), surface),
    **dict.fromkeys(("reaction", "reactions"), _reaction),
    **dict.fromkeys(("zero", "zero-force"), _none),
    **dict.fromkeys(("udl", "uniform", "uniformly", "distributed"), _all_along),
    "internal": _hinge,
    "angle": _angle,
}
"""What is no part of a truss, by the word for it."""


def _spread(problem: Problem, words: Sequence[Word], word: Word) -> Bad:
    """A load along a length, w times L, of which each end takes half."""
    member = _member(problem, words)
    wrong = "a load spread along a member reaches a truss at its joints only"
    if member is None:
        cure = "put half of the whole load, its size times the length, at each end of the member"
        return Bad(word.text, wrong, cure, word)
    one, other = member
    end = _half_of_spread(problem, member, words, word)
    each = f", {end} {problem.force} down each" if end else ""
    cure = (
        f"put half of its size times the length at each end, {one} and {other}{each}, or type it like "
        f"spread 2 down {one}{other}"
    )
    return Bad(word.text, wrong, cure, word)


def _half_of_spread(problem: Problem, member: Pair, words: Sequence[Word], word: Word) -> str:
    """w L / 2 in the truss's units, "" where the units differ or no size stands there."""
    found = re.match(r"([\d.,]+)?(.*)/(.*)", word.text)
    number = next((w for w in words if w.is_number and w != word), None)
    text = found[1] if found and found[1] else None if number is None else number.text
    if found is None or text is None:
        return ""
    units = (UNITS.get(found[2].lower()), UNITS.get(found[3].lower()))
    size = exact(text)
    if units != (problem.force, problem.length) or not isinstance(size, Exact):
        return ""
    (x, y), (u, v) = (problem.joint[name].at for name in member)
    return f"{size.value * math.hypot(u - x, v - y) / 2:.6g}"


def _result(problem: Problem, text: str, words: Sequence[Word]) -> Bad | None:
    """A force that was found, typed where the truss is drawn: `R_D = 60 T`, `F_AB = 12`, `AB 60 C`."""
    if len(words) < 2 or not words[1].is_number or words[0].quoted:
        return None
    first = words[0]
    last = words[-1].lower
    member = member_meant(problem, first)
    named = RESULT.fullmatch(first.text) is not None and "_" in first.text
    lettered = member is not None and last in LETTERS and len(words) > 2
    forced = member is not None and "=" in text and len(words) < 4 and last in _forces()
    if not (named or lettered or forced):
        return None
    return Bad(
        text.strip(),
        "this is a force that was found, and no part of the drawing",
        "enter it on the paper of your homework on this truss",
        first,
    )


def _forces() -> tuple[str, ...]:
    return tuple(unit.lower() for unit in FORCES)


def _joint(problem: Problem, words: Sequence[Word]) -> str | None:
    """The first joint that the words name."""
    found = (joint_meant(problem, word.text) for word in words)
    return next((name for name in found if name is not None), None)


def _member(problem: Problem, words: Sequence[Word]) -> Pair | None:
    """The first member that the words name, or the one between the two joints they name."""
    found = next((pair for word in words if (pair := member_meant(problem, word))), None)
    if found is not None:
        return found
    joints = [name for word in words if (name := joint_meant(problem, word.text))]
    return (joints[0], joints[1]) if len(joints) == 2 and joints[0] != joints[1] else None

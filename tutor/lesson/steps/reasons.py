"""Which statements stand at the first question, in which words and in which order?

Every problem has its own: keys stay the same in the events of a lesson, what they say and where
they stand is drawn by the problem. Nothing can be learnt by its number.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Mapping, Sequence

from tutor.lesson.reply import Option
from tutor.model import Problem

TRUE_REASONS: Mapping[str, Sequence[str]] = {
    "pins": (
        "the members are joined by pins without friction, so no joint holds a moment",
        "each joint is a smooth pin, about which its members are free to turn",
        "no joint passes a moment from one member on to another",
    ),
    "joints": (
        "loads and reactions act only at the joints",
        "no load is applied to a member between its two ends",
        "every load and every reaction is applied at a joint",
    ),
    "weight": (
        "the weight of a member is left out, or counted as loads at its ends",
        "no member's own weight acts between its joints",
        "members are taken as weightless, or as half their weight at each end",
    ),
}
"""What makes the members two-force members, each in several wordings."""
BENDING: Mapping[str, Sequence[str]] = {
    "rigid": (
        "the members are held fast at the joints, so that they cannot turn there",
        "the joints are welded stiff, so that the angles between members are kept",
    ),
    "between": ("loads may be applied anywhere along a member",),
    "heavy": ("each member carries its own weight along its length",),
}
"""The opposite: what would let a member bend."""
BESIDE: Mapping[str, Sequence[str]] = {
    "triangles": ("the members form triangles",),
    "slender": ("the members are long and thin",),
    "alike": ("the members are all made of the same bar",),
    "count": ("there are as many equations as unknowns",),
    "supports": ("the truss stands on supports that just hold it",),
    "stiff": ("the members are too stiff to bend noticeably",),
}
"""What is often so in a truss, and has nothing to do with it."""
WORDS: Mapping[str, Sequence[str]] = {**TRUE_REASONS, **BENDING, **BESIDE}


def statements(problem: Problem) -> tuple[Option, ...]:
    """The true reasons, one that would let a member bend and two beside the point, in mixed order."""
    lot = _Lots("|".join((problem.title, *(member.name for member in problem.members))))
    keys = [*TRUE_REASONS, *lot.mixed(BENDING)[:1], *lot.mixed(BESIDE)[:2]]
    return tuple(Option(key, lot.mixed(WORDS[key])[0]) for key in lot.mixed(keys))


class _Lots:
    """Drawing lots that fall the same way for one problem on every machine."""

    def __init__(self, seed: str) -> None:
        self._seed = seed

    def mixed(self, things: Iterable[str]) -> list[str]:
        """The things in the order in which their lots fall."""
        return sorted(
            things, key=lambda thing: hashlib.sha256(f"{self._seed}|{thing}".encode()).digest()
        )

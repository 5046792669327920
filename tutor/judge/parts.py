"""Which part of the truss does a heading speak of: the left part of a section through BC, CD and DE?"""

from __future__ import annotations

from tutor.model import Problem
from tutor.notation.elements.label import PartSaid, Side
from tutor.statics import Section, section_through

AXIS: dict[Side, tuple[int, float]] = {
    "left": (0, -1.0),
    "right": (0, 1.0),
    "lower": (1, -1.0),
    "upper": (1, 1.0),
}
"""For each side the coordinate that tells it, and the sign that it has there."""
NEARLY = 1e-9


def part_named(problem: Problem, said: PartSaid) -> tuple[str, ...] | None:
    """The joints of the part that a heading names; None where it leaves open which, or names none."""
    if not said.cut or said.side is None:
        return None
    found = section_through(problem, said.cut)
    return part_on(problem, found, said.side) if found.divides else None


def part_on(problem: Problem, found: Section, side: Side) -> tuple[str, ...] | None:
    """The part of a section whose joints lie farther to a side in the mean; None where none does.

    The outer part is the one without a support, where the other has them all.
    """
    if side not in AXIS:
        return _held_or_free(problem, found, side)
    axis, sign = AXIS[side]
    places = [
        sign * sum(problem.joint[joint].at[axis] for joint in part) / len(part)
        for part in found.parts
    ]
    one, other = places
    if abs(one - other) <= NEARLY * max(abs(one), abs(other), 1.0):
        return None
    return found.parts[places.index(max(places))]


def _held_or_free(problem: Problem, found: Section, side: Side) -> tuple[str, ...] | None:
    """The part that holds all supports, or the other one; None where both have some."""
    held = [all(support.joint in part for support in problem.supports) for part in found.parts]
    if True not in held:
        return None
    return found.parts[held.index(side == "inner")]

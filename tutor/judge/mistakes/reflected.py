"""An inclined force is taken as its mirror image."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge.about import M
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import SLIGHTLY
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    ux, uy = spot.unit_vector
    if ux == 0.0 or uy == 0.0 or spot.per_unit == 0.0:
        return
    if spot.is_moment:
        dx, dy = spot.offset
        yield dx * uy + dy * ux
        yield -dx * uy - dy * ux
    elif min(map(abs, spot.axis)) > 1e-9:
        yield -ux * spot.axis[0] + uy * spot.axis[1]
        yield ux * spot.axis[0] - uy * spot.axis[1]


def look(case: Case) -> Saying:
    return Saying("One of the two components of an inclined force goes the wrong way")


def reason(case: Case) -> str:
    return (
        "The two components of a force go the way its arrow goes: draw the arrow on the joint, "
        "toward the member's far end if it pulls, and read both directions from it."
    )


def place(case: Case) -> Saying:
    return Saying(
        "is taken as its mirror image",
        "see on the diagram to which side its arrow goes, and whether up or down.",
        of=case.subject,
    )


KIND = Kind(
    code="reflected",
    called="a member that acts one way at both ends",
    rare=SLIGHTLY,
    why="The arrow is imagined at the member's other end, where it points the other way.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(M((0, 1)), "A_x - 3.8 R_B - 48 = 0", truss="gangway"),),
)

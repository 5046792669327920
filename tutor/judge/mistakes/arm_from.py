"""A moment arm is measured from another joint, or along a member."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.about import M
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.same import are_same
from tutor.judge.saying import Saying
from tutor.judge.scale import SLIGHTLY
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    if not spot.is_moment or spot.per_unit == 0.0:
        return
    dx, dy = spot.offset
    ux, uy = spot.unit_vector
    if spot.along_member:
        yield math.copysign(math.hypot(dx, dy), spot.per_unit)
    x, y = spot.force.at
    px, py = x - dx, y - dy
    for jx, jy in spot.landmarks:
        for ox, oy in ((x - jx, y - jy), (jx - px, jy - py)):
            arm = ox * uy - oy * ux
            if abs(arm) > 1e-9:
                yield math.copysign(arm, spot.per_unit)


def _of_another_force(case: Case) -> bool:
    """Whether the distance typed is the arm of another force in the equation."""
    spot, arm = case.spot, case.factor_typed
    return (
        spot is not None
        and arm is not None
        and any(
            are_same(arm, abs(term.coefficient / (term.force.size or 1.0)))
            for term in spot.equation.terms
            if term.force is not spot.force
        )
    )


def look(case: Case) -> Saying:
    if _of_another_force(case):
        return Saying(
            f"A distance in {case.this_line} is the arm of another force, not of the one beside it"
        )
    return Saying(
        f"A distance in {case.this_line} does not run at right angles from the moment "
        "point to the line of action of the force beside it"
    )


def reason(case: Case) -> str:
    return (
        f"Each arm of a moment equation runs from the same point, here {case.point}, to the line of "
        "action of its own force, at right angles to it, wherever the given distances start."
    )


def place(case: Case) -> Saying:
    if _of_another_force(case):
        return Saying(
            "belongs to another force",
            f"go from {case.point} at right angles to its own line of action.",
            of=f"The distance beside {case.thing}",
        )
    return Saying(
        "is measured from another joint or along a member",
        "see from where to where it runs.",
        of=f"The distance beside {case.thing}",
    )


KIND = Kind(
    code="arm-from",
    called="an arm measured from another point",
    rare=SLIGHTLY,
    why="A panel length stands ready in the picture, or the eye starts at the support instead of at "
    "the moment point.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(M("A"), "14 C_y - 15*12 - 12*5 - 9*6 - 9*8 = 0"),),
    runs_through=True,
)

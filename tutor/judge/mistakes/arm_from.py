"""A moment arm is measured from another joint, or along a member."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.about import M
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
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


def look(case: Case) -> str:
    return (
        "A distance in this line does not run from the moment point straight to a line of action."
    )


def reason(case: Case) -> str:
    return (
        f"All arms of one moment equation start at the same point, here {case.point}, and meet the "
        "line of action at right angles, wherever the given distances start."
    )


def place(case: Case) -> str:
    return (
        f"The distance beside {case.thing} is measured from another joint or along a member: see "
        "from where to where it runs."
    )


KIND = Kind(
    code="arm-from",
    called="an arm measured from another point",
    cost=1.25,
    why="A panel length stands ready in the picture, or the eye starts at the support instead of at "
    "the moment point.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(M("A"), "14 C_y - 15*12 - 12*5 - 9*6 - 9*8 = 0"),),
)

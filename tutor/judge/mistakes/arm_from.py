"""A moment arm is measured from another joint, or along a member."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.kind import Case, Kind
from tutor.judge.truth import Spot


def variants(spot: Spot) -> Iterator[float]:
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
    return "A distance in this line runs from somewhere else than the moment point."


def reason(case: Case) -> str:
    return (
        f"All arms of one moment equation start at the same point, here {case.point}, and run at "
        "right angles to the force's line of action, not along a member."
    )


def place(case: Case) -> str:
    return f"Look at {case.thing}: from where to where does the distance beside it run?"


KIND = Kind(
    code="arm-from",
    cost=1.25,
    why="A panel length stands ready in the picture, or the eye starts at the support instead of at "
    "the moment point.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
)

"""The angle from the vertical is used as if from the horizontal."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.kind import Case, Kind
from tutor.judge.truth import Spot


def variants(spot: Spot) -> Iterator[float]:
    if spot.is_moment or spot.per_unit == 0.0 or min(map(abs, spot.axis)) <= 1e-9:
        return
    ux, uy = spot.unit_vector
    swapped = math.copysign(uy, ux), math.copysign(ux, uy)
    yield swapped[0] * spot.axis[0] + swapped[1] * spot.axis[1]
    ax, ay = math.copysign(spot.axis[1], spot.axis[0]), math.copysign(spot.axis[0], spot.axis[1])
    yield ux * ax + uy * ay


def look(case: Case) -> str:
    return "An angle in this line is measured from another line than the factor takes it from."


def reason(case: Case) -> str:
    return (
        "The angle between a force and the direction of the sum is the difference of their "
        "inclinations; both must be measured from the same line."
    )


def place(case: Case) -> str:
    return f"Look at {case.thing}: from which line is its inclination measured?"


KIND = Kind(
    code="complement",
    cost=1.3,
    why="An angle is read off the picture without noting from which line it is drawn.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
)

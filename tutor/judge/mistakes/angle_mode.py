"""A calculator in radians was given degrees, or the other way round."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.kind import Case, Kind
from tutor.judge.truth import Spot


def variants(spot: Spot) -> Iterator[float]:
    if spot.is_moment or abs(spot.per_unit) in (0.0, 1.0):
        return
    angle = math.degrees(math.acos(min(1.0, abs(spot.per_unit))))
    for degrees in {angle, round(angle, 2), round(angle, 1), float(round(angle))}:
        yield math.copysign(1.0, spot.per_unit) * math.cos(degrees)
        yield math.copysign(1.0, spot.per_unit) * math.sin(90.0 - degrees)


def look(case: Case) -> str:
    return "A sine or cosine in this line has come out for another kind of angle."


def reason(case: Case) -> str:
    return (
        "A calculator takes an angle in degrees or in radians according to how it is set; here a "
        "bare angle means degrees, and 0.5 rad is written for radians."
    )


def place(case: Case) -> str:
    if case.force is None:
        return "Look at the angles in your line: are they degrees or radians?"
    return f"Look at {case.thing}: was the sine or cosine beside it taken of degrees or of radians?"


KIND = Kind(
    code="angle-mode",
    cost=1.4,
    why="The calculator was last used in another course.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
)

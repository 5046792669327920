"""A calculator in radians was given degrees, or the other way round."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.about import Fx
from tutor.judge.example import Example
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
    return "A sine or cosine in this line was taken with the calculator set to other angles."


def reason(case: Case) -> str:
    return (
        "A calculator reads an angle as degrees or as radians, as it is set. A bare angle in a line is "
        "in degrees here; the word rad behind it says radians."
    )


def place(case: Case) -> str:
    if case.force is None:
        return (
            "Go to each angle in your line: are its figures degrees, as they are read, or radians?"
        )
    return (
        f"The sine or cosine beside {case.thing} mixes degrees and radians: write the angle in "
        "degrees and take it again."
    )


KIND = Kind(
    code="angle-mode",
    cost=1.4,
    why="The calculator was last used in another course.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(Fx("A"), "A_x + F_AB + F_AD cos(53.13 rad) = 0"),),
)

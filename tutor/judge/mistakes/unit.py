"""A number stands in another unit than the rest of the line."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge.kind import Case, Kind
from tutor.judge.truth import Spot

FACTORS = (1000.0, 0.001, 1e6, 1e-6)


def variants(spot: Spot) -> Iterator[float]:
    if spot.per_unit == 0.0 or not spot.numeric:
        return
    for factor in FACTORS:
        yield spot.per_unit * factor


def look(case: Case) -> str:
    return "The units in this line do not go together."


def reason(case: Case) -> str:
    return (
        f"This problem counts forces in {case.problem.force} and lengths in {case.problem.length}; "
        "every number without a unit is read so. A unit may be written behind any number."
    )


def place(case: Case) -> str:
    if case.force is None:
        return "Look at the numbers without a letter: which unit are they in?"
    return f"Look at {case.thing}: which unit is its number in?"


KIND = Kind(
    code="unit",
    cost=1.25,
    why="Newtons and kilonewtons, or millimetres and metres, stand side by side in one calculation.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
)

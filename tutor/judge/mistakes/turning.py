"""One term of a moment equation turns the other way."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge.kind import Case, Kind
from tutor.judge.truth import Spot


def variants(spot: Spot) -> Iterator[float]:
    if spot.is_moment and spot.per_unit != 0.0 and not spot.lost_minus:
        yield -spot.per_unit


def look(case: Case) -> str:
    return "The sizes fit, but something in this line turns the other way."


def reason(case: Case) -> str:
    return (
        f"Stand at {case.point} and let each force turn the body about it: forces that turn it the "
        "same way share a sign, forces that turn it the other way have the opposite one."
    )


def place(case: Case) -> str:
    return f"Look at {case.thing}: which way does it turn the body about {case.point}?"


KIND = Kind(
    code="turning",
    cost=1.0,
    why="The sign of the force in a sum, up or down, is carried over into the moment, where only the "
    "turning counts.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
)

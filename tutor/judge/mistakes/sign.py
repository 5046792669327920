"""A force enters a sum the wrong way round."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge.kind import Case, Kind
from tutor.judge.truth import Spot


def variants(spot: Spot) -> Iterator[float]:
    if spot.per_unit != 0.0:
        yield -spot.per_unit


def look(case: Case) -> str:
    if case.is_moment:
        return "The sizes fit, but something in this line turns the other way."
    return "The sizes fit, but something in this line points the other way."


def reason(case: Case) -> str:
    if case.is_moment:
        return (
            f"Stand at {case.point} and let each force turn the truss about it: forces that turn it "
            "the same way share a sign, forces that turn it the other way have the opposite one."
        )
    return (
        f"On the free-body diagram of {case.body}, every arrow with a part along your positive "
        "direction enters with plus, every arrow against it with minus; a member drawn in tension "
        "pulls away from the joint."
    )


def place(case: Case) -> str:
    if case.is_moment:
        return f"Look at {case.thing}: which way does it turn the truss about {case.point}?"
    return (
        f"Look at {case.thing}: does its arrow point along your positive direction or against it?"
    )


KIND = Kind(
    code="sign",
    cost=1.0,
    why="The arrow on the diagram and the sign in the line are written at different moments, and "
    "the positive direction is forgotten in between.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
)

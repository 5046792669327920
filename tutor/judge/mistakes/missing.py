"""A force that has a part in the equation is left out."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge.kind import Case, Kind
from tutor.judge.truth import Spot

COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")


def variants(spot: Spot) -> Iterator[float]:
    if spot.per_unit != 0.0:
        yield 0.0


def look(case: Case) -> str:
    count = COUNTS[case.acting] if case.acting < len(COUNTS) else str(case.acting)
    forces = "force has" if case.acting == 1 else "forces have"
    if case.is_moment:
        return (
            f"On {case.body} {count} {forces} a moment about {case.point}; not all of them are in "
            "your line."
        )
    return (
        f"On {case.body} {count} {forces} a part in the {case.direction} direction; not all of "
        "them are in your line."
    )


def reason(case: Case) -> str:
    return (
        "An equilibrium equation takes in every force on the free body: each member, each load and "
        f"each reaction on {case.body} needs its term unless it has no part in this equation."
    )


def place(case: Case) -> str:
    return f"Look for {case.thing} in your line: it has a part here."


KIND = Kind(
    code="missing",
    cost=1.1,
    why="Without a finished free-body diagram beside the line, the force that was not drawn is not "
    "written either; reactions at a joint are the ones forgotten first.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
)

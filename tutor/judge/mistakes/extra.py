"""A force stands in an equation in which it has no part."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge.kind import Case, Kind
from tutor.judge.truth import Spot


def variants(spot: Spot) -> Iterator[float]:
    if spot.per_unit != 0.0:
        return
    ux, uy = spot.unit_vector
    dx, dy = spot.offset
    lengths = (dx, dy, (dx**2 + dy**2) ** 0.5) if spot.is_moment else (1.0,)
    for length in lengths:
        for part in (1.0, ux, uy):
            if part * length != 0.0:
                yield part * length
                yield -part * length


def look(case: Case) -> str:
    return "There is a term too many in this line."


def reason(case: Case) -> str:
    if case.is_moment:
        return (
            f"A force whose line of action passes through {case.point} has no moment about it, and "
            f"a force that does not act on {case.body} has no place in its equation."
        )
    return (
        f"A force at right angles to the direction of the sum has no part in it, and a force that "
        f"does not act on {case.body} has no place in its equation."
    )


def place(case: Case) -> str:
    if case.spot is None:
        return f"Look at {case.thing}: does it act on {case.body}?"
    if case.is_moment:
        return f"Look at {case.thing}: where does its line of action pass?"
    return f"Look at {case.thing}: what part of it lies in the {case.direction} direction?"


KIND = Kind(
    code="extra",
    cost=1.2,
    why="Every force in sight is written down, without asking whether it acts on this body and has "
    "a part in this direction or an arm about this point.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
)

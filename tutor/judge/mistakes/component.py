"""The other component of a force is used: sine for cosine."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.kind import Case, Kind
from tutor.judge.truth import Spot


def variants(spot: Spot) -> Iterator[float]:
    if spot.per_unit == 0.0:
        return
    ux, uy = spot.unit_vector
    if spot.is_moment:
        if ux == 0.0 or uy == 0.0:
            return
        dx, dy = spot.offset
        yield dx * math.copysign(ux, uy) - dy * math.copysign(uy, ux)
        return
    across = math.sqrt(max(0.0, 1.0 - spot.per_unit**2))
    if across > 1e-9:
        yield math.copysign(across, spot.per_unit)


def look(case: Case) -> str:
    return "One of the components in this line is the wrong one of its pair."


def reason(case: Case) -> str:
    return (
        "Draw the slope triangle of a member: its horizontal side over its length gives the "
        "horizontal component, its vertical side over its length the vertical one. Which of the two "
        "is the sine depends on where the angle was measured from."
    )


def place(case: Case) -> str:
    if case.is_moment:
        return f"Look at {case.thing}: which of its components goes with which distance?"
    return (
        f"Look at {case.thing}: which side of its slope triangle lies in the {case.direction} "
        "direction?"
    )


KIND = Kind(
    code="component",
    cost=1.05,
    why="Cosine is remembered as 'the horizontal one', whatever the angle is measured from.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
)

"""A side of the slope triangle stands as it is, not over the slanting side."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.about import Fy
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.truth import Spot


def variants(spot: Spot) -> Iterator[float]:
    ux, uy = spot.unit_vector
    member = spot.problem.member.get(spot.name)
    upright = 0.0 in spot.axis and not spot.is_moment
    if not upright or member is None or min(abs(ux), abs(uy)) < 1e-9:
        return
    x1, y1 = spot.problem.joint[member.start].at
    x2, y2 = spot.problem.joint[member.end].at
    length = math.hypot(x2 - x1, y2 - y1)
    for part in (ux, uy):
        yield math.copysign(part * length, spot.per_unit)


def look(case: Case) -> str:
    return "A length stands in this line where the share of a force belongs."


def reason(case: Case) -> str:
    return (
        "A component is the force times a side of its slope triangle over the slanting side; that "
        "factor has no unit and is never larger than one."
    )


def place(case: Case) -> str:
    return (
        f"The side beside {case.thing} still has to be divided by the length of its slanting side."
    )


KIND = Kind(
    code="side",
    cost=1.15,
    why="Rise and run are read off the picture, and finding the slanting side is put off.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(Fy("C"), "C_y + 12 F_CD = 0"),),
    runs_through=True,
)

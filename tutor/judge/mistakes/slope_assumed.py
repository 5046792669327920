"""A slope that is known by heart is taken: a 3-4-5 triangle, 30 or 45 degrees."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.about import Fy
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.same import NEAR
from tutor.judge.saying import Saying
from tutor.judge.scale import HARDLY
from tutor.judge.true_equation import TrueTerm

BY_HEART = (0.6, 0.8, math.sqrt(0.5), 0.5, math.sqrt(0.75))


def variants(spot: TrueTerm) -> Iterator[float]:
    ux, uy = spot.unit_vector
    if spot.is_moment or spot.per_unit == 0.0 or min(abs(ux), abs(uy)) < 1e-9:
        return
    for part in BY_HEART:
        if all(abs(part - abs(own)) > NEAR * abs(own) for own in (ux, uy)):
            yield math.copysign(part, spot.per_unit)


def look(case: Case) -> Saying:
    return Saying(
        f"A slope in {case.this_line} is a well-known one, but not the one that its force has"
    )


def reason(case: Case) -> str:
    return (
        "A triangle or an angle known by heart holds only where the problem says so: take the slope "
        "of each force as it is given there."
    )


def place(case: Case) -> Saying:
    return Saying(
        "belongs to another slope", "work out its own.", of=f"The factor beside {case.thing}"
    )


KIND = Kind(
    code="slope-assumed",
    called="a slope taken by heart",
    rare=HARDLY,
    why="So many exercises are built on 3-4-5 and on 45 degrees that they are taken for granted.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(Fy("C"), "C_y + 3/5 F_CD = 0"),),
    calculated=True,
)

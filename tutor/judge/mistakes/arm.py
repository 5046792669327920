"""A distance is used as moment arm that is not the perpendicular one."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.about import M
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.same import are_same
from tutor.judge.saying import Saying
from tutor.judge.scale import HARDLY
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    if not spot.is_moment or spot.per_unit == 0.0:
        return
    dx, dy = spot.offset
    ux, uy = spot.unit_vector
    arms = [] if spot.along_member else [math.hypot(dx, dy)]
    if ux == 0.0 or uy == 0.0 or spot.is_square_load:
        arms += [dx, dy]
    else:  # from the point straight on to the line of action, level or upright
        across = (spot.per_unit / ux, spot.per_unit / uy)
        arms += [far for far in across if not any(are_same(abs(far), abs(d)) for d in (dx, dy))]
    for arm in arms:
        if arm != 0.0:
            yield math.copysign(arm, spot.per_unit)


def look(case: Case) -> Saying:
    return Saying(f"A distance in {case.this_line} is not the moment arm of the force beside it")


def reason(case: Case) -> str:
    return (
        f"The moment arm is the perpendicular distance from {case.point} to the force's line of "
        "action: a horizontal distance for a vertical force, a vertical one for a horizontal force."
    )


def place(case: Case) -> Saying:
    return Saying(
        "is not its arm",
        f"draw its line of action, and go from {case.point} to that line at right angles.",
        of=f"The distance beside {case.thing}",
    )


KIND = Kind(
    code="arm",
    called="a distance that is not the moment arm",
    rare=HARDLY,
    why="A dimension that stands in the picture is taken as it is, or the distance is measured to "
    "the joint instead of to the line of action.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(M("A"), "14 C_y - 9*12 - 9*5 - 9*6 - 9*8 = 0"),),
    runs_through=True,
)

"""The whole force stands where only a component of it acts."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.about import Fx
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import HARDLY
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    ux, uy = spot.unit_vector
    if spot.per_unit == 0.0:
        return
    if spot.is_moment:
        if spot.part:
            yield spot.per_unit / spot.share
        if ux == 0.0 or uy == 0.0 or spot.is_square_load:
            return
        dx, dy = spot.offset
        for arm, turn in ((dx, dx * uy), (dy, -dy * ux)):
            if arm != 0.0:
                yield from {math.copysign(arm, turn), math.copysign(arm, spot.per_unit)}
        return
    yield math.copysign(1.0, spot.per_unit)


def look(case: Case) -> Saying:
    if case.is_moment:
        return Saying(
            f"A force in {case.this_line} stands whole beside the arm of one of its components"
        )
    return Saying(f"An inclined force has come into {case.this_line} whole")


def reason(case: Case) -> str:
    if case.is_moment:
        return (
            "A horizontal or vertical distance is the arm of the component perpendicular to it, "
            "not of the whole inclined force."
        )
    return (
        "A sum in one direction takes from each force only its component in that direction; "
        "an inclined force has one in each of two directions."
    )


def place(case: Case) -> Saying:
    if case.names_a_component:
        return Saying(f"The whole force stands here instead of {case.thing}")
    if case.is_moment:
        return Saying(
            "stands here whole, with the arm of one of its components", "split it.", of=case.subject
        )
    return Saying("stands here whole", "only its component along the sum counts.", of=case.subject)


KIND = Kind(
    code="whole-force",
    called="a whole force for its component",
    rare=HARDLY,
    why="The name of the force is written first and its slope factor is left for later.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(Fx("A"), "A_x + F_AB + F_AD = 0"),),
    of_whole=True,
)

"""The ratio of a component stands upside down: the hypotenuse over a side."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.about import Fx
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind, Look
from tutor.judge.saying import Saying
from tutor.judge.scale import SLIGHTLY
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    if spot.per_unit == 0.0:
        return
    if spot.is_moment:
        yield from _in_a_moment(spot)
        return
    ux, uy = spot.unit_vector
    if min(abs(ux), abs(uy)) < 1e-9:
        return
    for share in dict.fromkeys((abs(spot.per_unit), abs(ux), abs(uy))):
        if share < 1.0:
            yield math.copysign(1.0 / share, spot.per_unit)


def _in_a_moment(spot: TrueTerm) -> Iterator[float]:
    """The ratio of the one component that has an arm."""
    if spot.part:
        yield spot.per_unit / spot.share**2
        return
    turning = [part for part in spot.parts if part.per_unit != 0.0]
    if len(turning) == 1:
        yield spot.per_unit / turning[0].share ** 2


def look(case: Case) -> Saying:
    return Saying(f"A ratio in {case.this_line} stands upside down")


def reason(case: Case) -> str:
    return (
        "A component is never larger than its force: its ratio is a side of the right triangle over "
        "the hypotenuse, and so is its sine or cosine, by which the force is multiplied."
    )


def place(case: Case) -> Saying:
    return Saying(
        f"Look at the ratio beside {case.thing}", "which of the two lengths belongs below?"
    )


def shows(term: Look) -> bool:
    """A ratio has to stand beside the force: one that a result was multiplied by is none of it."""
    return term.numeric or term.factors.count > 0


KIND = Kind(
    code="upside-down",
    called="a ratio upside down",
    rare=SLIGHTLY,
    why="The three sides are known, and which two of them make the ratio is done from memory.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(Fx("A"), "A_x + F_AB + 5/3 F_AD = 0"),),
    runs_through=True,
    shows=shows,
)

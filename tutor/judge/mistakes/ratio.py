"""A sine or cosine is taken of a ratio of sides, as if the ratio were an angle."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.about import Fy
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind, Look
from tutor.judge.saying import Saying
from tutor.judge.scale import SOMEWHAT
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    ux, uy = spot.unit_vector
    if spot.is_moment or min(abs(ux), abs(uy)) < 1e-9 or spot.per_unit == 0.0:
        return
    for ratio in dict.fromkeys((abs(ux), abs(uy), abs(uy / ux), abs(ux / uy))):
        for angle in (math.radians(ratio), ratio):
            yield math.copysign(math.sin(angle), spot.per_unit)
            yield math.copysign(math.cos(angle), spot.per_unit)


def look(case: Case) -> Saying:
    return Saying(
        f"A sine or cosine in {case.this_line} is taken of something that is not an angle"
    )


def reason(case: Case) -> str:
    return (
        "A side of a right triangle over its hypotenuse is the sine or cosine already; a further "
        "function would take that ratio for an angle."
    )


def place(case: Case) -> Saying:
    return Saying(
        f"Beside {case.thing} a function is taken of a ratio of sides", "is that ratio an angle?"
    )


def shows(term: Look) -> bool:
    """Only a sine or a cosine is taken of a ratio."""
    return term.trigonometric


KIND = Kind(
    code="ratio",
    called="a function of a ratio that is no angle",
    rare=SOMEWHAT,
    why="Sine, ratio and angle are one thing in the mind, and the calculator takes any number.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(Fy("C"), "C_y + F_CD sin(12/13) = 0"),),
    calculated=True,
    runs_through=True,
    shows=shows,
)

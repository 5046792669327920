"""The tangent of the slope is used where a component is a side over the hypotenuse."""

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
    ux, uy = spot.unit_vector
    if spot.is_moment or spot.per_unit == 0.0 or min(abs(ux), abs(uy)) < 1e-9:
        return
    for ratio in (uy / ux, ux / uy):
        yield math.copysign(ratio, spot.per_unit)


def look(case: Case) -> Saying:
    return Saying(
        f"A factor in {case.this_line} is one side of a right triangle over another, but "
        "not over its hypotenuse"
    )


def reason(case: Case) -> str:
    return (
        "Rise over run is the tangent of the slope; a component is the force times rise or run over "
        "the hypotenuse, so its factor is never larger than one."
    )


def place(case: Case) -> Saying:
    return Saying(
        "is not over the hypotenuse",
        "by what did you divide?",
        of=f"The factor beside {case.thing}",
    )


def shows(term: Look) -> bool:
    """A tangent is not written as a sine or a cosine."""
    return not term.trigonometric


KIND = Kind(
    code="tangent",
    called="a tangent for a sine or cosine",
    rare=SLIGHTLY,
    why="The slope is given as rise and run, and the length of the hypotenuse still has to be "
    "found.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(Fx("A"), "A_x + F_AB + 4/3 F_AD = 0"),),
    runs_through=True,
    shows=shows,
)

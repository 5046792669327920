"""A component is taken of a force that lies wholly along the direction of the sum."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.about import Fy
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind, Look
from tutor.judge.mistakes.slope import slopes
from tutor.judge.saying import Saying
from tutor.judge.scale import SLIGHTLY
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    if spot.is_moment or abs(spot.per_unit) != 1.0:
        return
    for run, rise in slopes(spot.problem):
        yield math.copysign(run, spot.per_unit)
        yield math.copysign(rise, spot.per_unit)


def look(case: Case) -> Saying:
    return Saying(f"A factor in {case.this_line} stands beside a force that needs none")


def reason(case: Case) -> str:
    return (
        "A force that lies along the direction of the sum comes into it whole; only an inclined "
        "force has components in two directions."
    )


def place(case: Case) -> Saying:
    return Saying("needs no factor here", "which way does its arrow lie?", of=case.subject)


def shows(term: Look) -> bool:
    """A factor below one has to stand there, or a sine or cosine: what stands whole has none."""
    return term.shows_component and not term.factors.whole


KIND = Kind(
    code="needless-component",
    called="a component of a force that counts whole",
    rare=SLIGHTLY,
    why="Once one force of the line has a sine or a cosine, every other gets it too.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(Fy(), "A_y + 12/13 C_y - 12 - 6 - 8 = 0"),),
    shows=shows,
)

"""A force stands in a moment equation without any arm."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.about import M, Value
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind, Look
from tutor.judge.saying import Saying
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    """A bare force or component; not one whose arm is one, which is a moment all the same."""
    if spot.is_moment and spot.per_unit != 0.0:
        (dx, dy), (ux, uy) = spot.offset, spot.unit_vector
        moments = (abs(dx * uy), abs(dy * ux))
        for part in {1.0, abs(ux), abs(uy)}:
            if not any(math.isclose(part, moment) for moment in moments):
                yield math.copysign(part, spot.per_unit)


def look(case: Case) -> Saying:
    return Saying(f"There is a force in {case.this_line} where a moment is wanted")


def reason(case: Case) -> str:
    return (
        "Every term of a moment equation is a force times its arm; a bare force added to moments "
        "does not even have their unit."
    )


def place(case: Case) -> Saying:
    return Saying(f"stands here without its arm about {case.point}", of=case.subject)


def shows(term: Look) -> bool:
    """A force beside a typed distance has an arm, if only a wrong one."""
    return term.shows_component


KIND = Kind(
    code="no-arm",
    called="a force without its arm",
    why="A sum of forces was written just before, and the pen goes on in the same way.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(
        Example(M("A"), "14 C_y - 12 - 12*5 - 9*6 - 9*8 = 0"),
        Example(Value("C_y"), "294"),
    ),
    runs_through=True,
    of_whole=True,
    shows=shows,
)

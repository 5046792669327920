"""A force is entered twice."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge.about import Fy
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind, Look
from tutor.judge.saying import Saying
from tutor.judge.scale import A_SLIP
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    yield 2.0 * spot.per_unit


def shows(term: Look) -> bool:
    """One distance beside an unknown is its arm, whatever it is; a force entered twice has two."""
    return term.numeric or not term.in_moment or term.factors.count != 1


def look(case: Case) -> Saying:
    return Saying(f"Something is counted more than once in {case.this_line}")


def reason(case: Case) -> str:
    return (
        f"Each arrow on the free-body diagram of {case.body} has exactly one term in the sum; tick "
        "the arrows off while you write."
    )


def place(case: Case) -> Saying:
    return Saying("stands here twice, but acts only once", of=case.subject)


KIND = Kind(
    code="double",
    called="a force counted twice",
    rare=A_SLIP,
    why="A force is written when its joint is reached and again when its member is.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(Fy("B"), "F_BD - 6 - 8 - 8 = 0"),),
    touches="neither",
    in_sum=True,
    shows=shows,
    counts="too many",
)

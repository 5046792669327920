"""One term of a moment equation turns the other way."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge.about import M
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    if spot.is_moment and not spot.has_own_sign:
        yield -spot.per_unit


def look(case: Case) -> Saying:
    if not case.only_turned:
        return Saying(f"Something in {case.this_line} turns the other way")
    return Saying(f"The sizes fit, but something in {case.this_line} turns the other way")


def reason(case: Case) -> str:
    return (
        f"Stand at {case.point} and let each force turn {case.body} about it: forces that turn it the "
        "same way share a sign, forces that turn it the other way have the opposite one."
    )


def place(case: Case) -> Saying:
    return Saying(
        "has the wrong sign beside the other moments",
        f"which way does it turn {case.body} about {case.point}?",
        of=case.subject,
    )


KIND = Kind(
    code="turning",
    called="a moment that turns the other way",
    why="The sign of the force in a sum, up or down, is carried over into the moment, where only the "
    "turning counts.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(M("A"), "14 C_y - 9*12 + 12*5 - 9*6 - 9*8 = 0"),),
    touches="neither",
    in_sum=True,
)

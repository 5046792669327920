"""The minus of an earlier result is lost, or counted twice."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge.about import Fx
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    if spot.lost_minus or spot.turned_already:
        yield -spot.per_unit


def _turned_twice(case: Case) -> bool:
    return case.spot is not None and case.spot.turned_already


def look(case: Case) -> Saying:
    if _turned_twice(case):
        return Saying(f"An earlier result is turned once too often in {case.this_line}")
    if case.signed:
        return Saying(
            "The sign before the brackets of an earlier result is not the one its arrow gives"
        )
    return Saying(f"An earlier result has not come into {case.this_line} with its own sign")


def reason(case: Case) -> str:
    if _turned_twice(case):
        return (
            "Drawn in compression, or against an axis, a force has been turned on the diagram: a result "
            "without a minus takes the sign that this arrow gives, and no other."
        )
    return (
        "A result is put in with the sign it has, in brackets: the sign of the term comes from the "
        "arrow on the diagram, the sign inside the brackets from the result."
    )


def place(case: Case) -> Saying:
    if _turned_twice(case):
        return Saying(
            "was drawn the other way round already",
            "which sign does that arrow give its term?",
            of=case.subject,
        )
    if case.signed:
        return Saying(
            "is right; the sign before them comes from its arrow",
            "does that go along your positive direction or against it?",
            of=f"The minus in the brackets of {case.thing}",
        )
    return Saying(
        "is lost here, or counted twice",
        "put the result in with its sign, in brackets.",
        of=f"The sign of your result for {case.thing}",
    )


KIND = Kind(
    code="minus",
    called="the minus of an earlier value",
    why="A minus seems to be used up once the arrow has been turned in the head, or it is written "
    "although the arrow was turned already.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(Fx("A"), "5 + 3/5 F_AD + F_AB = 0", known={"A_x": "-5"}),),
    touches="neither",
    in_sum=True,
)

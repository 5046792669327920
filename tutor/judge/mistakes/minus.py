"""The minus of an earlier result is lost, or counted twice."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge.about import Fx
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    if spot.has_own_sign:
        yield -spot.per_unit


def _under_a_turned_arrow(case: Case) -> bool:
    """Whether the result is positive, and its arrow was drawn against the usual way."""
    return case.spot is not None and not case.spot.lost_minus and case.spot.has_own_sign


def look(case: Case) -> Saying:
    if _under_a_turned_arrow(case):
        return Saying(
            f"An earlier result stands in {case.this_line} against the arrow that was drawn for it"
        )
    if case.signed:
        return Saying(
            "The sign before the brackets of an earlier result is not the one its arrow gives"
        )
    return Saying(f"An earlier result has not come into {case.this_line} with its own sign")


def reason(case: Case) -> str:
    if _under_a_turned_arrow(case):
        return (
            "A result without a minus acts the way its arrow was drawn: its term takes the sign of that "
            "arrow, and nothing is turned once more."
        )
    return (
        "A result is put in with the sign it has, in brackets: the sign of the term comes from the "
        "arrow on the diagram, the sign inside the brackets from the result."
    )


def place(case: Case) -> Saying:
    if _under_a_turned_arrow(case):
        return Saying(
            "was drawn the other way round",
            "does that arrow go along your positive direction or against it?",
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

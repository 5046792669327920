"""One of two loads at a joint is left out."""

from __future__ import annotations

from collections.abc import Sequence

from tutor.judge.about import Fy
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.true_equation import TrueTerm


def is_one_of_two(spot: TrueTerm, others: Sequence[TrueTerm]) -> bool:
    """Whether another load that counts acts at the same joint."""
    return spot.force.kind == "load" and any(
        other.force.kind == "load"
        and other.force.joint == spot.force.joint
        and other.force.source is not spot.force.source
        and other.true != 0.0
        for other in others
    )


def look(case: Case) -> Saying:
    return Saying(f"Not everything that is applied to {case.body} is in {case.this_line}")


def reason(case: Case) -> str:
    return (
        "Where more than one load acts at a joint, each has its own term, in every equation in which "
        "it counts."
    )


def place(case: Case) -> Saying:
    return Saying(
        "is left out",
        f"count the arrows at that joint, and the terms for them in {case.your_line}.",
        of=case.subject,
    )


KIND = Kind(
    code="lost-load",
    called="a load of several left out",
    why="One arrow is found, and the joint is taken as done.",
    look=look,
    reason=reason,
    place=place,
    examples=(Example(Fy("B"), "F_BD - 6 = 0"),),
    touches="neither",
    counts="left out",
    instead_of="missing",
    where=is_one_of_two,
)

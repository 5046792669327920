"""One of two loads at a joint is left out."""

from __future__ import annotations

from tutor.judge.kind import Case, Kind


def look(case: Case) -> str:
    return f"Not everything that is applied to {case.body} is in this line."


def reason(case: Case) -> str:
    return (
        "Where more than one load acts at a joint, each has its own term, in each direction in which it "
        "has a part."
    )


def place(case: Case) -> str:
    return f"Count the arrows at the joint of {case.thing} once more."


KIND = Kind(
    code="lost-load",
    cost=1.05,
    why="One arrow is found, and the joint is taken as done.",
    look=look,
    reason=reason,
    place=place,
)

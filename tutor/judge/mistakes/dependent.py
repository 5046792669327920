"""The line is true, but follows from lines that already stand."""

from __future__ import annotations

from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying


def look(case: Case) -> Saying:
    return Saying(
        "This is true, but it follows from the lines you already have, so it adds nothing new"
    )


def reason(case: Case) -> str:
    if case.at_joint:
        return "A joint gives two independent equations; any further one follows from them."
    return (
        "A plane body gives three independent equations: three moments about points not on one "
        "line, or two moments and a sum not at right angles to the line between the points, or one "
        "moment and two sums."
    )


def place(case: Case) -> Saying:
    if case.at_joint:
        return Saying(f"Go on to another joint, or use {case.this_line} as a check")
    return Saying(f"Choose another point or another direction, or use {case.this_line} as a check")


KIND = Kind(
    code="dependent",
    called="an equation that adds nothing new",
    why="A fourth equation looks as if it could give a fourth unknown.",
    look=look,
    reason=reason,
    place=place,
)

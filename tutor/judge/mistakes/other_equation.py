"""The line is true, but it is not the equation that was named."""

from __future__ import annotations

from tutor.judge.about import Fx
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying


def look(case: Case) -> Saying:
    if case.true_of is None:
        return Saying(f"This is true of the truss, but it is not {case.equation}")
    return Saying("This is true", f"it is {case.in_words(case.true_of)}, not {case.equation}.")


def reason(case: Case) -> str:
    return (
        "Each equilibrium equation belongs to one free body and one direction or point; to find an "
        "error later, the line should stand under its own name."
    )


def place(case: Case) -> Saying:
    if case.true_of is None:
        return Saying(
            f"Write the one that was asked for, arrow by arrow; {case.this_line} may stand aside"
        )
    return Saying(f"Keep {case.this_line} under its own name, or write the one that was asked for")


KIND = Kind(
    code="other-equation",
    called="another equation than the one asked for",
    why="The lines of a joint are written in a row and the headings are mixed up.",
    look=look,
    reason=reason,
    place=place,
    examples=(Example(Fx("A"), "A_y + 4/5 F_AD = 0"),),
)

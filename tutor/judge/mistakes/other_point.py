"""The line is a true moment equation, about another point."""

from __future__ import annotations

from tutor.judge.about import M
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying


def look(case: Case) -> Saying:
    if case.true_of is None:
        return Saying("This is true, but about another point than the one named")
    return Saying("This is true", f"it is {case.in_words(case.true_of)}, not {case.equation}.")


def reason(case: Case) -> str:
    return (
        "Any point may be chosen for a moment equation, but all arms of one equation are measured "
        "from the same point."
    )


def place(case: Case) -> Saying:
    return Saying(
        f"Measure every arm from {case.point}, or keep {case.this_line} as what it is",
        "it counts just as well.",
    )


KIND = Kind(
    code="other-point",
    called="moments about another point",
    why="A better moment point was found while writing.",
    look=look,
    reason=reason,
    place=place,
    examples=(Example(M("C"), "14 C_y - 9*12 - 12*5 - 9*6 - 9*8 = 0"),),
)

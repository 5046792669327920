"""A number was rounded so hard that the line no longer says what it should."""

from __future__ import annotations

from tutor.judge.about import Along, Value
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import HARDLY


def look(case: Case) -> Saying:
    return Saying("A number here is rounded too hard")


def reason(case: Case) -> str:
    return (
        "What is rounded early spreads into every later result; three figures, or a fraction, keep "
        "later sums closed."
    )


def place(case: Case) -> Saying:
    if case.force is None:
        return Saying(f"Give each number of {case.this_line} more figures")
    return Saying(
        "is rounded too hard",
        "give it more figures, or write it as a fraction.",
        of=f"The number beside {case.thing}",
    )


KIND = Kind(
    code="rounding",
    called="a number rounded too hard",
    rare=HARDLY,
    why="One or two figures feel exact enough for a sketch.",
    look=look,
    reason=reason,
    place=place,
    examples=(
        Example(Along(80, "C"), "0.985 C_y - 0.2 F_BC + 0.842 F_CD = 0"),
        Example(Value("BC"), "9"),
    ),
    runs_through=True,
)

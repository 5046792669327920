"""Two neighbouring digits of a value changed places when it was copied."""

from __future__ import annotations

from tutor.judge.about import Value
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import A_SLIP


def look(case: Case) -> Saying:
    return Saying("The digits of this value are the right ones, but not in the right order")


def reason(case: Case) -> str:
    return (
        "Two digits easily change places when a number is copied: compare what you typed, digit by "
        "digit, with where it came from."
    )


def place(case: Case) -> Saying:
    return Saying(f"Work out {case.thing} once more, and copy the result digit by digit")


KIND = Kind(
    code="digits-exchanged",
    called="two digits exchanged",
    rare=A_SLIP,
    why="A number is read as a whole and written digit by digit, from the calculator to the sheet.",
    look=look,
    reason=reason,
    place=place,
    examples=(Example(Value("AD"), "-6.52"),),
)

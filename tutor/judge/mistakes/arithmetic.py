"""A value does not follow from the right equation it was taken from."""

from __future__ import annotations

from tutor.judge.about import Value
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import A_SLIP


def look(case: Case) -> Saying:
    if isinstance(case.about, Value):
        return Saying("This value does not follow from what it was found from")
    return Saying(f"The known numbers of {case.this_line} do not add up to what stands in it")


def reason(case: Case) -> str:
    if not isinstance(case.about, Value):
        return "Write each product out first, term by term, and add up only in the next line."
    return (
        "Put the value back into the equation it came from: what is left over must be zero. Collect the "
        "known numbers on one side first, then divide by the factor of the unknown."
    )


def place(case: Case) -> Saying:
    if not isinstance(case.about, Value):
        return Saying(
            "The terms with an unknown fit; the sum of the others does not",
            "go through them one by one, each load and each result that you put in.",
        )
    return Saying(f"Solve for {case.force} once more, step by step, and put the value back in")


KIND = Kind(
    code="arithmetic",
    called="a value worked out wrongly",
    rare=A_SLIP,
    why="A term changes sides without changing its sign, or the last division goes the wrong way.",
    look=look,
    reason=reason,
    place=place,
    examples=(Example(Value("AD"), "-5.5"),),
)

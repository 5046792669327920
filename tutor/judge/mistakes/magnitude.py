"""A given number was copied wrongly."""

from __future__ import annotations

from tutor.judge.about import Fy
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind, given_elsewhere
from tutor.judge.saying import Saying
from tutor.judge.scale import SOMEWHAT


def look(case: Case) -> Saying:
    if not given_elsewhere(case):
        return Saying(f"A number in {case.this_line} is not the one that was given")
    if case.at_joint:
        return Saying(f"A number in {case.this_line} was given, but it acts at another joint")
    return Saying(f"A number in {case.this_line} was given, but for another load")


def reason(case: Case) -> str:
    return (
        "Loads and dimensions are taken from the problem, earlier results from the list of "
        f"results; compare each number of {case.your_line} with where it comes from."
    )


def place(case: Case) -> Saying:
    if given_elsewhere(case):
        return Saying(
            "is that of another load",
            "look where each of them acts.",
            of=f"The number of {case.thing}",
        )
    return Saying(
        "is not the one it was given", "compare the two.", of=f"The number of {case.thing}"
    )


KIND = Kind(
    code="magnitude",
    called="a given number copied wrongly",
    rare=SOMEWHAT,
    why="Figures change places, or the number of a neighbour is read off the picture.",
    look=look,
    reason=reason,
    place=place,
    examples=(Example(Fy(), "A_y + C_y - 21 - 6 - 8 = 0"),),
    touches="size",
)

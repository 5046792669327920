"""An earlier value is copied wrongly, or is another member's."""

from __future__ import annotations

from tutor.judge.about import Fx
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind, given_elsewhere
from tutor.judge.saying import Saying
from tutor.judge.scale import SOMEWHAT


def look(case: Case) -> Saying:
    if given_elsewhere(case):
        return Saying(
            f"A number in {case.this_line} is a load that acts elsewhere, where an earlier "
            "result belongs"
        )
    return Saying(f"An earlier result in {case.this_line} is not the one you found")


def reason(case: Case) -> str:
    return "Take each earlier value from your list of results, under its own name."


def place(case: Case) -> Saying:
    return Saying(
        "is not your result for it",
        "read it off once more.",
        of=f"The number put in for {case.thing}",
    )


KIND = Kind(
    code="carried",
    called="an earlier value not carried over as it was",
    rare=SOMEWHAT,
    why="Results stand close together in a list, and names of members look alike.",
    look=look,
    reason=reason,
    place=place,
    examples=(Example(Fx("C"), "F_BC + 5/13*(-6.25) = 0", known={"CD": "-22.75", "AD": "-6.25"}),),
    touches="size",
)

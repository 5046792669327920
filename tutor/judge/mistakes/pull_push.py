"""All member forces at a joint are reversed against the loads and reactions."""

from __future__ import annotations

from tutor.judge.about import Fy
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying


def look(case: Case) -> Saying:
    return Saying(
        f"The sizes fit, but not all the arrows on {case.body} can be as {case.this_line} has them"
    )


def reason(case: Case) -> str:
    return (
        "A member in tension pulls on the joint, toward the member's far end; one assumed in "
        "compression pushes into the joint."
    )


def place(case: Case) -> Saying:
    return Saying(
        f"All the members at {case.body} stand the other way round beside the loads and reactions",
        "draw their arrows on the joint again.",
    )


KIND = Kind(
    code="pull-push",
    called="all members at a joint reversed",
    why="The force on the member is drawn instead of the force on the joint.",
    look=look,
    reason=reason,
    place=place,
    examples=(Example(Fy("D"), "4/5 F_AD + F_BD + 12/13 F_CD - 12 = 0"),),
)

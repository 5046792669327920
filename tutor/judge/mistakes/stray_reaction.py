"""A reaction stands in the equation of a joint or a part that has no such support."""

from __future__ import annotations

from tutor.judge.about import Fy
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import SLIGHTLY


def look(case: Case) -> Saying:
    where = "on" if case.is_cut else "at"
    return Saying(f"A support that is not {where} {case.body} has come into {case.this_line}")


def reason(case: Case) -> str:
    touches = "the members that are cut" if case.is_cut else "members"
    return (
        f"A reaction acts only at its own support. Cut {case.body} free and draw what touches it: "
        f"{touches}, and what is applied right there."
    )


def place(case: Case) -> Saying:
    where = "on the other part" if case.is_cut else "at another joint"
    return Saying(f"acts at its own support, which is {where}", of=case.subject)


KIND = Kind(
    code="stray-reaction",
    called="a reaction that acts elsewhere",
    rare=SLIGHTLY,
    why="A reaction just found is wanted in the next line, wherever that is.",
    look=look,
    reason=reason,
    place=place,
    examples=(Example(Fy("B"), "F_BD + C_y - 6 - 8 = 0"),),
    counts="too many",
)

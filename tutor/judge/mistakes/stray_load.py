"""A load that acts elsewhere stands in the equation of a joint, or of a part that is cut off."""

from __future__ import annotations

from tutor.judge.about import Fy
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import SLIGHTLY


def look(case: Case) -> Saying:
    return Saying(f"Something that does not act on {case.body} has come into {case.this_line}")


def reason(case: Case) -> str:
    if case.is_cut:
        return (
            f"Cut {case.body} free: only the members that are cut, and what is applied to this part, "
            "act on it; what acts on the other part reaches it through the cut members."
        )
    return (
        f"Cut {case.body} free: only the members that meet there, and what is applied right there, act "
        "on it; what acts at other joints reaches it through the members."
    )


def place(case: Case) -> Saying:
    where = "on the other part" if case.is_cut else "at another joint"
    return Saying(f"acts {where}", "it has no place here.", of=case.subject)


KIND = Kind(
    code="stray-load",
    called="a load that acts elsewhere",
    rare=SLIGHTLY,
    why="The loads are the boldest arrows in the picture, and the joint was not cut free from the rest.",
    look=look,
    reason=reason,
    place=place,
    examples=(Example(Fy("A"), "A_y + 4/5 F_AD - 12 = 0"),),
    counts="too many",
)

"""No known mistake explains the line."""

from __future__ import annotations

from tutor.judge.about import Fx
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import FAR_LESS
from tutor.text import raised


def look(case: Case) -> Saying:
    if case.force is not None and case.is_moment:
        return Saying(
            f"A term in {case.this_line} is not the moment of the force that it stands for"
        )
    if case.force is not None:
        return Saying(
            f"A factor in {case.this_line} is neither component of the force it stands beside"
        )
    return Saying(
        f"{raised(case.this_line)} is not {case.equation}, and no single slip explains "
        "the difference"
    )


def reason(case: Case) -> str:
    if case.is_moment:
        return (
            "Go round the free-body diagram force by force: its components, their arms about "
            f"{case.point}, the way it turns."
        )
    return (
        f"Go round the free-body diagram of {case.body} force by force: does it act here, which "
        "component counts, which way does it point?"
    )


def place(case: Case) -> Saying:
    if case.force is not None:
        return Saying(
            "does not fit", "write it anew, from its arrow.", of=f"The term of {case.thing}"
        )
    return Saying(
        "Begin again with an empty line, and write the terms one at a time, arrow by arrow"
    )


KIND = Kind(
    code="not-equilibrium",
    called="a line that no rule explains",
    rare=FAR_LESS,
    why="Several slips came together, or the line was begun from another picture.",
    look=look,
    reason=reason,
    place=place,
    examples=(Example(Fx("A"), "A_x + F_AB + 0.27 F_AD = 0"),),
)

"""No known mistake explains the line."""

from __future__ import annotations

from tutor.judge.about import Fx
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind


def look(case: Case) -> str:
    if case.force is not None:
        return (
            "The factor of one term in this line is neither component of its force; the others fit."
        )
    return f"This line is not {case.equation}, and no single slip explains the difference."


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


def place(case: Case) -> str:
    if case.force is not None:
        return f"The term that does not fit is that of {case.thing}: write it anew, from its arrow."
    return "Begin again with an empty line, and write the terms one at a time, arrow by arrow."


KIND = Kind(
    code="not-equilibrium",
    cost=4.0,
    why="Several slips came together, or the line was begun from another picture.",
    look=look,
    reason=reason,
    place=place,
    examples=(Example(Fx("A"), "A_x + F_AB + 0.27 F_AD = 0"),),
)

"""No known mistake explains the line."""

from __future__ import annotations

from tutor.judge.kind import Case, Kind


def look(case: Case) -> str:
    if case.force is not None:
        return "One term of this line is wrong in a way that cannot be named; the others are right."
    return f"This line is not {case.equation}, and no single slip explains the difference."


def reason(case: Case) -> str:
    if case.is_moment:
        return (
            "Go round the free-body diagram force by force: its component, its arm about "
            f"{case.point}, the way it turns."
        )
    return (
        f"Go round the free-body diagram of {case.body} force by force: does it act here, which "
        "component counts, which way does it point?"
    )


def place(case: Case) -> str:
    if case.force is not None:
        return f"The term that does not fit is that of {case.thing}."
    return "Write the terms one at a time, starting from an empty line and the free-body diagram."


KIND = Kind(
    code="not-equilibrium",
    cost=4.0,
    why="Several slips came together, or the line was begun from another picture.",
    look=look,
    reason=reason,
    place=place,
)

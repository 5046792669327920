"""All member forces at a joint are reversed against the loads and reactions."""

from __future__ import annotations

from tutor.judge.kind import Case, Kind


def look(case: Case) -> str:
    return f"All the members at {case.body} are taken the other way round from how they are drawn."


def reason(case: Case) -> str:
    return (
        "A member in tension pulls on the joint, away from it and toward the member's far end; "
        "one assumed in compression pushes into the joint. The joint feels the opposite of what the "
        "member feels."
    )


def place(case: Case) -> str:
    return (
        "The loads and reactions are consistent with each other, and so are the members among "
        "themselves; draw the arrows of the members on the joint again, as you assumed them."
    )


KIND = Kind(
    code="pull-push",
    cost=0.95,
    why="The force on the member is drawn instead of the force on the joint.",
    look=look,
    reason=reason,
    place=place,
)

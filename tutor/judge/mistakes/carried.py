"""An earlier value is copied wrongly, or is another member's."""

from __future__ import annotations

from tutor.judge.kind import Case, Kind


def look(case: Case) -> str:
    return "An earlier result in this line is not the one you found."


def reason(case: Case) -> str:
    return "Take each earlier value from your list of results, under the name of its own member."


def place(case: Case) -> str:
    return f"Look at {case.thing}: which value did you find for it?"


KIND = Kind(
    code="carried",
    cost=1.45,
    why="Results stand close together in a list, and names of members look alike.",
    look=look,
    reason=reason,
    place=place,
)

"""A given number was copied wrongly."""

from __future__ import annotations

import math

from tutor.judge.about import Fy, Value
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.same import are_same


def _given_elsewhere(case: Case) -> bool:
    """Whether the number typed is that of another load, or of its horizontal or vertical component."""
    size = case.size_typed
    of, _, name = (case.force or "").partition(" ")
    here = None if isinstance(case.about, Value) else case.about.joint
    if size is None or not (here or of == "load"):
        return False
    own = {here or "", name.partition(" ")[0]}
    loads = (load.vector for load in case.problem.loads if load.joint not in own)
    return any(
        are_same(size, each)
        for x, y in loads
        for each in (abs(x), abs(y), math.hypot(x, y))
        if each
    )


def look(case: Case) -> str:
    if not _given_elsewhere(case):
        return "A number in this line is not the one that was given."
    if case.at_joint:
        return "A number in this line was given, but it acts at another joint."
    return "A number in this line was given, but for another load."


def reason(case: Case) -> str:
    return (
        "Loads and dimensions are taken from the problem, earlier results from the list of "
        "results; compare each number of your line with where it comes from."
    )


def place(case: Case) -> str:
    if _given_elsewhere(case):
        return f"The number of {case.thing} is that of another load: look where each of them acts."
    return f"The number of {case.thing} is not the one it was given: compare the two."


KIND = Kind(
    code="magnitude",
    called="a given number copied wrongly",
    cost=1.5,
    why="Figures change places, or the number of a neighbour is read off the picture.",
    look=look,
    reason=reason,
    place=place,
    examples=(Example(Fy(), "A_y + C_y - 21 - 6 - 8 = 0"),),
    touches="size",
)

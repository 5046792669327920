"""Symmetry is assumed where there is none."""

from __future__ import annotations

from tutor.judge.about import Value
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import SOMEWHAT


def look(case: Case) -> Saying:
    return Saying("This would be so if truss and loads were symmetrical")


def reason(case: Case) -> str:
    if case.force in case.problem.member:
        return (
            "A member carries what its mirror image carries only where truss, supports and loads are "
            "symmetrical; else each has its own equilibrium."
        )
    return (
        "Two supports share the loads equally only where truss, supports and loads are symmetrical; "
        "else the equilibrium of the whole truss tells how they share."
    )


def place(case: Case) -> Saying:
    if case.force in case.problem.member:
        return Saying(
            "was taken from the other side",
            "find it from a joint at which it ends.",
            of=case.subject,
        )
    return Saying(
        "was taken as half of the loads",
        "find it from an equation of the whole truss.",
        of=case.subject,
    )


KIND = Kind(
    code="symmetry",
    called="symmetry where there is none",
    rare=SOMEWHAT,
    why="Many first examples are symmetrical, so half the load at each support has become a habit.",
    look=look,
    reason=reason,
    place=place,
    examples=(Example(Value("C_y"), "13"),),
)

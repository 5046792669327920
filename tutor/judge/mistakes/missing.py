"""A force that has a part in the equation is left out."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge.about import Fx
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import HARDLY
from tutor.judge.true_equation import TrueTerm

COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")


def variants(spot: TrueTerm) -> Iterator[float]:
    if spot.per_unit != 0.0:
        yield 0.0


def look(case: Case) -> Saying:
    count = COUNTS[case.acting] if case.acting < len(COUNTS) else "more than nine"
    forces = "force has" if case.acting == 1 else "forces have"
    held = (
        f"it is not in {case.your_line}"
        if case.acting == 1
        else f"not all of them are in {case.your_line}"
    )
    return Saying(f"On {case.body} {count} {forces} {case.share}; {held}")


def reason(case: Case) -> str:
    if case.at_joint:
        return (
            f"Cut {case.body} free and draw every arrow on it: each member that ends there, each load "
            "and each reaction. Each arrow that counts here needs its term."
        )
    cut = ", each reaction and each member that was cut" if case.is_cut else " and each reaction"
    return (
        f"Draw every arrow from outside on {case.body}: each load{cut}. Each arrow that counts here "
        "needs its term."
    )


def place(case: Case) -> Saying:
    spot = case.spot
    whole = spot is not None and not case.is_moment and abs(spot.equation.sum.of(spot.force)) == 1.0
    if whole or case.is_own_part:
        return Saying("is left out", of=case.subject)
    return Saying("is left out", f"it has {case.share}.", of=case.subject)


KIND = Kind(
    code="missing",
    called="a force or a reason left out",
    rare=HARDLY,
    why="Without a finished free-body diagram beside the line, the force that was not drawn is not "
    "written either; reactions at a joint are the ones forgotten first.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(Fx("A"), "F_AB + 3/5 F_AD = 0"),),
    touches="neither",
    in_sum=True,
    counts="left out",
)

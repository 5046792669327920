"""Of an inclined force in a moment, one component has no term."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tutor.judge.about import M
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import HARDLY
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    ux, uy = spot.unit_vector
    dx, dy = spot.offset
    if spot.is_moment and dx * uy != 0.0 and dy * ux != 0.0:
        yield dx * uy
        yield -dy * ux


def is_part(spot: TrueTerm, others: Sequence[TrueTerm]) -> bool:
    """Whether the term left out is that of one component alone."""
    return bool(spot.part)


def look(case: Case) -> Saying:
    return Saying(
        "An inclined force turns with both of its components; one of them is not in "
        f"{case.this_line}"
    )


def reason(case: Case) -> str:
    return (
        "Split an inclined force where it acts. Each component has a moment of its own, unless its "
        f"line of action passes through {case.point}."
    )


def place(case: Case) -> Saying:
    if case.spot is not None and case.spot.part:
        return Saying("is left out", of=f"The moment of {case.thing} about {case.point}")
    return Saying(
        "has its moment here",
        "the other has one as well.",
        of=f"Only one component of {case.thing}",
    )


KIND = Kind(
    code="component-missing",
    called="a component without its moment",
    rare=HARDLY,
    why="The vertical component is the one that is always there; the other is forgotten once the "
    "force has been split.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    counts="left out",
    examples=(Example(M((0.0, 3.0)), "3 A_x - 4*4/5 R_B - 12*4 = 0", truss="gangway"),),
    instead_of="missing",
    where=is_part,
)

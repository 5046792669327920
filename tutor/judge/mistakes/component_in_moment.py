"""In a moment, the component that passes through the point counts, or both share one arm."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge.about import M
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import SOMEWHAT
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    ux, uy = spot.unit_vector
    if not spot.is_moment or ux == 0.0 or uy == 0.0:
        return
    dx, dy = spot.offset
    for arm in (dx, dy):
        if arm != 0.0:
            for value in (arm * ux, arm * uy, arm * (abs(ux) + abs(uy))):
                yield value
                yield -value


def look(case: Case) -> Saying:
    return Saying(
        f"The components of an inclined force do not each have their own arm in {case.this_line}"
    )


def reason(case: Case) -> str:
    return (
        "Split an inclined force where it acts: its horizontal component turns with the vertical "
        "distance, its vertical component with the horizontal distance, and one that passes "
        f"through {case.point} does not turn at all."
    )


def place(case: Case) -> Saying:
    return Saying(
        f"The components of {case.thing} and the distances beside them do not belong together",
        f"give each its own arm about {case.point}.",
    )


KIND = Kind(
    code="component-in-moment",
    called="one component of two in a moment",
    rare=SOMEWHAT,
    why="Having split the force, one distance is used for both parts.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(M("C"), "4 A_y - 3 A_x + 3*4/5 R_B = 0", truss="gangway"),),
)

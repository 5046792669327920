"""The other component of a force is used: sine for cosine."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.about import Fx, Value
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind, Look
from tutor.judge.saying import Saying
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    if spot.per_unit == 0.0:
        return
    ux, uy = spot.unit_vector
    if spot.is_moment:
        if spot.part:
            yield spot.per_unit * math.sqrt(1.0 - spot.share**2) / spot.share
        if ux == 0.0 or uy == 0.0:
            return
        dx, dy = spot.offset
        yield dx * math.copysign(ux, uy) - dy * math.copysign(uy, ux)
        return
    across = math.sqrt(max(0.0, 1.0 - spot.per_unit**2))
    if across > 1e-9:
        yield math.copysign(across, spot.per_unit)


def look(case: Case) -> Saying:
    return Saying(f"One of the components in {case.this_line} is the wrong one of its pair")


def reason(case: Case) -> str:
    if case.is_moment:
        return (
            "An inclined force turns with both of its components: the horizontal one goes with a "
            "vertical distance, the vertical one with a horizontal distance."
        )
    return (
        "Draw the force as the hypotenuse of a right triangle with one side along the direction of "
        "the sum: that side over the hypotenuse is the factor. Whether it is the sine or the cosine "
        "depends on where the angle is measured from."
    )


def place(case: Case) -> Saying:
    if case.spot is not None and case.spot.part:
        return Saying("is that of the other component", of=f"The factor beside {case.thing}")
    if case.is_moment:
        return Saying(
            f"The two components of {case.thing} have changed places",
            "see which of them goes with which distance.",
        )
    return Saying(
        "is that of its other component",
        f"take the one that {case.lies}.",
        of=f"The factor beside {case.thing}",
    )


def shows(term: Look) -> bool:
    """A bare distance beside a force in a moment holds no component."""
    return term.shows_component or not term.in_moment


KIND = Kind(
    code="component",
    called="the other component",
    why="Cosine is remembered as 'the horizontal one', whatever the angle is measured from.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(
        Example(Fx("A"), "A_x + F_AB + 4/5 F_AD = 0"),
        Example(Value("AD"), "-5"),
    ),
    runs_through=True,
    shows=shows,
)

"""The angle from the vertical is used as if from the horizontal."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.about import Along
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import SOMEWHAT
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    if spot.is_moment or spot.per_unit == 0.0 or min(map(abs, spot.axis)) <= 1e-9:
        return
    ux, uy = spot.unit_vector
    swapped = math.copysign(uy, ux), math.copysign(ux, uy)
    yield swapped[0] * spot.axis[0] + swapped[1] * spot.axis[1]
    ax, ay = math.copysign(spot.axis[1], spot.axis[0]), math.copysign(spot.axis[0], spot.axis[1])
    yield ux * ax + uy * ay
    for from_the_level in (ux, uy):
        if abs(from_the_level) > 1e-9:
            yield math.copysign(from_the_level, spot.per_unit)


def look(case: Case) -> Saying:
    return Saying(
        f"An angle in {case.this_line} is measured from another line than its sine or cosine needs"
    )


def reason(case: Case) -> str:
    return (
        "The cosine belongs to the angle between a force and the direction of the sum, the sine to "
        "the angle it makes with the perpendicular to that. An inclination may be given from the "
        "horizontal or from the vertical: note at each angle from which."
    )


def place(case: Case) -> Saying:
    return Saying(
        f"See from which line the angle beside {case.thing} is measured",
        "from the horizontal, from the vertical, or from the line of the sum.",
    )


KIND = Kind(
    code="complement",
    called="the other angle of the right triangle",
    rare=SOMEWHAT,
    why="An angle is read off the picture without noting from which line it is drawn.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(Along(30, "A"), "0.866 A_x + 0.5 A_y + 0.866 F_AB + 0.9928 F_AD = 0"),),
)

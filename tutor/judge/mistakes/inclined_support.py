"""An inclined roller or link is taken as vertical, or as horizontal."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.about import Fy
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    ux, uy = spot.unit_vector
    if spot.force.kind != "reaction" or ux == 0.0 or uy == 0.0:
        return
    if spot.is_moment:
        dx, dy = spot.offset
        for turned in (dx * math.copysign(1.0, uy), -dy * math.copysign(1.0, ux)):
            if turned != 0.0:
                yield turned
        return
    ax, ay = spot.axis
    for part in (math.copysign(1.0, uy) * ay, math.copysign(1.0, ux) * ax):
        if abs(part) > 1e-9:
            yield part


def look(case: Case) -> Saying:
    return Saying(f"A reaction in {case.this_line} is not taken along its own direction")


def reason(case: Case) -> str:
    return (
        "A roller pushes at right angles to what it rolls on, and a link acts along its own axis; "
        "where that is inclined, such a force has a horizontal and a vertical component."
    )


def place(case: Case) -> Saying:
    return Saying(
        "is taken as if it were vertical or horizontal",
        "draw its line of action, and go by that.",
        of=case.subject,
    )


KIND = Kind(
    code="inclined-support",
    called="an inclined reaction taken as vertical or horizontal",
    why="Rollers are nearly always drawn on a level floor, so a reaction is taken to be vertical.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(Fy(), "A_y - R_B - 12 = 0", truss="gangway"),),
)

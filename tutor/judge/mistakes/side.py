"""A side of the slope triangle stands as it is, not over the hypotenuse."""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction

from tutor.judge.about import Fy
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import HARDLY
from tutor.judge.true_equation import TrueTerm
from tutor.model import Member, Problem

MOST_JOINTS = 40
LARGEST_SIDE = 60


def variants(spot: TrueTerm) -> Iterator[float]:
    ux, uy = spot.unit_vector
    member = spot.problem.member.get(spot.name)
    upright = 0.0 in spot.axis and not spot.is_moment
    if not upright or member is None or min(abs(ux), abs(uy)) < 1e-9:
        return
    for side in sides(spot.problem, member):
        yield math.copysign(side, spot.per_unit)


def sides(problem: Problem, member: Member) -> Iterator[float]:
    """The sides of the slope triangles between joints on the member's line, and of the smallest whole one."""
    x, y = problem.joint[member.start].at
    far = problem.joint[member.end].at
    run, rise = far[0] - x, far[1] - y
    places = [(run, rise)]
    for joint in problem.joints[:MOST_JOINTS]:
        dx, dy = joint.at[0] - x, joint.at[1] - y
        if math.isclose(dx * rise, dy * run) and (dx, dy) != (run, rise):
            places += [(dx, dy), (dx - run, dy - rise)]
    slope = Fraction(abs(rise / run)).limit_denominator(LARGEST_SIDE)
    places.append((slope.denominator, slope.numerator))
    for dx, dy in places:
        if dx and dy:
            yield abs(dx)
            yield abs(dy)


def look(case: Case) -> Saying:
    return Saying(f"A length stands in {case.this_line} where the component of a force belongs")


def reason(case: Case) -> str:
    return (
        "A component is the force times run or rise over the hypotenuse; that factor has no unit and "
        "is never larger than one."
    )


def place(case: Case) -> Saying:
    return Saying("still has to be divided by the hypotenuse", of=f"The side beside {case.thing}")


KIND = Kind(
    code="side",
    called="the wrong side of the slope triangle",
    rare=HARDLY,
    why="Rise and run are read off the picture, and finding the hypotenuse is put off.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(Fy("C"), "C_y + 12 F_CD = 0"),),
    runs_through=True,
)

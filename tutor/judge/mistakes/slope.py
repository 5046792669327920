"""The inclination of another member is used."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import lru_cache

from tutor.judge.about import Fy, Same
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import HARDLY
from tutor.judge.true_equation import TrueTerm
from tutor.model import Problem


def variants(spot: TrueTerm) -> Iterator[float]:
    if spot.is_moment or spot.force.kind == "load" or spot.per_unit == 0.0:
        return
    ux, uy = spot.unit_vector
    if ux == 0.0 or uy == 0.0:
        return
    axis = spot.axis
    slanting = min(abs(axis[0]), abs(axis[1])) > 1e-9
    level = ((1.0, 0.0), (0.0, 1.0)) if slanting else ()
    for run, rise in (*slopes(spot.problem), *level):
        part = math.copysign(run, ux) * axis[0] + math.copysign(rise, uy) * axis[1]
        if part != 0.0:
            yield part


def slopes(problem: Problem) -> Sequence[tuple[float, float]]:
    """The horizontal and vertical shares of the inclined members, each slope once, at most twelve."""
    return _slopes(Same(problem))


@lru_cache(maxsize=64)
def _slopes(same: Same) -> Sequence[tuple[float, float]]:
    problem = same.problem
    found: dict[tuple[int, int], tuple[float, float]] = {}
    for member in problem.members:
        x1, y1 = problem.joint[member.start].at
        x2, y2 = problem.joint[member.end].at
        length = math.hypot(x2 - x1, y2 - y1)
        run, rise = abs(x2 - x1) / length, abs(y2 - y1) / length
        if min(run, rise) > 1e-9:
            found.setdefault((round(run * 1e6), round(rise * 1e6)), (run, rise))
    return tuple(found.values())[:12]


def look(case: Case) -> Saying:
    return Saying(f"A slope in {case.this_line} belongs to another member")


def reason(case: Case) -> str:
    return (
        "Each member has its own slope: take its run, its rise and its length from the coordinates "
        "of its own two joints."
    )


def place(case: Case) -> Saying:
    return Saying(
        "comes from another slope",
        "count how far its own line goes sideways, and how far up or down.",
        of=f"The factor beside {case.thing}",
    )


KIND = Kind(
    code="slope",
    called="the slope of another member",
    rare=HARDLY,
    why="Members that look alike in the picture are taken to have the same slope.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(Fy("C"), "C_y + 4/5 F_CD = 0"),),
)

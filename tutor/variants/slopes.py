"""Are the slopes of the members those of triangles that a student knows?

Level and upright, 1 in 1, 30 and 60 degrees, and the right triangles with whole sides up to 29
(3-4-5, 5-12-13, 8-15-17, 7-24-25, 20-21-29): our choice, after what statics exercises commonly use.
"""

from __future__ import annotations

import math
from fractions import Fraction
from functools import lru_cache

from tutor.model import Problem

LONGEST_SIDE = 29
NEAR = 1e-9
TURNS = (0.0, 30.0, 45.0, 60.0, 90.0)


def awkward_slopes(problem: Problem) -> tuple[str, ...]:
    """The members, by name, whose slope is that of no known triangle."""
    return tuple(
        member.name
        for member in problem.members
        if not known_slope(*_run(problem, member.start, member.end))
    )


@lru_cache(4096)
def known_slope(across: float, up: float, near: float = 1.0) -> bool:
    """Whether a slope of `up` over `across` is that of a known triangle, or `near` times as far from it
    as may be."""
    across, up = abs(across), abs(up)
    turn = math.degrees(math.atan2(up, across))
    if any(abs(turn - known) <= near * 1e-7 for known in TURNS):
        return True
    if not across or not up:
        return True
    slope = Fraction(up / across).limit_denominator(LONGEST_SIDE)
    if abs(float(slope) * across - up) > near * NEAR * up:
        return False
    sides = slope.numerator**2 + slope.denominator**2
    longest = math.isqrt(sides)
    return longest**2 == sides and longest <= LONGEST_SIDE


def _run(problem: Problem, start: str, end: str) -> tuple[float, float]:
    here, there = problem.joint[start], problem.joint[end]
    return there.x.less(here.x), there.y.less(here.y)

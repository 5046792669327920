"""What is a truss turned round, left to right?

Joints keep their names, so that a story which names them stays true; places stay between the same
two ends, left becomes right, and an angle a becomes 180 - a.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations

from tutor.model import Load, Problem, Support
from tutor.model.parts import turned
from tutor.model.vary import exact
from tutor.notation import Exact

HALF_TURN = Exact.of(180)
NONE = Exact.of(0)


def mirrored(problem: Problem) -> Problem:
    """The problem turned round about the middle between its outermost joints."""
    low = min((joint.x for joint in problem.joints), key=lambda x: x.value)
    high = max((joint.x for joint in problem.joints), key=lambda x: x.value)
    return replace(
        problem,
        joints=tuple(replace(joint, x=_across(joint.x, low, high)) for joint in problem.joints),
        supports=tuple(_support(support, low, high) for support in problem.supports),
        loads=tuple(_load(load) for load in problem.loads),
        spreads=tuple(replace(spread, pushes=turned(spread.pushes)) for spread in problem.spreads),
    )


def is_turned(problem: Problem, other: Problem) -> bool:
    """Whether a problem is the other turned round, whatever their numbers: most of what was to the right
    of a joint is to its left."""
    places = {joint.name: joint.at[0] for joint in other.joints}
    both = [(joint.at[0], places[joint.name]) for joint in problem.joints if joint.name in places]
    same = sum(
        ((x > a) - (x < a)) * ((y > b) - (y < b)) for (x, y), (a, b) in combinations(both, 2)
    )
    return same < 0


def _across(x: Exact, low: Exact, high: Exact) -> Exact:
    """low + high - x, kept as it is written where it can be."""
    if x in (low, high):
        return high if x == low else low
    from_low = x if low.fraction == 0 else x.minus(low)
    across = high.minus(from_low)
    return across if across.fraction is None else exact(across.fraction)


def _turned(angle: Exact) -> Exact:
    turned = HALF_TURN.minus(angle)
    return turned if turned.fraction is None else exact(turned.fraction)


def _support(support: Support, low: Exact, high: Exact) -> Support:
    if support.anchor is not None:
        return replace(support, anchor=(_across(support.anchor[0], low, high), support.anchor[1]))
    if support.angle is not None:
        return replace(support, angle=_within(_turned(support.angle)))
    return support


def _load(load: Load) -> Load:
    if load.angle is not None:
        return replace(load, angle=_within(_turned(load.angle)))
    return replace(load, pushes=turned(load.pushes))


def _within(angle: Exact) -> Exact:
    """The same direction between -360 and 360 degrees, where files want it."""
    if angle.fraction is not None and angle.fraction > 360:
        return exact(angle.fraction - 360)
    return angle

"""Where around a joint is there room? Angles taken by members, supports and arrows."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from tutor.figure.parts import Point
from tutor.model import Problem

FULL = 2 * math.pi
BLOCKED = math.radians(14)


def angle(toward: Point) -> float:
    """The angle of a vector in radians, from +x, counter-clockwise."""
    return math.atan2(toward[1], toward[0])


def vector(turn: float) -> Point:
    """The unit vector at an angle in radians."""
    return math.cos(turn), math.sin(turn)


def between(one: float, other: float) -> float:
    """The angle between two directions, 0 to pi."""
    return abs((one - other + math.pi) % FULL - math.pi)


def clearance(turn: float, taken: Iterable[float]) -> float:
    """The angle from `turn` to the nearest direction taken; pi where none is."""
    return min((between(turn, other) for other in taken), default=math.pi)


def widest_gap(taken: Sequence[float], prefer: float = math.pi / 2) -> float:
    """The middle of the widest free angle; among equals the one nearest to `prefer`."""
    if not taken:
        return prefer
    turns = sorted(turn % FULL for turn in taken)
    gaps = [
        (after - before, (before + after) / 2)
        for before, after in zip(turns, [*turns[1:], turns[0] + FULL], strict=True)
    ]
    width = max(gap for gap, _ in gaps)
    widest = [middle for gap, middle in gaps if gap > width - 1e-6]
    return min(widest, key=lambda middle: between(middle, prefer))


def member_angles(problem: Problem) -> dict[str, list[float]]:
    """At each joint, the directions its members leave in."""
    taken: dict[str, list[float]] = {joint.name: [] for joint in problem.joints}
    for member in problem.members:
        (x0, y0), (x1, y1) = problem.joint[member.start].at, problem.joint[member.end].at
        taken[member.start].append(math.atan2(y1 - y0, x1 - x0))
        taken[member.end].append(math.atan2(y0 - y1, x0 - x1))
    return taken


def place_arrow(toward: Point, taken: Sequence[float]) -> tuple[bool, int]:
    """Whether an arrow along `toward` has its head at the joint, and to which side it moves.

    The head is at the joint unless the other side is clearly freer. See `Arrow.beside`.
    """
    ahead = angle(toward)
    behind = ahead + math.pi
    free_ahead, free_behind = clearance(ahead, taken), clearance(behind, taken)
    pushes = free_behind >= min(free_ahead, math.radians(60)) - 1e-9
    if max(free_ahead, free_behind) >= BLOCKED:
        return pushes, 0
    left = clearance(ahead + math.pi / 2, taken)
    right = clearance(ahead - math.pi / 2, taken)
    return pushes, 1 if left >= right else -1

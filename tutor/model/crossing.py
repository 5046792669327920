"""Do two lengths meet? Crossings of segments, and points that lie on one."""

from __future__ import annotations

import math

Point = tuple[float, float]


def lies_on(point: Point, start: Point, end: Point, near: float) -> bool:
    """Whether `point` lies between the ends, on the line, and at neither end."""
    along, across = _coordinates(point, start, end)
    return abs(across) <= near and near < along < math.dist(start, end) - near


def cross(a: Point, b: Point, c: Point, d: Point, near: float = 0.0) -> bool:
    """Whether segments ab and cd cut each other, each end farther than `near` from the other line.

    A segment without length crosses nothing.
    """

    def parted(p: Point, q: Point, start: Point, end: Point) -> bool:
        one, other = _coordinates(p, start, end)[1], _coordinates(q, start, end)[1]
        return min(one, other) < -near and max(one, other) > near

    return a != b and c != d and parted(c, d, a, b) and parted(a, b, c, d)


def _coordinates(point: Point, start: Point, end: Point) -> Point:
    """Where `point` is, along and across the line from `start` to `end` (length unit)."""
    length = math.dist(start, end)
    ux, uy = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    dx, dy = point[0] - start[0], point[1] - start[1]
    return dx * ux + dy * uy, dy * ux - dx * uy

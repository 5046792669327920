"""How steep is an arrow? Its slope triangle, or the slope in words where that is too small."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from tutor.figure.laid_out import LaidOut, StraightLine
from tutor.figure.parts import Arrow, Point, Slope
from tutor.figure.placing import PlacedWords, Spot
from tutor.figure.space import FULL, between


def slope_words(sheet: LaidOut, slope: Slope, arrows: Sequence[Arrow]) -> Iterator[PlacedWords]:
    """The slope triangle on the side of the arrow that is freer; in words where it is too small."""
    page = sheet.page
    x, y = slope.outward[0], -slope.outward[1]
    reach = slope.length * page.scale
    size = min(0.34 * reach, 12.0)
    x0, y0 = page.place(slope.at)
    start = (x0 + 0.4 * reach * x, y0 + 0.4 * reach * y)
    if abs(size * x) < 2.0 or abs(size * y) < 2.0:
        text = f"{slope.rise} in {slope.run}"
        half = len(text) / 2 + 1
        middle = (x0 + 0.6 * reach * x, y0 + 0.6 * reach * y)
        near: list[Spot] = [
            (middle[0] + sx, middle[1] + sy, cost)
            for far in (0.0, 1.0, 2.0)
            for sx, sy, cost in (
                (half + far, 0, 0.2 + far),
                (-half - far, 0, 0.3 + far),
                (far * x, -2, far),
                (far * x, 2, 0.1 + far),
                (half + far, -2, 0.5 + far),
                (-half - far, 2, 0.6 + far),
            )
        ]
        yield PlacedWords(((text, tuple(near)),), "slope", middle, limit=9.0)
        return
    end = (start[0] + size * x, start[1] + size * y)
    corner = _free_corner(slope, arrows, start, end)
    for one, other in ((start, corner), (corner, end)):
        sheet.lines.append(StraightLine(one, other, "slope", "solid", sign=True))
    run_y = corner[1] + math.copysign(2.0, corner[1] - (start[1] + end[1]) / 2)
    run_x, rise_y = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2
    side = math.copysign(len(slope.rise) / 2 + 1, corner[0] - run_x)
    runs: list[Spot] = [
        (run_x + aside, run_y + down, abs(aside) + abs(down) / 4)
        for aside in (0.0, 1.0, -1.0, 2.0, -2.0)
        for down in (0.0, math.copysign(2.0, run_y - rise_y))
    ]
    rises: list[Spot] = [
        (corner[0] + out * side, rise_y + down, abs(down) / 2 + 2 * (out - 1.0))
        for out in (1.0, 2.0)
        for down in (0.0, 2.0, -2.0)
    ]
    for text, spots in ((slope.run, runs), (slope.rise, rises)):
        yield PlacedWords(((text, tuple(spots)),), "slope", corner, limit=12.0)


def _free_corner(slope: Slope, arrows: Sequence[Arrow], start: Point, end: Point) -> Point:
    here = math.atan2(slope.outward[1], slope.outward[0])
    others = [
        math.atan2(a.outward[1], a.outward[0])
        for a in arrows
        if a.at == slope.at and between(math.atan2(a.outward[1], a.outward[0]), here) > 0.01
    ]
    left = min(((other - here) % FULL for other in others), default=math.pi)
    right = min(((here - other) % FULL for other in others), default=math.pi)
    one, other = (end[0], start[1]), (start[0], end[1])
    cross = slope.outward[0] * -(one[1] - start[1]) - slope.outward[1] * (one[0] - start[0])
    one_is_left = cross > 0
    if abs(left - right) < 0.05:
        return max(one, other, key=lambda p: p[1])
    return one if one_is_left == (left > right) else other

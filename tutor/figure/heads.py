"""Where does an arrow's head stand so that no joint, member or other head covers it?"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from tutor.figure.laid_out import LaidOut, Sign, StraightLine
from tutor.figure.parts import Point, Role

Cell = tuple[int, int]
FARTHEST = 5
"""So many cells a head may be moved along its arrow."""
ASIDE = (0, 1, -1, 2, -2, 3, -3, 4, -4)
"""So many cells an arrow may be moved to its side, where its head would be lost in the line of it."""
SHORTEST = 2.0
THROUGH: tuple[Role, ...] = ("line-of-action", "moment-arm")
"""Lines that run through arrows on purpose."""
APART = 0.7
"""How far from its middle a double line is drawn, in page units."""


@dataclass(frozen=True)
class Arrowed:
    """Where an arrow came to stand: its end at the joint, the tip of its head, its outer end."""

    near: Point
    tip: Point
    end: Point


class Heads:
    """The cells of a page on which a head would be lost: joints, members, and heads set before."""

    def __init__(self, sheet: LaidOut) -> None:
        page = sheet.page
        self._columns, self._rows = page.columns, page.rows
        self._taken = {cell_of(sign.at) for sign in sheet.signs if sign.symbol == "joint"}
        for sign in sheet.signs:
            self._taken |= set(_ground(sign))
        for line in sheet.lines:
            if line.owner and line.role not in THROUGH:
                self._taken |= set(cells_of(line))

    def set(self, near: Point, tip: Point, end: Point, way: Point) -> Arrowed:
        """An arrow from `near` whose tip wants to be at `tip` and whose outer end at `end`.

        `way` is the unit vector outward from the joint. The tip is moved along it to the nearest
        free cell; where none is near, the arrow is moved aside, then out as far as it takes, and
        where the joint is at the edge of the page, back into it.
        """
        places = _places(near, tip, way, math.ceil(self._columns + self._rows))
        free = (place for place in places if self._is_free(place[1]))
        aside, moved = next(free, ((0.0, 0.0), tip))
        self._taken.add(cell_of(moved))
        start, outer = _plus(near, aside), _plus(end, aside)
        if tip == end:
            return Arrowed(start, moved, moved)
        if math.dist(start, moved) + SHORTEST <= math.dist(start, outer) or moved == tip:
            return Arrowed(start, moved, outer)
        return Arrowed(start, moved, _plus(moved, way, SHORTEST))

    def _is_free(self, point: Point) -> bool:
        """Whether a head can stand at a point of the page."""
        column, row = cell_of(point)
        on_page = 0 <= column < self._columns and 0 <= row < self._rows
        return on_page and (column, row) not in self._taken


def cell_of(point: Point) -> Cell:
    """The cell (column, row) at a page point."""
    return math.floor(point[0]), math.floor(point[1] / 2)


def cells_of(line: StraightLine) -> Iterator[Cell]:
    """The cells under a line, as wide as it is drawn."""
    (x0, y0), (x1, y1) = line.start, line.end
    length = math.hypot(x1 - x0, y1 - y0) or 1.0
    across = (-(y1 - y0) / length, (x1 - x0) / length)
    sides = (-APART, APART) if line.pattern == "double" else (0.0,)
    steps = max(1, math.ceil(4 * length))
    for side in sides:
        for step in range(steps + 1):
            part = step / steps
            yield cell_of(
                (
                    x0 + part * (x1 - x0) + side * across[0],
                    y0 + part * (y1 - y0) + side * across[1],
                )
            )


def _ground(sign: Sign) -> Iterator[Cell]:
    """The cells between a joint and its support's ground."""
    if sign.symbol in ("pin", "roller", "link"):
        reach = sign.size if sign.symbol != "link" else -sign.size
        for step in range(1, 1 + math.ceil(abs(reach))):
            out = math.copysign(min(step, abs(reach)), reach)
            yield cell_of((sign.at[0] - out * sign.toward[0], sign.at[1] - out * sign.toward[1]))


def _places(near: Point, tip: Point, way: Point, farthest: int) -> Iterator[tuple[Point, Point]]:
    """How far an arrow is moved off its line of action, and its tip there, the best first."""
    over = (-way[1], way[0])
    sides = [_plus((0.0, 0.0), over, cells * _across(over)) for cells in ASIDE]
    for far in (FARTHEST, farthest):
        for aside in sides:
            for moved in _along(_plus(near, aside), _plus(tip, aside), way, far):
                yield aside, moved
    for count in range(1, farthest + 1):
        for side in sides[1:]:
            aside = _plus(side, way, -count * _across(way))
            yield aside, _plus(tip, aside)


def _along(near: Point, tip: Point, way: Point, farthest: int) -> Iterator[Point]:
    """The tip, then points further out along its arrow, a cell at a time; then further in."""
    across = _across(way)
    reach = math.dist(near, tip)
    for count in range(farthest + 1):
        yield _plus(tip, way, count * across)
    for count in range(1, farthest + 1):
        if reach - count * across > across:
            yield _plus(tip, way, -count * across)


def _across(way: Point) -> float:
    """How far it is from one cell to the next along a unit vector, in page units."""
    return min(1 / abs(way[0]) if way[0] else 9.0, 2 / abs(way[1]) if way[1] else 9.0)


def _plus(point: Point, way: Point, length: float = 1.0) -> Point:
    return point[0] + length * way[0], point[1] + length * way[1]

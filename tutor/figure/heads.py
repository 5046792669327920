"""Where does an arrow's head stand so that no joint, member or other head covers it?"""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.figure.parts import Point, Role
from tutor.figure.sheet import Line, Sheet, Sign

Cell = tuple[int, int]
FARTHEST = 5
"""So many cells a head may be moved along its arrow."""
SHORTEST = 2.0
THROUGH: tuple[Role, ...] = ("line-of-action", "moment-arm")
"""Lines that run through arrows on purpose."""
APART = 0.7
"""How far from its middle a double line is drawn, in page units."""


class Heads:
    """The cells of a page on which a head would be lost: joints, members, and heads set before."""

    def __init__(self, sheet: Sheet) -> None:
        page = sheet.page
        self._columns, self._rows = page.columns, page.rows
        self._taken = {cell_of(sign.at) for sign in sheet.signs if sign.symbol == "joint"}
        for sign in sheet.signs:
            self._taken |= set(_ground(sign))
        for line in sheet.lines:
            if line.owner and line.role not in THROUGH:
                self._taken |= set(cells_of(line))

    def set(self, near: Point, tip: Point, end: Point, way: Point) -> tuple[Point, Point]:
        """Tip and outer end of an arrow whose tip wants to be at `tip`, on the line from `near`.

        `way` is the unit vector outward from the joint. The tip is moved along it to the nearest
        free cell; where none is free, it stays.
        """
        for moved in _along(near, tip, way):
            if cell_of(moved) not in self._taken and self._holds(moved):
                break
        else:
            moved = tip
        self._taken.add(cell_of(moved))
        if math.dist(near, moved) + SHORTEST <= math.dist(near, end) or moved == tip or tip == end:
            return moved, end if tip != end else moved
        longer = (moved[0] + SHORTEST * way[0], moved[1] + SHORTEST * way[1])
        return moved, longer

    def _holds(self, point: Point) -> bool:
        column, row = cell_of(point)
        return 0 <= column < self._columns and 0 <= row < self._rows


def cell_of(point: Point) -> Cell:
    """The cell (column, row) at a page point."""
    return math.floor(point[0]), math.floor(point[1] / 2)


def cells_of(line: Line) -> Iterator[Cell]:
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


def _along(near: Point, tip: Point, way: Point) -> Iterator[Point]:
    """The tip, then points further out along its arrow, a cell at a time; then further in."""
    across = min(1 / abs(way[0]) if way[0] else 9.0, 2 / abs(way[1]) if way[1] else 9.0)
    reach = math.dist(near, tip)
    for count in range(FARTHEST + 1):
        yield tip[0] + count * across * way[0], tip[1] + count * across * way[1]
    for count in range(1, FARTHEST + 1):
        if reach - count * across > across:
            yield tip[0] - count * across * way[0], tip[1] - count * across * way[1]

"""Where was clicked, or where was a joint dragged? A grid whose cells lead back to places of the truss."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import cast

from textual import events
from textual.content import Content
from textual.geometry import Size
from textual.message import Message
from textual.reactive import reactive
from textual.widget import Widget

from tutor.figure import Figure, Glyphs, to_cells, to_words
from tutor.figure.cells import Cell
from tutor.figure.page import PageScale, page_for
from tutor.screens.sketching import Grid
from tutor.screens.widgets.figure_pane import SMALLEST, STYLES

FINEST = 10**6
NEAR = 1.6
"""A click so many columns from a joint is on it."""


@dataclass
class JointHit(Message):
    """A joint was clicked."""

    joint: str


@dataclass
class PlaceHit(Message):
    """An empty place was clicked: the nearest point of the grid."""

    x: Fraction
    y: Fraction


@dataclass
class JointDragged(Message):
    """A joint is held over a point of the grid, or let go there where it is `done`."""

    joint: str
    x: Fraction
    y: Fraction
    done: bool = False


class SketchPad(Widget):
    """The truss being drawn, with its grid where there is one."""

    figure: reactive[Figure | None] = reactive(None)
    grid: reactive[Grid | None] = reactive(None)
    glyphs: reactive[str] = reactive("braille", layout=True)

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self.joints: Mapping[str, tuple[float, float]] = {}
        self._grid_name = ""
        self._down: tuple[int, int] | None = None
        self._page_then: PageScale | None = None
        self._from = (0.0, 0.0)
        self._held: str | None = None
        self._over: tuple[Fraction, Fraction] | None = None
        self._dragged = False

    def show(
        self,
        figure: Figure,
        grid: Grid | None,
        joints: Mapping[str, tuple[float, float]],
        glyphs: str,
    ) -> None:
        """Show this drawing; `joints` are the places where a click means a joint."""
        self.joints = dict(joints)
        self.figure, self.grid, self.glyphs = figure, grid, glyphs
        self.refresh()

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return container.height

    def render(self) -> Content:
        if self.figure is None:
            return Content("")
        if self.glyphs == "words":
            return Content("\n").join(Content(s) for s in to_words(self.figure))
        wide, high = self.size.width, self.size.height
        if wide < SMALLEST[0] or high < SMALLEST[1]:
            return Content("(no room to draw)"[:wide])
        rows = [list(row) for row in self._cells(self.figure, wide, high)]
        self._dot(rows)
        return Content("\n").join(
            Content.assemble(*((char, STYLES.get(role, "")) for char, role in row)) for row in rows
        )

    def _cells(self, figure: Figure, wide: int, high: int) -> list[list[Cell]]:
        page = to_cells(figure, wide, high, cast(Glyphs, self.glyphs))
        return [
            [(char if role != "blank" else " ", role) for char, role in row] for row in page.rows
        ]

    def _dot(self, rows: list[list[Cell]]) -> None:
        """Put a dot on every empty cell that holds a point of the grid, numbers at its edges."""
        grid = self.grid
        if grid is None:
            return
        self._number(grid, rows)
        dot = "." if self.glyphs == "ascii" else "·"
        for i in range(grid.left, grid.right + 1):
            for j in range(grid.low, grid.high + 1):
                self._write(rows, *self.cell_of(*grid.point(i, j)), dot)

    def _number(self, grid: Grid, rows: list[list[Cell]]) -> None:
        """Put x along the lowest row of points, and y along the leftmost column."""
        columns = self._page().scale * float(grid.step)
        for i in grid.numbered(grid.left, grid.right, columns):
            column, row = self.cell_of(*grid.point(i, grid.low))
            text = grid.number(i)
            self._write(rows, column - (len(text) - 1) // 2, row, text, apart=1)
        for j in grid.numbered(grid.low + 1, grid.high, columns / 2, beside=False):
            column, row = self.cell_of(*grid.point(grid.left, j))
            text = grid.number(j)
            self._write(rows, max(0, column - (len(text) - 1) // 2), row, text, apart=1)

    def _write(
        self, rows: list[list[Cell]], column: int, row: int, text: str, apart: int = 0
    ) -> None:
        """Put a text of the grid where the cells for it, and so many beside it, are empty."""
        if not 0 <= row < len(rows) or not 0 <= column <= len(rows[row]) - len(text):
            return
        around = rows[row][max(0, column - apart) : column + len(text) + apart]
        if all(char == " " for char, _ in around):
            rows[row][column : column + len(text)] = [(char, "dimension") for char in text]

    def _page(self) -> PageScale:
        assert self.figure is not None
        return page_for(self.figure, self.size.width, self.size.height, snap=True)

    def cell_of(self, x: float, y: float) -> tuple[int, int]:
        """The column and row in which a place of the truss is drawn."""
        px, py = self._page().place((x, y))
        return int(px), int(py // 2)

    def hit(self, event: events.MouseEvent) -> JointHit | PlaceHit | None:
        """What the mouse is on: a joint where one is near, else the nearest point of the grid."""
        if self.figure is None or self.glyphs == "words":
            return None
        column, row = event.x - self.gutter.left, event.y - self.gutter.top
        near = [
            (abs(c - column) + 2 * abs(r - row), name)
            for name, at in self.joints.items()
            for c, r in [self.cell_of(*at)]
        ]
        if near and min(near)[0] <= NEAR:
            return JointHit(min(near)[1])
        point = self._point(event)
        return None if point is None else PlaceHit(*point)

    def _point(self, event: events.MouseEvent) -> tuple[Fraction, Fraction] | None:
        """The point of the grid nearest to the mouse; None without a grid."""
        if self.grid is None or self.figure is None:
            return None
        column, row = event.x - self.gutter.left, event.y - self.gutter.top
        page = self._page_then or self._page()
        x = (column + 0.5 - page.left) / page.scale
        y = (page.top - (2 * row + 1.0)) / page.scale
        return self.grid.nearest(x, y)

    def on_mouse_down(self, event: events.MouseDown) -> None:
        hit = self.hit(event)
        self._down, self._over = (event.x, event.y), None
        self._held = hit.joint if isinstance(hit, JointHit) else None
        self._dragged = False
        self._page_then = None if self._held is None else self._page()
        self._from = self.joints.get(self._held or "", (0.0, 0.0))
        self.capture_mouse()

    def on_mouse_up(self, event: events.MouseUp) -> None:
        """Let a dragged joint go; a mouse that went far from where it was pressed clicks nothing."""
        self.release_mouse()
        held, over, self._held, self._over = self._held, self._over, None, None
        if self._down is not None:
            far = abs(event.x - self._down[0]) + 2 * abs(event.y - self._down[1])
            self._dragged = over is not None or far > NEAR
        self._down = self._page_then = None
        if held is not None and over is not None:
            self.post_message(JointDragged(held, *over, done=True))

    def on_click(self, event: events.Click) -> None:
        event.stop()
        hit = self.hit(event)
        if hit is not None and not self._dragged:
            self.post_message(hit)
        self._dragged = False

    def on_mouse_move(self, event: events.MouseMove) -> None:
        """Say where a click would be, or take a joint that is held along."""
        if self._held is not None:
            self._drag(event, self._held)
            return
        hit = self.hit(event)
        if isinstance(hit, PlaceHit):
            self.border_subtitle = Content(f"here {float(hit.x):g}, {float(hit.y):g}")
        elif hit is not None:
            self.border_subtitle = Content(f"here joint {hit.joint}")

    def _drag(self, event: events.MouseMove, joint: str) -> None:
        point = self._dragged_to(event)
        begun = self._over is not None or (event.x, event.y) != self._down
        if point is None or not begun or point == self._over:
            return
        self._over = point
        self.border_subtitle = Content(f"joint {joint} to {float(point[0]):g}, {float(point[1]):g}")
        self.post_message(JointDragged(joint, *point))

    def _dragged_to(self, event: events.MouseEvent) -> tuple[Fraction, Fraction] | None:
        """The point of the grid under the mouse; a joint dragged straight along keeps its row or column."""
        point = self._point(event)
        if point is None or self._down is None:
            return point
        x, y = (Fraction(at).limit_denominator(FINEST) for at in self._from)
        return (
            x if event.x == self._down[0] else point[0],
            y if event.y == self._down[1] else point[1],
        )

    def on_leave(self) -> None:
        self.border_subtitle = Content(self._grid_name)

    def name_grid(self, length: str) -> None:
        """Say on the border how far the points of the grid are apart, in this unit."""
        grid = self.grid
        self._grid_name = "" if grid is None else f"grid {float(grid.step):g} {length}"
        self.border_subtitle = Content(self._grid_name)

"""Where was clicked? A drawing on a grid, whose cells lead back to places of the truss."""

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
from tutor.figure.page import Page, page_for
from tutor.screens.sketching import Grid
from tutor.screens.widgets.figure_pane import SMALLEST, STYLES

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


class SketchPad(Widget):
    """The truss being drawn, with its grid where there is one."""

    figure: reactive[Figure | None] = reactive(None)
    grid: reactive[Grid | None] = reactive(None)
    glyphs: reactive[str] = reactive("braille", layout=True)

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self.joints: Mapping[str, tuple[float, float]] = {}

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
        """Put a dot on every empty cell that holds a point of the grid."""
        grid = self.grid
        if grid is None:
            return
        page = self._page()
        dot = "." if self.glyphs == "ascii" else "·"
        for i in range(grid.left, grid.right + 1):
            for j in range(grid.low, grid.high + 1):
                x, y = page.place(grid.point(i, j))
                column, row = int(x), int(y // 2)
                there = 0 <= row < len(rows) and 0 <= column < len(rows[row])
                if there and rows[row][column][0] == " ":
                    rows[row][column] = (dot, "dimension")

    def _page(self) -> Page:
        assert self.figure is not None
        return page_for(self.figure, self.size.width, self.size.height, snap=True)

    def cell_of(self, x: float, y: float) -> tuple[int, int]:
        """The column and row in which a place of the truss is drawn."""
        px, py = self._page().place((x, y))
        return int(px), int(py // 2)

    def on_click(self, event: events.Click) -> None:
        """A joint where one is near; else the nearest point of the grid."""
        event.stop()
        if self.figure is None or self.glyphs == "words":
            return
        column, row = event.x - self.gutter.left, event.y - self.gutter.top
        near = [
            (abs(c - column) + 2 * abs(r - row), name)
            for name, at in self.joints.items()
            for c, r in [self.cell_of(*at)]
        ]
        if near and min(near)[0] <= NEAR:
            self.post_message(JointHit(min(near)[1]))
        elif self.grid is not None:
            page = self._page()
            x = (column + 0.5 - page.left) / page.scale
            y = (page.top - (2 * row + 1.0)) / page.scale
            self.post_message(PlaceHit(*self.grid.nearest(x, y)))

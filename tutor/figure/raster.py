"""How do lines become characters? Braille dots, quadrant blocks or ASCII strokes on a canvas."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Literal

from tutor.figure.laid_out import Pattern
from tutor.figure.parts import Point, Role
from tutor.figure.placing import SIGN, STROKE, Slots

Glyphs = Literal["braille", "blocks", "ascii"]

BRAILLE_BITS = ((0x01, 0x08), (0x02, 0x10), (0x04, 0x20), (0x40, 0x80))
QUADRANTS = " ▘▝▀▖▌▞▛▗▚▐▜▄▙▟█"
RHYTHM: Mapping[Pattern, tuple[int, int]] = {
    "dotted": (1, 3),
    "dashed": (4, 7),
    "dash-dot": (6, 8),
}
"""Of every so many dots, how many are drawn."""
BLOCK_RHYTHM: Mapping[Pattern, tuple[int, int]] = {
    "dotted": (1, 2),
    "dashed": (2, 4),
    "dash-dot": (3, 4),
}
CROSSINGS = {frozenset("/\\"): "X", frozenset("-|"): "+", frozenset("=|"): "+"}


class Canvas:
    """A page of cells under the pen: dots and characters, their roles, and what is taken."""

    def __init__(self, columns: int, rows: int, glyphs: Glyphs) -> None:
        self.columns, self.rows, self.glyphs = columns, rows, glyphs
        self.board = Slots(columns, rows)
        size = columns * rows
        self.bits = [0] * size
        self.chars = [""] * size
        self.roles: list[Role] = ["blank"] * size

    def line(
        self, start: Point, end: Point, pattern: Pattern, role: Role, *, owner: int, sign: bool
    ) -> None:
        """Draw a line between two page points."""
        if self.glyphs == "ascii":
            self._ascii_line(start, end, pattern, role, owner, sign)
            return
        fine = self.glyphs == "braille"
        sy = 2.0 if fine else 1.0
        x0, y0, x1, y1 = 2 * start[0], sy * start[1], 2 * end[0], sy * end[1]
        dx, dy = x1 - x0, y1 - y0
        steps = max(1, round(max(abs(dx), abs(dy))))
        if pattern in ("double", "heavy"):
            length = math.hypot(dx, dy) or 1.0
            apart = 1.4 if fine and pattern == "double" else 0.5 if fine else 0.7
            ox, oy = -dy / length * apart, dx / length * apart
            if pattern == "double" and fine:
                ox, oy = float(round(ox)), float(round(oy))
            for turn in (-1, 1):
                self._dots(
                    x0 + turn * ox, y0 + turn * oy, dx / steps, dy / steps, steps, role, owner, sign
                )
            return
        rhythm = (RHYTHM if fine else BLOCK_RHYTHM).get(pattern)
        self._dots(x0, y0, dx / steps, dy / steps, steps, role, owner, sign, rhythm)

    def _dots(
        self,
        x: float,
        y: float,
        dx: float,
        dy: float,
        steps: int,
        role: Role,
        owner: int,
        sign: bool,
        rhythm: tuple[int, int] | None = None,
    ) -> None:
        columns, bits, roles = self.columns, self.bits, self.roles
        ink, owners, value = self.board.ink, self.board.owner, SIGN if sign else STROKE
        high = 4 if self.glyphs == "braille" else 2
        table = BRAILLE_BITS if high == 4 else ((1, 2), (4, 8))
        wide, tall = 2 * columns, high * self.rows
        on, every = rhythm or (1, 1)
        for step in range(steps + 1):
            if step % every < on:
                i, j = math.floor(x), math.floor(y)
                if 0 <= i < wide and 0 <= j < tall:
                    cell = (j // high) * columns + (i >> 1)
                    bits[cell] |= table[j % high][i & 1]
                    roles[cell] = role
                    ink[cell] = value
                    owners[cell] = owner
            x += dx
            y += dy

    def _ascii_line(
        self, start: Point, end: Point, pattern: Pattern, role: Role, owner: int, sign: bool
    ) -> None:
        x0, y0, x1, y1 = start[0], start[1] / 2, end[0], end[1] / 2
        dx, dy = x1 - x0, y1 - y0
        level = abs(dy) <= 0.6 * abs(dx)
        upright = abs(dx) <= 0.3 * abs(dy)
        slant = "\\" if dx * dy > 0 else "/"
        steps = max(1, math.ceil(abs(dx) if level else abs(dy)))
        for step in range(steps + 1):
            x, y = x0 + dx * step / steps, y0 + dy * step / steps
            column, row = math.floor(x), math.floor(y)
            if level:
                part = y - row
                char = (
                    "-"
                    if abs(dy) < 0.08 * abs(dx) or 0.3 < part < 0.7
                    else "_"
                    if part >= 0.7
                    else "'"
                )
            else:
                char = "|" if upright else slant
            self._stroke_char(column, row, char, pattern, step, role, owner, sign)
            if pattern in ("double", "heavy") and not level:
                self._stroke_char(column + 1, row, char, pattern, step, role, owner, sign)

    def _stroke_char(
        self,
        column: int,
        row: int,
        char: str,
        pattern: Pattern,
        step: int,
        role: Role,
        owner: int,
        sign: bool,
    ) -> None:
        if not (0 <= column < self.columns and 0 <= row < self.rows):
            return
        if pattern in ("double", "heavy") and char in "-_'":
            char = "="
        elif pattern == "dotted":
            if step % 2:
                return
            char = "."
        elif pattern in ("dashed", "dash-dot"):
            char = {"|": ":"}.get(char, char)
            if char != ":" and step % 3 == 2:
                return
        cell = row * self.columns + column
        before = self.chars[cell]
        self.chars[cell] = CROSSINGS.get(frozenset((before, char)), char) if before else char
        self.roles[cell] = role
        self.board.ink[cell] = SIGN if sign else STROKE
        self.board.owner[cell] = owner

    def put(self, x: float, y: float, text: str, role: Role) -> None:
        """Write characters centred at a page point, over what is there."""
        column, row = self.board.corner(x, y, len(text))
        if not 0 <= row < self.rows:
            return
        for index, char in enumerate(text):
            if 0 <= column + index < self.columns:
                cell = row * self.columns + column + index
                self.chars[cell] = char
                self.roles[cell] = role
                self.bits[cell] = 0

    def clear_dash(self, column: int, row: int) -> None:
        """Take away a stroke that would read as a minus before a number."""
        if 0 <= column < self.columns and 0 <= row < self.rows:
            cell = row * self.columns + column
            if self.chars[cell] == "-":
                self.chars[cell], self.roles[cell] = " ", "blank"

    def grid(self) -> tuple[tuple[tuple[str, Role], ...], ...]:
        """The finished page: rows of (character, role)."""
        fine = self.glyphs == "braille"
        drawn = [
            char or (" " if not bits else chr(0x2800 + bits) if fine else QUADRANTS[bits])
            for char, bits in zip(self.chars, self.bits, strict=True)
        ]
        cells = list(zip(drawn, self.roles, strict=True))
        return tuple(
            tuple(cells[row * self.columns : (row + 1) * self.columns]) for row in range(self.rows)
        )

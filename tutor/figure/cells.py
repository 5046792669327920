"""What does a drawing look like in a terminal? Rows of (character, role), for any size."""

from __future__ import annotations

import math
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import groupby

from tutor.figure.laid_out import Chain, LaidOut
from tutor.figure.layout import lay_out, place_all
from tutor.figure.parts import Figure, Point, Role, Turn, plain
from tutor.figure.placing import GLYPH, WORDS, Placed, PlacedWords
from tutor.figure.raster import Canvas, Glyphs
from tutor.figure.signs import MARKS, Marks, draw_sign

Cell = tuple[str, Role]
LARGEST = 1000
ASCII_WORDS = {
    "°": " deg", "×": "x", "·": "*", "–": "-", "—": "-", "−": "-", "√": "sqrt", "²": "^2",
    "³": "^3", "’": "'", "‘": "'", "“": '"', "”": '"', "…": "...", "½": "1/2", "¼": "1/4",
}  # fmt: skip


@dataclass(frozen=True)
class Cells:
    """A page of character cells: `rows` of `columns` (character, role) pairs each."""

    columns: int
    rows: tuple[tuple[Cell, ...], ...]

    @property
    def text(self) -> str:
        """The characters alone, a line a row, without trailing blanks."""
        return "\n".join("".join(char for char, _ in row).rstrip() for row in self.rows)

    @property
    def runs(self) -> tuple[tuple[tuple[str, Role], ...], ...]:
        """The rows as (text, role) pieces of one role each."""
        return tuple(
            tuple(
                ("".join(char for char, _ in group), role)
                for role, group in groupby(row, key=lambda cell: cell[1])
            )
            for row in self.rows
        )


def to_cells(figure: Figure, columns: int, rows: int, glyphs: Glyphs = "braille") -> Cells:
    """`figure` on `columns` by `rows` cells of a terminal; a pure function of its arguments.

    A size below 1 gives an empty page. Every character is one cell wide and from `glyphs`: Braille
    patterns or quadrant blocks with arrows and box lines, or plain ASCII.
    """
    columns, rows = max(0, min(columns, LARGEST)), max(0, min(rows, LARGEST))
    if not columns or not rows:
        return Cells(columns, tuple(() for _ in range(rows)))
    sheet = lay_out(figure, columns, rows, snap=True, say=SAY[glyphs])
    canvas = Canvas(columns, rows, glyphs)
    marks = MARKS[glyphs]
    for line in sheet.lines:
        role: Role = "highlight" if line.lit else line.role
        canvas.line(line.start, line.end, line.pattern, role, owner=line.owner, sign=line.sign)
    for sign in sorted(sheet.signs, key=lambda sign: sign.symbol != "right-angle"):
        draw_sign(canvas, sign)  # a joint is drawn over the right angle at it
    for chain in sheet.chains:
        _chain(canvas, chain, marks)
    for head in sheet.heads:
        _glyph(canvas, head.tip, marks.head(head.toward), "highlight" if head.lit else head.role)
    turning = [_turning(sheet, columns, rows, marks.turning)] if sheet.turning else []
    for placed in place_all(canvas.board, sheet, turning):
        _write(canvas, placed)
    return Cells(columns, canvas.grid())


def single(text: str) -> str:
    """`text` as plain characters of one cell each; wide ones become a question mark."""
    kept = plain(text)
    if kept.isascii():
        return kept
    return "".join(
        "?" if unicodedata.east_asian_width(char) in "WF" else char
        for char in unicodedata.normalize("NFC", kept)
        if not unicodedata.combining(char) and unicodedata.category(char)[0] != "M"
    )


def ascii_only(text: str) -> str:
    """`text` in ASCII: known signs by name, accents left off, others as a question mark."""
    if text.isascii():
        return plain(text)
    named = "".join(ASCII_WORDS.get(char, char) for char in single(text))
    bare = (c for c in unicodedata.normalize("NFKD", named) if not unicodedata.combining(c))
    return "".join(char if char.isascii() else "?" for char in bare)


SAY = {"braille": single, "blocks": single, "ascii": ascii_only}


def _glyph(canvas: Canvas, at: Point, char: str, role: Role) -> None:
    canvas.put(math.floor(at[0]) + 0.5, 2 * math.floor(at[1] / 2) + 1.0, char, role)
    slot = canvas.board.slot(*at)
    if slot is not None:
        canvas.board.hard[slot] = GLYPH


def _turning(sheet: LaidOut, columns: int, rows: int, marks: Mapping[Turn, str]) -> PlacedWords:
    assert sheet.turning is not None
    text = marks[sheet.turning]
    near, far = len(text) / 2 + 1, columns - len(text) / 2 - 1
    spots = ((near, 1.0, 0.0), (far, 1.0, 0.1), (near, 2.0 * rows - 1, 0.2), (near, 3.0, 0.3))
    return PlacedWords(((text, spots),), "turning", (near, 1.0), limit=2.0)


def _chain(canvas: Canvas, chain: Chain, marks: Marks) -> None:
    """A dimension line with its ticks and words; all of it is taken."""
    first, *inner, last = chain.stops if not chain.upright else sorted(chain.stops)
    start, tick, end, bar = marks.upright if chain.upright else marks.level
    step = 2.0 if chain.upright else 1.0
    for index in range(round((last - first) / step) + 1):
        along = first + index * step
        _chain_cell(canvas, chain, along, bar)
    for along, char in ((first, start), *((stop, tick) for stop in inner), (last, end)):
        _chain_cell(canvas, chain, along, char)
    for middle, text in chain.words:
        x, y = (middle, chain.across) if not chain.upright else (chain.across, middle)
        if chain.upright:
            x += len(text) / 2 + 1.5
        canvas.put(x, y, text, "dimension")
        canvas.board.take(x, y, WORDS, len(text))
    if chain.after:
        x = last + len(chain.after) / 2 + 1.5
        canvas.put(x, chain.across, chain.after, "dimension")
        canvas.board.take(x, chain.across, WORDS, len(chain.after))


def _chain_cell(canvas: Canvas, chain: Chain, along: float, char: str) -> None:
    at = (chain.across, along) if chain.upright else (along, chain.across)
    if canvas.board.slot(*at) is not None:
        _glyph(canvas, at, char, "dimension")


def _write(canvas: Canvas, placed: Placed) -> None:
    role: Role = "highlight" if placed.lit else placed.role
    canvas.put(placed.x, placed.y, placed.text, role)
    column, row = canvas.board.corner(placed.x, placed.y, len(placed.text))
    if canvas.glyphs == "ascii" and placed.text[:1].isdigit():
        canvas.clear_dash(column - 1, row)

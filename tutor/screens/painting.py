"""What of a frame has to go out? Only the cells that the terminal does not show already.

The library paints every part that asked for it whole, and the whole screen where anything moved. Over
a slow link that is most of the waiting, and nearly all of it stands there already.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import NamedTuple

from rich.cells import get_character_cell_size
from rich.color import ColorSystem
from rich.console import COLOR_SYSTEMS, Console
from rich.segment import Segment
from rich.style import Style
from textual._compositor import ChopsUpdate, CompositorUpdate, LayoutUpdate
from textual.geometry import Size
from textual.strip import Strip


class Cell(NamedTuple):
    """A character (empty where the one before covers this cell too), the codes that style it, and
    those of a blank of the same style, whose own colour does not show."""

    char: str
    codes: str
    blank: str


RESET = "\x1b[0m"
NEAR = 8
"""Unchanged cells between two changes that are cheaper to write again than to jump over."""


class Painter:
    """Knows what the terminal shows, and makes updates of what differs."""

    def __init__(self) -> None:
        self._rows: list[list[Cell | None]] = []
        self._size = Size(0, 0)

    def forget(self) -> None:
        """The terminal may show anything: the next frame goes out whole."""
        self._rows = []

    def changes(self, update: CompositorUpdate, size: Size, console: Console) -> CompositorUpdate:
        """The part of an update that is new on a terminal of this size."""
        if not isinstance(update, LayoutUpdate | ChopsUpdate):
            self.forget()
            return update
        if not self._rows or size != self._size:
            self._size = size
            self._rows = [[None] * size.width for _ in range(size.height)]
        system = COLOR_SYSTEMS.get(console.color_system or "", ColorSystem.TRUECOLOR)
        return Changes(
            tuple(
                (x, y, text)
                for x, y, strip in pieces(update)
                for x, text in self._new(x, y, cells(strip, system))
            )
        )

    def _new(self, x: int, y: int, painted: Sequence[Cell]) -> Iterator[tuple[int, str]]:
        """Where the cells painted from `x` on differ from what is shown, and what to write there."""
        if not 0 <= y < len(self._rows):
            return
        row = self._rows[y]
        painted = painted[: len(row) - x]
        new = [i for i, cell in enumerate(painted) if row[x + i] != cell]
        row[x : x + len(painted)] = painted
        for first, last in _stretches(new):
            while first > 0 and not painted[first].char:
                first -= 1
            while last + 1 < len(painted) and not painted[last + 1].char:
                last += 1
            yield x + first, written(painted[first : last + 1])


class Changes(CompositorUpdate):
    """Stretches of text with their codes, each with its column and row."""

    def __init__(self, stretches: tuple[tuple[int, int, str], ...]) -> None:
        self.stretches = stretches

    def render_segments(self, console: Console) -> str:
        return "".join(f"\x1b[{y + 1};{x + 1}H{text}" for x, y, text in self.stretches)


def pieces(update: LayoutUpdate | ChopsUpdate) -> Iterator[tuple[int, int, Strip]]:
    """The strips of an update, each with the column and row it is painted at."""
    if isinstance(update, LayoutUpdate):
        for y, line in enumerate(update.strips, update.region.y):
            x = update.region.x
            for strip in line:
                yield x, y, strip
                x += strip.cell_length
        return
    for y, left, right in update.spans:
        for end, (x, piece) in zip(update.chop_ends[y], update.chops[y].items(), strict=False):
            if piece is not None and x <= right and end > left:
                yield x, y, piece.crop(0, min(end, right) - x)


def cells(strip: Strip, system: ColorSystem) -> list[Cell]:
    """The cells that a strip fills."""
    found: list[Cell] = []
    for segment in strip:
        if segment.control:
            continue
        found += _segment_cells(segment, system)
    return found


@lru_cache(4096)
def _segment_cells(segment: Segment, system: ColorSystem) -> tuple[Cell, ...]:
    text, style, _ = segment
    codes, blank = ("", "") if style is None else (_codes(style, system), _blank(style, system))
    if text.isascii():
        each = {char: _cell(char, codes, blank) for char in set(text)}
        return tuple(map(each.__getitem__, text))
    found: list[Cell] = []
    for char in text:
        wide = get_character_cell_size(char)
        if wide == 0:
            if found:
                found[-1] = found[-1]._replace(char=found[-1].char + char)
            continue
        found.append(_cell(char, codes, blank))
        found += [Cell("", codes, blank)] * (wide - 1)
    return tuple(found)


def _cell(char: str, codes: str, blank: str) -> Cell:
    return Cell(char, blank if char == " " else codes, blank)


def _codes(style: Style, system: ColorSystem) -> str:
    return Strip.render_ansi(style, system)


def _blank(style: Style, system: ColorSystem) -> str:
    """The codes of a space, whose own colour does not show."""
    if style.reverse or style.underline or style.strike or style.underline2 or style.overline:
        return _codes(style, system)
    ground = "" if style.bgcolor is None else _codes(Style(bgcolor=style.bgcolor), system)
    return ground


def written(painted: Sequence[Cell]) -> str:
    """Cells as the terminal takes them."""
    parts: list[str] = []
    codes, blank = "", ""
    for cell in painted:
        fits = cell.codes in (codes, blank) if cell.char in ("", " ") else cell.codes == codes
        if not fits:
            parts.append((RESET if codes else "") + (f"\x1b[{cell.codes}m" if cell.codes else ""))
            codes, blank = cell.codes, cell.blank
        parts.append(cell.char)
    return "".join(parts) + (RESET if codes else "")


def _stretches(places: Sequence[int]) -> Iterator[tuple[int, int]]:
    """Places in rising order as stretches from first to last, near ones taken together."""
    if not places:
        return
    first = last = places[0]
    for place in places[1:]:
        if place - last > NEAR:
            yield first, last
            first = place
        last = place
    yield first, last

"""Where does each of several short pieces stand when they flow over rows like words?"""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from typing import NamedTuple

from rich.cells import cell_len

LONG = 38


class FlowPart(NamedTuple):
    """Part of item `item` at column `x` of a row, `wide` cells wide."""

    item: int
    x: int
    wide: int
    text: str


Rows = tuple[tuple[FlowPart, ...], ...]


def flow(texts: Sequence[str], width: int, gap: int = 1, hang: int = 0) -> Rows:
    """The rows of the texts at `width` cells.

    Short texts share rows, `gap` cells apart. Where one is long, each has rows of its own, and its
    further rows begin `hang` cells in.
    """
    width = max(1, width)
    if any(cell_len(text) > LONG for text in texts):
        return _paragraphs(texts, width, hang)
    rows: list[list[FlowPart]] = [[]]
    x = 0
    for item, text in enumerate(texts):
        wide = cell_len(text)
        if rows[-1] and x + wide > width:
            rows.append([])
            x = 0
        rows[-1].append(FlowPart(item, x, wide, text))
        x += wide + gap
    return tuple(tuple(row) for row in rows if row)


def evenly(texts: Sequence[str], width: int, gap: int = 1) -> Rows:
    """As few rows of the texts as `width` cells need, none longer than it has to be."""
    rows = flow(texts, width, gap)
    longest = max(map(cell_len, texts), default=1)
    for narrower in range(width - 1, longest - 1, -1):
        tighter = flow(texts, narrower, gap)
        if len(tighter) > len(rows):
            break
        rows = tighter
    return rows


def at(rows: Rows, x: int, y: int) -> int | None:
    """The item at a cell, or None."""
    if 0 <= y < len(rows):
        for piece in rows[y]:
            if piece.x <= x < piece.x + piece.wide:
                return piece.item
    return None


def beside(rows: Rows, item: int, step: int) -> int:
    """The item above (-1) or below (+1) of `item`, nearest by column; itself where there is none."""
    home = next(
        ((y, piece) for y, row in enumerate(rows) for piece in row if piece.item == item), None
    )
    if home is None:
        return item
    y, start = home
    y += step
    while 0 <= y < len(rows):
        others = [piece for piece in rows[y] if piece.item != item]
        if others:
            return min(others, key=lambda piece: abs(piece.x - start.x)).item
        y += step
    return item


def _paragraphs(texts: Sequence[str], width: int, hang: int) -> Rows:
    rows: list[tuple[FlowPart, ...]] = []
    for item, text in enumerate(texts):
        lines = textwrap.wrap(
            text, width, subsequent_indent=" " * min(hang, width - 1), drop_whitespace=False
        )
        for line in lines or [""]:
            shown = line.rstrip()
            rows.append((FlowPart(item, 0, cell_len(shown), shown),))
    return tuple(rows)

"""How large is the drawing on its page, and where? True proportions, as large as the page allows.

Page units: one unit is the width of a character cell, and a row of cells is two units high, so a
unit is as wide as it is high. x is to the right, y is *down*, the origin is the top left corner.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from tutor.figure.parts import (
    Arrow,
    DimensionChain,
    Figure,
    Glyph,
    Item,
    Point,
    Stroke,
    Tag,
)

Margin = tuple[float, float, float, float, float, float]
"""A point (x, y in problem units) and the page units it needs to its left, right, top, bottom."""


INCLINED = 4.5
"""The least size of an inclined support: smaller, its tilt cannot be seen."""
LINK = 1.6
"""How much further a link reaches than a roller or a pin."""
TAIL = 0.75
"""From a joint to where an arrow's length is counted from."""


TALLEST = 0.9
"""Height over width of a page that is as high as its drawing needs."""


@dataclass(frozen=True)
class Detail:
    """How much room the signs around the truss may take.

    `arrow` and `symbol` are page lengths; `words` says whether there is room for words past the
    end of an arrow, only beside it, or none kept; `worth` is the part of the bare truss's scale
    that must be left, or the next, plainer detail is taken.
    """

    arrow: float
    symbol: float
    dimensions: bool
    words: Literal["past", "beside", "none"]
    worth: float


DETAILS = (
    Detail(arrow=6.0, symbol=5.0, dimensions=True, words="past", worth=0.58),
    Detail(arrow=4.0, symbol=3.0, dimensions=True, words="past", worth=0.5),
    Detail(arrow=3.0, symbol=3.0, dimensions=True, words="beside", worth=0.3),
    Detail(arrow=2.0, symbol=2.0, dimensions=True, words="none", worth=0.22),
    Detail(arrow=3.0, symbol=3.0, dimensions=False, words="beside", worth=0.35),
    Detail(arrow=2.0, symbol=2.0, dimensions=False, words="none", worth=0.0),
)


@dataclass(frozen=True)
class PageScale:
    """The way from problem coordinates to page units; `snap` moves points to cell centres."""

    columns: float
    rows: float
    scale: float
    left: float
    top: float
    detail: Detail
    snap: bool
    bottom_edge: float
    right_edge: float

    def place(self, point: Point) -> Point:
        """A point of the problem on the page."""
        x = self.left + self.scale * point[0]
        y = self.top - self.scale * point[1]
        if self.snap:
            return math.floor(x) + 0.5, 2 * math.floor(y / 2) + 1.0
        return x, y


def page_for(figure: Figure, columns: float, rows: float, *, snap: bool) -> PageScale:
    """The page on which `figure` fits, with as much detail as leaves the truss large enough."""
    edge = 0.5 if snap else 1.0
    wide, high = columns - 2 * edge, 2.0 * rows - 2 * edge
    bare = _scale(_margins(figure.items, DETAILS[-1], bare=True), wide, high)
    for detail in DETAILS:
        margins = _margins(figure.items, detail)
        below, beside = _bands(figure.items) if detail.dimensions else (0.0, 0.0)
        scale = _scale(margins, wide - beside, high - below)
        if scale >= detail.worth * bare and scale > 0:
            break
    if scale <= 0 or not math.isfinite(scale):
        scale = bare if math.isfinite(bare) and bare > 0 else 1.0
    if snap:
        scale = _even(figure.items, scale)
    left, right = _reach([(m[0], m[2], m[3]) for m in margins], scale)
    top, bottom = _reach([(-m[1], m[4], m[5]) for m in margins], scale)
    x = edge + (wide - beside - (right - left)) / 2 - left
    y = edge + (high - below - (bottom - top)) / 2 - top
    return PageScale(columns, rows, scale, x, y, detail, snap, y + bottom, x + right)


def _even(items: Iterable[Item], scale: float) -> float:
    """A little less scale where that makes equal panels the same number of columns wide."""
    for item in items:
        if isinstance(item, DimensionChain) and item.axis == "x":
            gaps = [b - a for a, b in pairwise(item.stops)]
            panel = min(gaps)
            if all(abs(gap / panel - round(gap / panel)) < 1e-6 for gap in gaps):
                columns = math.floor(panel * scale + 1e-9)
                if columns >= 3 and columns >= 0.85 * panel * scale:
                    return columns / panel
    return scale


def size_for(figure: Figure, columns: float) -> float:
    """The rows that `figure` needs at this width, on a page at most `TALLEST` times as high."""
    page = page_for(figure, columns, TALLEST * columns / 2, snap=False)
    margins = _margins(figure.items, page.detail)
    below, _ = _bands(figure.items) if page.detail.dimensions else (0.0, 0.0)
    top, bottom = _reach([(-m[1], m[4], m[5]) for m in margins], page.scale)
    return (bottom - top + below) / 2 + 1.0


def support_size(toward: Point, size: float) -> float:
    """The page length of a support's symbol of normal `size` that stands along `toward`."""
    inclined = min(abs(toward[0]), abs(toward[1])) > 1e-6
    return max(size, min(INCLINED, 1.5 * size)) if inclined else size


def outward_on_page(arrow: Arrow) -> Point:
    """The unit vector from the joint to the arrow's free end, on the page."""
    x, y = arrow.outward
    return x, -y


def _bands(items: Iterable[Item]) -> tuple[float, float]:
    """The page height and width of the dimension chains."""
    below = beside = 0.0
    for item in items:
        if isinstance(item, DimensionChain):
            if item.axis == "x":
                below = 4.0
            else:
                texts = [*(f"{gap} {item.unit}" for gap in item.gaps), item.total]
                beside = 5.0 + max(map(len, texts))
    return below, beside


def _margins(items: Iterable[Item], detail: Detail, *, bare: bool = False) -> list[Margin]:
    margins: list[Margin] = []
    for item in items:
        if isinstance(item, Stroke):
            if item.role != "member":
                margins.append((*item.start, 0.5, 0.5, 0.5, 0.5))
                margins.append((*item.end, 0.5, 0.5, 0.5, 0.5))
        elif isinstance(item, Glyph):
            margins.append(_of_mark(item, 0.0 if bare else detail.symbol))
        elif isinstance(item, Arrow):
            if item.length is not None or not bare:
                margins.append(_of_arrow(item, detail))
        elif isinstance(item, Tag) and item.along is None and detail.words != "none" and not bare:
            margins.append(_of_label(item, detail))
    return margins or [(0.0, 0.0, 1.0, 1.0, 1.0, 1.0)]


def _of_mark(mark: Glyph, symbol: float) -> Margin:
    if mark.symbol not in ("pin", "roller", "link"):
        return (*mark.at, 0.75, 0.75, 1.0, 1.0)
    x, y = (-mark.toward[0], mark.toward[1])
    symbol = support_size(mark.toward, symbol) if symbol else 0.0
    if mark.symbol == "link":
        x, y, symbol = -x, -y, symbol * LINK
    ex, ey, half = x * symbol, y * symbol, 0.6 * min(symbol, 5.0)
    wide, high = half * abs(y), half * abs(x)
    return (
        *mark.at,
        max(0.75, wide - min(ex, 0)),
        max(0.75, wide + max(ex, 0)),
        max(1.0, high - min(ey, 0)),
        max(1.0, high + max(ey, 0)),
    )


def _of_arrow(arrow: Arrow, detail: Detail) -> Margin:
    x, y = outward_on_page(arrow)
    at = arrow.at
    reach = detail.arrow + TAIL
    if arrow.length is not None:
        out = arrow.outward
        at = (at[0] + arrow.length * out[0], at[1] + arrow.length * out[1])
        reach = 0.0
    words = len(arrow.texts[0]) if arrow.texts and detail.words != "none" else 0
    ex, ey = x * reach, y * reach
    if not words:
        return (*at, max(0.5, -ex), max(0.5, ex), max(1.0, -ey), max(1.0, ey))
    if abs(y) < 0.35 and arrow.length is None:
        need = max(reach, words + 0.5)
        return (*at, need if x < 0 else 1.0, need if x > 0 else 1.0, 3.0, 1.0)
    if detail.words == "beside" and abs(x) < 0.35 and arrow.length is None:
        return (*at, max(0.5, -ex), words + 1.5, max(1.0, -ey), max(1.0, ey))
    cx, cy = ex + x * (words / 2 + 1.5), ey + y * 2.0
    half = words / 2 + 0.5
    return (*at, max(0.5, half - cx), max(0.5, half + cx), max(1.0, 1 - cy), max(1.0, 1 + cy))


def _of_label(label: Tag, detail: Detail) -> Margin:
    words = len(label.texts[0])
    x, y = label.away[0], -label.away[1]
    extra = label.beyond * support_size(label.away, detail.symbol)
    cx = x * (words / 2 + 1 + extra)
    cy = y * (2.0 + extra)
    half = words / 2 + 0.25
    return (*label.at, half - cx, half + cx, 1 - cy, 1 + cy)


def _scale(margins: Sequence[Margin], wide: float, high: float) -> float:
    across = _largest([(m[0], m[2], m[3]) for m in margins], wide)
    return min(across, _largest([(-m[1], m[4], m[5]) for m in margins], high))


def _largest(points: Sequence[tuple[float, float, float]], room: float) -> float:
    """The largest scale at which points with their margins fit into `room`; inf if any does.

    What is needed grows with the scale as a convex function: Newton's steps come down on it.
    """
    places = [p for p, _, _ in points]
    span = max(places) - min(places)
    if span <= 0:
        return math.inf
    scale = max(room, 0.0) / span
    for _ in range(12):
        last = max(points, key=lambda p: scale * p[0] + p[2])
        first = min(points, key=lambda p: scale * p[0] - p[1])
        need = scale * (last[0] - first[0]) + last[2] + first[1]
        if need <= room + 1e-9:
            return scale
        apart = last[0] - first[0]
        if apart <= 0 or room - last[2] - first[1] <= 0:
            return 0.0
        scale = (room - last[2] - first[1]) / apart
    return scale


def _reach(points: Sequence[tuple[float, float, float]], scale: float) -> tuple[float, float]:
    return (
        min(scale * p - before for p, before, _ in points),
        max(scale * p + after for p, _, after in points),
    )

"""Where does everything stand on the page? From the display list to lines, signs and words to place.

All points are in page units (see `page`): y is down.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Literal

from tutor.figure.page import TAIL, Page, outward_on_page, page_for, support_size
from tutor.figure.parts import (
    Arrow,
    Dimension,
    Figure,
    Label,
    Mark,
    Point,
    Role,
    Slope,
    Stroke,
    Symbol,
    Turn,
    Turning,
    plain,
)
from tutor.figure.placing import Board, Placed, Spot, Words, around, place, place_alike
from tutor.figure.space import FULL, between

Pattern = Literal["solid", "double", "dotted", "dashed", "dash-dot", "heavy"]

PATTERNS: dict[Role, Pattern] = {
    "member-compression": "double",
    "member-zero": "dotted",
    "line-of-action": "dashed",
    "slope": "solid",
    "moment-arm": "dash-dot",
}
"""How a line of each role is drawn; solid where nothing is said."""


@dataclass(frozen=True)
class Line:
    """A straight line; `owner` is a number of its own for every line that words may sit on."""

    start: Point
    end: Point
    role: Role
    pattern: Pattern
    owner: int = 0
    sign: bool = False
    name: str = ""
    lit: bool = False


@dataclass(frozen=True)
class Head:
    """An arrow head with its tip at `tip`, pointing along the page vector `toward`."""

    tip: Point
    toward: Point
    role: Role
    lit: bool = False


@dataclass(frozen=True)
class Sign:
    """A symbol at `at`; `toward` and `across` are page vectors, `size` its reach."""

    at: Point
    symbol: Symbol
    role: Role
    toward: Point
    across: Point
    size: float
    lit: bool = False


@dataclass(frozen=True)
class Chain:
    """A dimension line: level at y = `across` from the stops in x, or upright at x = `across`.

    `words`: (centre along the chain, text); `after` follows its end.
    """

    upright: bool
    across: float
    stops: tuple[float, ...]
    words: tuple[tuple[float, str], ...]
    after: str = ""


@dataclass
class Sheet:
    """Everything on one page, before words have found their places."""

    page: Page
    say: Callable[[str], str] = plain
    lines: list[Line] = field(default_factory=list)
    heads: list[Head] = field(default_factory=list)
    signs: list[Sign] = field(default_factory=list)
    chains: list[Chain] = field(default_factory=list)
    names: list[Words] = field(default_factory=list)
    forces: list[Words] = field(default_factory=list)
    words: list[Words] = field(default_factory=list)
    turning: Turn | None = None
    unit: str = ""


def lay_out(
    figure: Figure,
    columns: float,
    rows: float,
    *,
    snap: bool,
    say: Callable[[str], str] = plain,
) -> Sheet:
    """`figure` on a page of `columns` by `rows` cells; `snap` puts joints into cell centres.

    `say` makes every word fit for the writer.
    """
    page = page_for(figure, columns, rows, snap=snap)
    sheet = Sheet(page, say, unit=say(figure.unit))
    names: list[Words] = []
    forces: list[Words] = []
    values: list[Words] = []
    others: list[Words] = []
    owners: dict[tuple[Point, Point], int] = {}
    arrows = [item for item in figure.items if isinstance(item, Arrow)]
    roomy = _roomy(figure, page)
    for item in figure.items:
        if isinstance(item, Stroke):
            _stroke(sheet, item, owners)
        elif isinstance(item, Mark):
            _mark(sheet, item)
        elif isinstance(item, Arrow):
            forces += _arrow(sheet, item)
        elif isinstance(item, Label):
            if item.along is not None:
                values.append(_on_line(sheet, item, owners.get(item.along, 0)))
            elif item.role == "joint":
                names.append(_name(sheet, item, roomy))
            else:
                others.append(_beside(sheet, item))
        elif isinstance(item, Slope):
            others += _slope(sheet, item, arrows)
        elif isinstance(item, Dimension):
            chain = _chain(sheet, item) if page.detail.dimensions else None
            sheet.chains += [chain] if chain is not None else []
        elif isinstance(item, Turning):
            sheet.turning = item.sense
    sheet.words = [*others, *values]
    sheet.names, sheet.forces = names, forces
    return sheet


def _stroke(sheet: Sheet, stroke: Stroke, owners: dict[tuple[Point, Point], int]) -> None:
    owner = owners[(stroke.start, stroke.end)] = len(owners) + 1
    place = sheet.page.place
    pattern: Pattern = PATTERNS.get(stroke.role, "solid")
    if stroke.lit and pattern == "solid":
        pattern = "heavy"
    sheet.lines.append(
        Line(
            place(stroke.start),
            place(stroke.end),
            stroke.role,
            pattern,
            owner,
            name=stroke.name,
            lit=stroke.lit,
        )
    )


def _mark(sheet: Sheet, mark: Mark) -> None:
    toward, across = (mark.toward[0], -mark.toward[1]), (mark.across[0], -mark.across[1])
    size = support_size(toward, sheet.page.detail.symbol)
    at = sheet.page.place(mark.at)
    sheet.signs.append(Sign(at, mark.symbol, mark.role, toward, across, size, mark.lit))


def _arrow(sheet: Sheet, arrow: Arrow) -> Iterator[Words]:
    """The arrow's shaft and head on the sheet; its words to place."""
    page = sheet.page
    x, y = outward_on_page(arrow)
    near = page.place(arrow.at)
    if arrow.beside:
        side_x, side_y = y, -x
        turn = arrow.beside * (-1 if arrow.pushes else 1)
        near = (near[0] + turn * 2 * side_x, near[1] + turn * 2 * side_y)
    reach = page.detail.arrow + TAIL if arrow.length is None else arrow.length * page.scale
    gap = _first_cell(x, y)
    reach = max(reach, gap + 2.0)
    end = (near[0] + reach * x, near[1] + reach * y)
    start = (near[0] + gap * x, near[1] + gap * y) if arrow.pushes else near
    pattern: Pattern = "dashed" if arrow.dashed else "solid"
    sheet.lines.append(Line(start, end, arrow.role, pattern, sign=True, lit=arrow.lit))
    tip, way = (start, (-x, -y)) if arrow.pushes else (end, (x, y))
    sheet.heads.append(Head(tip, way, arrow.role, arrow.lit))
    if arrow.texts:
        texts = tuple(
            (t, tuple(_arrow_spots(near, end, x, y, len(t), arrow)))
            for t in map(sheet.say, arrow.texts)
        )
        yield Words(texts, arrow.role, end, kept=True, lit=arrow.lit)


def _first_cell(x: float, y: float) -> float:
    """How far along (x, y) the neighbouring cell begins that a head at a joint stands in."""
    return min(1.0 / abs(x) if abs(x) > 1e-9 else 9.0, 2.0 / abs(y) if abs(y) > 1e-9 else 9.0)


def _arrow_spots(
    near: Point, end: Point, x: float, y: float, length: int, arrow: Arrow
) -> Iterator[Spot]:
    half = length / 2 + 1.5
    middle = ((near[0] + end[0]) / 2, (near[1] + end[1]) / 2)
    beyond = (end[0] + x * half, end[1] + y * 2)
    if abs(y) < 0.35:
        if arrow.length is None:
            outer = end[0] + (length / 2 if x < 0 else -length / 2)
            for at in (middle[0] + 0.5 * x, outer):
                yield at, middle[1] - 2, 0.0
                yield at, middle[1] + 2, 0.3
        yield (*beyond, 0.4)
        for part in (0.6, 0.75):
            at = near[0] + part * (end[0] - near[0])
            yield at, near[1] + part * (end[1] - near[1]) - 2, 0.6
            yield at, near[1] + part * (end[1] - near[1]) + 2, 0.7
        return
    if abs(x) < 0.35:
        yield end[0], end[1] + math.copysign(2.0, y), 0.0
        yield end[0], end[1] + math.copysign(1.0, y), 0.2
    yield (*beyond, 0.3)
    for part in (1.0, 0.8, 0.6):
        px, py = near[0] + part * (end[0] - near[0]), near[1] + part * (end[1] - near[1])
        lean = 0.3 * (1 - part)
        yield px + half, py, 0.5 + lean
        yield px - half, py, 0.6 + lean


def _roomy(figure: Figure, page: Page) -> bool:
    """Whether joints are far enough apart for a name to be told to its joint from a little off."""
    lengths = [math.dist(s.start, s.end) for s in figure.items if isinstance(s, Stroke) and s.name]
    return page.scale * min(lengths, default=math.inf) >= 3.0


def _name(sheet: Sheet, label: Label, roomy: bool) -> Words:
    at = sheet.page.place(label.at)
    prefer = math.atan2(label.away[1], label.away[0])
    texts = tuple(
        (
            text,
            tuple(
                (at[0] + dx, at[1] + dy, far + 0.9 * between(turn % FULL, prefer))
                for dx, dy, turn, far in around(len(text))
            ),
        )
        for text in map(sheet.say, label.texts)
    )
    return Words(texts, label.role, at, kept=roomy, lit=label.lit, limit=6.0 if roomy else 1.8)


def _beside(sheet: Sheet, label: Label) -> Words:
    """Words on one side of a point, or past the symbol there."""
    page = sheet.page
    at = page.place(label.at)
    x, y = label.away[0], -label.away[1]
    texts = []
    for text in map(sheet.say, label.texts):
        half = len(text) / 2 + 1
        spots: list[Spot] = []
        for extra in (0.0, 1.0, 2.0):
            out = extra + label.beyond * support_size(label.away, page.detail.symbol)
            px, py = at[0] + x * out, at[1] + y * out
            spots.append((px + x * half, py + y * 2, 0.3 * extra))
            spots.append((px + half, py, 0.8 + 0.3 * extra))
            spots.append((px - half, py, 0.9 + 0.3 * extra))
            spots.append((px, py + (2 if y >= 0 else -2), 1.0 + 0.3 * extra))
        texts.append((text, tuple(spots)))
    return Words(tuple(texts), label.role, at, lit=label.lit, limit=6.0)


def _on_line(sheet: Sheet, label: Label, owner: int) -> Words:
    """Words on a member: on the line where enough of it stays visible, else close beside it."""
    assert label.along is not None
    page = sheet.page
    (x0, y0), (x1, y1) = page.place(label.along[0]), page.place(label.along[1])
    length = math.hypot(x1 - x0, y1 - y0) or 1.0
    ux, uy = (x1 - x0) / length, (y1 - y0) / length
    texts = []
    for text in map(sheet.say, label.texts):
        level = abs(uy) < 0.6 * abs(ux)
        shown = f" {text} " if level else text
        wide = len(shown)
        inside = min(wide / abs(ux) if ux else 1e9, 2 / abs(uy) if uy else 1e9)
        spots: list[Spot] = []
        for part in (0.5, 0.44, 0.56, 0.38, 0.62, 0.32, 0.68):
            px, py = x0 + part * (x1 - x0), y0 + part * (y1 - y0)
            if length - inside >= 4.0:
                spots.append((px, py, 3 * abs(part - 0.5)))
        texts.append((shown, tuple(spots)))
        half, beside = len(text) / 2 + 0.8, []
        for part in (0.5, 0.4, 0.6):
            px, py = x0 + part * (x1 - x0), y0 + part * (y1 - y0)
            extra = 3 * abs(part - 0.5)
            if level:
                beside += [(px, py - 2, 0.4 + extra), (px, py + 2, 0.6 + extra)]
            else:
                beside += [(px + half, py, 0.4 + extra), (px - half, py, 0.5 + extra)]
        texts.append((text, tuple(beside)))
    return Words(
        tuple(texts), label.role, ((x0 + x1) / 2, (y0 + y1) / 2), owner, lit=label.lit, limit=3.0
    )


def _slope(sheet: Sheet, slope: Slope, arrows: Sequence[Arrow]) -> Iterator[Words]:
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
        spots: list[Spot] = [
            (middle[0] + sx, middle[1] + sy, cost)
            for sx, sy, cost in ((half, 0, 0.2), (-half, 0, 0.3), (0, -2, 0.0), (0, 2, 0.1))
        ]
        yield Words(((text, tuple(spots)),), "slope", middle, limit=6.0)
        return
    end = (start[0] + size * x, start[1] + size * y)
    corner = _free_corner(slope, arrows, start, end)
    for one, other in ((start, corner), (corner, end)):
        sheet.lines.append(Line(one, other, "slope", "solid", sign=True))
    run_y = corner[1] + math.copysign(2.0, corner[1] - (start[1] + end[1]) / 2)
    run_x, rise_y = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2
    side = math.copysign(len(slope.rise) / 2 + 1, corner[0] - run_x)
    yield Words(((slope.run, ((run_x, run_y, 0.0),)),), "slope", corner, limit=6.0)
    yield Words(((slope.rise, ((corner[0] + side, rise_y, 0.0),)),), "slope", corner, limit=6.0)


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


def _chain(sheet: Sheet, dimension: Dimension) -> Chain | None:
    """The fullest wording of a dimension chain that fits; None where nothing does."""
    page, say = sheet.page, sheet.say
    upright = dimension.axis == "y"
    if upright:
        places = [page.place((0.0, stop))[1] for stop in dimension.stops]
        across = page.right_edge + 1.5
    else:
        places = [page.place((stop, 0.0))[0] for stop in dimension.stops]
        across = page.bottom_edge + 2.0
        if page.snap:
            last = math.floor((page.bottom_edge + 0.99) / 2)
            across = 2.0 * min(last + 2, math.floor(page.rows) - 1) + 1.0
    if page.snap and upright:
        across = math.floor(across) + 0.5
    unit = say(dimension.unit)
    full = [(i, i + 1, f"{gap} {unit}") for i, gap in enumerate(dimension.gaps)]
    bare = [(i, i + 1, gap) for i, gap in enumerate(dimension.gaps)]
    total = [(0, len(places) - 1, dimension.total)]
    room = page.columns if not upright else 2.0 * page.rows
    after_fits = max(places) + 2 + len(unit) <= room
    for pieces, after in ((full, ""), (bare, unit), (list(dimension.runs), ""), (total, "")):
        if after and (upright or not after_fits):
            continue
        if all(_fits(places, piece, upright) for piece in pieces):
            stops = sorted({places[i] for piece in pieces for i in piece[:2]})
            words = tuple(((places[i] + places[j]) / 2, text) for i, j, text in pieces)
            return Chain(upright, across, tuple(stops), words, after)
    return None


def _fits(places: Sequence[float], piece: tuple[int, int, str], upright: bool) -> bool:
    apart = abs(places[piece[1]] - places[piece[0]])
    return apart >= 4.0 if upright else apart >= len(piece[2]) + 2


def place_all(board: Board, sheet: Sheet, first: Sequence[Words] = ()) -> Iterator[Placed]:
    """Every word of the sheet that finds a place: forces, names, then the rest."""
    loads = [words for words in sheet.forces if words.role == "load"]
    others = [words for words in sheet.forces if words.role != "load"]
    for words in (*first, *others):
        placed = place(board, words)
        if placed is not None:
            yield placed
    alike, level = place_alike(board, loads)
    yield from alike
    bare = level > 0 or any(words.owner for words in sheet.words)
    note = [_unit_note(sheet)] if bare and sheet.unit and sheet.page.rows >= 8 else []
    for words in (*sheet.names, *sheet.words, *note):
        placed = place(board, words)
        if placed is not None:
            yield placed


def _unit_note(sheet: Sheet) -> Words:
    """The unit of bare numbers, in a corner."""
    text = f"forces in {sheet.unit}"
    near, far = len(text) / 2 + 1, sheet.page.columns - len(text) / 2 - 1
    high, low = 1.5, 2.0 * sheet.page.rows - 1.5
    spots = ((far, high, 0.0), (near, high, 0.1), (far, low, 0.1), (near, low, 0.2))
    return Words(((text, spots),), "note", (near, high), limit=2.0)

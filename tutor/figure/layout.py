"""Where does everything stand on the page? From the display list to lines, signs and words to place.

All points are in page units (see `page`): y is down.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence

from tutor.figure.heads import Heads
from tutor.figure.laid_out import PATTERNS, ArrowHead, Chain, LaidOut, Pattern, Sign, StraightLine
from tutor.figure.page import TAIL, outward_on_page, page_for, support_size
from tutor.figure.parts import (
    Arrow,
    DimensionChain,
    Figure,
    Glyph,
    Point,
    Rail,
    Slope,
    Stroke,
    Tag,
    Turning,
    plain,
)
from tutor.figure.placing import Placed, PlacedWords, Slots, place, place_alike
from tutor.figure.slopes import slope_words
from tutor.figure.spots import arrow_spots, is_roomy, line_words, name_words, side_words

TOUCHED = 0.25
"""What the name of a reaction costs with a line right before or behind it; members end at its joint."""


def lay_out(
    figure: Figure,
    columns: float,
    rows: float,
    *,
    snap: bool,
    say: Callable[[str], str] = plain,
) -> LaidOut:
    """`figure` on a page of `columns` by `rows` cells; `snap` puts joints into cell centres.

    `say` makes every word fit for the writer.
    """
    page = page_for(figure, columns, rows, snap=snap)
    sheet = LaidOut(page, say, unit=say(figure.unit))
    names: list[PlacedWords] = []
    forces: list[PlacedWords] = []
    values: list[PlacedWords] = []
    others: list[PlacedWords] = []
    arrows = [item for item in figure.items if isinstance(item, Arrow)]
    roomy = is_roomy(figure, page)
    owners = _lines_and_marks(sheet, figure)
    heads = Heads(sheet)
    for item in figure.items:
        if isinstance(item, Arrow):
            forces += _arrow(sheet, item, heads)
        elif isinstance(item, Tag):
            if item.along is not None:
                values.append(line_words(sheet, item, owners.get(item.along, 0)))
            elif item.role == "joint":
                names.append(name_words(sheet, item, roomy))
            else:
                others.append(side_words(sheet, item))
        elif isinstance(item, Slope):
            others += slope_words(sheet, item, arrows)
        elif isinstance(item, DimensionChain):
            chain = _chain(sheet, item) if page.detail.dimensions else None
            sheet.chains += [chain] if chain is not None else []
        elif isinstance(item, Turning):
            sheet.turning = item.sense
    sheet.words = [*others, *values]
    sheet.names, sheet.forces = names, forces
    return sheet


def _lines_and_marks(sheet: LaidOut, figure: Figure) -> dict[tuple[Point, Point], int]:
    """What stands where the figure says, put on the sheet; the owner of each line of the truss."""
    owners: dict[tuple[Point, Point], int] = {}
    for item in figure.items:
        if isinstance(item, Stroke):
            _stroke(sheet, item, owners)
        elif isinstance(item, Glyph):
            _mark(sheet, item)
        elif isinstance(item, Rail):
            sheet.lines.append(_rail(sheet, item))
    return owners


def _stroke(sheet: LaidOut, stroke: Stroke, owners: dict[tuple[Point, Point], int]) -> None:
    owner = owners[(stroke.start, stroke.end)] = len(owners) + 1
    place = sheet.page.place
    pattern: Pattern = PATTERNS.get(stroke.role, "solid")
    if stroke.lit and pattern == "solid":
        pattern = "heavy"
    sheet.lines.append(
        StraightLine(
            place(stroke.start),
            place(stroke.end),
            stroke.role,
            pattern,
            owner,
            name=stroke.name,
            lit=stroke.lit,
        )
    )


def _mark(sheet: LaidOut, mark: Glyph) -> None:
    toward, across = (mark.toward[0], -mark.toward[1]), (mark.across[0], -mark.across[1])
    size = support_size(toward, sheet.page.detail.symbol)
    at = sheet.page.place(mark.at)
    sheet.signs.append(Sign(at, mark.symbol, mark.role, toward, across, size, mark.lit))


def _arrow(sheet: LaidOut, arrow: Arrow, heads: Heads) -> Iterator[PlacedWords]:
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
    if page.snap:
        stood = heads.set(near, start if arrow.pushes else end, end, (x, y))
        near, end = stood.near, stood.end
        start = stood.tip if arrow.pushes else near
    pattern: Pattern = "dashed" if arrow.dashed else "solid"
    sheet.lines.append(StraightLine(start, end, arrow.role, pattern, sign=True, lit=arrow.lit))
    tip, way = (start, (-x, -y)) if arrow.pushes else (end, (x, y))
    sheet.heads.append(ArrowHead(tip, way, arrow.role, arrow.lit))
    if arrow.texts:
        texts = tuple(
            (t, tuple(arrow_spots(near, end, x, y, len(t), arrow, page.columns)))
            for t in map(sheet.say, arrow.texts)
        )
        touching = TOUCHED if arrow.role == "reaction" else 0.0
        yield PlacedWords(texts, arrow.role, end, kept=True, lit=arrow.lit, touching=touching)


def _rail(sheet: LaidOut, rail: Rail) -> StraightLine:
    """The line over the free ends of a row of arrows."""
    page = sheet.page
    reach = page.detail.arrow + TAIL
    (x0, y0), (x1, y1) = page.place(rail.start), page.place(rail.end)
    dx, dy = reach * rail.outward[0], -reach * rail.outward[1]
    start, end = (x0 + dx, y0 + dy), (x1 + dx, y1 + dy)
    return StraightLine(start, end, rail.role, "solid", sign=True)


def _first_cell(x: float, y: float) -> float:
    """How far along (x, y) the neighbouring cell begins that a head at a joint stands in."""
    return min(1.0 / abs(x) if abs(x) > 1e-9 else 9.0, 2.0 / abs(y) if abs(y) > 1e-9 else 9.0)


def _chain(sheet: LaidOut, dimension: DimensionChain) -> Chain | None:
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
            last = math.floor((page.bottom_edge - 0.5) / 2)
            across = 2.0 * min(last + 2, math.floor(page.rows) - 1) + 1.0
    if page.snap and upright:
        across = math.floor(across) + 0.5
    unit = say(dimension.unit)
    full = [(i, i + 1, f"{gap} {unit}") for i, gap in enumerate(dimension.gaps)]
    bare = [(i, i + 1, gap) for i, gap in enumerate(dimension.gaps)]
    total = [(0, len(places) - 1, say(dimension.total))]
    room = page.columns if not upright else 2.0 * page.rows
    runs = [(i, j, say(text)) for i, j, text in dimension.runs]
    after_fits = max(places) + 2 + len(unit) <= room
    for pieces, after in ((full, ""), (bare, unit), (runs, ""), (total, "")):
        if after and (upright or not after_fits):
            continue
        if all(_fits(places, piece, upright, alone=len(pieces) == 1) for piece in pieces):
            stops = sorted({places[i] for piece in pieces for i in piece[:2]})
            words = tuple(((places[i] + places[j]) / 2, text) for i, j, text in pieces)
            return Chain(upright, across, tuple(stops), words, after)
    whole = say(dimension.total)
    if not upright and max(places) + 2 + len(whole) <= room:
        return Chain(upright, across, (places[0], places[-1]), (), whole)
    return None


def _fits(
    places: Sequence[float], piece: tuple[int, int, str], upright: bool, *, alone: bool
) -> bool:
    """Whether words stand beside their stretch alone; one alone has a tick above the other at least."""
    apart = abs(places[piece[1]] - places[piece[0]])
    if upright:
        return apart >= (2.0 if alone else 4.0)
    return apart >= len(piece[2]) + 2


def place_all(board: Slots, sheet: LaidOut, first: Sequence[PlacedWords] = ()) -> Iterator[Placed]:
    """Every word of the sheet that finds a place: slopes, forces, names, then the rest.

    The sides of a slope triangle can stand in few places, the words of a force in many.
    """
    slopes = [words for words in sheet.words if words.role == "slope"]
    loads = [words for words in sheet.forces if words.role == "load"]
    others = [words for words in sheet.forces if words.role != "load"]
    for words in (*first, *slopes, *others):
        placed = place(board, words)
        if placed is not None:
            yield placed
    alike, level = place_alike(board, loads)
    yield from alike
    bare = level > 0 or any(words.owner for words in sheet.words)
    note = [_unit_note(sheet)] if bare and sheet.unit and sheet.page.rows >= 8 else []
    rest = [words for words in sheet.words if words.role != "slope"]
    for words in (*sheet.names, *rest, *note):
        placed = place(board, words)
        if placed is not None:
            yield placed


def _unit_note(sheet: LaidOut) -> PlacedWords:
    """The unit of bare numbers, in a corner."""
    text = f"forces in {sheet.unit}"
    near, far = len(text) / 2 + 1, sheet.page.columns - len(text) / 2 - 1
    high, low = 1.5, 2.0 * sheet.page.rows - 1.5
    spots = ((far, high, 0.0), (near, high, 0.1), (far, low, 0.1), (near, low, 0.2))
    return PlacedWords(((text, spots),), "note", (near, high), limit=2.0)

"""What does a drawing look like on a screen or on paper? One self-contained SVG.

Nothing in it is fetched from elsewhere: no fonts, links or scripts. Words are escaped, and the
sentences of the figure are its description for screen readers.
"""

from __future__ import annotations

import math
import re
import zlib
from xml.sax.saxutils import escape

from tutor.figure.laid_out import ArrowHead, Chain, StraightLine
from tutor.figure.layout import lay_out, place_all
from tutor.figure.page import TALLEST, page_for, size_for
from tutor.figure.palette import DARK, LIGHT, PAPER, Inks
from tutor.figure.parts import Arrow, Figure, Point, Role, Turn, plain
from tutor.figure.placing import ACROSS, GLYPH, SIGN, STROKE, WORDS, Placed, Slots
from tutor.figure.svg_signs import path, sign_svg
from tutor.model.caution import CAUTION

UNIT = 8.0
"""Pixels of a page unit; a row is two of them, and so is a line of words."""
LETTERS = 14
FOOT = 11.0
SLOTS = 4
SHORT = 4.0
CLEAR = 2.0
"""So far beside a dimension's end no words begin, in page units."""
FONT = "Helvetica, Arial, 'Liberation Sans', 'DejaVu Sans', sans-serif"
DASHES = {"dotted": "0.1 6", "dashed": "7 5", "dash-dot": "9 3 1.5 3"}
NAMED = re.compile(r"\b([A-Z]\d*)_([A-Za-z0-9]+)")
NAMED_ROLES: frozenset[Role] = frozenset(
    ("reaction", "unknown", "member-tension", "member-compression", "member-zero", "highlight")
)


def to_svg(
    figure: Figure,
    *,
    dark: bool = False,
    width: float = 720,
    paper: bool = False,
    alone: bool = True,
) -> str:
    """`figure` as the text of an SVG, `width` pixels wide and as high as it needs.

    `dark`: for a dark ground; `paper`: black on white only; `alone`: with the caution below it, which
    only a page that has it already can leave out. Tension is a single line, compression
    a double one, a member without force is dotted.
    """
    palette = PAPER if paper else DARK if dark else LIGHT
    columns = _columns(width)
    rows = _rows(figure, columns)
    body, placed = _drawn(figure, columns, rows, palette)
    body += [_words(each, palette) for each in placed]
    return _document(figure, columns * UNIT, rows * 2 * UNIT, palette, body, alone)


def _drawn(
    figure: Figure, columns: int, rows: int, palette: Inks
) -> tuple[list[str], list[Placed]]:
    """Everything but the words of a figure, and the words in their places."""
    sheet = lay_out(figure, columns, rows, snap=False)
    board = Slots(columns, rows, SLOTS)
    body = [_line(line, palette) for line in sheet.lines]
    for line in sheet.lines:
        board.line(line.start, line.end, SIGN if line.sign else STROKE, line.owner)
    for head in sheet.heads:
        board.take(*head.tip, GLYPH)
        body.append(_head(head, palette))
    for sign in sheet.signs:
        board.take(*sign.at, GLYPH)
        shape, taken = sign_svg(sign, palette)
        for start, end in taken:
            board.line(start, end, SIGN)
        body.append(shape)
    body += [_chain(chain, board, palette) for chain in sheet.chains]
    if sheet.turning is not None:
        body.append(_turning(sheet.turning, palette))
        board.take(4.0, 3.0, WORDS, 7)
        board.take(4.0, 1.0, WORDS, 7)
    return body, list(place_all(board, sheet))


def height(figure: Figure, width: float) -> float:
    """How high, in pixels, `to_svg` makes a figure of this width."""
    return _rows(figure, _columns(width)) * 2 * UNIT


def cramped(figure: Figure, width: float) -> bool:
    """Whether arrows of no size of their own are so short in `to_svg` at this width that the head and
    the bar of a reaction stand on one another."""
    columns = _columns(width)
    page = page_for(figure, columns, TALLEST * columns / 2, snap=False)
    free = any(isinstance(item, Arrow) and item.length is None for item in figure.items)
    return free and page.detail.arrow < SHORT


def crossed(figure: Figure, width: float) -> bool:
    """Whether words lie across an arrow or a symbol in `to_svg` at this width, or anywhere else but in
    a place of their own."""
    columns = _columns(width)
    _, placed = _drawn(figure, columns, _rows(figure, columns), PAPER)
    return any(each.cost >= ACROSS for each in placed)


def _columns(width: float) -> int:
    return max(20, min(400, math.floor(width / UNIT)))


def _rows(figure: Figure, columns: int) -> int:
    return max(4, math.ceil(size_for(figure, columns)))


def _document(
    figure: Figure, wide: float, high: float, palette: Inks, body: list[str], alone: bool
) -> str:
    title = escape(plain(figure.title) or "Truss")
    about = escape(" ".join(plain(sentence) for sentence in (*figure.sentences, CAUTION)))
    letters = min(FOOT, 1.9 * wide / len(CAUTION))
    caution = (
        f'<text x="{wide / 2:g}" y="{high + FOOT:g}" text-anchor="middle" '
        f'font-size="{letters:.3g}" fill="{palette.word("dimension")}">{escape(CAUTION)}</text>'
    )
    foot = 2 * FOOT if alone else 0.0
    key = f"{zlib.crc32((title + about + palette.ground).encode('utf-8', 'replace')):08x}"
    return "\n".join(
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide:g} {high + foot:g}" '
            f'width="{wide:g}" height="{high + foot:g}" role="img" '
            f'aria-labelledby="title-{key} desc-{key}" font-family="{FONT}" '
            f'font-size="{LETTERS}" stroke-linecap="round" stroke-linejoin="round">',
            f'<title id="title-{key}">{title}</title>',
            f'<desc id="desc-{key}">{about}</desc>',
            f'<rect width="100%" height="100%" fill="{palette.ground}"/>',
            *body,
            *([caution] if alone else []),
            "</svg>\n",
        )
    )


def _line(line: StraightLine, palette: Inks) -> str:
    role: Role = "highlight" if line.lit else line.role
    colour = palette.line(role)
    thin = line.role in ("slope", "dimension", "line-of-action")
    broad = 5.0 if line.pattern == "heavy" else 1.2 if thin else 2.4
    shape = path([line.start, line.end])
    if line.pattern == "double":
        return (
            f'<path d="{shape}" stroke="{colour}" stroke-width="6.5" fill="none"/>'
            f'<path d="{shape}" stroke="{palette.ground}" stroke-width="3" fill="none"/>'
        )
    dashes = DASHES.get(line.pattern)
    rhythm = f' stroke-dasharray="{dashes}"' if dashes else ""
    drawn = f'<path d="{shape}" stroke="{colour}" stroke-width="{broad:g}" fill="none"{rhythm}/>'
    return drawn + (_slash(line, colour) if line.role == "reaction" and line.sign else "")


def _slash(line: StraightLine, colour: str) -> str:
    """The short bar across a reaction's arrow that tells it from a load."""
    (x0, y0), (x1, y1) = line.start, line.end
    length = math.hypot(x1 - x0, y1 - y0) or 1.0
    ux, uy = (x1 - x0) / length, (y1 - y0) / length
    x, y = (x0 + x1) / 2, (y0 + y1) / 2
    ends = [(x + s * (0.6 * ux - 0.8 * uy), y + s * (0.6 * uy + 0.8 * ux)) for s in (-1, 1)]
    return f'<path d="{path(ends)}" stroke="{colour}" stroke-width="1.8" fill="none"/>'


def _head(head: ArrowHead, palette: Inks) -> str:
    colour = palette.line("highlight" if head.lit else head.role)
    (x, y), (ux, uy) = head.tip, head.toward
    corners: list[Point] = [
        (x, y),
        (x - 1.5 * ux - 0.6 * uy, y - 1.5 * uy + 0.6 * ux),
        (x - 1.5 * ux + 0.6 * uy, y - 1.5 * uy - 0.6 * ux),
    ]
    return f'<path d="{path(corners)} Z" fill="{colour}" stroke="{colour}" stroke-width="1"/>'


def _chain(chain: Chain, board: Slots, palette: Inks) -> str:
    def at(along: float, aside: float = 0.0) -> Point:
        across = chain.across + aside
        return (across, along) if chain.upright else (along, across)

    colour = palette.line("dimension")
    low, high = min(chain.stops), max(chain.stops)
    strokes = [path([at(low), at(high)])]
    strokes += [path([at(stop, -0.7), at(stop, 0.7)]) for stop in chain.stops]
    board.line(at(low), at(high), SIGN)
    for stop in chain.stops:
        board.line(at(stop, -CLEAR), at(stop, CLEAR), SIGN)
    shapes = [f'<path d="{" ".join(strokes)}" stroke="{colour}" stroke-width="1.2" fill="none"/>']
    words = [(middle, text) for middle, text in chain.words]
    if chain.after:
        words.append((high + len(chain.after) / 2 + 1.0, chain.after))
    for middle, text in words:
        x, y = at(middle)
        x += len(text) / 2 + 1.0 if chain.upright else 0.0
        board.take(x, y, WORDS, len(text))
        shapes.append(_words(Placed(text, "dimension", x, y, on_line=not chain.upright), palette))
    return "".join(shapes)


def _turning(sense: Turn, palette: Inks) -> str:
    """A curved arrow in the corner and a plus: the positive turning direction."""
    centre, radius = (3.6, 3.2), 1.7
    turn = 1 if sense == "ccw" else -1
    arc: list[Point] = [
        (
            centre[0] + radius * math.cos(math.radians(step)),
            centre[1] - turn * radius * math.sin(math.radians(step)),
        )
        for step in range(-60, 201, 20)
    ]
    (x0, y0), (x1, y1) = arc[-2], arc[-1]
    length = math.hypot(x1 - x0, y1 - y0)
    head = ArrowHead(arc[-1], ((x1 - x0) / length, (y1 - y0) / length), "turning")
    colour = palette.line("turning")
    return (
        f'<path d="{path(arc)}" stroke="{colour}" stroke-width="1.8" fill="none"/>'
        + _head(head, palette)
        + _words(Placed("+", "turning", *centre), palette)
    )


def _words(placed: Placed, palette: Inks) -> str:
    text = placed.text.strip()
    colour = palette.word("highlight" if placed.lit else placed.role)
    x, y = placed.x * UNIT, placed.y * UNIT
    weight = ' font-weight="bold"' if placed.role == "joint" or placed.lit else ""
    behind = ""
    if placed.on_line:
        wide = len(text) * UNIT + 4
        behind = (
            f'<rect x="{x - wide / 2:.1f}" y="{y - UNIT:.1f}" width="{wide:.1f}" '
            f'height="{2 * UNIT:g}" fill="{palette.ground}"/>'
        )
    return (
        f'{behind}<text x="{x:.1f}" y="{y + 0.35 * LETTERS:.1f}" text-anchor="middle" '
        f'fill="{colour}" stroke="{palette.ground}" stroke-width="3" paint-order="stroke"{weight}>'
        f"{_subscripts(text, placed.role)}</text>"
    )


def _subscripts(text: str, role: Role) -> str:
    """Escaped words, with the index of A_x or F_AB set low."""
    if role not in NAMED_ROLES:
        return escape(text)
    pieces, last = [], 0
    for found in NAMED.finditer(text):
        low = f'<tspan dy="3" font-size="{LETTERS - 4}">{escape(found[2])}</tspan>'
        pieces.append(escape(text[last : found.start()]) + escape(found[1]) + low)
        last = found.end()
    rest = escape(text[last:])
    if pieces and rest:
        gap = ' dx="4"' if rest.startswith(" ") else ""
        rest = f'<tspan dy="-3"{gap}>{rest.lstrip()}</tspan>'
    return "".join(pieces) + rest

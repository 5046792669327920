"""Where may words go? The spots for names, forces and values, best first."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from tutor.figure.laid_out import LaidOut, StraightLine
from tutor.figure.page import PageScale, support_size
from tutor.figure.parts import Arrow, Figure, Point, Stroke, Tag
from tutor.figure.placing import PlacedWords, Spot, around
from tutor.figure.space import FULL, between
from tutor.model.crossing import cross


def arrow_spots(
    near: Point, end: Point, x: float, y: float, length: int, arrow: Arrow, columns: float
) -> Iterator[Spot]:
    """Where the words of an arrow may stand: past its free end first, on the page as wide as it is."""
    half = length / 2 + 1.5
    middle = ((near[0] + end[0]) / 2, (near[1] + end[1]) / 2)
    beyond = (end[0] + x * half, end[1] + y * 2)
    if abs(y) < 0.35:
        if arrow.length is None:
            outer = end[0] + (length / 2 if x < 0 else -length / 2)
            clear = (near[0] + x * (half + 0.5),) if arrow.role == "reaction" else ()
            for at in (middle[0] + 0.5 * x, outer, *clear):
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
        within = min(max(end[0], length / 2), columns - length / 2)
        if within != end[0]:
            yield within, end[1] + math.copysign(2.0, y), 0.25
    yield (*beyond, 0.3)
    for part in (1.0, 0.8, 0.6):
        px, py = near[0] + part * (end[0] - near[0]), near[1] + part * (end[1] - near[1])
        lean = 0.3 * (1 - part)
        yield px + half, py, 0.5 + lean
        yield px - half, py, 0.6 + lean


def is_roomy(figure: Figure, page: PageScale) -> bool:
    """Whether joints are far enough apart for a name to be told to its joint from a little off."""
    lengths = [math.dist(s.start, s.end) for s in figure.items if isinstance(s, Stroke) and s.name]
    return page.scale * min(lengths, default=math.inf) >= 3.0


def name_words(sheet: LaidOut, label: Tag, roomy: bool) -> PlacedWords:
    """The name of a joint: beside it, nearest to it of all joints, and with no member in between."""
    at = sheet.page.place(label.at)
    prefer = math.atan2(label.away[1], label.away[0])
    others = [s.at for s in sheet.signs if s.symbol == "joint" and s.at != at]
    members = [s for s in sheet.lines if s.owner and at not in (s.start, s.end)]
    texts = tuple(
        (
            text,
            tuple(
                (*spot, far + 0.9 * between(turn % FULL, prefer))
                for dx, dy, turn, far in around(len(text))
                if told_apart(at, spot := (at[0] + dx, at[1] + dy), others, members)
            ),
        )
        for text in map(sheet.say, label.texts)
    )
    limit = 9.0 if roomy else 5.0
    return PlacedWords(texts, label.role, at, kept=roomy, lit=label.lit, limit=limit, across=6.0)


def told_apart(
    at: Point, spot: Point, others: Sequence[Point], members: Sequence[StraightLine]
) -> bool:
    """Whether a name at `spot` is told to the joint at `at`: none is nearer, no member between."""
    off = math.dist(at, spot)
    if any(math.dist(other, spot) < off for other in others):
        return False
    return not any(cross(at, spot, line.start, line.end) for line in members)


def side_words(sheet: LaidOut, label: Tag) -> PlacedWords:
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
    return PlacedWords(tuple(texts), label.role, at, lit=label.lit, limit=6.0)


def line_words(sheet: LaidOut, label: Tag, owner: int) -> PlacedWords:
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
        for part in (0.5, 0.44, 0.56, 0.38, 0.62, 0.32, 0.68, 0.26, 0.74):
            px, py = x0 + part * (x1 - x0), y0 + part * (y1 - y0)
            if length - inside >= 4.0:
                spots.append((px, py, 3 * abs(part - 0.5)))
        texts.append((shown, tuple(spots)))
        half, beside = len(text) / 2 + 0.8, []
        for part in (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8):
            px, py = x0 + part * (x1 - x0), y0 + part * (y1 - y0)
            extra = 3 * abs(part - 0.5)
            if level:
                beside += [(px, py - 2, 0.4 + extra), (px, py + 2, 0.6 + extra)]
            else:
                beside += [(px + half, py, 0.4 + extra), (px - half, py, 0.5 + extra)]
        texts.append((text, tuple(beside)))
    return PlacedWords(
        tuple(texts), label.role, ((x0 + x1) / 2, (y0 + y1) / 2), owner, lit=label.lit, limit=2.0
    )

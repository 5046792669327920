"""Where do words fit? Greedy placement on a board of small slots that knows what is taken."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from tutor.figure.parts import Point, Role

STROKE, SIGN = 1, 2
"""Values of `Board.ink`: a line of the truss, or an arrow or a symbol."""
GLYPH, WORDS = 1, 2
"""Values of `Board.hard`: a joint or a head, or words; nothing is put on either."""

SETTLED = 0.45
"""Words that cost more than this did not get one of their first places."""

ACROSS = 6.0
"""What words cost that lie across an arrow, a symbol or a dimension line."""

OVER = 2.5
"""What words cost for each cell of a line of the truss that they cover, where they do not say more."""

Spot = tuple[float, float, float]
"""The centre of a place for words on the page, and what it costs to be there."""


class Slots:
    """What is taken on a page of `columns` by `rows` cells, in slots of 1/k of a cell."""

    def __init__(self, columns: int, rows: int, k: int = 1) -> None:
        self.k = k
        self.width, self.height = columns * k, rows * k
        size = self.width * self.height
        self.ink = bytearray(size)
        self.hard = bytearray(size)
        self.owner = [0] * size

    def slot(self, x: float, y: float) -> int | None:
        """The slot at a page point, or None outside the page."""
        column, row = math.floor(x * self.k), math.floor(y * self.k / 2)
        if 0 <= column < self.width and 0 <= row < self.height:
            return row * self.width + column
        return None

    def line(self, start: Point, end: Point, value: int, owner: int = 0) -> None:
        """Take the slots under a line."""
        steps = max(1, math.ceil(max(abs(end[0] - start[0]), abs(end[1] - start[1]) / 2) * self.k))
        dx, dy = (end[0] - start[0]) / steps, (end[1] - start[1]) / steps
        for step in range(steps + 1):
            slot = self.slot(start[0] + step * dx, start[1] + step * dy)
            if slot is not None:
                self.ink[slot] = value
                self.owner[slot] = owner

    def take(self, x: float, y: float, value: int, length: int = 1) -> None:
        """Take the cells of `length` characters centred at a page point for a glyph or words."""
        column, row = self.corner(x, y, length)
        for line in range(max(0, row), min(self.height, row + self.k)):
            first, last = max(0, column), min(self.width, column + length * self.k)
            if last > first:
                start = line * self.width
                self.hard[start + first : start + last] = bytes([value]) * (last - first)

    def corner(self, x: float, y: float, length: int) -> tuple[int, int]:
        """The first slot (column, row) of `length` characters centred at a page point."""
        column = math.floor((x - length / 2) * self.k + 0.5)
        return column, math.floor((y / 2 - 0.5) * self.k + 0.5)

    def cost(
        self,
        x: float,
        y: float,
        length: int,
        owner: int = 0,
        touching: float = 0.0,
        across: float = OVER,
    ) -> float | None:
        """What it costs to put words here; None where they may not go.

        `touching` is what it costs to have a line right before or behind them, `across` to cover a
        cell of a line of the truss.
        """
        k, width = self.k, self.width
        column, row = self.corner(x, y, length)
        if column < 0 or row < 0 or column + length * k > width or row + k > self.height:
            return None
        before, after = min(column, k), min(width - column - length * k, k)
        total = 0.0
        for line in range(row, row + k):
            start = line * width + column
            end = start + length * k
            if self.hard.count(0, start, end) != end - start:
                return None
            if self.hard.find(WORDS, start - before, end + after) >= 0:
                return None
            if self.hard.find(GLYPH, start - before, end + after) >= 0:
                total += 0.8 / k
            if self.ink.count(0, start - before, end + after) != end - start + before + after:
                total += self._crossed(start, end, owner, across) / k
                touched = (*range(start - before, start), *range(end, end + after))
                total += touching * any(self.ink[slot] for slot in touched) / k
        return total

    def _crossed(self, start: int, end: int, owner: int, across: float) -> float:
        total = 0.0
        for slot in range(start, end):
            value = self.ink[slot]
            if value == SIGN:
                total += ACROSS
            elif value and not (owner and self.owner[slot] == owner):
                total += across
        return total


@dataclass(frozen=True)
class PlacedWords:
    """Words that want a place: alternatives, each with its own spots, best first.

    `owner` is the line they may cover; `kept` searches further out rather than leave them out;
    `touching` is what it costs to have a line right before or behind them, `across` to cover one.
    """

    texts: tuple[tuple[str, tuple[Spot, ...]], ...]
    role: Role
    anchor: Point
    owner: int = 0
    kept: bool = False
    lit: bool = False
    limit: float = 9.0
    touching: float = 0.0
    across: float = OVER


@dataclass(frozen=True)
class Placed:
    """Words in their place: `x`, `y` the centre on the page, `cost` what it cost to be there."""

    text: str
    role: Role
    x: float
    y: float
    lit: bool = False
    on_line: bool = False
    cost: float = 0.0


def place(board: Slots, words: PlacedWords) -> Placed | None:
    """The best place for `words`, taken on the board; None where there is no room.

    A shorter wording is taken where only that lies clear of arrows, symbols and dimension lines.
    """
    found = None
    for text, spots in words.texts:
        best = _best(board, len(text), spots, words)
        if best is not None and (found is None or best[2] < ACROSS):
            found = text, best
        if found is not None and found[1][2] < ACROSS:
            break
    if found is not None:
        return _take(board, words, *found)
    return _anywhere(board, words) if words.kept and words.texts else None


def _anywhere(board: Slots, words: PlacedWords) -> Placed | None:
    """The nearest place for words that have none of their own, clear of arrows where there is one."""
    text = words.texts[-1][0]
    nearest: Spot | None = None
    for dx, dy in _rings(len(text)):
        x, y = words.anchor[0] + dx, words.anchor[1] + dy
        cost = board.cost(x, y, len(text))
        if cost is None:
            continue
        if cost < ACROSS:
            return _take(board, words, text, (x, y, words.limit))
        nearest = nearest or (x, y, words.limit)
    return None if nearest is None else _take(board, words, text, nearest)


def place_alike(board: Slots, group: Sequence[PlacedWords]) -> tuple[list[Placed], int]:
    """Places for words of one kind, all equally full, and which fullness it is.

    The fullest wording is taken for which all find room, none lies across a sign or a dimension line,
    and few have to leave their first place.
    """
    levels = max((len(words.texts) for words in group), default=1)
    for level in range(levels - 1):
        before = bytes(board.hard)
        alike = [_alike(words, level) for words in group]
        placed = [place(board, words) for words in alike]
        found = [one for one in placed if one is not None]
        moved = sum(one.cost > SETTLED for one in found)
        clear = all(one.cost < ACROSS for one in found)
        if clear and len(found) == len(group) and moved <= max(1, len(group) // 4):
            return found, level
        board.hard[:] = before
    placed = [place(board, _alike(words, levels - 1, kept=words.kept)) for words in group]
    return [one for one in placed if one is not None], levels - 1


def _alike(words: PlacedWords, level: int, *, kept: bool = False) -> PlacedWords:
    text = words.texts[min(level, len(words.texts) - 1)]
    return replace(words, texts=(text,), kept=kept)


def _best(board: Slots, length: int, spots: Iterable[Spot], words: PlacedWords) -> Spot | None:
    """The cheapest of some spots, with what it costs there in all; None at the limit or more."""
    best: Spot | None = None
    least = words.limit
    for x, y, penalty in spots:
        if penalty >= least:
            continue
        cost = board.cost(x, y, length, words.owner, words.touching, words.across)
        if cost is not None and cost + penalty < least:
            least = cost + penalty
            best = (x, y, least)
            if least <= 0:
                break
    return best


def _take(board: Slots, words: PlacedWords, text: str, spot: Spot) -> Placed:
    length = len(text)
    column, row = board.corner(spot[0], spot[1], length)
    x = column / board.k + length / 2
    y = (row / board.k + 0.5) * 2
    board.take(x, y, WORDS, length)
    return Placed(text, words.role, x, y, words.lit, bool(words.owner), spot[2])


@lru_cache(maxsize=64)
def around(length: int) -> tuple[tuple[float, float, float, float], ...]:
    """Places for a name around a joint: offset on the page, its angle (y up), its extra distance."""
    places = []
    for row in (-1, 1):
        for start in range(-length - 1, 3):
            x = start + length / 2 - 0.5
            far = max(0.0, start - 1, -length - start)
            places.append((x, 2.0 * row, math.atan2(-2.0 * row, x), 0.5 * far))
    for gap in (0.0, 1.0):
        x = gap + 0.5 + length / 2
        places.append((x, 0.0, 0.0, 0.4 if gap == 0 else 0.15))
        places.append((-x, 0.0, math.pi, 0.4 if gap == 0 else 0.15))
    for row in (-2, 2):
        x = length / 2 - 0.5
        places.append((0.0, 2.0 * row, math.atan2(-4.0 * row, 0.0), 1.6))
        places.append((x + 1, 2.0 * row, math.atan2(-4.0 * row, x + 1), 2.0))
        places.append((-x - 1, 2.0 * row, math.atan2(-4.0 * row, -x - 1), 2.0))
    return tuple(places)


@lru_cache(maxsize=64)
def _rings(length: int) -> tuple[Point, ...]:
    """Offsets further and further out, for a name that must be somewhere."""
    near = [(float(dx), 2.0 * dy) for dy in range(-2, 3) for dx in range(-length - 3, length + 4)]
    return tuple(sorted(near, key=lambda p: (math.hypot(*p), p)))

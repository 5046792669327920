"""What stands on one page? Lines, heads, symbols, dimension chains and words that want a place.

All points are in page units (see `page`): y is down.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Literal

from tutor.figure.page import PageScale
from tutor.figure.parts import Point, Role, Symbol, Turn, plain
from tutor.figure.placing import PlacedWords

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
class StraightLine:
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
class ArrowHead:
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
class LaidOut:
    """Everything on one page, before words have found their places."""

    page: PageScale
    say: Callable[[str], str] = plain
    lines: list[StraightLine] = field(default_factory=list)
    heads: list[ArrowHead] = field(default_factory=list)
    signs: list[Sign] = field(default_factory=list)
    chains: list[Chain] = field(default_factory=list)
    names: list[PlacedWords] = field(default_factory=list)
    forces: list[PlacedWords] = field(default_factory=list)
    words: list[PlacedWords] = field(default_factory=list)
    turning: Turn | None = None
    unit: str = ""

"""What is on a drawing? The display list: marks and words in problem coordinates, each with a role.

x is to the right, y is up, lengths are the problem's. A role says what a thing *is*; how it looks
is the writers' affair. Symbols, heads and letters keep their size on every page, so they are held
by a point and a direction only.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tutor.text import visible

Point = tuple[float, float]

Role = Literal[
    "blank",
    "member",
    "member-tension",
    "member-compression",
    "member-zero",
    "joint",
    "support",
    "load",
    "reaction",
    "unknown",
    "dimension",
    "slope",
    "turning",
    "moment-point",
    "line-of-action",
    "moment-arm",
    "note",
    "highlight",
]
Symbol = Literal["joint", "pin", "roller", "link", "anchor", "moment-point", "right-angle"]
Turn = Literal["ccw", "cw"]


def plain(text: str) -> str:
    """`text` as plain words on one line: no control, format, bidi or zero-width characters."""
    return visible(text).replace("\n", " ")


@dataclass(frozen=True)
class Stroke:
    """A straight line from `start` to `end`; `name` is the member's, where it is one."""

    start: Point
    end: Point
    role: Role
    name: str = ""
    lit: bool = False


@dataclass(frozen=True)
class Glyph:
    """A symbol of fixed size at `at`.

    `toward` is a unit vector: for a support, how the ground pushes on the joint; for a link, from
    the joint to its fixed point; for a right angle, along the arm (`across` along the other leg).
    """

    at: Point
    symbol: Symbol
    role: Role
    toward: Point = (0.0, 1.0)
    across: Point = (1.0, 0.0)
    name: str = ""
    lit: bool = False


@dataclass(frozen=True)
class Arrow:
    """A force on the joint at `at`, acting along the unit vector `toward`.

    `pushes`: the head is at the joint; otherwise the tail is. `beside` moves the arrow off a member
    that lies in its way: +1 to the left of its direction, -1 to the right, 0 not. `length` is in
    problem units, or None for an arrow of fixed size. `texts` are the words beside it, the fullest
    first. `dashed` says that its size is not known yet.
    """

    at: Point
    toward: Point
    role: Role
    texts: tuple[str, ...] = ()
    name: str = ""
    pushes: bool = True
    beside: int = 0
    length: float | None = None
    dashed: bool = False
    lit: bool = False

    @property
    def outward(self) -> Point:
        """The unit vector from the joint to the arrow's free end."""
        return (-self.toward[0], -self.toward[1]) if self.pushes else self.toward


@dataclass(frozen=True)
class Rail:
    """The line over the free ends of a row of arrows of fixed size, from one arrow to another.

    `start` and `end` are where these two stand; `outward` is the unit vector to their free ends.
    """

    start: Point
    end: Point
    outward: Point
    role: Role


@dataclass(frozen=True)
class Tag:
    """Words near `at`, preferably on the side `away`; `texts` are alternatives, the fullest first.

    With `along` (the two ends of a member) the words sit on the line itself; `beyond` puts them
    past a symbol on that side that reaches so many support sizes.
    """

    at: Point
    texts: tuple[str, ...]
    role: Role
    away: Point = (0.0, 1.0)
    along: tuple[Point, Point] | None = None
    beyond: float = 0.0
    lit: bool = False


@dataclass(frozen=True)
class DimensionChain:
    """A chain of dimensions along one axis: `stops` in rising order, `gaps` the words between them.

    `runs` is the chain in short: (first stop, last stop, words) for every row of equal gaps;
    `total` is the words of the whole length; `unit` follows a chain of bare numbers.
    """

    axis: Literal["x", "y"]
    stops: tuple[float, ...]
    gaps: tuple[str, ...]
    runs: tuple[tuple[int, int, str], ...]
    total: str
    unit: str


@dataclass(frozen=True)
class Slope:
    """The slope triangle of the arrow of `length` at `at` along `outward`: `rise` in `run`."""

    at: Point
    outward: Point
    length: float
    rise: str
    run: str


@dataclass(frozen=True)
class Turning:
    """The mark of the positive turning direction: around `at`, or in a corner."""

    sense: Turn
    at: Point | None = None


Item = Stroke | Glyph | Arrow | Rail | Tag | DimensionChain | Slope | Turning


@dataclass(frozen=True)
class Figure:
    """One drawing: its items in drawing order, and the same facts as `sentences`.

    `unit` is the unit of bare numbers of force on it; `drawn` are the sentences on what the student drew.
    """

    title: str
    items: tuple[Item, ...]
    sentences: tuple[str, ...] = ()
    unit: str = ""
    drawn: tuple[str, ...] = ()

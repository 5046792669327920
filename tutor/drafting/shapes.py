"""Which trusses go by a name of the trade, and what are they for a span, height and panels?

The shapes are common practice, no source: Warren, Pratt and Howe with parallel chords and inclined
ends, a Fink roof with webs like a W (in eight panels with smaller ones in its halves), king and queen posts, and a cantilever on a wall. Joints are
named along the bottom chord from the left, then along the top.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from tutor.drafting.entries import EMPTY
from tutor.drafting.words import from_fraction
from tutor.model import Joint, Load, Member, Problem, Support
from tutor.model.amounts import amount
from tutor.model.read_parts import member_name
from tutor.notation import Exact
from tutor.text import raised

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
MOST_PANELS = 40
Share = tuple[Fraction, Fraction]
"""A joint's place as shares of the span and the height."""


@dataclass(frozen=True)
class Plan:
    """A shape without its size: places, members by place, supported and loaded joints.

    `held` are the places of the pin and of the roller, which pushes along `push` degrees.
    """

    places: tuple[Share, ...]
    members: tuple[tuple[int, int], ...]
    loaded: tuple[int, ...]
    held: tuple[int, int]
    push: int = 90


@dataclass(frozen=True)
class Shape:
    """A shape of the trade: its name, how it is planned, the panels it may have."""

    name: str
    plan: Callable[[int], Plan]
    panels: Sequence[int]

    @property
    def fixed(self) -> bool:
        """Whether it has no panels to choose."""
        return len(self.panels) == 1

    @property
    def usual(self) -> int:
        """The panels it has where none are named: four, where it can."""
        return 4 if 4 in self.panels else self.panels[0]

    @property
    def counts(self) -> str:
        """How many panels it may have, in words."""
        if isinstance(self.panels, range):
            return f"{self.panels[0]} to {self.panels[-1]}"
        return " or ".join(str(count) for count in self.panels)


def _warren(n: int) -> Plan:
    bottom = [(Fraction(i, n), Fraction(0)) for i in range(n + 1)]
    top = [(Fraction(2 * i + 1, 2 * n), Fraction(1)) for i in range(n)]
    first = n + 1
    web = [pair for i in range(n) for pair in ((i, first + i), (first + i, i + 1))]
    return Plan(
        (*bottom, *top),
        (*pairwise(range(n + 1)), *pairwise(range(first, first + n)), *web),
        tuple(range(1, n)) or (first,),
        (0, n),
    )


def _with_posts(n: int, falling: bool) -> Plan:
    """Posts in every panel; `falling` slopes fall towards the middle (Pratt), else rise (Howe)."""
    bottom = [(Fraction(i, n), Fraction(0)) for i in range(n + 1)]
    top = [(Fraction(i, n), Fraction(1)) for i in range(1, n)]

    def above(i: int) -> int:
        return n + i

    slopes = [
        (above(i), i + 1) if (2 * i < n - 1) == falling else (i, above(i + 1))
        for i in range(1, n - 1)
    ]
    return Plan(
        (*bottom, *top),
        (
            *pairwise(range(n + 1)),
            *pairwise(range(n + 1, 2 * n)),
            (0, above(1)),
            (above(n - 1), n),
            *((i, above(i)) for i in range(1, n)),
            *slopes,
        ),
        tuple(range(1, n)),
        (0, n),
    )


def _pratt(n: int) -> Plan:
    return _with_posts(n, falling=True)


def _howe(n: int) -> Plan:
    return _with_posts(n, falling=False)


def _fink(n: int) -> Plan:
    """Four panels, or eight, where each half of the roof has a smaller web of the same kind in it."""
    if n == 8:
        return _great_fink()
    third, quarter, half = Fraction(1, 3), Fraction(1, 4), Fraction(1, 2)
    bottom = [(i * third, Fraction(0)) for i in range(4)]
    top = [(quarter, half), (half, Fraction(1)), (3 * quarter, half)]
    members = ((0, 1), (1, 2), (2, 3), (0, 4), (4, 5), (5, 6), (6, 3))
    return Plan((*bottom, *top), (*members, (4, 1), (1, 5), (5, 2), (2, 6)), (4, 5, 6), (0, 3))


def _great_fink() -> Plan:
    """The left half by its joints along the tie and the rafter, mirrored; the ridge is in both."""
    half, ridge = Fraction(1, 2), (Fraction(1, 2), Fraction(1))
    tie = ((Fraction(0), Fraction(0)), (Fraction(1, 6), Fraction(0)), (Fraction(1, 3), Fraction(0)))
    rafter = tuple((Fraction(i, 8), Fraction(i, 4)) for i in (1, 2, 3))
    inner = ((Fraction(5, 12), half),)
    left = (*tie, *rafter, *inner)
    right = tuple((1 - x, y) for x, y in left)
    webs = ((1, 3), (1, 4), (2, 4), (4, 6), (5, 6), (2, 6))
    one = ((0, 1), (1, 2), (0, 3), (3, 4), (4, 5), (5, 14), (6, 14), *webs)
    other = tuple((a if a == 14 else a + 7, b if b == 14 else b + 7) for a, b in one)
    return Plan((*left, *right, ridge), (*one, (2, 9), *other), (3, 4, 5, 14, 10, 11, 12), (0, 7))


def _king(n: int) -> Plan:
    half = Fraction(1, 2)
    places = ((Fraction(0),) * 2, (half, Fraction(0)), (Fraction(1), Fraction(0)))
    members = ((0, 1), (1, 2), (0, 3), (3, 2), (1, 3))
    return Plan((*places, (half, Fraction(1))), members, (3,), (0, 2))


def _queen(n: int) -> Plan:
    third = Fraction(1, 3)
    bottom = [(i * third, Fraction(0)) for i in range(4)]
    top = [(third, Fraction(1)), (2 * third, Fraction(1))]
    members = ((0, 1), (1, 2), (2, 3), (0, 4), (4, 5), (5, 3), (1, 4), (2, 5), (4, 2))
    return Plan((*bottom, *top), members, (4, 5), (0, 3))


def _cantilever(n: int) -> Plan:
    bottom = [(Fraction(i, n), Fraction(0)) for i in range(n + 1)]
    top = [(Fraction(i, n), Fraction(1)) for i in range(n + 1)]
    first = n + 1
    posts = [(i, first + i) for i in range(n + 1)]
    slopes = [(first + i, i + 1) for i in range(n)]
    chords = (*pairwise(range(n + 1)), *pairwise(range(first, 2 * first)))
    return Plan((*bottom, *top), (*chords, *posts, *slopes), (2 * n + 1,), (0, first), push=0)


SHAPES: Mapping[str, Shape] = {
    shape.name.lower(): shape
    for shape in (
        Shape("Warren", _warren, range(1, MOST_PANELS + 1)),
        Shape("Pratt", _pratt, range(2, MOST_PANELS + 1)),
        Shape("Howe", _howe, range(2, MOST_PANELS + 1)),
        Shape("Fink", _fink, (4, 8)),
        Shape("king post", _king, (2,)),
        Shape("queen post", _queen, (3,)),
        Shape("cantilever", _cantilever, range(1, MOST_PANELS + 1)),
    )
}


def shaped(
    shape: Shape, span: Exact, height: Exact, panels: int, load: Exact | None, like: Problem = EMPTY
) -> Problem:
    """The truss of this shape, in the units and under the words of `like`.

    `load` acts downward on each joint that such a truss is usually loaded at; None for no loads.
    ValueError where a coordinate is out of bounds.
    """
    plan = shape.plan(panels)
    names = _names(len(plan.places))
    joints = tuple(
        Joint(name, times(span, x), times(height, y))
        for name, (x, y) in zip(names, plan.places, strict=True)
    )
    ends = [(names[one], names[other]) for one, other in plan.members]
    pin, roller = (names[place] for place in plan.held)
    push = None if plan.push == 90 else Exact.of(plan.push)
    loaded = () if load is None else plan.loaded
    return Problem(
        f"{raised(shape.name)} truss",
        like.force,
        like.length,
        joints,
        tuple(Member(member_name(*pair), *pair) for pair in ends),
        (Support(pin, "pin"), Support(roller, "roller", angle=push)),
        tuple(Load(names[place], (("down", load),)) for place in loaded if load is not None),
    )


def times(number: Exact, share: Fraction) -> Exact:
    """A share of a number, exact where it is."""
    if share == 1:
        return number
    if number.fraction is not None:
        return from_fraction(number.fraction * share)
    if share == 0:
        return Exact.of(0)
    made = amount(f"({number.text})*{share.numerator}/{share.denominator}")
    if not isinstance(made, Exact):
        raise ValueError(made.message)
    return made


def _names(count: int) -> list[str]:
    if count <= len(LETTERS):
        return list(LETTERS[:count])
    return [f"J{place}" for place in range(1, count + 1)]

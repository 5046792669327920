"""Which wrong contributions could stand for one force, and what speaks for each?"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from operator import itemgetter

from tutor.judge.blocks import TINY, rounded_by
from tutor.judge.costs import (
    BEYOND,
    LOOSE,
    MINUS_ASTRAY,
    MISPLACED,
    OTHER_SLOPE,
    UNSEEN,
)
from tutor.judge.factors import Factors
from tutor.judge.kind import Kind, Look
from tutor.judge.mistakes import KINDS
from tutor.judge.same import are_same, one_way
from tutor.judge.true_equation import TrueTerm
from tutor.model import Tolerance
from tutor.notation.elements.fact import fact, kept

PRECISELY = 3e-4
WIDEST_RADIUS = 0.01
ROUNDED_AT_MOST = 0.2
"""What is off by a larger share is another number, not a rounded one."""
UNEXPLAINED = KINDS["not-equilibrium"].cost


Made = tuple[float, float, str, tuple[str, ...]]
MAKERS = tuple(
    (
        kind,
        kind.variants,
        kind.code if kind.shows is not None or kind.of_whole else kind.touches,
    )
    for kind in KINDS.values()
    if kind.variants is not None
)


@fact
class Edit:
    """A wrong contribution and the mistakes, most telling first, that make it."""

    value: float
    codes: tuple[str, ...]
    cost: float


class Edits:
    """Wrong contributions at one force, cheapest first; those near to a number are found at once.

    Each is (cost, value, sort, codes). Of several of one sort that make the same number the cheapest
    is kept; which they are is seen only where it is asked for.
    """

    def __init__(self, made: Sequence[Made], true: float) -> None:
        self._made, self._true = made, true
        self._of: dict[str, Edits] = {}
        self._not = max(1e-6 * abs(true), 1e-12)

    @kept
    def every(self) -> tuple[Edit, ...]:
        """All of them."""
        return tuple(self._first_of_each(range(len(self._made))))

    @kept
    def in_parts(self) -> Edits:
        """Those that fit a force split into two terms: it was not taken whole."""
        made = [m for m in self._made if not any(KINDS[code].of_whole for code in m[3])]
        return Edits(made, self._true)

    def of(self, code: str) -> Edits:
        """Those of one mistake alone, looked out once."""
        if code not in self._of:
            made = [made for made in self._made if made[3] == (code,)]
            self._of[code] = Edits(made, self._true)
        return self._of[code]

    @kept
    def _by_value(self) -> tuple[list[float], list[int]]:
        values = [made[1] for made in self._made]
        order = sorted(range(len(values)), key=values.__getitem__)
        return [values[place] for place in order], order

    def near(self, value: float, within: float) -> list[Edit]:
        """Those of which `value` is off by at most `within` of their size, cheapest first, and a few more."""
        reach = 2.0 * within * abs(value) + TINY
        values, order = self._by_value
        places = order[bisect_left(values, value - reach) : bisect_right(values, value + reach)]
        return list(self._first_of_each(sorted(places)))

    def _first_of_each(self, places: Iterable[int]) -> Iterator[Edit]:
        """Of those at these places, in order, the first of each sort that makes a number."""
        seen: set[tuple[str, str]] = set()
        for place in places:
            cost, value, sort, codes = self._made[place]
            key = (sort, f"{value or 0.0:.6g}")
            if key not in seen and abs(value - self._true) > self._not:
                seen.add(key)
                yield Edit(value, codes, cost)


@fact
class TypedNumber:
    """A typed number or coefficient: its value, half-width and factors, at a scale of the line.

    `plain` is whether the line is not multiplied, or the number shows by what.
    """

    value: float
    radius: float
    factors: Factors
    scale: float
    plain: bool = True

    @property
    def unscaled(self) -> float:
        """Its value where the line is not multiplied."""
        return self.value / self.scale


def edits(spot: TrueTerm) -> Edits:
    """Every wrong contribution the catalogue makes at `spot`, cheapest first, made once.

    Besides each single mistake, a mistake that changes the size may come with a wrong sign. Of
    several mistakes that make the same number the cheapest is kept, and those that only the way it
    is typed tells apart.
    """
    return spot.once(_edits)


def _edits(spot: TrueTerm) -> Edits:
    found: list[Made] = []
    turned, scale = turning_code(spot), spot.scale
    more = KINDS[turned].cost
    for kind, variants, sort in MAKERS:
        own, both = (kind.code,), (kind.code, turned)
        for per_unit in variants(spot):
            value = per_unit * scale
            found.append((kind.cost, value, sort, own))
            if value != 0.0:
                found.append((kind.cost + more, -value, sort, both))
    found.sort(key=itemgetter(0))
    return Edits(found, spot.true)


def turning_code(spot: TrueTerm) -> str:
    """What a wrong sign at this spot is called."""
    if spot.lost_minus or spot.turned_already:
        return "minus"
    if spot.sense < 0:
        return "sense"
    return "turning" if spot.is_moment else "sign"


def named_at(code: str, spot: TrueTerm, others: Sequence[TrueTerm]) -> str:
    """The code of a mistake at a force; some have a name of their own there."""
    for kind in KINDS.values():
        if kind.instead_of == code and kind.where is not None and kind.where(spot, others):
            return kind.code
    return code


def closest(
    typed: TypedNumber, choices: Edits, spot: TrueTerm, tolerance: Tolerance
) -> Edit | None:
    """The most plausible wrong contribution that a typed number is, or None.

    One that is met only when rounded harder than typed, or against which the typed factors speak, is
    less plausible; one that is off by more than the first tolerance is the last resort.
    """
    best: Edit | None = None
    far: Edit | None = None
    value, radius, scale = typed.value, typed.radius, typed.scale
    near = choices.near(typed.unscaled, max(tolerance.remark, tolerance.silent + WIDEST_RADIUS))
    if not near:
        return None
    factors = typed.factors.without(scale) if abs(scale) != 1.0 else typed.factors
    look = Look(factors, radius > 0.0, spot.is_moment, spot.numeric)
    for edit in near:
        target = scale * edit.value
        off, size = abs(value - target), abs(target)
        kind = KINDS[edit.codes[0]]
        precise = off <= PRECISELY * size + radius
        if (kind.calculated and not precise) or (kind.shows and not kind.shows(look)):
            continue
        if off > tolerance.silent * size + min(radius, WIDEST_RADIUS * size):
            if far is None and off <= tolerance.remark * size:
                far = replace(edit, cost=edit.cost + LOOSE)
            continue
        cost = edit.cost + (0.0 if precise else LOOSE) + against(kind, typed, spot)
        if best is None or cost < best.cost:
            best = replace(edit, cost=cost)
    return best or far


def against(kind: Kind, typed: TypedNumber, spot: TrueTerm) -> float:
    """What the typed factors say against a mistake at this force.

    A mistake at the factor leaves the size as it was, and one at the size the factor; in a line that is
    multiplied a bare size has no factor.
    """
    if not spot.numeric:
        return MISPLACED if kind.code == "component" and _is_distance(typed, spot) else 0.0
    factors, scale = typed.factors, typed.scale
    size = factors.holds(spot.scale, scale) or factors.holds(spot.scale / spot.share)
    if factors.count < 2:
        given = not typed.plain and kind.touches == "factor" and factors.holds(spot.scale)
        return UNSEEN if given else 0.0
    factor = factors.holds(spot.per_unit, scale)
    if not size and not factor:
        return 0.0 if kind.counts == "too many" and factors.holds(spot.true, scale) else UNSEEN
    elsewhere = size and not factor if kind.touches == "size" else factor and not size
    return MISPLACED if elsewhere else 0.0


def _is_distance(typed: TypedNumber, spot: TrueTerm) -> bool:
    """Whether a lone number beside an unknown is how far its joint is from the moment point."""
    away = math.hypot(*spot.offset)
    return typed.factors.count == 1 and are_same(abs(typed.value), abs(typed.scale) * away)


def against_right(typed: TypedNumber, spot: TrueTerm, negative: Sequence[float] = ()) -> float:
    """What the typed factors say against a number that comes to the right value for this force.

    `negative` are the sizes of the student's own results that have a minus.
    """
    factors, scale = typed.factors, typed.scale
    if not spot.lost_minus and any(map(factors.has_minus, negative)):
        return MINUS_ASTRAY
    if factors.count < 2 or factors.holds(spot.scale, scale):
        return 0.0
    return 0.0 if factors.holds(spot.per_unit, scale) else UNSEEN


def rounded_harder(
    typed: TypedNumber, true: float, tolerance: Tolerance, briefly: bool = False
) -> float | None:
    """What it costs more that a rounded number stands for the true one with too few figures, or None.

    `briefly` is whether all numbers of the line have one figure: then how far off it is says little.
    """
    rounded = rounded_by(typed.value, typed.radius) if typed.factors.count < 2 else typed.radius
    off, radius = abs(typed.value - true), rounded * (1 + 1e-9)
    if radius <= 0.0 or not one_way(typed.value, true) or off > ROUNDED_AT_MOST * abs(true):
        return None
    step = 2 * rounded * (1 - 1e-9)
    if briefly:
        return 0.0 if off < step else None
    cut_off = off < step and abs(typed.value) < abs(true)
    if off > radius and not cut_off:
        return None
    return BEYOND if off > tolerance.remark * abs(true) else 0.0


def other_factor_cost(per_unit: float, spot: TrueTerm) -> float:
    """What a factor costs that no rule makes: less where it could be an inclined force's component."""
    ux, uy = spot.unit_vector
    inclined = min(abs(ux), abs(uy)) > 1e-9 and not spot.is_moment
    if not inclined or abs(per_unit) > 1.0 + PRECISELY:
        return UNEXPLAINED
    return OTHER_SLOPE

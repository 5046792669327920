"""Which slips explain the terms of a line that have no unknown: loads and own earlier values?"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import combinations

from tutor.judge.assignment import cheapest
from tutor.judge.copied import stands_as_typed
from tutor.judge.costs import (
    AS_FOUND,
    MINUS_ASTRAY,
    OF_ANOTHER,
    SIZE_SHOWN,
    WITHOUT_PLACE,
)
from tutor.judge.edits import (
    UNEXPLAINED,
    Edit,
    Edits,
    TypedNumber,
    against_right,
    closest,
    edits,
    named_at,
    rounded_harder,
)
from tutor.judge.explanation import Explanation, Slip, saved
from tutor.judge.factors import Factors
from tutor.judge.fit import numbers_fit
from tutor.judge.mistakes import KINDS
from tutor.judge.other_numbers import is_meant, other_number
from tutor.judge.running import made_alike
from tutor.judge.same import SAME
from tutor.judge.strays import number_without_place
from tutor.judge.sums import by_sum
from tutor.judge.true_equation import TrueEquation, TrueTerm
from tutor.judge.typed import TypedEquation
from tutor.model import Tolerance
from tutor.notation import Term
from tutor.notation.elements.fact import kept

MOST_TO_ASSIGN = 6
MOST_TO_ADD_UP = 8
RIGHT = Edit(0.0, (), 0.0)


@dataclass(frozen=True)
class Numbers:
    """The numbers of a line beside the true ones: what an explanation of them needs, whatever the scale."""

    line: TypedEquation
    spots: tuple[TrueTerm, ...]
    true: TrueEquation
    tolerance: Tolerance

    @kept
    def acting(self) -> list[int]:
        return [i for i, spot in enumerate(self.spots) if spot.true != 0.0]

    @kept
    def negative(self) -> list[float]:
        """The sizes of the student's own results that have a minus."""
        return [abs(spot.scale) for spot in self.spots if spot.lost_minus]

    @kept
    def _inclined(self) -> list[tuple[int, float]]:
        """The places of own results of which a component acts here, with their whole sizes."""
        return [
            (i, abs(spot.scale))
            for i, spot in enumerate(self.spots)
            if spot.numeric
            and spot.force.kind != "load"
            and not spot.is_moment
            and 0.0 < abs(spot.per_unit) < 1.0
        ]

    def is_anothers(self, number: TypedNumber, place: int) -> bool:
        """Whether a lone number is the whole of another own result of which only a component acts."""
        if number.factors.count > 1:
            return False
        size = abs(number.unscaled)
        own = {i for i, whole in self._inclined if math.isclose(size, whole, rel_tol=SAME)}
        return bool(own) and place not in own

    @kept
    def _shown_with_minus(self) -> frozenset[int]:
        """The places of own negative results that stand in the line with their own minus."""
        return frozenset(
            i
            for i, spot in enumerate(self.spots)
            if spot.lost_minus and any(f.has_minus(spot.scale) for f in self.line.factors)
        )

    def against_right(self, number: TypedNumber, place: int) -> float:
        """What the typed factors say against a number that comes to the right value at `place`."""
        spot = self.spots[place]
        if place in self._shown_with_minus and not number.factors.has_minus(spot.scale):
            return MINUS_ASTRAY
        return against_right(number, spot, self.negative)

    def edits(self, place: int) -> Edits:
        """The wrong contributions at one place."""
        return edits(self.spots[place])


def explain_numbers(given: Numbers, scale: float) -> Explanation:
    """The cheapest account of the terms without unknown at `scale`."""
    line, acting = given.line, [given.spots[i] for i in given.acting]
    if numbers_fit(line, acting, scale, given.tolerance) is not None and not _contradicted(
        given, scale
    ):
        return Explanation(0.0, (), scale)
    rows = list(zip(line.constants, line.factors, strict=True))
    rest, left = _unpaired(rows, given, scale)
    found = [_by_term(rest, left, given, scale), _by_sum(rest, left, given, scale)]
    if len(rows) == 1 and len(given.acting) > 1:
        found.append(_by_sum(rows, given.acting, given, scale))
    accounts = [account for account in found if account is not None]
    nothing = Explanation(UNEXPLAINED, (Slip("not-equilibrium", None, None),), scale)
    return min(accounts, key=lambda account: account.cost - saved(account.slips), default=nothing)


def _by_sum(
    rest: Sequence[tuple[Term, Factors]], left: Sequence[int], given: Numbers, scale: float
) -> Explanation | None:
    return by_sum(rest, left, given.spots, given.edits, scale, given.tolerance)


def _contradicted(given: Numbers, scale: float) -> bool:
    """Whether a typed product that comes to the right value is about another force."""
    if abs(scale) != 1.0 or len(given.acting) < 2:
        return False
    acting = [given.spots[i] for i in given.acting]
    for term, factors in zip(given.line.constants, given.line.factors, strict=True):
        minus = any(map(factors.has_minus, given.negative))
        sized = factors.count > 1 and any(factors.holds(spot.scale) for spot in acting)
        if not minus and not sized:
            continue
        number = TypedNumber(term.value, term.radius, factors, scale)
        meant = [spot for spot in acting if _is_right(term, factors, spot, given, scale)]
        if meant and all(against_right(number, spot, given.negative) for spot in meant):
            return True
    return False


def _is_right(term: Term, factors: Factors, spot: TrueTerm, given: Numbers, scale: float) -> bool:
    return stands_as_typed(term, factors, spot, scale, given.tolerance) is not None


def _unpaired(
    rows: Sequence[tuple[Term, Factors]], given: Numbers, scale: float
) -> tuple[list[tuple[Term, Factors]], list[int]]:
    """The typed numbers, and the places of true ones, that are left when what plainly fits is out.

    A typed number fits a true one where both have no other choice, and nothing speaks against it; or
    the sum of two or three true ones, where it stands there once.
    """
    spots = given.spots
    may_be = [
        {
            i
            for i in given.acting
            if _is_right(term, factors, spots[i], given, scale)
            and not given.is_anothers(TypedNumber(term.value, term.radius, factors, scale), i)
            and not given.against_right(TypedNumber(term.value, term.radius, factors, scale), i)
        }
        for term, factors in rows
    ]
    left, taken = list(given.acting), set[int]()
    for row, places in enumerate(may_be):
        alike = [other for other, its in enumerate(may_be) if its & places]
        sure = len(alike) == len(places) and all(may_be[other] == places for other in alike)
        if sure and row not in taken:
            taken.update(alike)
            left = [i for i in left if i not in places]
    rest = [pair for row, pair in enumerate(rows) if row not in taken]
    typed = Counter(f"{term.value:.6g}" for term, _ in rest)
    for pair in list(rest) if len(left) <= MOST_TO_ADD_UP else ():
        once = typed[f"{pair[0].value:.6g}"] == 1
        if once and pair[1].count < 2 and (found := _right_sum(pair[0], left, spots, scale)):
            rest.remove(pair)
            left = [i for i in left if i not in found]
    return rest, left


def _right_sum(
    term: Term, left: Sequence[int], spots: Sequence[TrueTerm], scale: float
) -> tuple[int, ...]:
    """The places of two or three true numbers that the typed one adds up, or of all loads; or none."""
    loads = tuple(i for i in left if spots[i].force.kind == "load")
    for count in (2, 3, len(loads)):
        for places in combinations(left, count) if count < 4 else (loads,):
            total = scale * math.fsum(spots[i].true for i in places)
            if abs(term.value - total) <= 1e-4 * abs(total) + min(term.radius, SAME * abs(total)):
                return places
    return ()


def _by_term(
    rest: Sequence[tuple[Term, Factors]], left: Sequence[int], given: Numbers, scale: float
) -> Explanation | None:
    """Typed number beside true number, each assigned to the one it most likely stands for."""
    if max(len(rest), len(left)) > MOST_TO_ASSIGN:
        return None
    spots = given.spots
    places = [*left, *_idle(spots)]
    pairs = [[_pair(*row, i, given, scale) for i in places] for row in rest]
    alone = [number_without_place(*row, given.true, spots, scale) for row in rest]
    missed = {i: named_at("missing", spots[i], spots) for i in left}
    free = [KINDS[missed[i]].cost if i in missed else 0.0 for i in places]
    chosen = cheapest(pairs, [account.cost for account in alone], free)
    placed = [(n, p) for n, p in enumerate(chosen) if p is not None]

    def again(at: int, code: str) -> Edit | None:
        row, place = placed[at]
        spot, choices = spots[places[place]], given.edits(places[place]).of(code)
        return closest(_number(*rest[row], scale), choices, spot, given.tolerance)

    alike = iter(made_alike((pairs[n][p] for n, p in placed), again))
    slips: list[Slip] = []
    cost = 0.0
    for (term, _), place, lone in zip(rest, chosen, alone, strict=True):
        if place is None:
            slips += [replace(slip, span=term.span) for slip in lone.slips]
            cost += lone.cost
            continue
        spot, edit = spots[places[place]], next(alike)
        slips += [Slip(code, spot.name, spot, term.span) for code in edit.codes]
        cost += edit.cost
    taken = {places[place] for place in chosen if place is not None}
    for i, code in missed.items():
        if i not in taken:
            slips.append(Slip(code, spots[i].name, spots[i]))
            cost += KINDS[code].cost
    return Explanation(cost, tuple(slips), scale)


def _idle(spots: Sequence[TrueTerm]) -> list[int]:
    """The places of forces without a part in the equation, for which a typed number may stand."""
    return [i for i, spot in enumerate(spots) if spot.true == 0.0 and spot.scale != 0.0]


def _pair(term: Term, factors: Factors, place: int, given: Numbers, scale: float) -> Edit:
    """What a typed number would be if it stood for the true one at `place`."""
    spot, tolerance = given.spots[place], given.tolerance
    number = _number(term, factors, scale)
    if spot.true != 0.0 and _is_right(term, factors, spot, given, scale):
        return replace(RIGHT, cost=given.against_right(number, place))
    hard = rounded_harder(number, scale * spot.true, tolerance)
    rounding = None
    if hard is not None and not (factors.count > 1 and factors.holds(spot.per_unit)):
        rounding = Edit(spot.true, ("rounding",), KINDS["rounding"].cost + hard)
    found = closest(number, given.edits(place), spot, tolerance)
    if rounding is not None and (found is None or rounding.cost <= found.cost):
        return rounding
    if spot.true == 0.0:
        shown = (
            spot.is_moment and number.factors.count > 1 and number.factors.holds(spot.scale, scale)
        )
        some = SIZE_SHOWN if shown else WITHOUT_PLACE
        return found or Edit(term.value, ("extra",), KINDS["extra"].cost + some)
    if found is not None and found.codes == ("minus",) and _as_found(number, spot):
        found = replace(found, cost=found.cost + AS_FOUND)
    if (
        found is not None
        and KINDS[found.codes[0]].touches == "factor"
        and given.is_anothers(number, place)
    ):
        found = replace(found, cost=found.cost + OF_ANOTHER)
    other = other_number(number, spot, given.true)
    if found is None or is_meant(other, found, factors):
        return other
    if spot.is_moment and found.codes[0] in ("unit", "arm-unit"):
        code = "arm-unit" if factors.holds(spot.scale) else "unit"
        return replace(found, codes=(code, *found.codes[1:]))
    return found


def _as_found(number: TypedNumber, spot: TrueTerm) -> bool:
    """Whether a negative result stands alone with its minus, in a line with all signs turned."""
    turned = number.scale < 0 and spot.scale < 0 and number.value < 0
    return turned and number.factors.count < 2


def _number(term: Term, factors: Factors, scale: float) -> TypedNumber:
    """A typed number, without the factor by which the whole line is multiplied."""
    if abs(scale) == 1.0:
        return TypedNumber(term.value, term.radius, factors, scale)
    own = factors.without(scale)
    return TypedNumber(term.value, term.radius, own, scale, own.count < factors.count)

"""Which slips explain the terms of a line that have no unknown: loads and own earlier values?"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import combinations

from tutor.judge.assignment import cheapest
from tutor.judge.blocks import stands_for
from tutor.judge.costs import (
    BARE_SIZE,
    ELSEWHERE,
    MINUS_ASTRAY,
    MISPLACED,
    MORE_THAN_THERE,
    OTHER_SIZE,
    SIZE_SHOWN,
)
from tutor.judge.edits import (
    UNEXPLAINED,
    Edit,
    Edits,
    Number,
    against_right,
    closest,
    edits,
    named_at,
    other_factor_cost,
    rounded_harder,
    turning_code,
)
from tutor.judge.elsewhere import is_load_elsewhere
from tutor.judge.explanation import Explanation, Slip
from tutor.judge.factors import Factors
from tutor.judge.fit import numbers_fit
from tutor.judge.mistakes import KINDS
from tutor.judge.same import SAME
from tutor.judge.strays import number_without_place
from tutor.judge.sums import by_sum
from tutor.judge.true_equation import TrueEquation, TrueTerm
from tutor.judge.typed import TypedEquation
from tutor.model import Tolerance
from tutor.notation import Term
from tutor.notation.fact import kept

MOST_TO_ASSIGN = 6
MOST_TO_ADD_UP = 8
SAME_RESULT = 0.002
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
    def _shown_with_minus(self) -> frozenset[int]:
        """The places of own negative results that stand in the line with their own minus."""
        return frozenset(
            i
            for i, spot in enumerate(self.spots)
            if spot.lost_minus and any(f.has_minus(spot.scale) for f in self.line.factors)
        )

    def against_right(self, number: Number, place: int) -> float:
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
        more = len(line.constants) > len(acting)
        return Explanation(MORE_THAN_THERE if more else 0.0, (), scale)
    rows = list(zip(line.constants, line.factors, strict=True))
    rest, left = _unpaired(rows, given, scale)
    found = [_by_term(rest, left, given, scale), _by_sum(rest, left, given, scale)]
    if len(rows) == 1 and len(given.acting) > 1:
        found.append(_by_sum(rows, given.acting, given, scale))
    accounts = [account for account in found if account is not None]
    nothing = Explanation(UNEXPLAINED, (Slip("not-equilibrium", None, None),), scale)
    return min(accounts, key=lambda account: account.cost, default=nothing)


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
        number = Number(term.value, term.radius, factors, scale)
        meant = [spot for spot in acting if _is_right(term, spot, given, scale)]
        if meant and all(against_right(number, spot, given.negative) for spot in meant):
            return True
    return False


def _is_right(term: Term, spot: TrueTerm, given: Numbers, scale: float) -> bool:
    return stands_for(term, spot, scale, given.tolerance) is not None


def _unpaired(
    rows: Sequence[tuple[Term, Factors]], given: Numbers, scale: float
) -> tuple[list[tuple[Term, Factors]], list[int]]:
    """The typed numbers, and the places of true ones, that are left when what plainly fits is out.

    A typed number fits a true one where both have no other choice, and nothing speaks against it; or
    the sum of two or three true ones.
    """
    spots = given.spots
    may_be = [
        {
            i
            for i in given.acting
            if _is_right(term, spots[i], given, scale)
            and not given.against_right(Number(term.value, term.radius, factors, scale), i)
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
    for pair in list(rest) if len(left) <= MOST_TO_ADD_UP else ():
        if pair[1].count < 2 and (found := _right_sum(pair[0], left, spots, scale)):
            rest.remove(pair)
            left = [i for i in left if i not in found]
    return rest, left


def _right_sum(
    term: Term, left: Sequence[int], spots: Sequence[TrueTerm], scale: float
) -> tuple[int, ...]:
    """The places of two or three true numbers that the typed one adds up, or none."""
    for count in (2, 3):
        for places in combinations(left, count):
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
    alone = [number_without_place(term, given.true, spots, scale) for term, _ in rest]
    missed = {i: named_at("missing", spots[i], spots) for i in left}
    free = [KINDS[missed[i]].cost if i in missed else 0.0 for i in places]
    chosen = cheapest(pairs, [account.cost for account in alone], free)
    slips: list[Slip] = []
    cost = 0.0
    for (term, _), place, lone, row in zip(rest, chosen, alone, pairs, strict=True):
        if place is None:
            slips += [replace(slip, span=term.span) for slip in lone.slips]
            cost += lone.cost
            continue
        spot = spots[places[place]]
        slips += [Slip(code, spot.name, spot, term.span) for code in row[place].codes]
        cost += row[place].cost
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
    factors = factors.without(scale) if abs(scale) != 1.0 else factors
    number = Number(term.value, term.radius, factors, scale)
    if spot.true != 0.0 and _is_right(term, spot, given, scale):
        return replace(RIGHT, cost=given.against_right(number, place))
    hard = rounded_harder(number, scale * spot.true, tolerance)
    rounding = None
    if hard is not None and not (factors.count > 1 and factors.holds(spot.per_unit)):
        rounding = Edit(spot.true, ("rounding",), KINDS["rounding"].cost + hard)
    found = closest(number, given.edits(place), spot, tolerance)
    if rounding is not None and (found is None or rounding.cost < found.cost):
        return rounding
    if spot.true == 0.0:
        return found or Edit(term.value, ("extra",), KINDS["extra"].cost + BARE_SIZE)
    others = [_other_number(number, spot)]
    if (copied := _other_result(number, spot, given.true)) is not None:
        others.append(copied)
    if (elsewhere := _other_load(number, spot, given.true)) is not None:
        others.append(elsewhere)
    other = min(others, key=lambda edit: edit.cost)
    if found is None or other.cost < found.cost:
        return other
    if spot.is_moment and found.codes[0] in ("unit", "arm-unit"):
        code = "arm-unit" if factors.holds(spot.scale) else "unit"
        return replace(found, codes=(code, *found.codes[1:]))
    return found


def _other_result(number: Number, spot: TrueTerm, true: TrueEquation) -> Edit | None:
    """An own earlier value that is another force's, with the right factor; or None."""
    if spot.force.kind == "load":
        return None
    size = abs(number.scale * spot.per_unit)
    for name, carried in true.own.known.items():
        if name != spot.name and math.isclose(
            abs(number.value), size * abs(carried.value), rel_tol=SAME_RESULT
        ):
            factors, kind = number.factors, KINDS["carried"]
            own = factors.holds(spot.scale, number.scale)
            other = factors.holds(spot.per_unit, number.scale)
            doubt = MISPLACED if factors.count > 1 and own and not other else 0.0
            return Edit(number.value, ("carried",), kind.cost + doubt)
    return None


def _other_load(number: Number, spot: TrueTerm, true: TrueEquation) -> Edit | None:
    """A load of another joint that stands by itself where the one of this joint counts whole; or None."""
    joint, size = true.about.joint, abs(number.value)
    whole = spot.force.kind == "load" and abs(spot.per_unit * number.scale) == 1.0
    if joint is None or not whole or number.factors.count > 1:
        return None
    turned = number.value * number.scale * spot.true < 0
    if turned or not is_load_elsewhere(true.problem, (joint,), size):
        return None
    return Edit(number.value, ("magnitude",), KINDS["magnitude"].cost - ELSEWHERE)


def _other_number(number: Number, spot: TrueTerm) -> Edit:
    """A number no rule makes: a wrong arm or factor where the size is written, else a wrong size."""
    factors, scale = number.factors, number.scale
    code = "magnitude" if spot.force.kind == "load" else "carried"
    cost = OTHER_SIZE
    size, factor = factors.holds(spot.scale, scale), factors.holds(spot.per_unit, scale)
    if size and not factor and spot.scale != 0.0 and factors.count > 1:
        code = "arm" if spot.is_moment else "not-equilibrium"
        per_unit = number.value / (scale * spot.scale)
        arm = KINDS["arm"].cost + SIZE_SHOWN
        cost = arm if spot.is_moment else other_factor_cost(per_unit, spot)
    elif factor and factors.count > 1:
        cost = KINDS[code].cost
    elif abs(spot.per_unit) == 1.0 and factors.count == 1:
        cost = BARE_SIZE
    if number.value * scale * spot.true < 0 and code != "not-equilibrium":
        turned = turning_code(spot)
        return Edit(number.value, (code, turned), cost + KINDS[turned].cost)
    return Edit(number.value, (code,), cost)

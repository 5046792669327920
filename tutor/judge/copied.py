"""Is a typed product a true number, each of its factors as far off as it was rounded and no further?"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations

from tutor.judge.blocks import MOST_TO_SPLIT, Level, stand_for, stands_for
from tutor.judge.factors import Factors
from tutor.judge.true_equation import TrueTerm
from tutor.judge.typed import TypedEquation
from tutor.model import Tolerance
from tutor.notation import Term


def stands_as_typed(
    term: Term, factors: Factors, spot: TrueTerm, scale: float, tolerance: Tolerance
) -> Level | None:
    """How well a typed product is one true number; None where a factor of it is copied wrongly."""
    level = stands_for(term, spot, scale, tolerance)
    return None if level == "remark" and _copied_wrongly(factors, spot, scale) else level


def any_copied_wrongly(
    line: TypedEquation,
    terms: Sequence[Term],
    spots: Sequence[TrueTerm],
    scale: float,
    tolerance: Tolerance,
) -> bool:
    """Whether one of these numbers of a line is near a true one, but not as it was typed."""
    for term, factors in zip(line.constants, line.factors, strict=True) if terms else ():
        if factors.count > 1 and any(term is each for each in terms):
            near = [s for s in spots if stands_for(term, s, scale, tolerance) == "remark"]
            if near and all(_copied_wrongly(factors, spot, scale) for spot in near):
                return True
    return False


def any_shown_otherwise(
    line: TypedEquation,
    terms: Sequence[Term],
    spots: Sequence[TrueTerm],
    scale: float,
    tolerance: Tolerance,
) -> bool:
    """Whether one product alone shows a true number's force with a ratio, and other numbers make up for that.

    0.6(20) + 4 is no 0.8(20), while 0.6(20) + 0.2(20) may be.
    """
    products = [
        (term, factors)
        for term, factors in zip(line.constants, line.factors, strict=True)
        if any(term is each for each in terms)
    ]
    for term, factors in products if len(products) > 1 else ():
        shown = [spot for spot in spots if factors.count > 1 and factors.holds(spot.scale)]
        ratio = len(shown) == 1 and abs(term.value) < abs(shown[0].scale)
        if not ratio or stands_for(term, shown[0], scale, tolerance) is not None:
            continue
        others = [each for each in products if each[0] is not term]
        shared = any(each.holds(shown[0].scale) for _, each in others)
        added = any(
            stand_for((term,), some, scale, tolerance)
            for count in range(2, min(len(spots), MOST_TO_SPLIT) + 1)
            for some in combinations(spots, count)
        )
        if not shared and not added:
            return True
    return False


def _copied_wrongly(factors: Factors, spot: TrueTerm, scale: float) -> bool:
    if factors.count < 2 or abs(scale) != 1.0:
        return False
    return factors.one_is_off(spot.scale, spot.radius, spot.per_unit)

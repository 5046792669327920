"""Is a typed product a true number, each of its factors as far off as it was rounded and no further?"""

from __future__ import annotations

from collections.abc import Sequence

from tutor.judge.blocks import Level, stands_for
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


def _copied_wrongly(factors: Factors, spot: TrueTerm, scale: float) -> bool:
    if factors.count < 2 or abs(scale) != 1.0:
        return False
    return factors.one_is_off(spot.scale, spot.radius, spot.per_unit)

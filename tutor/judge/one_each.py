"""Is every number of a line one true one, as typed or with its force shown in a product?"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from tutor.judge.blocks import one_by_one, stands_for
from tutor.judge.factors import Factors
from tutor.judge.true_equation import TrueTerm
from tutor.judge.typed import TypedEquation
from tutor.model import Tolerance


def number_by_number(
    line: TypedEquation, numbers: Sequence[TrueTerm], scale: float, tolerance: Tolerance
) -> bool:
    """Whether every typed number is a true one, and every true one is typed."""
    if not line.constants:
        return False
    terms, left = one_by_one(line.constants, numbers, scale, tolerance)
    return not terms and all(spot.true == 0.0 for spot in left)


def shows_sizes(
    line: TypedEquation,
    numbers: Sequence[TrueTerm],
    scale: float,
    tolerance: Tolerance,
    has: Callable[[Factors, float], bool] = Factors.holds,
) -> bool:
    """Whether each number is one true one at this scale, and products show that force's size."""
    left, shown = [spot for spot in numbers if spot.true != 0.0], 0
    for term, factors in zip(line.constants, line.factors, strict=True):
        meant = next(
            (
                spot
                for spot in left
                if (factors.count == 1 or has(factors, spot.scale))
                and stands_for(term, spot, scale, tolerance) == "silent"
            ),
            None,
        )
        if meant is None:
            return False
        shown += factors.count > 1
        left.remove(meant)
    return shown > 0 and not left

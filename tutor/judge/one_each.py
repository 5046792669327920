"""Is every number of a line one true one, as typed or with its force shown in a product?"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from tutor.judge.blocks import left_unpaired, stands_for
from tutor.judge.factors import Factors
from tutor.judge.true_equation import TrueEquation, TrueTerm
from tutor.judge.typed import TypedEquation
from tutor.model import Tolerance


def number_by_number(
    line: TypedEquation, numbers: Sequence[TrueTerm], scale: float, tolerance: Tolerance
) -> bool:
    """Whether every typed number is a true one, and every true one is typed."""
    if not line.constants:
        return False
    terms, left = left_unpaired(line.constants, numbers, scale, tolerance)
    return not terms and all(spot.true == 0.0 for spot in left)


def each_of(line: TypedEquation, asked: TrueEquation, tolerance: Tolerance) -> bool:
    """Whether all that is typed is plainly of this equation, a product showing a force of it.

    Then it is this equation that is meant, though more of it may be missing.
    """
    numbers = asked.numbers(line.names)
    sizes = [spot.scale for spot in numbers]
    if not any(f.count > 1 and any(map(f.holds, sizes)) for f in line.factors):
        return False
    return any(
        all(
            name in asked.unknowns
            and abs(typed.value - scale * asked.unknowns[name].true)
            <= typed.radius + tolerance.silent * typed.parts
            for name, typed in line.unknowns.items()
        )
        and not left_unpaired(line.constants, numbers, scale, tolerance)[0]
        for scale in (1.0, -1.0)
    )


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


def has_its_sizes(line: TypedEquation, asked: TrueEquation, tolerance: Tolerance) -> bool:
    """Whether the factors beside two forces or more are those of the sum of forces asked for, whatever their signs.

    That the line is then a multiple of another sum as well is by chance.
    """
    if asked.is_moment or len(line.names) < 2 or not line.names <= asked.acting:
        return False
    return all(
        abs(abs(typed.value) - abs(asked.unknowns[name].true))
        <= typed.radius + tolerance.silent * typed.parts
        for name, typed in line.unknowns.items()
    )

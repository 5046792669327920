"""Are all arms beside the numbers of a sum of moments in another unit than those beside its unknowns?"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations

from tutor.judge.explanation import Slip
from tutor.judge.fit import fit
from tutor.judge.mistakes.arm_unit import FACTORS
from tutor.judge.same import SAME, are_same
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import TypedEquation
from tutor.model import Tolerance

MOST_TOGETHER = 3
"""So many loads may stand together in front of one arm."""


def arms_in_other_unit(
    true: TrueEquation, line: TypedEquation, tolerance: Tolerance
) -> Slip | None:
    """The slip of arms in two units, where every number shows its force and only its arm is off; or None.

    It is told at the unknown, where there is one alone.
    """
    if not true.is_moment or not line.unknowns or len(line.constants) < 2:
        return None
    no_arm = all(are_same(abs(beside.value), 1.0) for beside in line.unknowns.values())
    if no_arm or not _all_show_forces(true, line):
        return None
    for factor in FACTORS:
        numbers = tuple(
            t._replace(value=t.value * factor, radius=t.radius * factor) for t in line.constants
        )
        found = fit(replace(line, constants=numbers), true, tolerance)
        if found is not None and any(
            math.isclose(abs(found.scale), arms, rel_tol=SAME) for arms in (1.0, factor)
        ):
            return Slip("arm-unit", next(iter(line.names)) if len(line.names) == 1 else None, None)
    return None


def _all_show_forces(true: TrueEquation, line: TypedEquation) -> bool:
    """Whether each number is a product with the size of a force, or of forces added up first."""
    sizes = list(_sizes(true, line))
    return all(
        factors.count > 1 and any(factors.has_factor(size) for size in sizes)
        for factors in line.factors
    )


def _sizes(true: TrueEquation, line: TypedEquation) -> Iterator[float]:
    own = [abs(spot.scale) for spot in true.numbers(line.names) if spot.scale != 0.0]
    for count in range(1, MOST_TOGETHER + 1):
        yield from (math.fsum(chosen) for chosen in combinations(own, count))

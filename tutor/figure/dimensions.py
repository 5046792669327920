"""Which distances does the drawing give? Dimension chains along both axes."""

from __future__ import annotations

import itertools
from typing import Literal

from tutor.figure.parts import DimensionChain
from tutor.figure.wording import given
from tutor.model import Problem

SAME = 1e-9


def chains(problem: Problem) -> tuple[DimensionChain, ...]:
    """The horizontal chain, then the vertical one, each where it has any length."""
    xs = [joint.x.value for joint in problem.joints]
    ys = [joint.y.value for joint in problem.joints]
    found = (_chain("x", xs, problem.length), _chain("y", ys, problem.length))
    return tuple(chain for chain in found if chain is not None)


def _chain(axis: Literal["x", "y"], values: list[float], unit: str) -> DimensionChain | None:
    if not values:
        return None
    stops: list[float] = []
    span = max(values) - min(values)
    for value in sorted(values):
        if not stops or value - stops[-1] > SAME * span:
            stops.append(value)
    if len(stops) < 2:
        return None
    gaps = [after - before for before, after in itertools.pairwise(stops)]
    return DimensionChain(
        axis,
        tuple(stops),
        tuple(given(gap) for gap in gaps),
        _runs(gaps, unit),
        f"{given(stops[-1] - stops[0])} {unit}",
        unit,
    )


def _runs(gaps: list[float], unit: str) -> tuple[tuple[int, int, str], ...]:
    """Rows of equal gaps, as "4 @ 3 m = 12 m"; a single gap as "3 m"."""
    runs: list[tuple[int, int, str]] = []
    first = 0
    for index in range(1, len(gaps) + 1):
        if index < len(gaps) and abs(gaps[index] - gaps[first]) <= SAME * max(gaps):
            continue
        count, gap = index - first, gaps[first]
        one = f"{given(gap)} {unit}"
        whole = f"{count} @ {one} = {given(gap * count)} {unit}"
        runs.append((first, index, one if count == 1 else whole))
        first = index
    return tuple(runs)

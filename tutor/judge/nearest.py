"""Which of several equations is a wrong line nearest to?"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from tutor.judge.about import Equation
from tutor.judge.costs import APART, CLOSE, ONE_SLIP
from tutor.judge.known_values import KnownValues
from tutor.judge.search import search
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import TypedEquation
from tutor.model import Problem


def nearest(
    line: TypedEquation,
    problem: Problem,
    own: KnownValues,
    values: Mapping[str, float],
    first: Equation,
    others: Iterable[Equation],
) -> Equation:
    """The equation whose mistakes explain the line best; `first` unless another does so clearly."""
    best, least = first, _cost(line, problem, own, values, first) - CLOSE
    for about in others:
        if about != first and (cost := _cost(line, problem, own, values, about)) < least:
            best, least = about, cost
    return best


def clearly_nearest(
    line: TypedEquation,
    problem: Problem,
    own: KnownValues,
    values: Mapping[str, float],
    among: Iterable[Equation],
) -> Equation | None:
    """The one equation that the line is but for a single slip, where as any other it had more; or None."""
    costs = sorted(
        ((_cost(line, problem, own, values, about), n, about) for n, about in enumerate(among)),
        key=lambda each: each[:2],
    )
    if not costs or costs[0][0] > ONE_SLIP:
        return None
    return costs[0][2] if len(costs) == 1 or costs[1][0] >= costs[0][0] + APART else None


def _cost(
    line: TypedEquation,
    problem: Problem,
    own: KnownValues,
    values: Mapping[str, float],
    about: Equation,
) -> float:
    """What the best explanation of the line costs as a wrong one of `about`."""
    true = TrueEquation(problem, about, own)
    idle = frozenset(name for name in true.unknowns if values[name] == 0.0)
    return search(line, true, problem.tolerance, idle)[0].cost

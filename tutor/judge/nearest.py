"""Which of several equations is a line: those that it is right for, or the one that it is nearest to?"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from tutor.judge.about import Equation
from tutor.judge.costs import APART, CLOSE, ONE_SLIP, SCALED_SUM
from tutor.judge.edits import UNEXPLAINED
from tutor.judge.explanation import Explanation
from tutor.judge.fit import fit
from tutor.judge.known_values import KnownValues
from tutor.judge.same import are_same
from tutor.judge.search import search
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import TypedEquation
from tutor.model import Problem

OF_SIGNS = ("sign", "minus", "sense")


def right_for(
    line: TypedEquation, problem: Problem, own: KnownValues, among: Iterable[Equation]
) -> tuple[Equation, ...]:
    """The equations that the line is right for."""
    trues = (TrueEquation(problem, about, own) for about in dict.fromkeys(among))
    return tuple(
        true.about
        for true in trues
        if line.names <= true.unknowns.keys() and fit(line, true, problem.tolerance) is not None
    )


def plainly(
    line: TypedEquation, problem: Problem, own: KnownValues, among: Iterable[Equation]
) -> list[Equation]:
    """The equations that a line is term by term, else those that it is as written, not multiplied."""
    as_written = _as_written(line, problem, own, among)
    return [about for about, paired in as_written if paired] or [about for about, _ in as_written]


def term_by_term(
    line: TypedEquation, problem: Problem, own: KnownValues, among: Iterable[Equation]
) -> list[Equation]:
    """The equations of which a line shows each term by itself, not multiplied."""
    return [about for about, paired in _as_written(line, problem, own, among) if paired]


def _as_written(
    line: TypedEquation, problem: Problem, own: KnownValues, among: Iterable[Equation]
) -> list[tuple[Equation, bool]]:
    """The equations that a line is, not multiplied, and whether it is so term by term."""
    fits = [
        (about, fit(line, TrueEquation(problem, about, own), problem.tolerance)) for about in among
    ]
    return [(about, f.paired) for about, f in fits if f is not None and abs(f.scale) == 1.0]


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
    few: bool = False,
    solved: bool = False,
) -> Equation | None:
    """The one equation that the line is but for a single slip, where as any other it had more; or None.

    With `few`, it may have some, and as any other need have no more than that it is told apart. Where a
    value is `solved` for, what stood beside it may be divided out of a sum with a wrong sign, and others that show
    the very same slip do not count.
    """
    apart = CLOSE if few else APART
    found = [(_best(line, problem, own, values, about), about) for about in among]
    found.sort(key=lambda each: each[0].cost)
    if not found:
        return None
    first, meant = found[0]
    divided = solved and not are_same(abs(first.scale), 1.0)
    divided = divided and all(slip.code in OF_SIGNS for slip in first.slips)
    if first.cost >= UNEXPLAINED if few else first.cost > ONE_SLIP + divided * SCALED_SUM:
        return None
    others = [each for each, _ in found[1:] if not (solved and each.named == first.named)]
    return meant if not others or others[0].cost >= first.cost + apart else None


def _cost(
    line: TypedEquation,
    problem: Problem,
    own: KnownValues,
    values: Mapping[str, float],
    about: Equation,
) -> float:
    """What the best explanation of the line costs as a wrong one of `about`."""
    return _best(line, problem, own, values, about).cost


def _best(
    line: TypedEquation,
    problem: Problem,
    own: KnownValues,
    values: Mapping[str, float],
    about: Equation,
) -> Explanation:
    true = TrueEquation(problem, about, own)
    idle = frozenset(name for name in true.unknowns if values[name] == 0.0)
    return search(line, true, problem.tolerance, idle)[0]

"""Which slips turn the true equation into the typed line?

The line is taken force by force: at a given scale each coefficient is either right or one of the
wrong ones that the catalogue makes, and each typed number is assigned to the force it most likely
stands for, by what it comes to and by the factors typed. The cheapest account of the whole line over
all plausible scales is the diagnosis; those of about the same cost are ties.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence

from tutor.judge.coefficients import explain_coefficients
from tutor.judge.costs import CLOSE, CLOSE_PAIRS, IN_OTHER_UNIT, SCALED_MOMENT, SCALED_SUM
from tutor.judge.edits import UNEXPLAINED, Edits, edits, turning_code
from tutor.judge.explanation import NOTHING_NAMED, Explanation, Slip, saved
from tutor.judge.mistakes import KINDS
from tutor.judge.mistakes.arm_unit import LENGTHS
from tutor.judge.numbers import Numbers, explain_numbers
from tutor.judge.same import are_same
from tutor.judge.true_equation import TrueEquation, TrueTerm
from tutor.judge.typed import TypedEquation
from tutor.model import Tolerance

CHEAPEST = min(kind.cost for kind in KINDS.values() if kind.variants is not None)
Ways = Iterable[tuple[float, float]]


def search(
    line: TypedEquation, true: TrueEquation, tolerance: Tolerance, idle: Collection[str] = ()
) -> tuple[Explanation, tuple[Explanation, ...]]:
    """The cheapest account of a wrong line, and others that cost about as little.

    `idle` are the unknowns that come out as zero: leaving one out is no mistake beside another.
    """
    spots, numbers = true.unknowns, true.numbers(line.names | line.cancelled)
    factors = {name: line.factors_beside(name) for name in line.names}
    accounts: list[Explanation] = []
    best = math.inf

    def explain(of: Sequence[TrueTerm], ways: Ways) -> None:
        nonlocal best
        given = Numbers(line, tuple(of), true, tolerance)
        for scale, penalty in ways:
            if penalty + CHEAPEST >= best + CLOSE:
                continue
            most = best + CLOSE - penalty
            start = explain_coefficients(line, true, factors, scale, tolerance, idle, most)
            if start is None:
                continue
            rest = explain_numbers(given, scale)
            slips, once = _joined((*start.slips, *rest.slips), numbers)
            if slips and not _all_turned(slips, line):
                cost = start.cost + rest.cost + penalty - saved(slips) - once
                accounts.append(Explanation(cost, slips, scale))
                best = min(best, cost)

    explain(numbers, _scales(line, spots, numbers))
    components = [part for spot in numbers for part in spot.parts or (spot,)]
    if len(components) > len(numbers):
        explain(components, ((1.0, 0.0), (-1.0, 0.0)))
    if not accounts:
        return Explanation(UNEXPLAINED, (NOTHING_NAMED,), 1.0), ()
    return _best_of(accounts)


def _all_turned(slips: Sequence[Slip], line: TypedEquation) -> bool:
    """Whether all there is to a line is that each of its terms has the other sign, which is no mistake."""
    if any(slip.spot is None or slip.code != turning_code(slip.spot) for slip in slips):
        return False
    numbers = [slip for slip in slips if slip.force not in line.names]
    return len(slips) - len(numbers) == len(line.names) and len(numbers) >= len(line.constants)


def _best_of(accounts: list[Explanation]) -> tuple[Explanation, tuple[Explanation, ...]]:
    """The cheapest, and those of other slips that cost about as little and name no more of them."""
    accounts.sort(key=_order)
    first = accounts[0]
    others: list[Explanation] = []
    close = CLOSE if len(first.slips) == 1 else CLOSE_PAIRS
    for account in accounts:
        if account.cost >= first.cost + close or len(account.slips) > len(first.slips):
            break
        if account.named != first.named and all(account.named != o.named for o in others):
            others.append(account)
    return first, tuple(others)


def _order(account: Explanation) -> tuple[float, int, int, bool]:
    """What costs less comes first, then fewer slips, then what is multiplied by less, then what stands in the line."""
    left_out = any(KINDS[slip.code].counts == "left out" for slip in account.slips)
    decades = round(abs(math.log10(abs(account.scale))))
    return account.cost, len(account.slips), decades, left_out


def _scales(
    line: TypedEquation,
    spots: Mapping[str, TrueTerm],
    numbers: Sequence[TrueTerm],
) -> Iterator[tuple[float, float]]:
    """(scale, penalty): as written, turned round, anchored at a right term, at a wrong one."""
    fresh = _Fresh()
    for scale in (1.0, -1.0):
        if fresh(scale):
            yield scale, 0.0
    scaled = SCALED_MOMENT if any(s.is_moment for s in spots.values()) else SCALED_SUM
    typed = [
        (name, typed.value, spots[name].true)
        for name, typed in line.unknowns.items()
        if name in spots
    ]
    if not typed:
        typed = [("", term.value, spot.true) for term in line.constants[:2] for spot in numbers]
    ways = [value / true for _, value, true in typed if true != 0.0]
    for scale in (*_divided_by(line), *ways):
        if fresh(scale):
            in_other_unit = scaled == SCALED_MOMENT and _is_of_units(scale)
            yield scale, IN_OTHER_UNIT if in_other_unit else scaled
    for name, value, _ in typed:
        for wrong in _plain(edits(spots[name])) if name else ():
            if fresh(value / wrong):
                yield value / wrong, scaled


def _divided_by(line: TypedEquation) -> Iterator[float]:
    """The scales of a line solved for one force, by what all its numbers were typed to be divided by."""
    if len(line.unknowns) != 1 or not line.constants:
        return
    first, *others = line.factors
    for leaf in first.leaves if first.count > 1 else ():
        if all(leaf in factors.leaves for factors in others):
            yield from (leaf, -leaf)


def _is_of_units(scale: float) -> bool:
    """Whether a sum of moments was multiplied by what turns one unit of length into another."""
    return any(are_same(abs(scale), factor) for factor in LENGTHS)


class _Fresh:
    """Whether a scale can be one, and was not asked about before."""

    def __init__(self) -> None:
        self.seen: set[str] = set()

    def __call__(self, scale: float) -> bool:
        key = f"{scale:.4g}"
        if scale == 0.0 or not math.isfinite(scale) or key in self.seen:
            return False
        self.seen.add(key)
        return True


def _plain(choices: Edits) -> Iterator[float]:
    """The wrong coefficients on which a scale may rest: one mistake each, not met by calculation."""
    for edit in choices.every:
        if edit.value != 0.0 and len(edit.codes) == 1 and not KINDS[edit.codes[0]].calculated:
            yield edit.value


def _joined(slips: Sequence[Slip], numbers: Sequence[TrueTerm]) -> tuple[tuple[Slip, ...], float]:
    """Slips at both components of a force as one at the whole, and what these cost less.

    Arms that were exchanged are one as well.
    """
    found: list[Slip] = []
    less = 0.0
    for slip in slips:
        twin = next((s for s in found if _are_twins(s, slip)), None)
        if twin is None:
            found.append(slip)
            continue
        whole = next(s for s in numbers if s.name == slip.force and _one_source(s, slip.spot))
        alike = slip.code == twin.code and slip.code != "arm"
        code = slip.code if alike else "component-in-moment"
        found[found.index(twin)] = Slip(code, slip.force, whole, twin.span)
        less += KINDS[slip.code].cost + KINDS[twin.code].cost - KINDS[code].cost
    return tuple(found), less


def _one_source(spot: TrueTerm, other: TrueTerm | None) -> bool:
    return other is not None and spot.force.source is other.force.source


def _are_twins(one: Slip, other: Slip) -> bool:
    """Whether two slips are at the two components of one force."""
    return (
        one.spot is not None
        and other.spot is not None
        and one.force == other.force
        and {one.spot.part, other.spot.part} == {"x", "y"}
        and _one_source(one.spot, other.spot)
    )

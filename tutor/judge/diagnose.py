"""Which slips turn the true equation into the typed line?

The line is taken force by force: at a given scale each coefficient is either right or one of the
wrong ones that the catalogue makes, so several slips in one line cost no more search than one. The
cheapest account of the whole line over all plausible scales is the diagnosis.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence

from tutor.judge.fit import slack_of
from tutor.judge.mistakes import KINDS
from tutor.judge.numbers import explain_numbers
from tutor.judge.options import Choices, Option, options, turning_code
from tutor.judge.slips import (
    CALCULATED,
    STRAY_TURNED,
    UNEXPLAINED,
    Account,
    Slip,
    found_option,
    other_factor_cost,
    rounded_harder,
)
from tutor.judge.term_text import TermText
from tutor.judge.truth import Spot, TrueLine
from tutor.judge.two_parts import joined, of_several_terms, split
from tutor.judge.typed import Coefficient, Typed
from tutor.model import Tolerance
from tutor.notation import Reading
from tutor.statics.body import member_force, reaction_forces

TURNED_ROUND = 0.04
SCALED_SUM, SCALED_MOMENT, ON_A_SLIP = 1.15, 0.6, 0.2
STRAY_SIZE = 0.8
OTHER_FACTOR = 0.4
CLOSE, CLOSE_PAIRS = 0.35, 0.12
CHEAPEST = min(kind.cost for kind in KINDS.values() if kind.variants is not None)
RUNS_THROUGH = frozenset({"no-arm", "component", "angle-mode", "side", "ratio", "arm-unit", "unit"})
CHEAPER = 0.6
BARELY = 0.15
LEFT_OUT_IDLE = 0.3
IN_PARTS, AS_ONE = 0.05, 0.8
PER_DECADE = 0.1


def diagnose(
    line: Typed,
    true: TrueLine,
    reading: Reading,
    tolerance: Tolerance,
    idle: frozenset[str] = frozenset(),
) -> tuple[Account, tuple[Account, ...]]:
    """The cheapest account of a wrong line, and others that cost about as little.

    `idle` are the unknowns that come out as zero: leaving one out is no mistake beside another.
    """
    spots = true.unknowns
    numbers = true.numbers(line.names)
    choices = {name: options(spot) for name, spot in spots.items()}
    texts = {term: TermText.of(reading.text, (term.span,)) for term in line.constants}
    typed = {name: _text_of(name, reading) for name in line.unknowns}
    accounts: list[Account] = []
    best = math.inf

    def explain(spots_of_numbers: Sequence[Spot], ways: Iterable[tuple[float, float]]) -> None:
        nonlocal best
        choices_of_numbers = Choices(spots_of_numbers)
        for scale, penalty in ways:
            if penalty + CHEAPEST >= best + CLOSE:
                continue
            start = _unknowns_account(line, spots, choices, true, scale, typed, tolerance, idle)
            if start.cost + penalty - _again(start.slips) >= best + CLOSE:
                continue
            rest = explain_numbers(
                line, spots_of_numbers, choices_of_numbers, true, scale, texts, tolerance
            )
            slips = joined((*start.slips, *rest.slips), numbers)
            if slips:
                fewer = len(start.slips) + len(rest.slips) - len(slips)
                cost = start.cost + rest.cost + penalty - _again(slips) - fewer * AS_ONE
                accounts.append(Account(cost, slips, scale))
                best = min(best, cost)

    explain(numbers, _scales(line, spots, choices, numbers))
    if len(components := split(numbers)) > len(numbers):
        explain(components, ((1.0, IN_PARTS), (-1.0, TURNED_ROUND + IN_PARTS)))
    if not accounts:
        nothing = Slip("not-equilibrium", None, None)
        return Account(UNEXPLAINED, (nothing,), 1.0), ()
    accounts.sort(key=lambda account: account.cost)
    first = accounts[0]
    others: list[Account] = []
    close = CLOSE if len(first.slips) == 1 else CLOSE_PAIRS
    for account in accounts[1:]:
        if account.cost > first.cost + close or len(account.slips) > len(first.slips):
            break
        if account.named != first.named and all(account.named != o.named for o in others):
            others.append(account)
    return first, tuple(others)


def _again(slips: Sequence[Slip]) -> float:
    """What a mistake that runs through a line costs less than one made anew at each force."""
    counts = Counter(slip.code for slip in slips if slip.code in RUNS_THROUGH)
    return sum((count - 1) * CHEAPER * KINDS[code].cost for code, count in counts.items())


def _scales(
    line: Typed,
    spots: Mapping[str, Spot],
    choices: Mapping[str, Sequence[Option]],
    numbers: Sequence[Spot],
) -> Iterator[tuple[float, float]]:
    """(scale, penalty): as written, turned round, anchored at a right term, at a wrong one."""
    seen: set[float] = set()

    def fresh(scale: float) -> bool:
        if scale == 0.0 or not math.isfinite(scale):
            return False
        key = float(f"{scale:.4g}")
        if key in seen:
            return False
        seen.add(key)
        return True

    for scale, penalty in ((1.0, 0.0), (-1.0, TURNED_ROUND)):
        if fresh(scale):
            yield scale, penalty
    scaled = SCALED_MOMENT if any(s.is_moment for s in spots.values()) else SCALED_SUM
    typed = [
        (typed.value, spots[name].true, choices[name])
        for name, typed in line.unknowns.items()
        if name in spots
    ]
    if not typed:
        typed = [(term.value, spot.true, ()) for term in line.constants[:2] for spot in numbers]
    for value, true, _ in typed:
        if true != 0.0 and fresh(value / true):
            yield value / true, scaled + _far_from_one(value / true)
    for value, _, wrong in typed if line.unknowns else ():
        for option in wrong:
            if option.value == 0.0 or len(option.codes) > 1 or option.codes[0] in CALCULATED:
                continue
            if fresh(value / option.value):
                yield value / option.value, scaled + ON_A_SLIP + _far_from_one(value / option.value)


def _far_from_one(scale: float) -> float:
    """What a scale costs that few would multiply a line by."""
    return PER_DECADE * abs(math.log10(abs(scale)))


def _unknowns_account(
    line: Typed,
    spots: Mapping[str, Spot],
    choices: Mapping[str, Sequence[Option]],
    true: TrueLine,
    scale: float,
    texts: Mapping[str, TermText],
    tolerance: Tolerance,
    idle: frozenset[str],
) -> Account:
    slips: list[Slip] = []
    cost = 0.0
    for name, coefficient in line.unknowns.items():
        if name not in spots:
            code = _stray(name, true)
            slips.append(Slip(code, name, None))
            cost += KINDS[code].cost
            cost += _strangeness(name, coefficient.value / scale, true)
            continue
        spot = spots[name]
        value, radius = coefficient.value, coefficient.radius
        slack = slack_of(coefficient, spot, scale, tolerance, "remark")
        off = abs(value - scale * spot.true)
        if off <= slack:
            if off > slack_of(coefficient, spot, scale, tolerance, "silent"):
                cost += BARELY
            continue
        option: Option | None = None
        if (several := of_several_terms(coefficient, spot, scale)) is not None:
            option, spot = several
        if rounded_harder(value, radius, scale * spot.true):
            option = Option(spot.true, ("rounding",), KINDS["rounding"].cost)
        if option is None:
            apt = _apt(choices[name], coefficient)
            option = found_option(value, radius, scale, apt, spot, texts[name], tolerance)
        if option is None:
            option = _unknown_size(value, scale, spot)
        slips += [Slip(code, name, spot) for code in option.codes]
        cost += option.cost
    for name, spot in spots.items():
        if spot.true != 0.0 and name not in line.names and name not in true.given.known:
            if name in idle:
                cost += LEFT_OUT_IDLE
                continue
            slips.append(Slip("missing", name, spot))
            cost += KINDS["missing"].cost
    return Account(cost, tuple(slips), scale)


def _text_of(name: str, reading: Reading) -> TermText:
    """What is typed beside an unknown."""
    return TermText.of(reading.text, (term.span for term in reading.terms if term.name == name))


def _apt(choices: Sequence[Option], coefficient: Coefficient) -> Sequence[Option]:
    """The options that fit a force split into two terms: it was not taken whole, nor as upright."""
    if len(coefficient.terms) == 1:
        return choices
    unlikely = {"inclined-support", "whole-force", "no-arm"}
    return [option for option in choices if not unlikely & set(option.codes)]


def _unknown_size(value: float, scale: float, spot: Spot) -> Option:
    """A coefficient that no rule makes: in a moment some distance, else not to be named."""
    if spot.true == 0.0:
        return Option(value, ("extra",), KINDS["extra"].cost + OTHER_FACTOR)
    if spot.is_moment:
        if value * scale * spot.true > 0:
            return Option(value, ("arm",), KINDS["arm"].cost + 0.6)
        turned = turning_code(spot)
        return Option(value, ("arm", turned), KINDS["arm"].cost + 0.6 + KINDS[turned].cost)
    return Option(value, ("not-equilibrium",), other_factor_cost(value / scale, spot))


def _stray(name: str, true: TrueLine) -> str:
    """What a force that does not act on the body is called."""
    if true.about.joint is not None and name in true.problem.reaction:
        return "stray-reaction"
    return "extra"


def _strangeness(name: str, value: float, true: TrueLine) -> float:
    """What it costs that a force has not the coefficient here that it has where it acts."""
    problem = true.problem
    if name in problem.reaction:
        bodies = [reaction_forces(problem, problem.reaction[name].joint)]
    else:
        member = problem.member[name]
        bodies = [(member_force(problem, name, end),) for end in (member.start, member.end)]
    sign = true.given.sign(name)
    parts = [sign * true.equation.sum.of(f) for body in bodies for f in body if f.name == name]
    if any(math.isclose(value, part, rel_tol=0.01) for part in parts):
        return 0.0
    turned = any(math.isclose(abs(value), abs(part), rel_tol=0.01) for part in (*parts, 1.0))
    return STRAY_TURNED if turned else STRAY_SIZE

"""Which slips explain the terms of a line that have no unknown: loads and own earlier values?"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from itertools import combinations, permutations

from tutor.judge.compare import TINY, Typed, constants_fit
from tutor.judge.mistakes import KINDS
from tutor.judge.options import Option
from tutor.judge.slips import Account, Slip, found_option, rounded_harder
from tutor.judge.truth import Spot, TrueLine
from tutor.model import Tolerance
from tutor.notation import Span, Term

UNEXPLAINED = KINDS["not-equilibrium"].cost
BY_SUM = 0.1
MORE_THAN_THERE = 0.3
MOST_TO_ASSIGN = 4


def explain_numbers(
    line: Typed,
    numbers: Sequence[Spot],
    choices: Sequence[Sequence[Option]],
    true: TrueLine,
    scale: float,
    text: str,
    tolerance: Tolerance,
) -> Account:
    """The cheapest account of the terms without unknown at `scale`."""
    acting = [s for s in numbers if s.true != 0.0]
    if constants_fit(line, acting, scale, tolerance) is not None:
        more = len(line.constants) > len(acting)
        return Account(MORE_THAN_THERE if more else 0.0, (), scale)
    by_term = _by_term(line.constants, numbers, choices, true, scale, text, tolerance)
    by_sum = _by_sum(line, numbers, choices, scale, tolerance)
    if by_sum is not None and (by_term is None or by_sum.cost < by_term.cost):
        return by_sum
    if by_term is not None:
        return by_term
    return Account(UNEXPLAINED, (Slip("not-equilibrium", None, None),), scale)


def _by_sum(
    line: Typed,
    numbers: Sequence[Spot],
    choices: Sequence[Sequence[Option]],
    scale: float,
    tolerance: Tolerance,
) -> Account | None:
    """One or two slips that change the sum into the typed one, where numbers were added up."""
    target = scale * math.fsum(s.true for s in numbers)
    carried = abs(scale) * math.fsum(abs(s.per_unit) * s.radius for s in numbers)
    parts = abs(scale) * math.fsum(s.spread for s in numbers)
    share = tolerance.silent * max(abs(line.total), abs(target))
    slack = (
        carried + min(line.radius, tolerance.silent * parts) + share + TINY * (parts + abs(scale))
    )
    need = line.total - target
    changes = [
        (scale * (option.value - spot.true), option, i)
        for i, (spot, wrong) in enumerate(zip(numbers, choices, strict=True))
        for option in wrong
        if len(option.codes) == 1
    ]
    best: tuple[float, tuple[tuple[Option, int], ...]] | None = None
    for delta, option, i in changes:
        if abs(need - delta) <= slack and (best is None or option.cost < best[0]):
            best = (option.cost, ((option, i),))
    if best is None and len(changes) <= 120:
        for (one, first, i), (two, second, j) in combinations(changes, 2):
            cost = first.cost + second.cost
            if i != j and abs(need - one - two) <= slack and (best is None or cost < best[0]):
                best = (cost, ((first, i), (second, j)))
    if best is None:
        return None
    cost, chosen = best
    slips = tuple(
        Slip(code, numbers[i].name, numbers[i]) for option, i in chosen for code in option.codes
    )
    added_up = len(line.constants) < sum(1 for s in numbers if s.true != 0.0)
    return Account(cost + (BY_SUM if added_up else BY_SUM + MORE_THAN_THERE), slips, scale)


def _by_term(
    terms: Sequence[Term],
    numbers: Sequence[Spot],
    choices: Sequence[Sequence[Option]],
    true: TrueLine,
    scale: float,
    text: str,
    tolerance: Tolerance,
) -> Account | None:
    """Typed number beside true number: what is right drops out, the rest is assigned."""
    left = [i for i, spot in enumerate(numbers) if spot.true != 0.0]
    rest: list[Term] = []
    for term in terms:
        match = _right_one(term, [numbers[i] for i in left], scale, tolerance)
        if match is None:
            rest.append(term)
        else:
            left.pop(match)
    if max(len(rest), len(left)) > MOST_TO_ASSIGN:
        return None
    zero = [i for i, spot in enumerate(numbers) if spot.true == 0.0 and choices[i]]
    places: list[int | None] = [*left, *zero[:2], *([None] * len(rest))]
    best: Account | None = None
    for assigned in dict.fromkeys(permutations(places, len(rest))):
        account = _assigned(rest, assigned, left, numbers, choices, true, scale, text, tolerance)
        if best is None or account.cost < best.cost:
            best = account
    return best


def _right_one(
    term: Term, numbers: Sequence[Spot], scale: float, tolerance: Tolerance
) -> int | None:
    offs = [
        (abs(term.value - scale * s.true), i)
        for i, s in enumerate(numbers)
        if abs(term.value - scale * s.true)
        <= tolerance.remark * abs(scale) * s.spread + abs(scale * s.per_unit) * s.radius
    ]
    return min(offs)[1] if offs else None


def _assigned(
    terms: Sequence[Term],
    places: Sequence[int | None],
    left: Sequence[int],
    numbers: Sequence[Spot],
    choices: Sequence[Sequence[Option]],
    true: TrueLine,
    scale: float,
    text: str,
    tolerance: Tolerance,
) -> Account:
    cost, slips = 0.0, []
    for term, place in zip(terms, places, strict=True):
        if place is None:
            name = _load_elsewhere(term.value / scale, true, numbers)
            slips.append(Slip("extra", name, None, term.span))
            cost += KINDS["extra"].cost + (0.3 if name else 1.5)
            continue
        spot = numbers[place]
        option = found_option(term.value, term.radius, scale, choices[place], spot, tolerance)
        if rounded_harder(term.value, term.radius, scale * spot.true):
            option = Option(spot.true, ("rounding",), KINDS["rounding"].cost)
        if option is None:
            option = _other_number(term, spot, scale, text)
        slips += [Slip(code, spot.name, spot, term.span) for code in option.codes]
        cost += option.cost
    for place in left:
        if place not in places:
            slips.append(Slip("missing", numbers[place].name, numbers[place]))
            cost += KINDS["missing"].cost
    return Account(cost, tuple(slips), scale)


def _other_number(term: Term, spot: Spot, scale: float, text: str) -> Option:
    """A number no rule makes: a wrong arm where the size is written, else a wrong size."""
    size_written = any(
        math.isclose(number, abs(spot.scale), rel_tol=0.005)
        for number in numbers_in(text, term.span)
    )
    code = "magnitude"
    if size_written:
        code = "arm" if spot.is_moment else "not-equilibrium"
    cost = KINDS["magnitude"].cost if code != "not-equilibrium" else UNEXPLAINED
    if term.value * scale * spot.true < 0:
        return Option(term.value, (code, "sign"), cost + KINDS["sign"].cost)
    return Option(term.value, (code,), cost)


def numbers_in(text: str, span: Span) -> list[float]:
    """The plain numbers written in a part of the text."""
    return [
        float(n.replace(",", "."))
        for n in re.findall(r"\d+(?:[.,]\d+)?|[.,]\d+", text[span.start : span.end])
    ]


def _load_elsewhere(value: float, true: TrueLine, numbers: Sequence[Spot]) -> str | None:
    """The load of another joint that has this size or component, or None."""
    here = {spot.force.joint for spot in numbers if spot.force.kind == "load"}
    for load in true.problem.loads:
        if load.joint in here:
            continue
        right, up = load.vector
        for size in (right, up, math.hypot(right, up)):
            if size != 0.0 and math.isclose(abs(value), abs(size), rel_tol=0.005):
                return f"load {load.joint}"
    return None

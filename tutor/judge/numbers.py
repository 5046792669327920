"""Which slips explain the terms of a line that have no unknown: loads and own earlier values?"""

from __future__ import annotations

import math
import re
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import replace
from itertools import combinations
from typing import NamedTuple

from tutor.judge.compare import TINY, Typed, constants_fit, is_decimal
from tutor.judge.mistakes import KINDS
from tutor.judge.options import Choices, Option, turning_code
from tutor.judge.slips import Account, Slip, found_option, rounded_harder
from tutor.judge.truth import Spot, TrueLine
from tutor.model import Tolerance
from tutor.notation import Span, Term
from tutor.statics.body import load_forces

UNEXPLAINED = KINDS["not-equilibrium"].cost
BY_SUM = 0.1
MORE_THAN_THERE = 0.3
DOUBLE_SEEN = 0.6
OTHER_SIZE = 2.4
UNPLACED = 1.8
MOST_TO_ASSIGN = 4
MOST_TO_CHANGE = 12
MOST_IDLE = 2
MOST_TO_ADD_UP = 8
LUMPED = 2.3
PLAIN_SLIPS = frozenset({"sign", "turning", "sense", "minus", "missing", "double"})
MOST_STRAY = 12


def explain_numbers(
    line: Typed,
    numbers: Sequence[Spot],
    choices: Choices,
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
    rest, left = _unpaired(line.constants, numbers, scale, tolerance)
    by_term = _by_term(rest, left, numbers, choices, true, scale, text, tolerance)
    by_sum = _by_sum(rest, left, numbers, choices, scale, tolerance)
    if by_sum is not None and (by_term is None or by_sum.cost < by_term.cost):
        return by_sum
    if by_term is not None:
        return by_term
    return Account(UNEXPLAINED, (Slip("not-equilibrium", None, None),), scale)


def _unpaired(
    terms: Sequence[Term], numbers: Sequence[Spot], scale: float, tolerance: Tolerance
) -> tuple[list[Term], list[int]]:
    """The typed numbers, and the places of the true ones, that are left when what fits is out.

    A typed number fits a true one, or the sum of two or three of them.
    """
    left = [i for i, spot in enumerate(numbers) if spot.true != 0.0]
    rest = []
    for term in terms:
        match = _right_one(term, [numbers[i] for i in left], scale, tolerance)
        if match is None:
            rest.append(term)
        else:
            left.pop(match)
    for term in list(rest) if len(left) <= MOST_TO_ADD_UP else ():
        found = _right_sum(term, left, numbers, scale)
        if found:
            rest.remove(term)
            left = [i for i in left if i not in found]
    return rest, left


def _right_sum(
    term: Term, left: Sequence[int], numbers: Sequence[Spot], scale: float
) -> tuple[int, ...]:
    """The places of two or three true numbers that the typed one adds up, or none."""
    for count in (2, 3):
        for places in combinations(left, count):
            total = scale * math.fsum(numbers[i].true for i in places)
            if abs(term.value - total) <= 1e-4 * abs(total) + min(term.radius, 0.005 * abs(total)):
                return places
    return ()


def _by_sum(
    rest: Sequence[Term],
    left: Sequence[int],
    numbers: Sequence[Spot],
    choices: Choices,
    scale: float,
    tolerance: Tolerance,
) -> Account | None:
    """Where more was added up than stands in the line: slips that change the sum into the typed one.

    A single number never shows more than one slip.
    """
    if not len(rest) < len(left) or not rest:
        return None
    spots = [numbers[i] for i in left]
    target = scale * math.fsum(s.true for s in spots)
    total = math.fsum(term.value for term in rest)
    carried = abs(scale) * math.fsum(abs(s.per_unit) * s.radius for s in spots)
    parts = abs(scale) * math.fsum(s.spread for s in spots)
    radius = math.fsum(term.radius for term in rest)
    share = tolerance.silent * max(abs(total), abs(target))
    slack = carried + min(radius, tolerance.silent * parts) + share + TINY * (parts + 1.0)
    need = total - target
    alone = len(rest) == 1
    changes = sorted(
        (
            Change(scale * (option.value - numbers[i].true), option.cost, i, option)
            for i in left
            for option in (choices[i] if len(left) <= MOST_TO_CHANGE else choices.plainest(i))
            if len(option.codes) == 1 and (not alone or option.codes[0] in PLAIN_SLIPS)
        ),
        key=lambda change: change.delta,
    )
    one: tuple[float, tuple[Change, ...]] | None = min(
        ((c.cost, (c,)) for c in changes if abs(need - c.delta) <= slack),
        key=lambda found: found[0],
        default=None,
    )
    best = _two_changes(changes, need, slack) if one is None and not alone else one
    if best is None:
        return Account(LUMPED, (Slip("arithmetic", None, None),), scale) if alone else None
    cost, chosen = best
    slips = tuple(
        Slip(_code(code, numbers[c.place], numbers), numbers[c.place].name, numbers[c.place])
        for c in chosen
        for code in c.option.codes
    )
    return Account(cost + BY_SUM, slips, scale)


class Change(NamedTuple):
    """What one wrong number would change in the sum."""

    delta: float
    cost: float
    place: int
    option: Option


def _two_changes(
    changes: Sequence[Change], need: float, slack: float
) -> tuple[float, tuple[Change, ...]] | None:
    """The cheapest two changes at different places that make up `need`; `changes` are in order."""
    best: tuple[float, tuple[Change, ...]] | None = None
    for i, one in enumerate(changes):
        low = bisect_left(changes, need - one.delta - slack, i + 1, key=lambda c: c.delta)
        for other in changes[low:]:
            if other.delta > need - one.delta + slack:
                break
            cost = one.cost + other.cost
            if other.place != one.place and (best is None or cost < best[0]):
                best = (cost, (one, other))
    return best


def _by_term(
    rest: Sequence[Term],
    left: Sequence[int],
    numbers: Sequence[Spot],
    choices: Choices,
    true: TrueLine,
    scale: float,
    text: str,
    tolerance: Tolerance,
) -> Account | None:
    """Typed number beside true number, each assigned to the one it most likely stands for."""
    if max(len(rest), len(left)) > MOST_TO_ASSIGN:
        return None
    zero = [i for i, spot in enumerate(numbers) if spot.true == 0.0][:MOST_IDLE]
    places = [*left, *zero]
    pairs = [
        [_pair(term, numbers[i], choices[i], scale, text, tolerance) for i in places]
        for term in rest
    ]
    alone = [_without_place(term, true, numbers, scale) for term in rest]
    missed = {i: _code("missing", numbers[i], numbers) for i in left}
    chosen = _cheapest(pairs, [a.cost for a in alone], [i in missed for i in places])
    slips: list[Slip] = []
    cost = 0.0
    for term, place, lone, row in zip(rest, chosen, alone, pairs, strict=True):
        if place is None:
            slips += [replace(slip, span=term.span) for slip in lone.slips]
            cost += lone.cost
            continue
        spot = numbers[places[place]]
        slips += [Slip(code, spot.name, spot, term.span) for code in row[place].codes]
        cost += row[place].cost
    taken = {places[place] for place in chosen if place is not None}
    for i, code in missed.items():
        if i not in taken:
            slips.append(Slip(code, numbers[i].name, numbers[i]))
            cost += KINDS[code].cost
    return Account(cost, tuple(slips), scale)


def _cheapest(
    pairs: Sequence[Sequence[Option]], alone: Sequence[float], must: Sequence[bool]
) -> tuple[int | None, ...]:
    """For each typed number its place, or None, at the least cost over all; a search with bounds."""
    best_cost = math.inf
    best: tuple[int | None, ...] = ()

    def go(row: int, chosen: tuple[int | None, ...], cost: float) -> None:
        nonlocal best_cost, best
        if cost >= best_cost:
            return
        if row == len(pairs):
            free = sum(1 for i, needed in enumerate(must) if needed and i not in chosen)
            total = cost + free * KINDS["missing"].cost
            if total < best_cost:
                best_cost, best = total, chosen
            return
        for i, option in enumerate(pairs[row]):
            if i not in chosen:
                go(row + 1, (*chosen, i), cost + option.cost)
        go(row + 1, (*chosen, None), cost + alone[row])

    go(0, (), 0.0)
    return best


def _pair(
    term: Term,
    spot: Spot,
    choices: Sequence[Option],
    scale: float,
    text: str,
    tolerance: Tolerance,
) -> Option:
    """What a typed number would be if it stood for this true one."""
    factor_written = any(_is_near(n, spot.per_unit) for n in numbers_in(text, term.span))
    if rounded_harder(term.value, term.radius, scale * spot.true) and not factor_written:
        return Option(spot.true, ("rounding",), KINDS["rounding"].cost)
    decimal = is_decimal(text, term)
    apt = choices if decimal else [o for o in choices if "angle-mode" not in o.codes]
    option = found_option(term.value, term.radius, scale, apt, spot, tolerance)
    if option is None and spot.true == 0.0:
        return Option(term.value, ("extra",), KINDS["extra"].cost + UNPLACED)
    if option is None:
        return _other_number(term, spot, scale, text)
    if spot.is_moment and option.codes[0] in ("unit", "arm-unit"):
        code = "arm-unit" if _size_written(text, term.span, spot) else "unit"
        return replace(option, codes=(code, *option.codes[1:]))
    return option


def _without_place(term: Term, true: TrueLine, numbers: Sequence[Spot], scale: float) -> Account:
    """What a typed number is that stands for none on the body: one counted twice, or a stray one."""
    for spot in numbers:
        if spot.true != 0.0 and math.isclose(term.value, scale * spot.true, rel_tol=0.005):
            return Account(DOUBLE_SEEN, (Slip("double", spot.name, spot),), scale)
    name = _load_elsewhere(term.value / scale, true)
    if name is not None:
        return Account(KINDS["stray-load"].cost, (Slip("stray-load", name, None),), scale)
    return Account(KINDS["extra"].cost + UNPLACED, (Slip("extra", None, None),), scale)


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


def _other_number(term: Term, spot: Spot, scale: float, text: str) -> Option:
    """A number no rule makes: a wrong arm or factor where the size is written, else a wrong size."""
    code = "magnitude" if spot.force.kind == "load" else "carried"
    cost = OTHER_SIZE
    if _size_written(text, term.span, spot):
        code = "arm" if spot.is_moment else "not-equilibrium"
        cost = KINDS["magnitude"].cost if spot.is_moment else UNEXPLAINED
    elif any(_is_near(n, spot.per_unit) for n in numbers_in(text, term.span)):
        cost = KINDS[code].cost
    if term.value * scale * spot.true < 0:
        turned = turning_code(spot)
        return Option(term.value, (code, turned), cost + KINDS[turned].cost)
    return Option(term.value, (code,), cost)


def _is_near(number: float, factor: float) -> bool:
    return math.isclose(number, abs(factor), rel_tol=0.005)


def _size_written(text: str, span: Span, spot: Spot) -> bool:
    """Whether the force's own size stands in this part of the text, so that another factor is off."""
    return any(
        math.isclose(number, abs(spot.scale), rel_tol=0.005) for number in numbers_in(text, span)
    )


NUMBER = r"\d+(?:[.,]\d+)?|[.,]\d+"
WRITTEN = re.compile(rf"({NUMBER})(?:\s*/\s*({NUMBER}))?")


def numbers_in(text: str, span: Span) -> list[float]:
    """The plain numbers and the fractions written in a part of the text."""
    found = []
    for above, below in WRITTEN.findall(text[span.start : span.end]):
        numbers = [float(n.replace(",", ".")) for n in (above, below) if n]
        found += numbers
        if len(numbers) == 2 and numbers[1] != 0.0:
            found.append(numbers[0] / numbers[1])
    return found


def _load_elsewhere(value: float, true: TrueLine) -> str | None:
    """The load of another joint whose part in this sum, or whole size, is this; or None."""
    own = true.about.joint
    if own is None:
        return None
    total = true.equation.sum
    near = [member.other(own) for member in true.problem.meeting[own]]
    loaded = [load.joint for load in true.problem.loads if load.joint != own]
    forces = [
        force
        for joint in sorted(dict.fromkeys(loaded), key=lambda name: name not in near)[:MOST_STRAY]
        for force in load_forces(true.problem, joint)
    ]
    for whole in (False, True):
        for force in forces:
            part = (1.0 if whole else total.of(force)) * (force.size or 0.0)
            if part != 0.0 and math.isclose(abs(value), abs(part), rel_tol=0.005):
                return force.name
    return None


def _code(code: str, spot: Spot, numbers: Sequence[Spot]) -> str:
    """The code of a slip; leaving out one of two loads at a joint has its own."""
    if code != "missing" or spot.force.kind != "load":
        return code
    beside = [
        other
        for other in numbers
        if other is not spot
        and other.force.kind == "load"
        and other.force.joint == spot.force.joint
        and other.force.source is not spot.force.source
        and other.true != 0.0
    ]
    return "lost-load" if beside else "missing"

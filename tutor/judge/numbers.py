"""Which slips explain the terms of a line that have no unknown: loads and own earlier values?"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import combinations

from tutor.judge.fit import numbers_fit
from tutor.judge.mistakes import KINDS
from tutor.judge.number_sums import by_sum, code_of
from tutor.judge.options import Choices, Option, turning_code
from tutor.judge.slips import (
    MISPLACED,
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
from tutor.judge.typed import Typed
from tutor.model import Tolerance
from tutor.notation import Term
from tutor.statics.body import load_forces

MORE_THAN_THERE = 0.3
DOUBLE_SEEN = 0.6
OTHER_SIZE, BARE_SIZE = 2.4, 1.6
UNPLACED = 1.8
MOST_TO_ASSIGN = 4
MOST_IDLE = 2
MOST_TO_ADD_UP = 8
MOST_STRAY = 12
SAME, SAME_RESULT = 0.005, 0.002
STRAY_WHOLE = 0.2


def explain_numbers(
    line: Typed,
    numbers: Sequence[Spot],
    choices: Choices,
    true: TrueLine,
    scale: float,
    texts: Mapping[Term, TermText],
    tolerance: Tolerance,
) -> Account:
    """The cheapest account of the terms without unknown at `scale`."""
    acting = [s for s in numbers if s.true != 0.0]
    if numbers_fit(line, acting, scale, tolerance) is not None:
        more = len(line.constants) > len(acting)
        return Account(MORE_THAN_THERE if more else 0.0, (), scale)
    rest, left = _unpaired(line.constants, numbers, scale, tolerance)
    by_term = _by_term(rest, left, numbers, choices, true, scale, texts, tolerance)
    typed = [(term, texts[term]) for term in rest]
    added_up = by_sum(typed, left, numbers, choices, scale, tolerance)
    if added_up is not None and (by_term is None or added_up.cost < by_term.cost):
        return added_up
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
            if _both_parts([numbers[i] for i in places]):
                continue
            total = scale * math.fsum(numbers[i].true for i in places)
            if abs(term.value - total) <= 1e-4 * abs(total) + min(term.radius, 0.005 * abs(total)):
                return places
    return ()


def _both_parts(spots: Sequence[Spot]) -> bool:
    """Whether both components of one force are among these: together they are that force again."""
    sources = [spot.force.source or spot.name for spot in spots if spot.part]
    return any(sources.count(source) > 1 for source in sources)


def _by_term(
    rest: Sequence[Term],
    left: Sequence[int],
    numbers: Sequence[Spot],
    choices: Choices,
    true: TrueLine,
    scale: float,
    texts: Mapping[Term, TermText],
    tolerance: Tolerance,
) -> Account | None:
    """Typed number beside true number, each assigned to the one it most likely stands for."""
    if max(len(rest), len(left)) > MOST_TO_ASSIGN:
        return None
    places = [*left, *_idle(rest, numbers, scale)]
    pairs = [
        [_pair(term, numbers[i], choices[i], true, scale, texts[term], tolerance) for i in places]
        for term in rest
    ]
    alone = [_without_place(term, true, numbers, scale) for term in rest]
    missed = {i: code_of("missing", numbers[i], numbers) for i in left}
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


def _idle(rest: Sequence[Term], numbers: Sequence[Spot], scale: float) -> list[int]:
    """The places of forces without a part in the equation that the typed numbers may stand for."""
    sizes = [abs(term.value / scale) for term in rest]
    found = [
        (min((abs(size - abs(spot.scale)) for size in sizes), default=0.0), i)
        for i, spot in enumerate(numbers)
        if spot.true == 0.0 and spot.scale != 0.0
    ]
    return [i for _, i in sorted(found)[:MOST_IDLE]]


def _pair(
    term: Term,
    spot: Spot,
    choices: Sequence[Option],
    true: TrueLine,
    scale: float,
    text: TermText,
    tolerance: Tolerance,
) -> Option:
    """What a typed number would be if it stood for this true one."""
    if rounded_harder(term.value, term.radius, scale * spot.true) and not text.holds(spot.per_unit):
        return Option(spot.true, ("rounding",), KINDS["rounding"].cost)
    option = found_option(term.value, term.radius, scale, choices, spot, text, tolerance)
    if spot.true == 0.0:
        return option or Option(term.value, ("extra",), KINDS["extra"].cost + UNPLACED)
    others = [_other_number(term, spot, scale, text)]
    if (copied := _other_result(term, spot, true, scale, text)) is not None:
        others.append(copied)
    other = min(others, key=lambda found: found.cost)
    if option is None or other.cost < option.cost:
        return other
    if spot.is_moment and option.codes[0] in ("unit", "arm-unit"):
        code = "arm-unit" if text.holds(spot.scale) else "unit"
        return replace(option, codes=(code, *option.codes[1:]))
    return option


def _other_result(
    term: Term, spot: Spot, true: TrueLine, scale: float, text: TermText
) -> Option | None:
    """An own earlier value that is another force's, with the right factor; or None."""
    if spot.force.kind == "load":
        return None
    size = abs(scale * spot.per_unit)
    for name, carried in true.given.known.items():
        if name != spot.name and math.isclose(
            abs(term.value), size * abs(carried.value), rel_tol=SAME_RESULT
        ):
            against = MISPLACED if text.speaks_against("carried", spot, scale) else 0.0
            return Option(term.value, ("carried",), KINDS["carried"].cost + against)
    return None


def _without_place(term: Term, true: TrueLine, numbers: Sequence[Spot], scale: float) -> Account:
    """What a typed number is that stands for none on the body: one counted twice, or a stray one."""
    for spot in numbers:
        if spot.true != 0.0 and math.isclose(term.value, scale * spot.true, rel_tol=0.005):
            return Account(DOUBLE_SEEN, (Slip("double", spot.name, spot),), scale)
    elsewhere = _load_elsewhere(term.value / scale, true)
    if elsewhere is not None:
        name, against = elsewhere
        cost = KINDS["stray-load"].cost + against
        return Account(cost, (Slip("stray-load", name, None),), scale)
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


def _other_number(term: Term, spot: Spot, scale: float, text: TermText) -> Option:
    """A number no rule makes: a wrong arm or factor where the size is written, else a wrong size."""
    code = "magnitude" if spot.force.kind == "load" else "carried"
    cost = OTHER_SIZE
    size, factor = text.holds(spot.scale, scale), text.holds(spot.per_unit, scale)
    if size and not factor and spot.scale != 0.0:
        code = "arm" if spot.is_moment else "not-equilibrium"
        per_unit = term.value / (scale * spot.scale)
        cost = KINDS["magnitude"].cost if spot.is_moment else other_factor_cost(per_unit, spot)
    elif factor:
        cost = KINDS[code].cost
    elif abs(spot.per_unit) == 1.0 and len(text.numbers) == 1:
        cost = BARE_SIZE
    if term.value * scale * spot.true < 0:
        turned = turning_code(spot)
        return Option(term.value, (code, turned), cost + KINDS[turned].cost)
    return Option(term.value, (code,), cost)


def _load_elsewhere(value: float, true: TrueLine) -> tuple[str, float] | None:
    """The load of another joint that this is, and how much speaks against it; or None.

    What it gives in this sum where it acts comes first, then that turned round, then its whole size;
    a load of a neighbouring joint comes before one further away.
    """
    own = true.about.joint
    if own is None:
        return None
    total = true.equation.sum
    near = [member.other(own) for member in true.problem.meeting[own]]
    loaded = [load.joint for load in true.problem.loads if load.joint != own]
    found: list[tuple[float, str]] = []
    for joint in sorted(dict.fromkeys(loaded), key=lambda name: name not in near)[:MOST_STRAY]:
        for force in load_forces(true.problem, joint):
            size = force.size or 0.0
            for part, whole in ((total.of(force) * size, 0.0), (size, STRAY_WHOLE)):
                off = abs(abs(value) - abs(part))
                if part != 0.0 and off <= SAME * abs(part):
                    against = whole + (STRAY_TURNED if value * part < 0 else 0.0)
                    found.append((against + off / abs(part), force.name))
    if not found:
        return None
    against, name = min(found, key=lambda one: one[0])
    return name, against

"""Which mistakes explain a wrong line best, force by force or running through all of it?"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from itertools import permutations

from tutor.judge.about import M
from tutor.judge.arms_mixed import arms_in_other_unit
from tutor.judge.costs import NOT_RECORDED
from tutor.judge.equal_forces import LEFT_OUT
from tutor.judge.explanation import NOTHING_NAMED, Explanation, Slip
from tutor.judge.factors import Factors
from tutor.judge.fit import fit, nearly_as_written
from tutor.judge.known_values import KnownValue, KnownValues
from tutor.judge.mistakes import KINDS
from tutor.judge.mistakes.arm_unit import LENGTHS
from tutor.judge.mistakes.unit import FACTORS
from tutor.judge.one_each import number_by_number
from tutor.judge.same import SAME, are_same
from tutor.judge.search import search
from tutor.judge.true_equation import TrueEquation, TrueTerm
from tutor.judge.typed import TypedEquation, typed_equation
from tutor.model import Tolerance
from tutor.notation import Names, Reading, Term, Unreadable, one_equation, read_line
from tutor.notation.elements.tree import Name
from tutor.notation.formulas.evaluate import parts

ABOUT_ONE = (0.9, 1.1)
"""Between these lies what is the same but for a unit, for a first look."""
MOST_FORCES = 2
BARE_ANGLE = re.compile(r"(?:sin|cos|tan)[ (]*(\d+(?:[.,]\d+)?)", re.IGNORECASE)


def slips_of(
    true: TrueEquation,
    line: TypedEquation,
    reading: Reading,
    names: Names,
    tolerance: Tolerance,
    values: Mapping[str, float],
) -> tuple[tuple[Slip, ...], tuple[tuple[Slip, ...], ...]]:
    """The slips of the best account, and those of each account that is about as good."""
    nothing = (Slip("not-equilibrium", None, None),)
    idle = frozenset(name for name in true.unknowns if values[name] == 0.0)
    if not line.names and not line.constants:
        return nothing, ()
    account, others = search(line, true, tolerance, idle)
    if (used := _with_values_put_in(account, line, true, tolerance, values, idle)) is not None:
        account, others = used
    overall = _overall(true, line, reading, names, tolerance)
    if overall is not None:
        alone = len(account.slips) == 1 and account.slips[0].code != "not-equilibrium"
        return (overall,), (account.slips,) if alone else ()
    if not _can_be_named(account) or (not line.names and not _mostly_right(account, line)):
        return nothing, (account.slips,)
    named = [other for other in others if all(s.code != "not-equilibrium" for s in other.slips)]
    return account.slips, tuple(other.slips for other in named)


def _with_values_put_in(
    account: Explanation,
    line: TypedEquation,
    true: TrueEquation,
    tolerance: Tolerance,
    values: Mapping[str, float],
    idle: frozenset[str],
) -> tuple[Explanation, tuple[Explanation, ...]] | None:
    """The search once more, with the values of unknowns left out that were not recorded, if better."""
    left_out = [
        slip.force for slip in account.slips if slip.force in values and slip.code == "missing"
    ]
    if account.slips == (NOTHING_NAMED,):
        left_out = [n for n, s in true.unknowns.items() if s.true and n not in line.names]
    taken = {
        name: KnownValue(true.own.sign(name) * values[name], SAME * abs(values[name]))
        for name in left_out
        if name is not None and name not in true.own.known
    }
    if not taken or not line.constants or _all_spoken_for(line, true):
        return None
    own = KnownValues(true.own.senses, {**true.own.known, **taken})
    first, others = search(line, replace(true, own=own), tolerance, idle)
    if first.cost + NOT_RECORDED >= account.cost or not _show_in(line, first, taken):
        return None
    return first, others


def _show_in(line: TypedEquation, account: Explanation, taken: Mapping[str, KnownValue]) -> bool:
    """Whether the line shows the values put in: a wrong one by its size, typed as a factor."""
    if any(slip.code in ("arithmetic", "not-equilibrium") for slip in account.slips):
        return False
    products = [factors for factors in line.factors if factors.count > 1]
    return all(
        any(factors.holds(put_in.value) for factors in products)
        for slip in account.slips
        if (put_in := taken.get(slip.force or "")) and KINDS[slip.code].touches != "neither"
    )


def _all_spoken_for(line: TypedEquation, true: TrueEquation) -> bool:
    """Whether each typed number shows a load or a recorded value, so that none was put in besides.

    A product that comes to what a force adds shows that force and no other; twice the size of one at a
    joint shows another of the same size.
    """
    every = [spot for spot in true.numbers(line.names) if spot.true != 0.0]
    left = list(every)
    for term, factors in zip(line.constants, line.factors, strict=True):
        if true.about.joint and factors.count > 2 and 2.0 in factors.leaves:
            return False
        plain = next((spot for spot in every if _comes_to(term, factors, spot)), None)
        own = next((spot for spot in left if _shows(term, factors, spot)), None)
        own = own if plain is None else plain
        if own not in left:
            return False
        left.remove(own)
    return True


def _comes_to(term: Term, factors: Factors, spot: TrueTerm) -> bool:
    """Whether a product with the size of a force is what that force adds."""
    shown = factors.count > 1 and factors.holds(spot.scale)
    return shown and are_same(abs(term.value), abs(spot.true))


def _shows(term: Term, factors: Factors, spot: TrueTerm) -> bool:
    if factors.count > 1:
        return factors.holds(spot.scale)
    return are_same(abs(term.value), abs(spot.true))


def _can_be_named(account: Explanation) -> bool:
    """Whether an account is short enough to be believed: two forces, one kind of slip only, or one more.

    One more is a slip at one force beside one mistake that runs through the line, at however many.
    """
    forces, codes = {s.force for s in account.slips}, {s.code for s in account.slips}
    if len(forces) <= MOST_FORCES:
        return True
    running = {code for code in codes if KINDS[code].runs_through}
    anew = {(s.code, s.force) for s in account.slips if s.code not in running}
    one_more = len(running) == 1 == len(anew)
    return NOTHING_NAMED.code not in codes and (len(codes) == 1 or one_more)


def _mostly_right(account: Explanation, line: TypedEquation) -> bool:
    """Whether a line of numbers alone has more right terms than wrong ones: chance explains others.

    Where a term is wrong, one that is left out counts as wrong too.
    """
    touched = any(slip.code not in LEFT_OUT for slip in account.slips)
    return not touched or 2 * len(account.slips) <= len(line.constants)


def _overall(
    true: TrueEquation, line: TypedEquation, reading: Reading, names: Names, tolerance: Tolerance
) -> Slip | None:
    """A mistake that runs through the whole line: members reversed, or degrees as radians."""
    members = [n for n, s in true.unknowns.items() if s.force.kind == "member" and s.true != 0.0]
    standing = [s for n, s in true.unknowns.items() if n not in members and s.true != 0.0] + [
        s for s in true.loads if s.true != 0.0
    ]
    known = true.own.known
    pulling = [n for n in members if n in line.names or (n in known and known[n].value != 0.0)]
    if len(pulling) >= 2 and standing:
        turned = {n: "T" if true.own.sign(n) < 0 else "C" for n in members}
        own = KnownValues({**true.own.senses, **turned}, true.own.known)
        found = fit(line, replace(true, own=own), tolerance)
        loads = all(spot.name not in true.unknowns for spot in standing)
        as_written = found is not None and found.scale > 0 and not _moved(line.reading, loads)
        if found is not None and (as_written or len(standing) > 1):
            return Slip("pull-push", None, None)
    if (arms := arms_in_other_unit(true, line, tolerance)) is not None:
        return arms
    if _in_other_unit(true, line, tolerance):
        return Slip("unit", None, None)
    if any(_scaled(true, line, share, tolerance) for share in _slopes(true, line)):
        return Slip("arm", None, None)
    if not _may_be_radians(reading.text):
        return None
    radians = one_equation(read_line(reading.text, names, angles="radians"))
    if not isinstance(radians, Unreadable):
        again = typed_equation(radians)
        if again != line and fit(again, true, tolerance) is not None:
            return Slip("angle-mode", None, None)
    return None


def _moved(reading: Reading, loads: bool) -> bool:
    """Whether terms were moved over the equals sign, so that their signs are not those of the diagram.

    So it is where a line is solved for one force, and where all forces stand against all numbers, if these
    are `loads`.
    """
    sides = reading.left, reading.right
    if any(isinstance(side, Name) for side in sides):
        return True
    if not loads:
        return False
    numbers = [[term.name is None for term in parts(side, reading.frame)] for side in sides]
    return any(all(one) and any(one) and not any(other) for one, other in permutations(numbers))


def _may_be_radians(text: str) -> bool:
    """Whether every bare angle in the text is small enough to be one in radians."""
    angles = [float(angle.replace(",", ".")) for angle in BARE_ANGLE.findall(text)]
    return bool(angles) and max(angles) <= 2 * math.pi


def _in_other_unit(true: TrueEquation, line: TypedEquation, tolerance: Tolerance) -> bool:
    """Whether all numbers without unknown are off by the same factor of units.

    So are they where all lengths are in another unit too, and the arms of the unknowns with them.
    """
    if len(line.constants) < 2:
        return False
    arms = 1.0 if nearly_as_written(line, true) else _of_lengths(line, true)
    sizes = [abs(arms * spot.true) for spot in true.numbers(line.names)]
    first = abs(line.constants[0].value)
    for factor in FACTORS if arms else ():
        if factor == arms or not any(
            ABOUT_ONE[0] * size <= first * factor <= ABOUT_ONE[1] * size for size in sizes
        ):
            continue
        if _scaled(true, line, factor, tolerance, arms):
            return True
    return False


def _of_lengths(line: TypedEquation, true: TrueEquation) -> float:
    """The factor of units that the arm of an unknown in a moment is off by, about; 0 for any other."""
    name = next(iter(line.names & true.acting), None)
    if name is None or not true.is_moment:
        return 0.0
    scale = abs(line.unknowns[name].value / true.unknowns[name].true)
    low, high = ABOUT_ONE
    return next((size for size in LENGTHS if low * size <= scale <= high * size), 0.0)


def _slopes(true: TrueEquation, line: TypedEquation) -> Iterator[float]:
    """What a length along a slope from the moment point is multiplied by to be level or upright."""
    if not isinstance(true.about, M) or len(line.constants) < 2 or true.about.part:
        return
    at = true.about.at
    for member in true.problem.meeting.get(at, ()) if isinstance(at, str) else ():
        pull = true.problem.pulls[member.name, str(at)]
        yield from {abs(pull.x), abs(pull.y)} - {0.0, 1.0}


def _scaled(
    true: TrueEquation,
    line: TypedEquation,
    factor: float,
    tolerance: Tolerance,
    arms: float = 1.0,
) -> bool:
    """Whether a line is `arms` times the true one, number by number, with its numbers times a factor."""
    numbers = tuple(
        t._replace(value=t.value * factor, radius=t.radius * factor) for t in line.constants
    )
    turned = replace(line, constants=numbers)
    found = fit(turned, true, tolerance)
    if found is None or not math.isclose(abs(found.scale), arms, rel_tol=SAME):
        return False
    spots = true.numbers(line.names)
    parts = [part for spot in spots for part in spot.parts or (spot,)]
    return any(number_by_number(turned, each, found.scale, tolerance) for each in (spots, parts))

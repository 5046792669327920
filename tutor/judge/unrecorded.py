"""Does a line put in values as numbers that the student has not recorded yet?"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import NamedTuple

from tutor.judge.about import Equation
from tutor.judge.blocks import left_unpaired
from tutor.judge.fit import fit
from tutor.judge.known_values import KnownValue, KnownValues
from tutor.judge.other_equation import sums_at_joints
from tutor.judge.same import NEAR, SAME
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import TypedEquation


class Unrecorded(NamedTuple):
    """Unknowns whose values a line puts in as numbers, and whether each stands in it by itself.

    `only_idle` is whether all of them are zero, so that they were merely left out; `shown` whether the numbers
    typed come to as much as all that they stand for, so that none was set off against another. `by_size` are
    those of which a number typed is the size or a component, and not what other forces make of it.
    """

    names: tuple[str, ...]
    term_by_term: bool
    only_idle: bool
    shown: bool
    by_size: tuple[str, ...] = ()


def with_unrecorded(
    line: TypedEquation, true: TrueEquation, values: Mapping[str, float]
) -> Unrecorded | None:
    """The unknowns left out whose values, put in as numbers, make this the equation asked for."""
    left_out = tuple(
        name
        for name, spot in true.unknowns.items()
        if spot.true != 0.0 and name not in line.names and name not in true.own.known
    )
    if not left_out or not (line.names or line.constants):
        return None
    taken = {
        name: KnownValue(true.own.sign(name) * values[name], SAME * abs(values[name]))
        for name in left_out
    }
    own = KnownValues(true.own.senses, {**true.own.known, **taken})
    filled = replace(true, own=own)
    found = fit(line, filled, true.problem.tolerance)
    if found is None or found.level != "silent":
        return None
    numbers = filled.numbers(line.names)
    terms, left = left_unpaired(line.constants, numbers, found.scale, true.problem.tolerance)
    paired = not terms and all(abs(spot.true) <= 1e-9 for spot in left)
    only_idle = not any(values[name] for name in left_out)
    typed = math.fsum(abs(term.value) for term in line.constants)
    stood_for = abs(found.scale) * math.fsum(abs(spot.true) for spot in numbers)
    shown = math.isclose(typed, stood_for, rel_tol=NEAR, abs_tol=1e-9)
    as_it_is = abs(found.scale) == 1.0
    by_size = tuple(
        name
        for name in left_out
        if any(
            f.holds(values[name]) or (f.count == 1 and not f.functions and as_it_is)
            for f in line.factors
        )
    )
    return Unrecorded(left_out, paired and as_it_is, only_idle, shown, by_size)


def joint_sum_with_unrecorded(
    line: TypedEquation, true: TrueEquation, values: Mapping[str, float]
) -> Equation | None:
    """The sum at a joint that the line is, with values put in that are not recorded yet; or None."""
    return one_with_unrecorded(line, true, values, sums_at_joints(true.problem, line))


def one_with_unrecorded(
    line: TypedEquation,
    true: TrueEquation,
    values: Mapping[str, float],
    among: Iterable[Equation],
) -> Equation | None:
    """The first of some other equations that the line is with values put in not recorded yet; or None."""
    for about in among:
        other = TrueEquation(true.problem, about, true.own)
        if about != true.about and line.names <= other.unknowns.keys():
            used = with_unrecorded(line, other, values)
            if used is not None and used.term_by_term:
                return about
    return None


def not_recorded(used: Unrecorded, values: Mapping[str, float]) -> str:
    """What to say of values that a right line uses although they are not recorded yet."""
    zero = [name for name in used.names if values[name] == 0.0]
    numbers = [name for name in used.by_size if name not in zero]
    others = [name for name in used.names if name not in (*zero, *numbers)]
    parts = []
    if numbers:
        parts.append(
            f"The line puts in a number for {' and '.join(numbers)}: record it as a value too."
        )
    if others:
        parts.append(
            f"The line works out the part of {' and '.join(others)} from other forces: its own value "
            "is still to be found."
        )
    if zero:
        parts.append(f"Without {' and '.join(zero)}: may that be left out here, and why?")
    return " ".join(parts)

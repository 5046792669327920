"""Does a line only say again, or put together, equations of the same body that already stand?"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from tutor.judge.about import Equation
from tutor.judge.fit import fit
from tutor.judge.independent import same_body
from tutor.judge.known_values import KnownValues
from tutor.judge.same import SAME
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import TypedEquation
from tutor.judge.unrecorded import Unrecorded, with_unrecorded
from tutor.statics.linear import directions, without

NOTHING = 1e-9

Row = Mapping[str | None, float]


@dataclass(frozen=True)
class Restated:
    """A line that follows from those that stand.

    `about` is the one it says again, None where it puts several together; `adds` is whether the
    equation that was asked for had to be among them.
    """

    about: Equation | None
    adds: bool


def restated(
    line: TypedEquation,
    true: TrueEquation,
    standing: Sequence[Equation],
    lines: Sequence[TypedEquation],
) -> Restated | None:
    """What of the standing equations a line says again, or None.

    `lines` are the student's own lines as typed. Lines that stand and leave one force open give its
    value, and everything follows from that: only such as hold two open forces can be put together.
    """
    if not line.unknowns:
        return None
    problem, tolerance = true.problem, true.problem.tolerance
    stand = [about for about in standing if same_body(about, true.about) and about != true.about]
    for about in stand:
        found = fit(line, TrueEquation(problem, about, true.own), tolerance)
        if found is not None and found.level == "silent":
            return Restated(about, adds=False)
    own = _without_typed(true.own, line)
    true = replace(true, own=own)
    names = true.unknowns.keys()
    rows = [true_row(TrueEquation(problem, about, own)) for about in stand]
    rows += [typed_row(each, own) for each in lines if each.names <= names]
    asked, typed = true_row(true), typed_row(line, own)
    open_names = {name for row in (*rows, asked) for name in row if name is not None}
    if not rows or len(open_names) < 2 or not set(typed) - {None} <= open_names:
        return None
    if is_sum_of(typed, rows, line):
        return Restated(None, adds=False)
    return Restated(None, adds=True) if is_sum_of(typed, [*rows, asked], line) else None


def in_figures(
    line: TypedEquation,
    true: TrueEquation,
    standing: Sequence[Equation],
    solved: Callable[[], Mapping[str, float]],
    though_asked: bool = False,
) -> tuple[Equation, Unrecorded | None] | None:
    """The standing equation that a line says again with numbers for its forces, or without idle ones.

    With it come those of the forces that have no value yet. None where the line may as well be the
    equation asked for, but `though_asked`.
    """
    stand = [about for about in standing if same_body(about, true.about)]
    if not stand:
        return None
    values = solved()
    if not though_asked and true.about not in stand and with_figures(line, true, values):
        return None
    for about in stand:
        other = TrueEquation(true.problem, about, true.own)
        if not line.names and _is_in_numbers(line, other, as_written=though_asked):
            return about, None
        if (used := with_figures(line, other, values, in_sum=True)) is not None:
            return about, used
    return None


def _is_in_numbers(line: TypedEquation, other: TrueEquation, as_written: bool) -> bool:
    """Whether a line of numbers is an equation in the student's own values; `as_written`, not multiplied."""
    found = fit(line, other, other.problem.tolerance)
    return found is not None and (not as_written or abs(found.scale) == 1.0)


def with_figures(
    line: TypedEquation, true: TrueEquation, values: Mapping[str, float], in_sum: bool = False
) -> Unrecorded | None:
    """The forces without a value that the line has figures for, each by itself, or leaves out as idle.

    With `in_sum` it is enough that the figures come to all of them.
    """
    used = with_unrecorded(line, true, values)
    if used is None:
        return None
    return used if used.term_by_term or used.only_idle or (in_sum and used.shown) else None


def _without_typed(own: KnownValues, line: TypedEquation) -> KnownValues:
    """What is given without the values of those unknowns that the line has by name."""
    known = {name: value for name, value in own.known.items() if name not in line.names}
    return KnownValues(own.senses, known)


def true_row(true: TrueEquation) -> Row:
    """The coefficients of an equation, and its numbers under None; a force with a value is a number."""
    row: dict[str | None, float] = {None: math.fsum(load.true for load in true.loads)}
    for name, spot in true.unknowns.items():
        _add(row, name, spot.true, true.own)
    return row


def typed_row(line: TypedEquation, own: KnownValues) -> Row:
    """As `true_row`, of a line as typed."""
    row: dict[str | None, float] = {None: line.total}
    for name, coefficient in line.unknowns.items():
        _add(row, name, coefficient.value, own)
    return row


def _add(row: dict[str | None, float], name: str, coefficient: float, own: KnownValues) -> None:
    """A term of an unknown, as a number where the student has a value of it."""
    if name in own.known:
        row[None] = row.get(None, 0.0) + coefficient * own.known[name].value
    elif coefficient != 0.0:
        row[name] = row.get(name, 0.0) + coefficient


def is_sum_of(typed: Row, rows: Sequence[Row], line: TypedEquation) -> bool:
    """Whether `typed` is a sum of multiples of `rows`, by taking their directions out one by one."""
    names = list(dict.fromkeys(n for row in (*rows, typed) for n in row if n is not None))
    vectors = ([row.get(name, 0.0) for name in (*names, None)] for row in rows)
    basis = directions(vectors, NOTHING, carried=1)
    own = [typed.get(name, 0.0) for name in (*names, None)]
    size = math.hypot(*own[:-1])
    if size <= NOTHING:
        return False
    *left, number = without(own, basis, carried=1)
    largest = max((abs(own[-1]), *(abs(term.value) for term in line.constants)), default=0.0)
    return math.hypot(*left) <= SAME * size and abs(number) <= SAME * largest + NOTHING

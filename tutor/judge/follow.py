"""What does an unknown come out as from the student's own values, and from the lines as typed?"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from tutor.judge.about import Equation, equation_of
from tutor.judge.known_values import KnownValues
from tutor.judge.typed import TypedEquation
from tutor.model import Problem
from tutor.statics.body import SUM_X, SUM_Y, Equilibrium, joint_body, whole
from tutor.statics.linear import inverse

NEARLY_SINGULAR = 1e-9
MOST_LINES = 8
MOST_TOGETHER = 3
SHARE_OF_ARITHMETIC = 0.0005


@dataclass(frozen=True)
class Possible:
    """A right value in the positive sense: how far it may be off by what went into it.

    `carried` is what the rounding of earlier values adds up to; `parts` the sizes that were added.
    """

    value: float
    carried: float
    parts: float


@dataclass(frozen=True)
class OpenEquation:
    """One equation in what is still open: coefficients, and the sum of its numbers."""

    open: Mapping[str, float]
    number: float
    carried: float
    parts: float


def from_bodies(problem: Problem, unknown: str, own: KnownValues) -> Iterator[Possible]:
    """From the true equations of each body on which `unknown` acts, with the student's values."""
    if not own.known:
        return
    if unknown in problem.member:
        member = problem.member[unknown]
        bodies = [joint_body(problem, member.start), joint_body(problem, member.end)]
    else:
        bodies = [whole(problem), joint_body(problem, problem.reaction[unknown].joint)]
    for body in bodies:
        equations = (Equilibrium(body, SUM_X), Equilibrium(body, SUM_Y))
        yield from _solved([_true_row(e, unknown, own) for e in equations], unknown)


def from_standing(
    problem: Problem, unknown: str, own: KnownValues, standing: Sequence[Equation]
) -> Iterator[Possible]:
    """From the true equations that stand, with the student's values."""
    rows = [_true_row(equation_of(problem, about), unknown, own) for about in standing]
    yield from _solved(rows[:MOST_LINES], unknown)


def _true_row(equation: Equilibrium, unknown: str, own: KnownValues) -> OpenEquation:
    open_ones: dict[str, float] = {}
    number = carried = parts = 0.0
    for term in equation.terms:
        name = term.force.name
        if term.force.size is not None:
            number += term.coefficient
            parts += term.spread
        elif term.coefficient == 0.0:
            continue
        elif name == unknown or name not in own.known:
            open_ones[name] = term.coefficient
        else:
            value = own.known[name]
            number += term.coefficient * own.sign(name) * value.value
            parts += term.spread * abs(value.value)
            carried += abs(term.coefficient) * value.radius
    return OpenEquation(open_ones, number, carried, parts)


def from_lines(
    problem: Problem, unknown: str, own: KnownValues, lines: Sequence[TypedEquation]
) -> Iterator[Possible]:
    """From the student's own lines, as they were typed, with the student's values."""
    rows = [_typed_row(line, unknown, own) for line in lines]
    touching = [row for row in rows if unknown in row.open]
    names = {name for row in touching for name in row.open}
    more = [row for row in rows if row not in touching and names & row.open.keys()]
    for possible in _solved([*touching, *more][:MOST_LINES], unknown):
        slack = possible.carried + SHARE_OF_ARITHMETIC * possible.parts
        yield Possible(own.sign(unknown) * possible.value, slack, 0.0)


def _typed_row(line: TypedEquation, unknown: str, own: KnownValues) -> OpenEquation:
    open_ones: dict[str, float] = {}
    number, carried = line.total, 0.0
    parts = math.fsum(abs(term.value) for term in line.constants)
    for name, typed in line.unknowns.items():
        if name == unknown or name not in own.known:
            open_ones[name] = typed.value
        else:
            value = own.known[name]
            number += typed.value * value.value
            parts += abs(typed.value * value.value)
            carried += abs(typed.value) * value.radius
    return OpenEquation(open_ones, number, carried, parts)


def _solved(rows: Sequence[OpenEquation], unknown: str) -> Iterator[Possible]:
    """What each square system among the rows gives for `unknown`."""
    for count in range(1, min(MOST_TOGETHER, len(rows)) + 1):
        for chosen in combinations(rows, count):
            names = list(dict.fromkeys(name for row in chosen for name in row.open))
            if unknown in names and len(names) == count:
                solved = _solve(names, unknown, chosen)
                if solved is not None:
                    yield solved


def _solve(names: Sequence[str], unknown: str, rows: Sequence[OpenEquation]) -> Possible | None:
    """The unknown of a square system, with what the numbers may be off by carried along."""
    sizes = [max(map(abs, row.open.values()), default=0.0) or 1.0 for row in rows]
    scaled = [
        [row.open.get(name, 0.0) / size for name in names]
        for row, size in zip(rows, sizes, strict=True)
    ]
    solved = inverse(scaled, NEARLY_SINGULAR)
    if solved is None:
        return None
    shares = zip(solved[names.index(unknown)], sizes, rows, strict=True)
    weights = [(-share / size, row) for share, size, row in shares]
    return Possible(
        math.fsum(weight * row.number for weight, row in weights),
        math.fsum(abs(weight) * row.carried for weight, row in weights),
        math.fsum(abs(weight) * row.parts for weight, row in weights),
    )

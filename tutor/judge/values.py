"""Is a typed value right, as the true one or as what follows from the student's own values?"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import combinations

from tutor.judge.about import Value
from tutor.judge.truth import Given, signed
from tutor.judge.value_mistakes import value_mistake
from tutor.judge.verdict import Remark, Verdict
from tutor.model import Problem
from tutor.notation import ValueReading
from tutor.statics.body import SUM_X, SUM_Y, Equation, Moment, joint_body, whole

NEARLY_SINGULAR = 1e-9


@dataclass(frozen=True)
class Possible:
    """A right value in the positive sense: how far it may be off by what went into it."""

    value: float
    carried: float
    parts: float


def judge_value(
    problem: Problem, about: Value, reading: ValueReading, given: Given, true: float
) -> Verdict:
    """The verdict on one value; `true` is the exact answer in the positive sense."""
    unknown = about.unknown
    sign = given.sign(unknown)
    if reading.letter is not None and unknown not in problem.member:
        return _undecided(
            about,
            reading,
            f"T and C say what a member does; {unknown} is a reaction. Write its number, and a minus if it acts against the arrow you drew.",
        )
    if reading.letter == "T" and reading.value < 0:
        return _undecided(
            about,
            reading,
            "A minus and a T contradict each other: tension is the positive sense here. Write the size with T or C, or a signed number alone.",
        )
    if reading.sense is not None and unknown in problem.member:
        return _undecided(
            about, reading, f"{unknown} is a member: say T or C, not {reading.sense}."
        )
    value = signed(problem, unknown, reading.value, reading.letter, reading.sense, sign)
    possible = [*carried_values(problem, unknown, given), Possible(true, 0.0, abs(true))]
    level = best_level(problem, value, possible)
    own = replace_sign(value, sign)
    if level is not None:
        remarks = (_rounded(),) if level == "remark" else ()
        return Verdict(
            "right",
            "Right.",
            remarks=remarks,
            about=about,
            reading=reading,
            value=own,
            radius=reading.radius,
        )
    mistake = value_mistake(
        problem,
        unknown,
        reading,
        given,
        value,
        tuple(right.value for right in possible),
        lambda other: best_level(problem, other, possible) is not None,
    )
    return Verdict(
        "wrong",
        mistake.text,
        (mistake,),
        about=about,
        reading=reading,
        value=own,
        radius=reading.radius,
    )


def replace_sign(value: float, sign: float) -> float:
    """The value under the student's own sense; never minus zero."""
    return sign * value + 0.0


def _undecided(about: Value, reading: ValueReading, text: str) -> Verdict:
    return Verdict("undecided", text, about=about, reading=reading)


def _rounded() -> Remark:
    return Remark(
        "rounding", "Right, though rounded hard; one more figure keeps later lines closed."
    )


def best_level(problem: Problem, value: float, possible: list[Possible]) -> str | None:
    """ "silent", "remark" or None: how near `value` is to any right value."""
    tolerance = problem.tolerance
    for level, share in (("silent", tolerance.silent), ("remark", tolerance.remark)):
        for right in possible:
            slack = right.carried + tolerance.silent * right.parts + share * abs(right.value)
            if abs(value - right.value) <= slack + 1e-9 * (1.0 + right.parts):
                return level
    return None


def carried_values(problem: Problem, unknown: str, given: Given) -> Iterator[Possible]:
    """What `unknown` comes out as at each body where the student's own values determine it."""
    if not given.known:
        return
    if unknown in problem.member:
        member = problem.member[unknown]
        bodies = [joint_body(problem, member.start), joint_body(problem, member.end)]
    else:
        bodies = [whole(problem), joint_body(problem, problem.reaction[unknown].joint)]
    own = {n: replace(c, value=given.sign(n) * c.value) for n, c in given.known.items()}
    for body in bodies:
        equations = [Equation(body, SUM_X), Equation(body, SUM_Y)]
        if body.name == "whole":
            equations.append(Equation(body, Moment(problem.joints[0].at)))
        open_names = [n for n in body.unknowns if n == unknown or n not in own]
        for names, chosen in _systems(open_names, unknown, equations):
            solved = _solve(names, unknown, chosen, Given({}, own))
            if solved is not None:
                yield solved


def _systems(
    names: list[str], unknown: str, equations: list[Equation]
) -> Iterator[tuple[list[str], list[Equation]]]:
    """Square systems that may give `unknown`: each single equation, pairs, all of them."""
    for count in range(1, len(equations) + 1):
        for chosen in combinations(equations, count):
            inside = [n for n in names if any(n in e.linear for e in chosen)]
            if unknown in inside and len(inside) == count:
                yield inside, list(chosen)


def _solve(
    names: list[str], unknown: str, equations: list[Equation], given: Given
) -> Possible | None:
    """Cramer's rule on at most three equations, with what is known carried along."""
    matrix = [[e.linear.get(n, 0.0) for n in names] for e in equations]
    whole_det = _det(matrix)
    size = math.prod(max(map(abs, row)) for row in matrix)
    if abs(whole_det) <= NEARLY_SINGULAR * size:
        return None
    column = names.index(unknown)
    value = carried = parts = 0.0
    for i, equation in enumerate(equations):
        unit = [[*row[:column], float(i == r), *row[column + 1 :]] for r, row in enumerate(matrix)]
        weight = -_det(unit) / whole_det
        for term in equation.terms:
            name = term.force.name
            if term.force.size is not None:
                value += weight * term.coefficient
                parts += abs(weight) * term.spread
            elif term.coefficient and name not in names:
                own = given.known[name]
                value += weight * term.coefficient * own.value
                parts += abs(weight * own.value) * term.spread
                carried += abs(weight * term.coefficient) * own.radius
    return Possible(value, carried, parts)


def _det(m: list[list[float]]) -> float:
    if len(m) == 1:
        return m[0][0]
    if len(m) == 2:
        return m[0][0] * m[1][1] - m[0][1] * m[1][0]
    return math.fsum(
        (-1) ** j * m[0][j] * _det([[*row[:j], *row[j + 1 :]] for row in m[1:]])
        for j in range(len(m))
    )

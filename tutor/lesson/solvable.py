"""Which of the standing lines give the value of an unknown?"""

from __future__ import annotations

import math
from collections.abc import Sequence

from tutor.judge.about import Equation, at_body, equation_of, in_words, sum_in_words
from tutor.judge.independent import same_body
from tutor.lesson.state import StandingLine, State
from tutor.statics.linear import directions, without
from tutor.text import listed

Row = dict[str, float]
NEARLY_NOTHING = 1e-9
FIXED = 1e-6


def open_in(state: State, about: Equation) -> tuple[str, ...]:
    """The unknowns of an equation that have no value yet."""
    linear = equation_of(state.problem, about).linear
    return tuple(name for name in linear if name is not None and name not in state.result)


def lines_giving(state: State, unknown: str) -> tuple[StandingLine, ...]:
    """The standing lines that, with the values found, fix `unknown`; none where they do not.

    The latest line in which it is the only unknown; else all lines that hang together with it.
    """
    rows = [(line, _open_part(state, line, unknown)) for line in state.lines if line.adds]
    alone = [line for line, row in rows if row.keys() == {unknown}]
    if alone:
        return (alone[-1],)
    chosen = _touching([(line, row) for line, row in rows if row], unknown)
    return tuple(line for line, _ in chosen) if _fixes([r for _, r in chosen], unknown) else ()


def is_determined(state: State, unknown: str) -> bool:
    """Whether the standing lines, with the values already found, fix `unknown`."""
    return bool(lines_giving(state, unknown))


def solvable_now(state: State, among: Sequence[str] | None = None) -> str | None:
    """An unknown (of `among`, else of all) without value that the standing lines give, or None."""
    names = state.problem.unknowns if among is None else among
    seen = {name for line in state.lines for name in _open_part(state, line, "")}
    return next((n for n in names if n in seen and is_determined(state, n)), None)


def in_words_together(lines: Sequence[StandingLine]) -> str:
    """Lines for people: "ΣFx at joint C", "ΣFx and ΣFy at joint C"; many are counted."""
    first = lines[0].about
    if all(same_body(line.about, first) for line in lines):
        return f"{listed([sum_in_words(line.about) for line in lines])} {at_body(first)}"
    return listed([in_words(line.about) for line in lines], most=3)


def _open_part(state: State, line: StandingLine, unknown: str) -> Row:
    """The coefficients of a line beside `unknown` and what else has no value yet, the largest 1."""
    linear = equation_of(state.problem, line.about).linear
    row = {
        name: value
        for name, value in linear.items()
        if name is not None
        and (name == unknown or not (name in state.result or name in line.without))
    }
    largest = max(map(abs, row.values()), default=1.0)
    return {name: value / largest for name, value in row.items()}


def _touching(rows: list[tuple[StandingLine, Row]], unknown: str) -> list[tuple[StandingLine, Row]]:
    """The rows that hang together with `unknown` through shared unknowns, as they stand."""
    names, grown = {unknown}, True
    while grown:
        more = {n for _, row in rows if names & row.keys() for n in row}
        grown = not more <= names
        names |= more
    return [(line, row) for line, row in rows if names & row.keys()]


def _fixes(rows: list[Row], unknown: str) -> bool:
    """Whether the rows fix `unknown`: whether it alone is a sum of multiples of them."""
    names = [unknown, *sorted({name for row in rows for name in row} - {unknown})]
    basis = directions(([row.get(name, 0.0) for name in names] for row in rows), NEARLY_NOTHING)
    alone = [float(name == unknown) for name in names]
    return math.hypot(*without(alone, basis)) <= FIXED

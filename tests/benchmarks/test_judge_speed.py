"""What does a right line cost: against bare SymPy on the same line, and on a large truss?

Run with: python -m pytest tests/benchmarks -m benchmark --benchmark-enable -s

The lines are all different, since SymPy remembers what it has seen. SymPy gets its own spelling of
the same line and does the least that can be asked: parse, and take the coefficients out.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from random import Random
from typing import Any

import pytest
from families import warren
from pairs import turns
from shipped_trusses import SHIPPED

from tutor.judge import Equation, Fx, Fy, judge
from tutor.judge.about import equation_of
from tutor.model import Problem

pytestmark = pytest.mark.benchmark
ROUNDS = 400
OURS_TO_BARE, OURS_TO_BARE_CLEARED = 0.25, 0.22
LARGE_TO_SMALL = 2.0


def coefficient(rng: Random, value: float) -> tuple[str, str]:
    """A factor in our spelling and in SymPy's: a decimal, a fraction, or a cosine of an angle."""
    size = abs(value)
    kind = rng.choice(("decimal", "decimal", "fraction", "cosine"))
    if kind == "fraction":
        n = rng.randint(100, 999)
        return f"{size * n:.4f}/{n}", f"{size * n:.4f}/{n}"
    if kind == "cosine" and 0.05 < size < 1:
        angle = f"{math.degrees(math.acos(size)):.4f}"
        return f"cos {angle}°", f"cos({angle}*pi/180)"
    return f"{size:.5f}", f"{size:.5f}"


def line(rng: Random, problem: Problem, about: Equation) -> tuple[str, str]:
    """A true line in our spelling, and the same with all on one side as SymPy spells it."""
    scale = rng.choice((1.0, rng.uniform(0.5, 2.0)))
    mine, theirs = "", ""
    for name, value in equation_of(problem, about).linear.items():
        sign = "-" if value < 0 else "+"
        if name is None:
            if value:
                mine += f" {sign} {abs(scale * value):.5f}"
                theirs += f" {sign} {abs(scale * value):.5f}"
            continue
        ours, bare = coefficient(rng, value)
        symbol = name if "_" in name else f"F_{name}"
        if scale != 1.0:
            ours, bare = f"{scale:.6f}*{ours}", f"{scale:.6f}*{bare}"
        mine += f" {sign} {symbol}*{ours}" if "cos" not in ours else f" {sign} {ours} {symbol}"
        theirs += f" {sign} {bare}*{symbol}"
    return f"{mine.removeprefix(' + ')} = 0", f"{theirs.removeprefix(' + ')} - (0)"


def lines(
    count: int,
) -> Iterator[tuple[tuple[Problem, Equation, str], tuple[tuple[str, ...], str]]]:
    """Lines at joints of the shipped trusses, no two alike."""
    rng = Random(5)
    choices = [
        (problem, make(joint.name))
        for problem in SHIPPED
        for joint in problem.joints
        for make in (Fx, Fy)
    ]
    for _ in range(count):
        problem, about = rng.choice(choices)
        mine, theirs = line(rng, problem, about)
        linear = equation_of(problem, about).linear
        names = tuple(n if "_" in n else f"F_{n}" for n in linear if n is not None)
        if names:
            yield (problem, about, mine), (names, theirs)


class Bare:
    """The least that SymPy can do with a line: its own symbols are ready, and no others are asked for."""

    def __init__(self) -> None:
        import sympy

        names = {n for problem in SHIPPED for n in problem.unknowns}
        spelled = {n: n if "_" in n else f"F_{n}" for n in names}
        self.symbols = {spelled[n]: sympy.Symbol(spelled[n]) for n in names}

    def __call__(self, given: tuple[tuple[str, ...], str]) -> Any:
        from sympy import linear_eq_to_matrix
        from sympy.parsing.sympy_parser import parse_expr

        names, text = given
        symbols = [self.symbols[name] for name in names]
        return linear_eq_to_matrix([parse_expr(text, local_dict=self.symbols)], *symbols)


def judged(given: tuple[Problem, Equation, str]) -> Any:
    problem, about, text = given
    verdict = judge(problem, about, text)
    assert verdict.right, (about, text, verdict.text)
    return verdict


@pytest.mark.parametrize("cleared", [False, True], ids=["caches-warm", "caches-cleared"])
def test_a_right_line_costs_at_most_a_quarter_of_bare_sympy(benchmark: Any, cleared: bool) -> None:
    from sympy.core.cache import clear_cache

    bare = Bare()
    inputs = list(lines(ROUNDS + 20))
    turns(judged, bare, inputs[:20])
    pair = turns(judged, bare, inputs[20:], clear_cache if cleared else lambda: None)
    rest = iter([mine for mine, _ in inputs] * 50)
    benchmark.pedantic(lambda: judged(next(rest)), rounds=min(ROUNDS, 200))
    assert pair.told(benchmark) <= (OURS_TO_BARE_CLEARED if cleared else OURS_TO_BARE)


def test_a_line_costs_at_most_twice_as_much_on_a_truss_of_two_hundred_joints(
    benchmark: Any,
) -> None:
    small, large = (warren(n, 4, 3, 12) for n in (5, 100))
    assert (len(small.joints), len(large.joints)) == (11, 201)
    rng = Random(6)

    def given(problem: Problem) -> tuple[Problem, Equation, str]:
        about = rng.choice((Fx, Fy))(f"U{len(problem.joints) // 4}")
        terms = equation_of(problem, about).linear
        text = " ".join(
            f"{'-' if v < 0 else '+'} {abs(v):.{rng.randint(5, 8)}f}"
            + ("" if n is None else f" F_{{{n}}}")
            for n, v in terms.items()
            if v
        )
        return problem, about, f"{text} = 0"

    inputs = [(given(large), given(small)) for _ in range(ROUNDS)]
    lengths = [sum(len(each[i][2]) for each in inputs) for i in (0, 1)]
    assert lengths[0] < 1.2 * lengths[1]
    turns(judged, judged, inputs[:10])
    pair = turns(judged, judged, inputs[10:])
    rest = iter([mine for mine, _ in inputs] * 50)
    benchmark.pedantic(lambda: judged(next(rest)), rounds=200)
    assert pair.told(benchmark) <= LARGE_TO_SMALL

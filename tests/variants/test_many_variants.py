"""Does what is told of many choices of numbers together agree with what is told of each by itself?"""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from itertools import islice

import pytest
from every_problem import FORCES, problem_of
from hypothesis import given
from strategies import trusses
from varied_at_random import varied_at_random

from tutor.model import Problem
from tutor.model.vary import Condition
from tutor.statics import solve
from tutor.statics.many import ManyTrusses, Outline
from tutor.variants import NoVariant, Varied
from tutor.variants.conditions import AsWritten, misses
from tutor.variants.lot import lot
from tutor.variants.makes import how_many, made, numbers_at
from tutor.variants.many import Many

FEW = 10
TOLD = 0.9
"""How many of the choices have to be told together: what is left open costs as much as ever."""
STUDENTS = [f"s{number}" for number in range(12)]


@cache
def solvable() -> tuple[Problem, ...]:
    return tuple(map(problem_of, FORCES))


def one_by_one(problem: Problem, index: int) -> bool:
    """Whether a choice meets every condition, found as for a single problem."""
    assert problem.vary is not None
    found = made(problem, *numbers_at(problem.vary, index))
    return next(misses(found, AsWritten(problem)), None) is None


def agree(seeds: range) -> None:
    asked = told = met = 0
    for seed in seeds:
        problem = varied_at_random(solvable(), seed)
        assert problem.vary is not None
        indices = list(islice(lot("s", "p", str(seed), how_many(problem.vary)), FEW))
        answers = Many(problem, problem.vary, AsWritten(problem)).met(indices)
        for index, answer in zip(indices, answers, strict=True):
            assert answer in (None, one_by_one(problem, index)), (seed, index)
        asked += len(answers)
        told += sum(answer is not None for answer in answers)
        met += answers.count(True)
    assert told >= TOLD * asked
    assert asked > met > 0


def test_what_is_told_of_many_choices_together_is_so_of_each() -> None:
    agree(range(20))


@pytest.mark.slow
@pytest.mark.parametrize("start", range(100, 700, 50))
def test_what_is_told_of_many_choices_is_so_for_many_problems(start: int) -> None:
    agree(range(start, start + 50))


@given(trusses())
def test_forces_found_side_by_side_are_those_of_each_truss(problem: Problem) -> None:
    outline = Outline(
        tuple(joint.at for joint in problem.joints),
        tuple((r.direction.x, r.direction.y) for r in problem.reactions),
    )
    loads = [0.0] * (2 * len(problem.joints))
    for load in problem.loads:
        row = 2 * list(problem.joint).index(load.joint)
        loads[row] += load.vector[0]
        loads[row + 1] += load.vector[1]
    twice = [2 * load for load in loads]
    found = ManyTrusses(problem, [outline, outline]).forces([0, 1, 1], [loads, loads, twice])
    expected = list(solve(problem).values.values())
    for forces, times in zip(found, (1, 1, 2), strict=True):
        if forces is not None:
            for force, value in zip(forces.values, expected, strict=True):
                assert abs(force - times * value) <= forces.doubt
                assert (force == 0) == (value == 0)


@pytest.mark.parametrize("seed", range(32, 38))
def test_a_class_gets_together_what_each_student_gets_alone(seed: int) -> None:
    problem = varied_at_random(solvable(), seed)
    alone = Varied(problem)
    together = Varied(problem)
    said = []
    for find in (
        lambda: [alone.index_for("s", student) for student in STUDENTS],
        lambda: together.indices_for("s", STUDENTS),
    ):
        try:
            said.append(find())
        except NoVariant as refused:
            said.append(str(refused))
    assert said[0] == said[1]


def test_a_force_at_its_limit_is_told_as_by_itself_or_left_open() -> None:
    problem = problem_of(next(path for path in FORCES if path.stem == "lamp-arm"))
    forces = solve(problem).values
    base = varied_at_random([problem], 1)
    assert base.vary is not None
    for name, force in forces.items():
        for relation in ("<", "<=", ">", ">="):
            for off in (-2e-9, -1e-9, 0.0, 1e-9, 2e-9):
                limit = abs(force) * (1 + off)
                asked = Condition("", "size", name, relation, limit)  # type: ignore[arg-type]
                vary = replace(base.vary, choices=(), mirror=False, keep=(asked,))
                held = replace(problem, vary=vary)
                (answer,) = Many(held, vary, AsWritten(held)).met([0])
                assert answer in (None, one_by_one(held, 0))


def test_a_truss_that_does_not_stand_is_left_open() -> None:
    problem = varied_at_random(solvable(), 3)
    assert problem.vary is not None
    loose = replace(problem, members=problem.members[1:])
    assert Many(loose, problem.vary, AsWritten(loose)).met([0, 1]) == [None, None]

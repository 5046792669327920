"""Do the numbers of the problems that come along meet their conditions, and do their words follow them?"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from every_problem import FILES, problem_of

from tutor.model import Problem
from tutor.statics import solve
from tutor.variants import variant_of

VARYING = [path for path in FILES if problem_of(path).vary is not None]
STUDENTS = ("s1", "s2")
LIMIT = re.compile(r"(\S+) (<=|>=|<|>) ([\d.]+)")
SENSE = re.compile(r"(\S+) (?:is )?(in tension|in compression|zero|not zero)")


def own(path: Path) -> list[Problem]:
    return [variant_of(problem_of(path), student=name, set=path.parent.name) for name in STUDENTS]


def met(condition: str, problem: Problem) -> bool:
    """Whether the forces are as a condition says, read here for itself; "nice" is tried elsewhere."""
    forces = solve(problem).values
    sizes = [abs(forces[name]) for name in problem.member]
    if (found := LIMIT.fullmatch(condition)) is not None:
        name, relation, limit = found[1], found[2], float(found[3])
        size = {"largest": max(sizes), "smallest": min((s for s in sizes if s > 1e-9), default=0.0)}
        value = size[name] if name in size else abs(forces[name])
        return value <= limit + 1e-9 if relation[0] == "<" else value >= limit - 1e-9
    sense = SENSE.fullmatch(condition)
    assert sense is not None, condition
    value = forces[sense[1]] if sense[1] in forces else forces[sense[1][::-1]]
    wanted = {"in tension": value > 1e-9, "in compression": value < -1e-9}
    wanted |= {"zero": abs(value) < 1e-9, "not zero": abs(value) > 1e-9}
    return wanted[sense[2]]


@pytest.mark.parametrize("path", VARYING, ids=lambda path: path.stem)
def test_no_condition_of_a_shipped_variant_disagrees_with_its_solution(path: Path) -> None:
    vary = problem_of(path).vary
    assert vary is not None
    asked = [each.text for each in vary.keep if each.text != "nice"]
    for problem in own(path):
        assert [text for text in asked if not met(text, problem)] == []


@pytest.mark.parametrize("path", VARYING, ids=lambda path: path.stem)
def test_the_words_of_a_variant_say_its_own_loads_and_no_gap_is_left(path: Path) -> None:
    for problem in own(path):
        words = f"{problem.title} {problem.story}"
        assert not re.search(r"[{}|]", words)
        amounts = re.findall(rf"(\d+(?:\.\d+)?) {problem.force}\b(?!/)", words)
        sizes = {round(size.value, 6) for load in problem.loads for _, size in load.pushes}
        sizes |= {round(load.size.value, 6) for load in problem.loads if load.size is not None}
        sizes |= {round(s.value, 6) for spread in problem.spreads for _, s in spread.pushes}
        if amounts and len(problem.loads) == 1:
            assert {float(amount) for amount in amounts} & sizes

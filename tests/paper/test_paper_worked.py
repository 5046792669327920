"""Is every line of a worked solution right, and does the way lead to every force?

The judge reads each line as a student's, with the values that stand before it; the forces come from
all joints at once (`statics.solve`), not joint by joint.
"""

from __future__ import annotations

import pytest
from every_problem import FORCES, SHARED, problem_of
from hypothesis import given, settings
from strategies import trusses, wall_trusses

from tutor.judge import judge
from tutor.model import Problem
from tutor.model.read import read_text
from tutor.paper import worked
from tutor.paper.lines import rounded
from tutor.statics import solve


def check(problem: Problem) -> None:
    way = worked(problem)
    forces = solve(problem).values
    found: dict[str, float] = {}
    for step in way.steps:
        known = dict(step.known)
        verdict = judge(problem, step.about, step.text, known=known)
        assert verdict.right, (step.about, step.text, known, verdict.text)
        assert not set(step.known) - set(found), "a value is used before it is found"
        assert set(step.unknown).isdisjoint(step.known)
        found |= step.gives
    if not way.together:
        assert set(found) == set(problem.unknowns)
    for name, value in found.items():
        assert rounded(value) == rounded(forces[name])
    if not way.together:
        assert sum(1 for _ in way.steps) >= 2 * len(problem.joints)
        assert any(step.checks for step in way.steps)


@pytest.mark.parametrize("path", SHARED)
def test_every_line_of_a_worked_solution_is_right(path) -> None:
    check(problem_of(path))


@given(trusses())
def test_every_line_of_the_way_through_any_truss_is_right(problem: Problem) -> None:
    check(problem)


@given(wall_trusses())
@settings(max_examples=15)
def test_every_line_is_right_where_the_whole_gives_no_reactions(problem: Problem) -> None:
    check(problem)


RING = """\
title = "Ring"
force = "kN"
length = "m"
members = ["AB", "CD", "EF", "AC", "BD", "CE", "DF", "AE", "BF"]

[joints]
A = [0, 0]
B = [9, 1]
C = [2, 7]
D = [12, 8]
E = [4, 3]
F = [7, 5]

[supports]
A = "pin"
B = "roller"

[[loads]]
at = "C"
down = 10
"""


HEXAGON = """\
title = "Hexagon"
force = "kN"
length = "m"
members = ["AB", "BC", "CD", "DE", "EF", "AF", "AD", "BE", "CF"]

[joints]
A = [0, 0]
B = [6, 0]
C = [9, 4]
D = [6, 9]
E = [1, 7]
F = [-2, 3]

[supports]
A = "pin"
B = "roller"

[[loads]]
at = "D"
down = 10
"""
"""Three members at each joint, and four or more in every other section."""


def test_where_no_joint_goes_on_a_section_does_and_the_joints_follow() -> None:
    read = read_text(RING, "ring")
    assert read.problem is not None
    way = worked(read.problem)
    first, *others = way.bodies
    assert set(first.part) == {"A", "C", "E"} or set(first.part) == {"B", "D", "F"}
    assert {name for step in first.steps for name in step.finds} == {"AB", "CD", "EF"}
    assert [len(step.finds) for step in first.steps] == [1, 1, 1]
    assert sorted(body.joint for body in others) == list("ABCDEF")
    assert way.together == ()
    check(read.problem)


@pytest.mark.parametrize("path", [path for path in FORCES if path.parent.name == "compound"])
def test_a_compound_truss_that_comes_along_is_worked_by_a_section(path) -> None:
    way = worked(problem_of(path))
    assert way.together == ()
    assert sum(bool(body.part) for body in way.bodies) == 1


def test_what_neither_a_joint_nor_a_section_opens_is_solved_all_at_once_by_right_lines() -> None:
    read = read_text(HEXAGON, "hexagon")
    assert read.problem is not None
    way = worked(read.problem)
    assert len(way.together) == 12
    check(read.problem)


def test_the_first_line_finds_one_reaction_alone() -> None:
    """Where the whole body gives the reactions: two pins leave four for its three equations."""
    for path in FORCES:
        problem = problem_of(path)
        if len(problem.reactions) > 3:
            continue
        first, *_ = worked(problem).steps
        assert len(first.finds) == 1, path.stem

"""Loads along members: what follows at the joints has their force and their moment, exactly."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st
from strategies import trusses

from tutor.model import Load, Problem, Spread, write_problem
from tutor.model.parts import AXES
from tutor.model.read import read_text
from tutor.model.spread import measure_along
from tutor.notation import Exact
from tutor.statics import solve
from tutor.variants.mirror import mirrored

WAYS = st.sampled_from(tuple(AXES))
SIZES = st.sampled_from([Exact.of(2), Exact.of(Fraction(3, 2)), Exact.of(7)])


@st.composite
def laden(draw: Any) -> Problem:
    """A truss with one or two loads on some of its members, and at most the load that it had."""
    problem = draw(trusses(max_joints=5))
    spreads = []
    for _ in range(draw(st.integers(1, 2))):
        names = draw(
            st.lists(st.sampled_from(list(problem.member)), min_size=1, max_size=3, unique=True)
        )
        way, size = draw(WAYS), draw(SIZES)
        per = draw(st.sampled_from(("length", "span")))
        if any(measure_along(problem.joint, problem.member[n], per, way).value == 0 for n in names):
            per = "length"
        spreads.append(Spread(tuple(names), ((way, size),), per, draw(st.booleans())))
    return replace(problem, spreads=tuple(spreads))


def exact_length(problem: Problem, spread: Spread, name: str, way: str) -> Any:
    """How much of a member counts, by sympy alone."""
    here, there = (problem.joint[j] for j in (problem.member[name].start, problem.member[name].end))
    dx, dy = there.x.sympy() - here.x.sympy(), there.y.sympy() - here.y.sympy()
    if spread.per == "span":
        return sympy.Abs(dx) if way in ("up", "down") else sympy.Abs(dy)
    return sympy.sqrt(dx**2 + dy**2)


def exact_sums(problem: Problem) -> list[Any]:
    """The forces to the right and up of all that lies on members, and their moment about the origin.

    The moment is the integral along each member; what is integrated is linear, so that it is the mean
    of its values at the two ends (Simpson's rule is exact for it).
    """
    sums = [sympy.Integer(0)] * 3
    for spread in problem.spreads:
        for way, size in spread.pushes:
            lengths = {name: exact_length(problem, spread, name, way) for name in spread.on}
            whole = sum(lengths.values()) if spread.total else 1
            (ux, uy) = AXES[way]
            for name, length in lengths.items():
                force = size.sympy() * length / whole
                ends = (problem.member[name].start, problem.member[name].end)
                at = [(problem.joint[j].x.sympy(), problem.joint[j].y.sympy()) for j in ends]
                at.append(((at[0][0] + at[1][0]) / 2, (at[0][1] + at[1][1]) / 2))
                arms = [x * uy - y * ux for x, y in at]
                arm = (arms[0] + arms[1] + 4 * arms[2]) / 6
                sums = [s + force * part for s, part in zip(sums, (ux, uy, arm), strict=True)]
    return sums


@settings(max_examples=15)
@given(laden())
def test_the_loads_at_the_joints_have_the_force_and_the_moment_of_those_on_the_members(
    problem: Problem,
) -> None:
    sums = [sympy.Integer(0)] * 3
    for load in problem.loads:
        if load.spread:
            x, y = load.sympy()
            joint = problem.joint[load.joint]
            parts = (x, y, joint.x.sympy() * y - joint.y.sympy() * x)
            sums = [s + part for s, part in zip(sums, parts, strict=True)]
    for found, true in zip(sums, exact_sums(problem), strict=True):
        assert abs(float(found - true)) < 1e-9 * (1 + abs(float(true)))
        if not any(spread.total for spread in problem.spreads):
            assert sympy.expand(found - true) == 0


@settings(max_examples=15)
@given(laden())
def test_turned_round_the_loads_at_the_joints_are_turned_round(problem: Problem) -> None:
    other = {load.joint: load.vector for load in mirrored(problem).loads if load.spread}
    here = {load.joint: load.vector for load in problem.loads if load.spread}
    assert other.keys() == here.keys()
    for joint, (x, y) in here.items():
        assert other[joint] == pytest.approx((-x, y))


@settings(max_examples=15)
@given(laden())
def test_a_problem_with_loads_on_members_is_written_and_read_back(problem: Problem) -> None:
    text = write_problem(problem)
    again = read_text(text, "text").problem
    assert again is not None
    assert write_problem(again) == text
    assert again.spreads == problem.spreads
    for one, other in zip(again.loads, problem.loads, strict=True):
        assert (one.joint, one.spread, one.vector) == (other.joint, other.spread, other.vector)


@settings(max_examples=15)
@given(laden())
def test_brought_to_the_joints_it_is_the_same_to_statics_and_nothing_lies_on_members(
    problem: Problem,
) -> None:
    brought = problem.brought
    assert not brought.spreads
    assert not any(load.spread for load in brought.loads)
    assert solve(brought).values == solve(problem).values
    assert brought.brought is brought


def test_what_follows_is_made_anew_with_every_change() -> None:
    problem = deck()
    moved = replace(
        problem, joints=tuple(replace(j, x=Exact.of(2 * j.x.fraction)) for j in problem.joints)
    )
    sizes = [load.pushes[0][1].fraction for load in moved.loads]
    assert sizes == [2 * load.pushes[0][1].fraction for load in problem.loads]
    own = replace(problem, loads=(*problem.loads, Load("B", (("down", Exact.of(5)),))))
    assert [load.spread for load in own.loads] == [False, True, True, True]


HEAD = """
title = "The landing stage"
force = "kN"
length = "m"
members = ["AB", "BC", "AD", "BD", "CD"]
[joints]
A = [0, 0]
B = [4, 0]
C = [8, 0]
D = [4, 3]
[supports]
A = "pin"
C = "roller"
"""


def deck(table: str = 'on = ["AB", "BC"]\ndown = 3') -> Problem:
    problem = read_text(f"{HEAD}[[spread]]\n{table}", "text").problem
    assert problem is not None
    return problem


def shares(problem: Problem) -> dict[str, tuple[tuple[str, str], ...]]:
    return {
        load.joint: tuple((way, size.text) for way, size in load.pushes) for load in problem.loads
    }


def test_half_of_each_member_goes_to_each_end() -> None:
    assert shares(deck()) == {"A": (("down", "6"),), "B": (("down", "12"),), "C": (("down", "6"),)}


def test_a_sloping_member_counts_by_its_length_or_by_its_span_as_the_file_says() -> None:
    assert shares(deck('on = ["AD"]\ndown = 2'))["A"] == (("down", "5"),)
    assert shares(deck('on = ["AD"]\ndown = 2\nper = "span"'))["A"] == (("down", "4"),)
    assert shares(deck('on = ["AD"]\nright = 2\nper = "span"'))["A"] == (("right", "3"),)


def test_a_total_is_shared_out_by_length_or_by_span() -> None:
    assert shares(deck('on = ["AD", "AB"]\ntotal = 18')) == {
        "A": (("down", "9"),),
        "B": (("down", "4"),),
        "D": (("down", "5"),),
    }
    by_span = shares(deck('on = ["AD", "AB"]\ntotal = 16\nway = "up"\nper = "span"'))
    assert by_span["D"] == (("up", "4"),)


def test_members_are_named_in_any_spelling_that_the_list_of_members_reads() -> None:
    assert deck('on = ["BA", "B - C"]\ndown = 3') == deck()


BROKEN = [
    ("down = 2", "a spread load is on no member", 14),
    ("on = []\ndown = 2", "on of a spread load is empty", 15),
    ('on = "AB"\ndown = 2', "on of a spread load is a text, not a list", 15),
    ('on = ["AC"]\ndown = 2', 'on "AC", and there is no such member', 15),
    ('on = ["AX"]\ndown = 2', "joint X, which is not there", 15),
    ('on = ["AB", "BA"]\ndown = 2', 'member "BA" twice', 15),
    ('on = ["AB"]', "has no size", 14),
    ('on = ["AB"]\ndown = 0', "is no load", 16),
    ('on = ["AB"]\ndown = -2', "negative", 16),
    ('on = ["AB"]\ndown = 2\nup = 2', "cancel", 14),
    ('on = ["AB"]\ndown = 2\ntotal = 4', "has a total and also down", 17),
    ('on = ["AB"]\nway = "down"', "a way but no total", 16),
    ('on = ["AB"]\ntotal = 4\nway = "north"', 'way of the spread load on AB is "north"', 17),
    ('on = ["AB"]\ndown = 2\nper = "slope"', 'per of the spread load on AB is "slope"', 17),
    ('on = ["BD"]\ndown = 2\nper = "span"', "no span across a load down", 15),
    ('on = ["AB"]\ndown = 2\nsize = 3', 'unknown key "size"', 17),
    ('on = ["AB"]\ndown = "2+"', "cannot be read", 16),
]


@pytest.mark.parametrize(("table", "said", "line"), BROKEN)
def test_what_is_wrong_with_a_load_on_members_is_said_with_its_line(
    table: str, said: str, line: int
) -> None:
    found = read_text(f"{HEAD}[[spread]]\n{table}", "text")
    assert found.problem is None
    assert any(said in str(defect) and defect.line == line for defect in found.defects), [
        str(defect) for defect in found.defects
    ]


def test_one_table_that_is_no_list_is_read_and_said() -> None:
    found = read_text(f'{HEAD}[spread]\non = ["AB"]\ndown = 2', "text")
    assert any("write [[spread]]" in str(defect) for defect in found.defects)


def test_a_problem_needs_loads_at_joints_or_on_members() -> None:
    found = read_text(HEAD, "text")
    assert [defect.message for defect in found.defects] == ["there is no load"]

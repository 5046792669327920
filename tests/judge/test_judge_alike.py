"""May one force stand for another that is alike, as in 2 F_CD sin 30 at a ridge?"""

from __future__ import annotations

import pytest
from families import down, exact, plain_problem

from tutor.judge import Equation, Fx, Fy, Value, judge
from tutor.model import Load, Problem, Support

JOINTS = (
    [("A", 0, 0), ("B", 3, 0), ("C", 6, 0), ("D", 3, 4)],
    ("AB", "BC", "AD", "CD", "BD"),
    [Support("A", "pin"), Support("C", "roller")],
)
GABLE: Problem = plain_problem(*JOINTS, [down("D", 6), down("B", 10)])
"""Worked by hand: A_y = C_y = 8, AD = CD = -10, AB = BC = 6, BD = 10."""
WINDY: Problem = plain_problem(
    *JOINTS, [down("D", 6), down("B", 10), Load("B", (("right", exact(4)),))]
)
"""The same with 4 to the right at B: A_x = -4, AB = 10; AD = CD still, though not by symmetry."""


@pytest.mark.parametrize(
    ("about", "text"),
    [
        (Fy("D"), "-6 - 2*4/5 F_CD - F_BD = 0"),
        (Fy("D"), "2 F_AD sin 53.13 + F_BD + 6 = 0"),
        (Fy("D"), "-F_BD - (4/5 + 4/5) F_AD - 6 = 0"),
        (Fy("D"), "-1.6 F_AD - BD = 6"),
        (Fy(), "2 A_y = 16"),
        (Fy(), "2A_y - 10 - 6 = 0"),
    ],
)
def test_by_symmetry_one_of_two_stands_for_both(about: Equation, text: str) -> None:
    verdict = judge(GABLE, about, text)
    assert verdict.right
    assert [remark.code for remark in verdict.remarks] == ["alike"]


@pytest.mark.parametrize(
    ("about", "text"), [(Fx("C"), "16 - 2*4/5 F_AC = 0"), (Fx(), "2 A_x + 16 = 0")]
)
def test_so_it_does_by_symmetry_in_a_level_line(about: Equation, text: str) -> None:
    bracket = plain_problem(
        [("A", 0, 0), ("B", 0, 6), ("C", 4, 3)],
        ("AB", "AC", "BC"),
        [Support("A", "pin"), Support("B", "roller", exact(0))],
        [Load("C", (("right", exact(16)),))],
    )
    verdict = judge(bracket, about, text)
    assert verdict.right
    assert [remark.code for remark in verdict.remarks] == ["alike"]


@pytest.mark.parametrize(
    ("text", "codes"),
    [
        ("2*4/5 F_CD + F_BD = 0", {"missing"}),
        ("-6 - 2*3/5 F_CD - F_BD = 0", {"component"}),
        ("6 - 2*4/5 F_CD - F_BD = 0", {"sign"}),
        ("-6 - 4/5 F_CD - F_BD = 0", {"missing"}),
        ("-6 - 2*0.9 F_CD - F_BD = 0", {"not-equilibrium"}),
    ],
)
def test_what_is_wrong_beside_two_taken_as_one_is_named(text: str, codes: set[str]) -> None:
    verdict = judge(GABLE, Fy("D"), text)
    assert verdict.kind == "wrong"
    assert {mistake.code for mistake in verdict.mistakes} == codes


def test_without_symmetry_two_are_taken_as_one_only_where_values_or_a_line_say_so() -> None:
    text = "-6 - 2*4/5 F_CD - F_BD = 0"
    assert not judge(WINDY, Fy("D"), text).right
    assert judge(WINDY, Fy("D"), text, known={"AD": -10, "CD": -10}).right
    assert judge(WINDY, Fy("D"), text, lines=("3/5 F_CD = 3/5 F_AD",), standing=(Fx("D"),)).right


@pytest.mark.parametrize(
    ("text", "slips"),
    [
        ("-6 - 2*4/5 F_CD + F_BD = 0", [("sign", "BD")]),
        ("-6 - 2*3/5 F_CD - F_BD = 0", [("component", "CD"), ("component", "AD")]),
        ("6 - 2*4/5 F_CD - F_BD = 0", [("sign", "load D")]),
    ],
)
def test_what_is_wrong_beside_two_that_a_line_sets_equal_is_named(
    text: str, slips: list[tuple[str, str]]
) -> None:
    """That they add up to something does not say that they are alike."""

    def named(line: str) -> list[tuple[str, str | None]]:
        verdict = judge(WINDY, Fy("D"), text, lines=(line,), standing=(Fx("D"),))
        return [(mistake.code, mistake.force) for mistake in verdict.mistakes]

    assert named("3/5 F_CD = 3/5 F_AD") == slips
    assert named("F_AD + F_CD = -20") != slips


def test_values_that_differ_are_not_taken_for_each_other() -> None:
    text = "2 F_AB + 4 - 6 - 10 = 0"
    assert not judge(WINDY, Fx("B"), text, known={"AB": 10, "BC": 6}).right
    known = {"AD": -10.1, "CD": -10}
    assert not judge(WINDY, Fy("D"), "-6 - 2*4/5 F_CD - F_BD = 0", known=known).right


def test_a_bare_result_is_no_sum_though_two_are_alike() -> None:
    assert judge(GABLE, Fy(), "A_y = 8").kind == "undecided"
    assert judge(GABLE, Value("A_y"), "A_y = 8").right


def test_a_force_left_out_is_missing_though_its_like_stands_there() -> None:
    verdict = judge(GABLE, Fy(), "A_y - 16 = 0")
    assert [mistake.force for mistake in verdict.mistakes] == ["C_y"]
    assert verdict.mistakes[0].code == "missing"


def test_it_is_told_whether_the_two_are_alike_or_of_one_size_alone() -> None:
    (alike,) = judge(GABLE, Fy("D"), "-6 - 2*4/5 F_CD - F_BD = 0").remarks
    assert alike.text == "CD stands here for AD too: they are alike."
    own = {"senses": {"CD": "C"}, "known": {"AD": -10, "CD": 10}}
    (opposed,) = judge(GABLE, Fy("D"), "-F_BD - 2*4/5 F_AD - 6 = 0", **own).remarks
    assert opposed.text == "AD stands here for CD too: they have one size."


@pytest.mark.parametrize("text", ["-F_BD + 1.6 F_CD - 6 = 0", "-F_BD - 2*4/5 F_AD - 6 = 0"])
def test_a_force_drawn_the_other_way_may_stand_for_its_like(text: str) -> None:
    own = {"senses": {"CD": "C"}, "known": {"AD": -10, "CD": 10}}
    assert judge(GABLE, Fy("D"), text, **own).right
    assert judge(WINDY, Fy("D"), text, **own).right
    turned = text.replace("6 = 0", "6 = 20")
    assert judge(WINDY, Fy("D"), turned, **own).kind == "wrong"


WHOLE = "That is the whole of the loads"


@pytest.mark.parametrize(
    ("problem", "name", "text", "whole"),
    [
        (GABLE, "A_y", "by symmetry A_y = 16", True),
        (GABLE, "C_y", "C_y = 16 by symmetry", True),
        (GABLE, "AB", "by symmetry AB = 12", False),
        (GABLE, "AD", "by symmetry AD = -20", False),
        (WINDY, "A_y", "by symmetry A_y = 16", False),
    ],
)
def test_twice_its_size_is_the_whole_of_the_loads_at_a_support_of_a_symmetrical_truss_alone(
    problem: Problem, name: str, text: str, whole: bool
) -> None:
    verdict = judge(problem, Value(name), text)
    assert [mistake.code for mistake in verdict.mistakes] == ["arithmetic"]
    assert verdict.mistakes[0].text.startswith(WHOLE) is whole


@pytest.mark.parametrize("found", [{"AD": -10}, {"CD": -10}])
def test_the_value_of_one_of_two_says_nothing_of_the_other(found: dict[str, float]) -> None:
    text = "-6 - 2*4/5 F_CD - F_BD = 0"
    assert judge(GABLE, Fy("D"), text, known=found).right
    assert not judge(WINDY, Fy("D"), text, known=found).right

"""A number that belongs to another force of the same truss: is that said, and is what is said true of it?

The truss is our own, in kip and ft. By hand: ΣM_A: 24 D_y = 5*6 + 9*12 + 3*30 = 228, D_y = 9.5; A_y = 7.5.
"""

from __future__ import annotations

import pytest
from families import down, exact, plain_problem

from tutor.judge import Equation, Fy, M, Value, Verdict, judge
from tutor.model import Problem, Support

EAVES: Problem = plain_problem(
    [("A", 0, 0), ("B", 6, 8), ("C", 12, 0), ("D", 24, 0), ("E", 30, 8), ("F", 18, 8)],
    ("AB", "BC", "AC", "BF", "CF", "CD", "DF", "DE", "EF"),
    [Support("A", "pin"), Support("D", "roller")],
    [down("B", 5), down("C", 9), down("E", 3)],
    force="kip",
    length="ft",
)
OF_ANOTHER = "A distance in this line is the arm of another force, not of the one beside it."


def said(about: Equation | Value, text: str, **more: object) -> Verdict:
    verdict = judge(EAVES, about, text, **more)  # type: ignore[arg-type]
    assert verdict.kind == "wrong"
    return verdict


@pytest.mark.parametrize(
    ("text", "force"),
    [
        ("24 D_y = 5*6 + 9*12 + 3*24", "load E"),
        ("24 D_y - 5(12) - 9(12) - 3(30) = 0", "load B"),
        ("30 D_y = 5*6 + 9*12 + 3*30", "D_y"),
    ],
)
def test_a_distance_that_is_the_arm_of_another_force_is_told_as_that(text: str, force: str) -> None:
    mistake = said(M("A"), text).mistakes[0]
    assert (mistake.code, mistake.force, mistake.text) == ("arm-from", force, OF_ANOTHER)
    assert "belongs to another force" in mistake.place
    assert not any(map(str.isdigit, mistake.text + mistake.reason + mistake.place))


def test_a_distance_that_is_the_arm_of_no_force_is_not_told_as_that_of_another() -> None:
    mistake = said(M("A"), "24 D_y = 5*6 + 9*12 + 3*18").mistakes[0]
    assert mistake.text != OF_ANOTHER
    assert "of the force beside it" in mistake.text


@pytest.mark.parametrize(
    "text", ["24 D_y - 9*12 - 3*30 - 5*8 = 0", "24 D_y = 9*12 + 8*8", "24 D_y = 9*12 + 8(5+3)"]
)
def test_the_height_of_a_load_is_told_as_no_arm_also_where_loads_were_added_up(text: str) -> None:
    """B and E are 8 ft high; 5 + 3 = 8 kip act there, downwards."""
    mistakes = said(M("A"), text).mistakes
    assert {mistake.code for mistake in mistakes} == {"arm"}


@pytest.mark.parametrize(
    ("about", "text", "said_so"),
    [
        (Fy("C"), "0.8 CB + 0.8 CF = 5", "but it acts at another joint"),
        (Fy("C"), "0.8 CB + 0.8 CF - 3 = 0", "but it acts at another joint"),
        (Fy("E"), "-0.8 DE - 9 = 0", "but it acts at another joint"),
        (Fy(), "A_y + D_y = 5 + 9 + 5", "but for another load"),
        (Fy("C"), "0.8 CB + 0.8 CF = 7", "is not the one that was given"),
        (Fy("C"), "0.8 CB + 0.8 CF = 8", "is not the one that was given"),
    ],
)
def test_a_given_number_that_acts_elsewhere_is_told_as_given(
    about: Equation, text: str, said_so: str
) -> None:
    verdict = said(about, text)
    assert verdict.mistakes[0].code == "magnitude"
    assert said_so in verdict.text


@pytest.mark.parametrize("text", ["0.8 DE + 2 = 0", "0.8 DE = -2", "-0.8 DE - 2 = 0"])
def test_a_load_of_one_figure_that_is_one_less_is_not_told_as_rounded(text: str) -> None:
    verdict = said(Fy("E"), text)
    assert [mistake.code for mistake in verdict.mistakes] == ["magnitude"]


@pytest.mark.parametrize("text", ["24 D_y = 228, D_y = 8.5", "M_A: 24dy=228 so dy=8.5 kips"])
def test_no_symmetry_is_guessed_where_the_equation_stands_in_the_line(text: str) -> None:
    """Half of 17 kip would be 8.5."""
    verdict = said(M("A"), text)
    assert [mistake.code for mistake in verdict.mistakes] == ["arithmetic"]
    assert "does not follow" in verdict.text


def test_no_symmetry_is_guessed_where_the_equation_was_typed_before() -> None:
    verdict = said(Value("D_y"), "8.5", lines=["24 D_y - 228 = 0"])
    assert [mistake.code for mistake in verdict.mistakes] == ["arithmetic"]


def test_half_of_the_loads_is_told_as_symmetry_where_no_equation_stands() -> None:
    assert [m.code for m in said(Value("D_y"), "8.5").mistakes] == ["symmetry"]


@pytest.mark.parametrize(
    ("about", "text", "of"),
    [
        (Fy(), "7.5 - 5 - 4/5 F_BC = 0", Fy(part=("A", "B"))),
        (M("A"), "-7.5*12 + 5*6 - 8 F_BF = 0", M("C", part=("A", "B"))),
    ],
)
def test_a_sum_of_a_part_with_one_cut_member_is_another_equation_and_told_as_that(
    about: Equation, text: str, of: Equation
) -> None:
    """A moment of a part is no moment of the same body about another point."""
    verdict = said(about, text, known={"A_y": "7.5"})
    assert [mistake.code for mistake in verdict.mistakes] == ["other-equation"]
    assert verdict.true_of == of


LEANT: Problem = plain_problem(
    [("A", 0, 0), ("B", 8, 0), ("C", 4, 3)],
    ("AB", "AC", "BC"),
    [
        Support("A", "roller", exact(60)),
        Support("B", "roller", exact(60)),
        Support("C", "roller", exact(0)),
    ],
    [down("C", 12)],
)
"""Worked by hand: R_A + R_B = 12/sin 60; ΣM_C gives (R_A - R_B) 4 sin 60 = 3 (R_A + R_B) cos 60."""


@pytest.mark.parametrize(("name", "others"), [("R_A", "3.928"), ("R_B", "9.928")])
def test_of_two_rollers_on_one_slope_each_may_be_given_what_the_other_does(
    name: str, others: str
) -> None:
    assert [m.code for m in judge(LEANT, Value(name), others).mistakes] == ["carried"]
    assert [m.code for m in judge(LEANT, Value(name), "5.3").mistakes] == ["arithmetic"]


def test_moments_about_a_joint_without_load_or_support_are_told_as_of_that_point() -> None:
    verdict = said(M("A"), "8 A_x - 18 A_y + 6 D_y + 5*12 + 9*6 - 3*12 = 0")
    assert [mistake.code for mistake in verdict.mistakes] == ["other-point"]
    assert verdict.true_of == M("F")


def test_a_load_of_another_joint_that_acts_the_other_way_is_none_of_this_one() -> None:
    verdict = said(Fy("C"), "0.8 CB + 0.8 CF = -5")
    assert [(m.code, m.force) for m in verdict.mistakes] == [
        ("stray-load", "load B"),
        ("missing", "load C"),
    ]

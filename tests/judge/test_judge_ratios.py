"""Is a ratio of components held against the slope, and a rearrangement against its equation?

Worked by hand on a bracket that leans 3 in 4; the wordings are our own.
"""

from __future__ import annotations

import pytest
from families import down, plain_problem

from tutor.judge import Fx, Fy, Value, Verdict, judge
from tutor.model import Problem, Support

BRACKET: Problem = plain_problem(
    [("A", 0, 0), ("B", 8, 0), ("C", 4, 3)],
    ("AB", "BC", "AC"),
    [Support("A", "pin"), Support("B", "roller")],
    [down("C", 12)],
)


def at(about: Fx | Fy, text: str) -> Verdict:
    return judge(BRACKET, about, text)


@pytest.mark.parametrize(
    "line",
    ["F_ACy = 3/4 F_ACx", "F_ACy : F_ACx = 3 : 4", "F_ACx/F_AC = 0.8", "F_ACx = 1.33 F_ACy"],
)
def test_a_true_slope_is_right_and_no_equation(line: str) -> None:
    verdict = at(Fy("A"), line)
    assert verdict.right
    assert [remark.code for remark in verdict.remarks] == ["component"]


@pytest.mark.parametrize(
    "line", ["F_ACy = 4/3 F_ACx", "F_ACy : F_ACx = 4 : 3", "F_ACx/F_AC = 0.6", "F_ACy = 4/5 F_AC"]
)
def test_a_wrong_slope_is_told_of_the_ratio_and_not_of_a_sum(line: str) -> None:
    verdict = at(Fy("A"), line)
    assert [mistake.code for mistake in verdict.mistakes] == ["component"]
    assert "ratio" in verdict.text
    assert "not all of them" not in verdict.text


@pytest.mark.parametrize(
    ("end", "right"),
    [("F_AC = -F_BC", False), ("F_BC = F_AC", True), ("F_BC = 2 F_AC", False)],
)
def test_what_does_not_follow_leaves_its_equation_standing(end: str, right: bool) -> None:
    equation = "4/5 F_BC - 4/5 F_AC = 0"
    verdict = at(Fx("C"), f"{equation} ⇒ {end}")
    assert verdict.right is right
    if not right:
        assert "The equation is right and stands" in verdict.text
        assert verdict.stands == equation


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("AC_x = (4/3)AC_y = (4/3)(-6) = -8 kN ∴ F_AB = -AC_x = 8 kN = 8 kN (T)", None),
        ("AC_x = 4/3 AC_y = -8 ∴ AB = 8", None),
        ("AC_x = (3/4)AC_y = (3/4)(-6) = -4.5 ∴ AB = 4.5", "component"),
        ("AC_x = (4/3)AC_y = (4/3)(-9) = -12 ∴ AB = 12", "arithmetic"),
        ("AC_x = (4/3)AC_y = -8 ∴ F_AB = AC_x = -8 kN = 8 kN (C)", "tension-compression"),
    ],
)
def test_a_slope_before_a_value_is_held_against_the_member_and_the_value_against_its_own(
    line: str, code: str | None
) -> None:
    verdict = judge(BRACKET, Value("AB"), line, known={"AC": "-10"})
    assert [mistake.code for mistake in verdict.mistakes] == ([code] if code else [])
    assert verdict.right is (code is None)

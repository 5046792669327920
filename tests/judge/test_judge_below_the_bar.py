"""Are numbers typed side by side behind a divisor taken as divided by where the line is right only so?

The truss is our own, in N and mm. ΣM_A: 1600 sin 60° R_C = 700*800 + 433*800 + 250*600 = 1056400,
R_C = 762.4 N.
"""

from __future__ import annotations

import pytest
from test_judge_solved_wrongly import CHUTE, SLIP

from tutor.judge import Fx, Fy, M, Value, judge
from tutor.judge.worked import value_ended
from tutor.notation import Line, read_line


@pytest.mark.parametrize("end", ["", " = 762.4"])
@pytest.mark.parametrize(
    "text", ["R_C = 1056400/1600sin60", "R_C = 1056400/1600 sin 60", "R_C = 1056400/1600(0.866)"]
)
def test_a_line_that_is_right_only_with_all_of_it_below_the_bar_is_right_with_a_remark(
    text: str, end: str
) -> None:
    verdict = judge(CHUTE, M("A"), text + end)
    assert verdict.right
    assert [remark.code for remark in verdict.remarks][-1] == "brackets"
    value = judge(CHUTE, Value("R_C"), "762.4", lines=[text])
    assert value.right
    assert not judge(CHUTE, Value("R_C"), "571.8", lines=[text]).right


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("R_C = 1056400/1600*sin60", False),
        ("R_C = 1056400/1600/sin60", True),
        ("R_C = 1056400/(1600 sin 60)", True),
        ("R_C = 1056400/1600 sin 60 = 571.8", False),
    ],
)
def test_a_sign_between_the_numbers_or_a_value_behind_them_says_how_they_are_meant(
    text: str, right: bool
) -> None:
    verdict = judge(CHUTE, M("A"), text)
    assert verdict.right == right
    assert "brackets" not in [remark.code for remark in verdict.remarks]


def test_a_number_in_brackets_is_a_factor_in_a_sum() -> None:
    """35/2(1.25) is 21.875, and not the 14 that 35/(2*1.25) is."""
    text = "35/2(1.25) + 4/5 F_AE = 0"
    assert judge(SLIP, Fy("A"), text, known={"A_y": 14}).kind == "wrong"
    assert judge(SLIP, Fy("A"), "17.5/1(0.8) + 4/5 F_AE = 0", known={"A_y": 14}).right


def test_a_factor_before_a_force_is_never_below_the_bar() -> None:
    assert judge(SLIP, Fy("A"), "14 + 4/5F_AE = 0", known={"A_y": 14}).remarks == ()
    assert not judge(SLIP, Fy("A"), "14 + 5/4F_AE = 0", known={"A_y": 14}).right


@pytest.mark.parametrize(
    ("end", "code", "said"),
    [
        ("-17.5", "", ""),
        ("-51.17", "angle-mode", "taken as radians"),
        ("-12.5", "arithmetic", "is not"),
        ("-17.5 kN", "", ""),
        ("-17.5 N", "unit", "comes out in kN, not in the unit of -17.5 N"),
        ("-17500 N", "", ""),
    ],
)
def test_a_number_that_is_not_what_stands_before_it_is_told_by_its_angle_or_its_unit(
    end: str, code: str, said: str
) -> None:
    """14/sin 53.13° = 17.5; 53.13 rad are 8 turns and 2.864, whose sine is 0.2736."""
    verdict = judge(SLIP, Fy("A"), f"F_AE = -14/sin 53.13 = {end}", known={"A_y": 14})
    assert [mistake.code for mistake in verdict.mistakes] == ([code] if code else [])
    assert said in verdict.text


def test_a_load_of_another_joint_is_told_as_that_and_not_as_a_component() -> None:
    """15 at B is 5/8 of the 24 at C; 9 at E acts across."""
    found = judge(SLIP, Fy("C"), "F_CF - 15 = 0").mistakes
    assert [(m.code, m.force) for m in found] == [("magnitude", "load C")]
    assert "acts at another joint" in found[0].text
    found = judge(SLIP, Fy("D"), "24 + 4/5 F_DF = 0", known={"D_y": "25"}).mistakes
    assert [(m.code, m.force) for m in found] == [("carried", "D_y")]
    assert "a load that acts elsewhere" in found[0].text


def test_a_check_in_numbers_is_not_rounded_hard_where_it_closes_to_its_figures() -> None:
    known = {"DF": "-31.25", "CD": "18.75"}
    verdict = judge(SLIP, Fx("D"), "31.25 cos 53.13 - 18.75 = 0", known=known)
    assert verdict.right
    assert "rounding" not in [remark.code for remark in verdict.remarks]


@pytest.mark.parametrize(
    ("known", "of"), [((), "AB"), (("AB",), "BC"), (("BC",), "AB"), (("AB", "BC"), "AB")]
)
def test_the_end_of_a_chain_is_the_value_of_the_force_that_has_none(
    known: tuple[str, ...], of: str
) -> None:
    line = read_line("F_AB = F_BC = 4.67", SLIP.names)
    assert isinstance(line, Line)
    assert value_ended(line.result, known) == of

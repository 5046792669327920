"""Is a value told as another force's, as taken from the other side, or as one whose sign was lost on the way?

BRIDGE has the shape of its mirror image, and loads that are not alike: A_y = 12.5, AB = -15.625,
DE = -21.875, AC = 9.375, CE = 13.125, BC = 3.125, CD = -3.125, BD = -11.25. SLIP is as worked out by hand
in `test_judge_sum_before`: A_x = -9, A_y = 14, AE = -17.5, AB = 19.5, BE = 14, BF = 1.25, CF = 23.
"""

from __future__ import annotations

import pytest
from judge.test_judge_led_up_to import BRIDGE, code_of
from judge.test_judge_sum_before import SLIP

from tutor.judge import Equation, Fx, Fy, Value, judge

FOUND = {"A_x": "-9", "A_y": "14", "AE": "-17.5"}


@pytest.mark.parametrize(
    ("force", "text", "code"),
    [
        ("CE", "CE same as AC = 9.375 kN T", "symmetry"),
        ("CE", "CE = same as AC, so 9.375 kN", "symmetry"),
        ("DE", "DE equal to AB, 15.625 C", "symmetry"),
        ("CE", "CE same as BC, 3.125 T", "carried"),
        ("CD", "CD same as BC, 3.125 T", "tension-compression"),
    ],
)
def test_a_member_said_to_be_the_same_as_its_mirror_image_rests_on_a_symmetry_that_is_none(
    force: str, text: str, code: str
) -> None:
    assert code_of(BRIDGE, Value(force), text) == code


@pytest.mark.parametrize(
    ("force", "text", "code"),
    [
        ("CE", "9.375 kN", "carried"),
        ("AB", "21.88 kN C", "carried"),
        ("DE", "DE | 15.625 | C", "carried"),
        ("BD", "13.13 C", "carried"),
        ("CE", "9.4 T", "arithmetic"),
        ("CE", "9.2 T", "arithmetic"),
    ],
)
def test_what_another_member_carries_is_known_by_three_figures_where_nothing_else_explains_it(
    force: str, text: str, code: str
) -> None:
    verdict = judge(BRIDGE, Value(force), text)
    assert [mistake.code for mistake in verdict.mistakes] == [code]
    assert "your result" not in verdict.mistakes[0].place


@pytest.mark.parametrize(
    ("about", "text", "code"),
    [
        (Fx("A"), "A_x + AB + 3/5 AE = 0, AB = -19.5 kN C", "sign"),
        (Fx("A"), "A_x + AB + 3/5 AE = 0, AB = 19.5 kN C", "tension-compression"),
        (Value("AB"), "AB = -9 - 3/5(17.5) = -19.5 (C)", "sign"),
        (Value("AB"), "-19.5 C", "tension-compression"),
        (Fy("B"), "BE - 15 + 0.8 BF = 0, BE = 0.8(1.25) - 15 = -14 kN (C)", "sign"),
    ],
)
def test_the_letter_of_a_minus_that_was_worked_out_is_no_mistake_of_its_own(
    about: Equation | Value, text: str, code: str
) -> None:
    verdict = judge(SLIP, about, text, known=FOUND)
    assert [mistake.code for mistake in verdict.mistakes] == [code]

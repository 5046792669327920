"""Are lines read with the marks and words of notes to oneself, and is no claim of theirs passed over?

BRIDGE and its forces stand in `test_judge_led_up_to`: A_y = 12.5, E_y = 17.5, AB = -15.625, AC = 9.375,
BC = 3.125, CD = -3.125, CE = 13.125, DE = -21.875.
"""

from __future__ import annotations

import pytest
from judge.test_judge_led_up_to import BRIDGE

from tutor.judge import Equation, Fx, Fy, Value, judge

KNOWN = {"A_y": "12.5", "AB": "-15.625"}


def outcome(about: Equation | Value, text: str) -> str:
    verdict = judge(BRIDGE, about, text, known=KNOWN)
    return verdict.mistakes[0].code if verdict.mistakes else verdict.kind


@pytest.mark.parametrize(
    ("about", "text", "said"),
    [
        (Fy("A"), "ok w/ 12.5 at A: 12.5 + 0.8 AB = 0", "right"),
        (Fy("A"), "w/ 12.5 at A: 12.5 - 0.8 AB = 0", "sign"),
        (Fx("A"), "w/ AB = -15.625: AC + 0.6(-15.625) = 0", "right"),
        (Fy("A"), "for A up/down it's just 12.5 + 0.8 AB = 0", "right"),
        (Fy("A"), "Bo: for A up/down it’s just 12.5 + 0.6 AB = 0 lol", "component"),
        (Fx("A"), "for A left/right it is AC - 0.6 AB = 0", "sign"),
        (Fy("A"), "0.8 AB + 12.5 = 0 so AB = -15.6 kN <- compare with DE?", "right"),
        (Value("AC"), "AC = 9.375 T <- from joint A", "right"),
        (Value("AC"), "AC = 9.375 kN C  <-- check with joint C", "tension-compression"),
    ],
)
def test_marks_of_notes_are_read_as_the_words_they_stand_for(
    about: Equation | Value, text: str, said: str
) -> None:
    assert outcome(about, text) == said


@pytest.mark.parametrize(
    ("about", "text", "said"),
    [
        (Value("E_y"), "17.5 kN up, half of 35", "right"),
        (Value("E_y"), "15 kN up, half of 30", "symmetry"),
        (Value("E_y"), "17.5 kN up, half of 30", "arithmetic"),
        (Value("CE"), "CE = +13.1 kN (had 9.4 first, forgot the 20)", "right"),
        (Value("CE"), "CE = 12.1 kN (had 13.1 before, forgot CD)", "arithmetic"),
        (Value("DE"), "DE = -21.9 kN; DE is a strut, 21.9 kN (C)", "right"),
        (Value("DE"), "DE = -21.9 kN; DE is a strut, 21.9 kN (T)", "unreadable"),
        (Fy("E"), "17.5 + 0.8 DE = 0, DE = -21.9, i.e. DE is a strut, 21.9 kN (C)", "right"),
        (Value("CE"), "13.1 kN T, it is a tie and just carries the 13.1", "right"),
        (Value("CE"), "13.1 kN C, it just carries the 13.1", "tension-compression"),
        (Value("AC"), "Joint A, ratio of components 4 : 3, thus AC = (3/4)·12.5 = 9.375 kN (T)", "right"),
        (Value("DE"), "Joint E, ratio of the sides 5 : 3, so DE = (5/3)·17.5 = 29.2 kN (C)", "component"),
    ],
)  # fmt: skip
def test_what_is_noted_beside_a_value_leaves_it_as_it_is(
    about: Equation | Value, text: str, said: str
) -> None:
    assert outcome(about, text) == said

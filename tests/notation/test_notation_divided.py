"""Which colon divides, and which ends a heading, a value or sets a proportion?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fy, M, Value, judge, load_problem
from tutor.notation.elements.source import Source
from tutor.notation.pages.divided_by import colons_divide

QUAY = load_problem(Path(__file__).parent / "hands/quay.toml")


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("C_y = 168 : 8 = 21", "C_y = 168/(8) = 21"),
        ("AD = -15 : 0,6 = -25", "AD = -15/(0,6) = -25"),
        ("BD = (24 - 12) : 1 = 12", "BD = (24 - 12)/(1) = 12"),
        ("BD = 6 : ½ = 12", "BD = 6/(½) = 12"),
        ("R = 180 : (30*0.866) = 6.93", "R = 180/((30*0.866)) = 6.93"),
        ("AB = 4:5", "AB = 4/(5)"),
    ],
)
def test_a_colon_between_numbers_behind_an_equals_sign_divides(text: str, read: str) -> None:
    assert colons_divide(Source.of(text)).text == read


@pytest.mark.parametrize(
    "text",
    [
        "ΣFy = 0: 12 - AB = 0",
        "B (BC = 28): 12 - AB = 0",
        "put in AB = -32.5: -12 - 30 + AC = 0",
        "AB : BC = 4 : 5",
        "AB:BC = 4:5",
        "AB : 300 = √180 : 6",
        "AB = 12 kN : 3",
        "sides = 3:4:5",
        "12:30 AB = 5",
        "Joint D: 12 - AB = 0",
    ],
)
def test_any_other_colon_stays_what_it_is(text: str) -> None:
    assert colons_divide(Source.of(text)).text == text


def test_a_division_by_a_colon_is_held_like_one_by_a_stroke() -> None:
    assert judge(QUAY, M("A"), "8 C_y - 12*4 - 24*4 - 8*3 = 0, C_y = 168 : 8 = 21 kN").right
    assert judge(QUAY, Value("AD"), "AD = -15 : 0,6 = -25 kN").right
    wrong = judge(QUAY, Value("AD"), "AD = -15 : 0,8 = -18,75 kN")
    assert wrong.kind == "wrong"
    broken = judge(QUAY, Fy("A"), "A_y + 0.6 AD = 0, AD = -15 : 0.6 = -27")
    assert [each.code for each in broken.mistakes] == ["arithmetic"]

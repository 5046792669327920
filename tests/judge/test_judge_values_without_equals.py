"""A name, a number and what says that the number is a force: a value without an = sign."""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fx, Fy, Value, judge, load_problem

QUAY = load_problem(Path(__file__).parents[1] / "notation/hands/quay.toml")

SAME = [
    ("AD", "AD 25 kN C   (from joint A)", "AD = 25 kN C"),
    ("AD", "AD 25 kN T   (from joint A)", "AD = 25 kN T"),
    ("AD", "F_AD  25 C [largest of all]", "AD = 25 C"),
    ("AD", "AD 25 kN in tension", "AD = 25 T"),
    ("AD", "AD 24 kN in compression (pushes on A)", "AD = 24 C"),
    ("A_x", "A_x 8 kN to the left", "A_x = 8 kN left"),
    ("A_x", "A_x 8 kN to the right", "A_x = 8 kN right"),
    ("A_x", "A_x 8 kN acting left (against the wind)", "A_x = 8 kN left"),
    ("A_x", "A_x 8 kN →", "A_x = 8 kN →"),
    ("C_y", "C_y 21 kN up (C carries more)", "C_y = 21 up"),
    ("C_y", "C_y 12 kN up (C carries more)", "C_y = 12 up"),
    ("C_y", "C_y 21 kN up (half of 42)", "C_y = 21 up"),
    ("C_y", "C_y 21 (moments about A)", "C_y = 21"),
    ("C_y", "C_y 20 (moments about A)", "C_y = 20"),
]


@pytest.mark.parametrize(("name", "bare", "equal"), SAME)
def test_a_value_without_an_equals_sign_is_judged_as_with_one(
    name: str, bare: str, equal: str
) -> None:
    one, other = (judge(QUAY, Value(name), text) for text in (bare, equal))
    assert one.kind == other.kind in ("right", "wrong")
    assert [m.code for m in one.mistakes] == [m.code for m in other.mistakes]


@pytest.mark.parametrize(
    "line",
    ["C_y 21", "C_y 21 (moments about A)", "C_y 21 m up", "C_y 21 kN up the wall", "C_y 3(7) kN"],
)
def test_where_nothing_says_that_a_number_is_a_force_it_is_asked(line: str) -> None:
    assert judge(QUAY, Fy(), line).kind == "unreadable"


@pytest.mark.parametrize("line", ["AD 12 F_CD", "AD 12 kN F_CD", "AD 0.6 + 15 kN"])
def test_a_product_is_never_taken_for_a_value(line: str) -> None:
    assert judge(QUAY, Fx("D"), line).kind == "unreadable"


@pytest.mark.parametrize(
    ("line", "kind"),
    [
        ("C_y = 21 kN up (half of 42)", "right"),
        ("C_y = 21 up (12 + 9)", "right"),
        ("C_y = 21 up (half of 36)", "wrong"),
        ("C_y = 21 up (12 + 8)", "wrong"),
        ("C_y = 18 up (half of 36)", "wrong"),
        ("C_y = 21 down (half of 42)", "wrong"),
        ("C_y = 21 (half of 42)", "unreadable"),
    ],
)
def test_the_working_behind_a_value_is_held_against_it(line: str, kind: str) -> None:
    assert judge(QUAY, Value("C_y"), line).kind == kind


def test_working_that_does_not_hold_is_told_in_its_own_words() -> None:
    said = judge(QUAY, Value("C_y"), "C_y = 21 kN up (half of 36)").text
    assert "21 kN is not half of 36" in said

"""Is work that runs on behind an equals sign taken for what it comes to, and told that it is not equal?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fy, M, Value, judge, load_problem

QUAY = load_problem(Path(__file__).parents[1] / "notation/hands/quay.toml")


@pytest.mark.parametrize(
    "text",
    [
        "96 + 48 + 24 = 168/8 = 21",
        "C_y = 24*4 + 12*4 + 8*3 = 168/8 = 21 kN",
        "24(4) + 72 = 168/8 = 21 up",
    ],
)
def test_a_result_that_was_worked_on_behind_an_equals_sign_is_right_and_told_so(text: str) -> None:
    verdict = judge(QUAY, Value("C_y"), text)
    assert verdict.right
    assert [remark.code for remark in verdict.remarks] == ["run-on"]
    assert "168/8" in verdict.remarks[0].text


def test_a_result_that_was_worked_on_is_told_with_its_minus() -> None:
    verdict = judge(QUAY, Value("C_y"), "-96 - 48 - 24 = -168/8 = -21", senses={"C_y": "down"})
    assert verdict.right
    assert "-96 - 48 - 24 is not -168/8" in verdict.remarks[0].text


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("96 + 48 + 24 = 168/8 = 22", "arithmetic"),
        ("96 + 48 + 24 = 158/8 = 21", None),
        ("C_y = 96 + 48 = 144/8 = 18", None),
        ("C_y = 96 + 48 + 24 = 168/4 = 42", None),
    ],
)
def test_what_does_not_follow_is_wrong_as_in_any_chain(text: str, code: str | None) -> None:
    verdict = judge(QUAY, Value("C_y"), text)
    assert verdict.kind == "wrong"
    assert code is None or verdict.mistakes[0].code == code


def test_an_equation_may_run_on_to_its_value() -> None:
    assert judge(QUAY, M("A"), "8 C_y = 96 + 48 + 24 = 168/8 = 21").right
    assert not judge(QUAY, M("A"), "8 C_y = 96 + 48 = 144/8 = 18").right


@pytest.mark.parametrize(
    "text",
    [
        "A_y = 24 + 12 - C_y = 36 - C_y",
        "0 = A_y + C_y - 24 - 12 = A_y + C_y - 36",
        "A_y + C_y - 36 = A_y - 36 + C_y = 0",
    ],
)
def test_an_equation_put_another_way_within_a_chain_is_right(text: str) -> None:
    assert judge(QUAY, Fy(), text).right
    assert not judge(QUAY, Fy(), text.replace("36", "35")).right

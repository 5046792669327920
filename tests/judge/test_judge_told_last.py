"""Is a value in words without its sense, or told of a noun that may be another force, asked about and never called wrong?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fy, M, Value, judge, load_problem

STALL = load_problem(Path(__file__).parents[1] / "paper/stall.toml")


@pytest.mark.parametrize(
    ("unknown", "text"),
    [
        ("AB", "the rafter carries 175 lb"),
        ("AB", "AB carries 175 lb"),
        ("AB", "3/5 AB = -105, so the rafter carries 175 lb"),
        ("A_x", "the pin pushes back with 120 lb"),
    ],
)
def test_a_size_without_its_sense_is_asked_for_it(unknown: str, text: str) -> None:
    verdict = judge(STALL, Value(unknown), text, known={"A_y": 105})
    assert verdict.kind == "undecided"
    assert "gives the size" in verdict.text


def test_behind_an_equation_that_stands_the_size_is_enough() -> None:
    text = "3/5 AB + 105 = 0, so the rafter carries 175 lb"
    assert judge(STALL, Fy(joint="A"), text, known={"A_y": 105}).right


@pytest.mark.parametrize(
    ("unknown", "text"),
    [
        ("AD", "AD = 260 lb T, so the rafter carries 325 lb C"),
        ("AD", "AD = 4/5*325 = 260 lb, so the bar carries 620 lb"),
    ],
)
def test_a_value_of_a_noun_that_the_equation_before_it_does_not_find_is_asked_about(
    unknown: str, text: str
) -> None:
    verdict = judge(STALL, Value(unknown), text)
    assert verdict.kind == "undecided"
    assert "is right, but this is not the value that it finds" in verdict.text


def test_a_wrong_equation_is_told_whatever_is_said_of_a_noun_behind_it() -> None:
    text = "16 C_y = 300(8) - 120(6), so the roller carries 105 lb"
    verdict = judge(STALL, M(at="A"), text)
    assert [mistake.code for mistake in verdict.mistakes] == ["turning"]


def test_the_value_of_the_force_that_is_asked_for_is_judged_also_behind_a_noun() -> None:
    wrong = judge(STALL, Value("C_y"), "From moments 16 C_y = 3120, so the roller carries 159 lb")
    right = judge(STALL, Value("C_y"), "From moments 16 C_y = 3120, so the roller carries 195 lb")
    assert wrong.kind == "wrong"
    assert right.right
    assert any("is read as one of the force" in remark.text for remark in right.remarks)


@pytest.mark.parametrize(
    ("unknown", "text"),
    [("BD", "the roller carries 300 lb"), ("C_y", "the hanger carries 195 lb")],
)
def test_the_value_of_a_support_is_none_of_a_member_nor_the_other_way_round(
    unknown: str, text: str
) -> None:
    assert judge(STALL, Value(unknown), text).kind == "unreadable"

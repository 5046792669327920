"""What is asked of the judge that no line can be judged by is refused, and it is said why."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import pytest

from tutor import Fx, Value, judge, load_problem

QUAY = load_problem(Path(__file__).parents[1] / "notation" / "hands" / "quay.toml")


@pytest.mark.parametrize("about", ["ΣFx at A", None, ("Fx", "A")])
def test_a_line_is_about_an_equation_or_a_value(about: Any) -> None:
    with pytest.raises(TypeError, match="a line is about"):
        judge(QUAY, about, "A_x + F_AB + 0.8 F_AD = 0")


@pytest.mark.parametrize(
    ("senses", "said"),
    [
        ({"A_x": "up"}, "right, left"),
        ({"C_y": "T"}, "up, down"),
        ({"AB": "left"}, "T, C"),
    ],
)
def test_a_sense_that_a_force_has_not_is_refused_with_those_it_has(
    senses: dict[str, str], said: str
) -> None:
    with pytest.raises(ValueError, match=said):
        judge(QUAY, Fx("A"), "A_x + F_AB + 0.8 F_AD = 0", senses=senses)


@pytest.mark.parametrize("value", [math.inf, math.nan, "abc", "8 ="])
def test_a_value_that_is_none_is_refused(value: float | str) -> None:
    with pytest.raises(ValueError, match=r"no number|column"):
        judge(QUAY, Fx("A"), "A_x + F_AB + 0.8 F_AD = 0", known={"A_x": value})


@pytest.mark.parametrize("text", ["28 kN to the left", "28 right", "AB = 28 kN up"])
def test_a_member_does_not_act_to_a_side(text: str) -> None:
    said = judge(QUAY, Value("AB"), text)
    assert said.kind == "undecided"
    assert "AB is a member: say T or C" in said.text


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("AD_x = 4/3 AD_y, AD = -25", "right"),
        ("AD_y = -15, AD_x = 4/3 AD_y, AD = -25", "right"),
        ("AD_x = 3/4 AD_y, AD = -25", "wrong"),
    ],
)
def test_a_value_may_come_from_how_the_components_go_together(text: str, kind: str) -> None:
    said = judge(QUAY, Value("AD"), text, known={"A_y": 15}, lines=("15 + 0.6 F_AD = 0",))
    assert said.kind == kind
    assert [mistake.code for mistake in said.mistakes] == ["component"] * (kind == "wrong")

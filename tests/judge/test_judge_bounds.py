"""Where do the bounds lie: lines that are just within, and lines that are just without?

Our own judgement; each pair lies on both sides of its bound, neither more than half as far again.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from families import exact, plain_problem

from tutor import Along, Value, judge, load_problem
from tutor.judge.written import number
from tutor.model import Load, Support

QUAY = load_problem(Path(__file__).parents[1] / "notation" / "hands" / "quay.toml")
SLOPE = "F_AD + 0.8 F_AB + 0.8 A_x + 0.6 A_y = 0"
TENT = plain_problem(
    [("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 4, 3)],
    ("AB", "BC", "AD", "BD", "CD"),
    [Support("A", "pin"), Support("C", "roller")],
    [Load("D", (("down", exact(24)),))],
)


@pytest.mark.parametrize(
    ("heading", "told"),
    [
        ("ΣF along 36.87°", False),
        ("ΣF along 36.9", False),
        ("ΣF along 36.83", False),
        ("ΣF along -143.13", False),
        ("ΣF along 216.87", False),
        ("ΣF along 36.8", True),
        ("ΣF along 36.95", True),
        ("ΣF along 30", True),
    ],
)
def test_an_angle_in_a_heading_may_be_rounded_to_a_tenth_of_a_degree(
    heading: str, told: bool
) -> None:
    said = judge(QUAY, Along(36.87, joint="A"), f"{heading}: {SLOPE}")
    assert said.right
    assert [remark.code for remark in said.remarks] == ["heading"] * told


@pytest.mark.parametrize(
    ("text", "right"),
    [("0", True), ("0.01", True), ("-0.01", True), ("0 C", True), ("0.015", False), ("0.1", False)],
)
def test_a_force_that_is_nothing_may_be_what_rounding_leaves_of_the_largest_load(
    text: str, right: bool
) -> None:
    """24 down: a two-thousandth of it is 0.012."""
    assert judge(TENT, Value("BD"), text).right is right


@pytest.mark.parametrize(
    ("text", "right"),
    [("-20.1", True), ("-19.9", True), ("-20.2", False), ("-19.8", False), ("-20.5", False)],
)
def test_a_value_of_three_figures_may_be_half_a_percent_off(text: str, right: bool) -> None:
    assert judge(TENT, Value("AD"), text, known={"A_y": "12"}).right is right


@pytest.mark.parametrize(
    ("text", "code"), [("-12.05", "whole-force"), ("-12.07", "component"), ("-12.5", "arithmetic")]
)
def test_a_slip_in_a_value_explains_what_is_half_a_percent_off_and_no_more(
    text: str, code: str
) -> None:
    said = judge(TENT, Value("AD"), text, known={"A_y": "12"}).mistakes
    assert [mistake.code for mistake in said] == [code]


@pytest.mark.parametrize(
    ("size", "written"),
    [(7 / 60, "7/60"), (11 / 59, "11/59"), (7 / 61, "0.11475"), (13 / 89, "0.14607"), (0.6, "3/5")],
)
def test_a_factor_is_written_as_a_fraction_of_small_numbers(size: float, written: str) -> None:
    assert number(size) == written

"""Where do the bounds lie: lines that are just within, and lines that are just without?

Our own judgement; each pair lies on both sides of its bound, neither more than half as far again.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from families import exact, plain_problem

from tutor import Along, Fx, Fy, M, Value, judge, load_problem
from tutor.judge.written import number_written
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
    [
        (7 / 60, "7/60"),
        (11 / 59, "11/59"),
        (7 / 61, "0.11475"),
        (13 / 89, "0.14607"),
        (0.6, "3/5"),
        (7 / 3, "7/3"),
        (2.5, "2.5"),
        (1e4 / 3, "10000/3"),
    ],
)
def test_a_factor_is_written_as_a_fraction_of_small_numbers(size: float, written: str) -> None:
    assert number_written(size) == written


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("A_y + 0.603 F_AD = 0", True),
        ("A_y + 0.604 F_AD = 0", False),
        ("A_y + 0.61 F_AD = 0", False),
        ("A_y + 0.58 F_AD = 0", False),
    ],
)
def test_a_factor_may_be_half_a_percent_off(text: str, right: bool) -> None:
    said = judge(QUAY, Fy("A"), text)
    assert said.right is right
    assert [(m.code, m.force) for m in said.mistakes] == [("not-equilibrium", "AD")] * (not right)


@pytest.mark.parametrize("factor", ["1.01", "0.995", "1.02", "1.05"])
def test_a_factor_beside_a_whole_force_is_told_at_it_and_no_sign_is(factor: str) -> None:
    """With all signs of a line turned nothing is wrong but the factor."""
    said = judge(QUAY, Fy(), f"{factor} A_y + C_y = 36").mistakes
    assert [(mistake.code, mistake.force) for mistake in said] == [("not-equilibrium", "A_y")]


@pytest.mark.parametrize(("total", "right"), [("36.18", True), ("36.2", False), ("35.8", False)])
def test_loads_added_up_may_be_half_a_percent_off(total: str, right: bool) -> None:
    said = judge(QUAY, Fy(), f"A_y + C_y = {total}")
    assert said.right is right
    assert [mistake.code for mistake in said.mistakes] == ["arithmetic"] * (not right)


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("C_y = (48 + 96 + 24)/8 = 168/8 = 21", True),
        ("C_y = 168/8 = 21.1", True),
        ("C_y = 168/8 = 20.9", True),
        ("C_y = 168/8 = 21.2", False),
        ("8 C_y = 48 + 96 + 24 = 167", False),
        ("8 C_y = 48 + 96 + 24 = 169", False),
    ],
)
def test_what_stands_behind_an_equals_sign_may_be_rounded_to_half_a_percent(
    text: str, right: bool
) -> None:
    said = judge(QUAY, M("A"), text)
    assert said.right is right
    assert [mistake.code for mistake in said.mistakes] == ["arithmetic"] * (not right)


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("800 C_y - 12*400 - 24*400 - 8*300 = 0", []),
        ("8 C_y - 12000*4 - 24000*4 - 8000*3 = 0", [("unit", None)]),
        ("8 C_y - 12*4 - 24*4 - 8*300 = 0", [("arm-unit", "load D x")]),
        ("8 C_y - 12*4 - 24*4 - 8*3000 = 0", [("arm-unit", "load D x")]),
        ("8 C_y - 12*4 - 24*4 - 8000*3 = 0", [("unit", "load D x")]),
        ("800 C_y - 12*4 - 24*4 - 8*3 = 0", [("arm-unit", "C_y")]),
        ("8 C_y - 12*4 - 24*4 - 8*9.84 = 0", [("arm", "load D x")]),
        ("8 C_y - 12*4 - 24*4 - 8*0.3 = 0", [("arm", "load D x")]),
    ],
)
def test_a_number_a_hundred_or_a_thousand_times_too_large_is_in_another_unit(
    text: str, found: list[tuple[str, str | None]]
) -> None:
    said = judge(QUAY, M("A"), text).mistakes
    assert [(mistake.code, mistake.force) for mistake in said] == found


@pytest.mark.parametrize(
    ("term", "found"),
    [
        ("- 12", ("stray-load", "load B")),
        ("+ 12", ("stray-load", "load B")),
        ("- 24", ("stray-load", "load D y")),
        ("- 12.1", ("extra", None)),
        ("- 7", ("extra", None)),
        ("+ 0.6 F_CD", ("extra", "CD")),
        ("+ C_y", ("stray-reaction", "C_y")),
        ("+ 0.5 C_y", ("stray-reaction", "C_y")),
    ],
)
def test_what_acts_elsewhere_is_known_by_its_number_or_its_name(
    term: str, found: tuple[str, str | None]
) -> None:
    said = judge(QUAY, Fy("A"), f"A_y + 0.6 F_AD {term} = 0").mistakes
    assert [(mistake.code, mistake.force) for mistake in said] == [found]


STEEP = plain_problem(
    [("A", 0, 0), ("B", 4, 0), ("C", 2, 4)],
    ("AB", "AC", "BC"),
    [Support("A", "pin"), Support("B", "roller")],
    [Load("C", (("down", exact(10)),))],
)


@pytest.mark.parametrize(
    ("factor", "right"),
    [
        ("cos 63°", True),
        ("sin 27°", True),
        ("cos 63", True),
        ("cos 62°", False),
        ("cos 64°", False),
        ("sin 26°", False),
    ],
)
def test_an_angle_in_whole_degrees_may_be_half_a_degree_off(factor: str, right: bool) -> None:
    """AC rises at 63.43 degrees, two up and one across."""
    said = judge(STEEP, Fx("A"), f"F_AB + F_AC {factor} = 0", known={"A_x": 0})
    assert said.right is right
    assert [remark.code for remark in said.remarks] == ["rounding"] * right


@pytest.mark.parametrize("text", ["AD = -2.5", "AD = -250 kN", "AD = 250 N C", "AD = -0.25 kN"])
def test_a_value_whose_decimal_point_alone_is_elsewhere_is_told_so(text: str) -> None:
    (mistake,) = judge(QUAY, Value("AD"), text).mistakes
    assert mistake.text.startswith("The figures fit, but the decimal point")

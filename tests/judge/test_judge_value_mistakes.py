"""What does a wrong value show: a component, a moment, a number left out or turned, another unit?

The truss is our own: A_x = -8, A_y = 15, C_y = 21, AB = BC = 28, AD = -25, CD = -35, BD = 12 kN, the
rafters at 3 across 4. What is said is what a lecturer would say, common practice, no source.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Value, judge, load_problem

QUAY = load_problem(Path(__file__).parents[1] / "notation" / "hands" / "quay.toml")
UP_AT_C, DOWN_THE_RAFTER = "21 + 0.6 F_CD = 0", "0.8 F_CD + 28 = 0"
ABOUT_A = "8 C_y - 12*4 - 24*4 - 8*3 = 0"


def named(name: str, text: str, *lines: str, **known: float) -> list[tuple[str, str | None]]:
    verdict = judge(QUAY, Value(name), text, lines=lines, known=known)
    return [(mistake.code, mistake.force) for mistake in verdict.mistakes]


@pytest.mark.parametrize("size", [28, 21, 26.25, 46.67, 22.4, 12.6, 16.8])
@pytest.mark.parametrize("sign", [1, -1])
def test_the_force_times_or_by_a_component_is_one_with_no_line_to_look_at(
    size: float, sign: int
) -> None:
    """35 times 0.8, 0.6, 3/4, 4/3, 0.64, 0.36 and 0.48, with whichever sign."""
    assert named("CD", f"{sign * size}") == [("component", "CD")]


@pytest.mark.parametrize("value", [-21, -12.6, -16.8, -26.25, -58.33, -28, -43.75, 21, 26.25])
def test_of_a_line_that_says_so_the_other_side_times_or_by_the_wrong_factor_is_a_component(
    value: float,
) -> None:
    """21 itself, times 0.6 and 0.8, by 0.8, by 0.36, times 4/3, by 0.48."""
    assert named("CD", f"{value}", UP_AT_C) == [("component", "CD")]


def test_a_force_with_no_factor_beside_it_is_no_component() -> None:
    assert named("BD", "6", "BD - 12 = 0") == [("arithmetic", "BD")]
    assert named("CD", "-43.75") == [("arithmetic", "CD")]


@pytest.mark.parametrize(
    ("name", "lines", "near", "far", "code"),
    [
        ("CD", [UP_AT_C], "-21.05", "-21.09", "component"),
        ("C_y", [ABOUT_A], "168.4", "168.7", "no-arm"),
        ("C_y", ["C_y - 12 - 9 = 0"], "12.03", "12.05", "missing"),
        ("AB", ["-8 + F_AB + 0.8*(-25) = 0"], "12.03", "12.05", "sign"),
    ],
)
def test_a_value_follows_from_a_slip_only_to_about_three_figures(
    name: str, lines: list[str], near: str, far: str, code: str
) -> None:
    assert named(name, near, *lines) == [(code, name)]
    assert named(name, far, *lines) == [("arithmetic", name)]


@pytest.mark.parametrize("value", [9, 15, 18])
def test_a_moment_that_was_left_out_of_the_line_of_a_reaction_is_missing(value: int) -> None:
    """Without 96, 48 or 24 of the 168 that are to be divided by 8."""
    assert named("C_y", f"{value}", ABOUT_A) == [("missing", "C_y")]


@pytest.mark.parametrize(("name", "value"), [("AB", 8), ("AB", 20), ("AB", -8)])
def test_a_term_that_was_left_out_of_the_line_of_a_member_is_missing(name: str, value: int) -> None:
    assert named(name, f"{value}", "-8 + F_AB + 0.8*(-25) = 0") == [("missing", name)]


@pytest.mark.parametrize("value", [12, -12])
def test_a_term_that_came_in_with_the_wrong_sign_is_a_sign(value: int) -> None:
    assert named("AB", f"{value}", "-8 + F_AB + 0.8*(-25) = 0") == [("sign", "AB")]
    assert named("C_y", f"{value // 4}", "C_y - 12 - 9 = 0") == [("sign", "C_y")]


@pytest.mark.parametrize(
    ("name", "text", "line", "known"),
    [
        ("AB", "AB = 8 - 0.8*25 = -12", "-8 + F_AB + 0.8*(-25) = 0", {}),
        ("AB", "AB = -8 + 0.8*25 = 12", "-8 + F_AB + 0.8 F_AD = 0", {"AD": -25}),
        ("C_y", "C_y = (48 + 96 - 24)/8 = 15", ABOUT_A, {}),
        ("C_y", "C_y = 48/8 + 96/8 - 24/8", ABOUT_A, {}),
        ("CD", "CD = (12 - 9)/0.6 = 5", "12 + 9 + 0.6 F_CD = 0", {}),
    ],
)
def test_a_number_that_stands_in_the_working_of_a_value_was_not_left_out(
    name: str, text: str, line: str, known: dict[str, float]
) -> None:
    assert named(name, text, line, **known) == [("sign", name)]


def test_where_no_working_is_typed_the_sign_tells_a_number_left_out_from_one_turned() -> None:
    """21 - 12 - 6 - 3: without 12 it is 9, with 6 turned 9 too; 21 - 2*12 is -3, and 3 is left out for none."""
    assert named("C_y", "-3", "C_y - 12 - 6 - 3 = 0") == [("sign", "C_y")]
    assert named("C_y", "18", "C_y - 12 - 6 - 3 = 0") == [("missing", "C_y")]


@pytest.mark.parametrize("text", ["168", "84", "168.4"])
def test_a_moment_about_any_joint_is_no_force_where_no_line_stands(text: str) -> None:
    assert named("C_y", text) == [("no-arm", "C_y")]


@pytest.mark.parametrize(("name", "text"), [("C_y", "63"), ("C_y", "42"), ("A_y", "7.5")])
def test_three_times_a_reaction_is_no_moment(name: str, text: str) -> None:
    assert named(name, text) == [("arithmetic", name)]


def test_half_of_all_loads_is_by_symmetry_unless_a_line_gives_the_reaction() -> None:
    assert named("A_y", "18") == [("symmetry", "A_y")]
    assert named("C_y", "18") == [("symmetry", "C_y")]
    assert named("A_y", "17.9") == [("arithmetic", "A_y")]
    assert named("A_y", "18", "A_y + 21 - 36 = 0") == [("arithmetic", "A_y")]


@pytest.mark.parametrize(
    "text", ["21 N", "2100 N", "210 N", "21 MN", "21 kip", "21000", "0.021", "210000 N"]
)
def test_figures_that_are_right_in_another_unit_or_by_a_power_of_ten_are_a_unit(text: str) -> None:
    assert named("C_y", text) == [("unit", "C_y")]


@pytest.mark.parametrize("text", ["2.1", "210", "93.4", "4720"])
def test_a_point_that_moved_where_no_unit_is_typed_is_no_unit(text: str) -> None:
    assert named("C_y", text) == [("arithmetic", "C_y")]


@pytest.mark.parametrize(
    ("name", "text", "known"),
    [("CD", "28", {"AB": 28}), ("CD", "-25", {"AD": -25}), ("BC", "35", {"AB": 28, "CD": -35})],
)
def test_the_value_of_another_force_was_carried(
    name: str, text: str, known: dict[str, float]
) -> None:
    assert named(name, text, **known) == [("carried", name)]


@pytest.mark.parametrize(
    ("before", "found"),
    [
        ("A_x + F_AB + 0.8 F_AD = 0", []),
        ("F_AB + 0.8 F_AD + A_x = 0", []),
        ("2 A_x + 2 F_AB + 1.6 F_AD = 0", []),
        ("A_x + F_AB + 0.6 F_AD = 0", [("component", "AD")]),
        ("A_x - F_AB + 0.8 F_AD = 0", [("sign", "AB")]),
        ("A_x + F_AB = 0", [("missing", "AD")]),
    ],
)
def test_a_right_value_behind_a_sum_is_right_only_where_the_sum_is_the_one_that_stands(
    before: str, found: list[tuple[str, str]]
) -> None:
    """Beside the line that stands, with the same forces and perhaps one factor of them."""
    text = f"{before}, F_AB = 28"
    assert named("AB", text, "A_x + F_AB + 0.8 F_AD = 0", A_x=-8, AD=-25) == found


def test_a_value_said_again_shows_the_same_mistake() -> None:
    problem = load_problem(Path(__file__).parents[1] / "paper/stall.toml")
    for text in ("AB = -157 lb", "AB = -157 lb, i.e. 157 lb (C)", "AB = -157 lb → 157 lb C"):
        verdict = judge(problem, Value("AB"), text)
        assert [each.code for each in verdict.mistakes] == ["digits-exchanged"], text

"""Sums of forces that were multiplied through to clear them of fractions, with a slip."""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fx, Fy, judge, load_problem

QUAY = load_problem(Path(__file__).parents[1] / "notation" / "hands" / "quay.toml")
FOUND = {"A_x": -8, "A_y": 15, "AD": -25}


@pytest.mark.parametrize(
    ("about", "text"),
    [
        (Fy("A"), "5 A_y - 2*25 = 0"),
        (Fy("A"), "5(15) + 2(-25) = 0"),
        (Fy("A"), "5 A_y - 1.2*25 = 0"),
        (Fx("A"), "10 A_x + 10 F_AB - 7*25 = 0"),
        (Fx("A"), "10 A_x + 10 F_AB - 3*25 = 0"),
    ],
)
def test_a_factor_that_no_slope_gives_is_told_of_the_force_beside_it(about, text: str) -> None:
    """Rafters at 3 across 4: the factor of AD is 3 or 4 of 5, 6 or 8 of 10."""
    said = judge(QUAY, about, text, known=FOUND).mistakes
    assert [(mistake.code, mistake.force) for mistake in said] == [("not-equilibrium", "AD")]


@pytest.mark.parametrize(
    ("about", "text"),
    [
        (Fy("A"), "10 A_y - 5*25 = 0"),
        (Fx("A"), "5 A_x + 5 F_AB - 3.5*25 = 0"),
    ],
)
def test_one_of_a_slope_that_is_known_by_heart_is_a_slope_assumed(about, text: str) -> None:
    said = judge(QUAY, about, text, known=FOUND).mistakes
    assert [(mistake.code, mistake.force) for mistake in said] == [("slope-assumed", "AD")]


@pytest.mark.parametrize(
    ("about", "text"),
    [
        (Fy("A"), "5 A_y + 3 F_AD = 0"),
        (Fy("A"), "5(15) + 3(-25) = 0"),
        (Fx("A"), "10 A_x + 10 F_AB - 8*25 = 0"),
    ],
)
def test_multiplied_through_rightly_it_is_right(about, text: str) -> None:
    assert judge(QUAY, about, text, known=FOUND).right

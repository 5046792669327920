"""Is a line in another unit right where it names that unit once, and wrong where its numbers are in two?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fy, M, judge, load_problem

MORE = Path(__file__).parents[1] / "paper/more"
KITE = load_problem(MORE / "dossier-kite.toml")
"""In N and mm: 170 N to the right at B, 80 up; 340 N down at D, 150 across; R_C of a link at C, 300 across."""


@pytest.mark.parametrize(
    "line",
    [
        "0.3·(15/17)·R_C = 170·0.08 + 340·0.15   [N·m]",
        "0.3·(15/17)·R_C - 170·0.08 - 340·0.15 = 0 N·m",
        "170(0.08) + 340(0.15) - 0.3(15/17) R_C = 0 N·m",
        "0.3·(15/17)·R_C = 13.6 + 51 N·m",
        "300·(15/17)·R_C = 170·80 + 340·150 [N·mm]",
    ],
)
def test_a_sum_of_moments_is_right_in_the_unit_that_it_names(line: str) -> None:
    assert judge(KITE, M("A"), line).right


@pytest.mark.parametrize(
    "line",
    [
        "300·(15/17)·R_C = 170·80 + 340·150 [N·m]",
        "0.3·(15/17)·R_C = 170·80 + 340·150 [N·m]",
        "0.3·(15/17)·R_C = 170·0.08 + 340·0.18 [N·m]",
        "0.3·(15/17)·R_C = 170·0.08 - 340·0.15 [N·m]",
        "0.3·R_C = 170·0.08 + 340·0.15 [N·m]",
        "0.3·(15/17)·R_C = 170·0.08 + 340·150 [N·m]",
        "3·(15/17)·R_C = 170·0.8 + 340·1.5 [N·m]",
    ],
)
def test_one_with_arms_in_another_unit_or_with_a_slip_is_wrong(line: str) -> None:
    assert judge(KITE, M("A"), line).kind == "wrong"


MODEL = load_problem(MORE / "cloister-model.toml")
"""In N and mm: A_y = 552.5 N, AC rises by 8 in 17."""


def test_a_sum_of_forces_is_in_the_unit_of_its_result() -> None:
    line = "0.5525 + (8/17) AC = 0, AC = -1.174 kN"
    assert judge(MODEL, Fy("A"), line, known={"A_y": 552.5}).right


@pytest.mark.parametrize(
    "line",
    [
        "0.5525 - (8/17) AC = 0, AC = 1.174 kN",
        "552.5 + (8/17) AC = 0, AC = -1174 kN",
        "5.525 + (8/17) AC = 0, AC = -11.74 kN",
        "0.5525 + (15/17) AC = 0, AC = -0.626 kN",
        "0.5525 + (8/17) AC = 0, AC = -1.714 kN",
    ],
)
def test_one_with_a_slip_or_in_two_units_is_not_right(line: str) -> None:
    assert not judge(MODEL, Fy("A"), line, known={"A_y": 552.5}).right

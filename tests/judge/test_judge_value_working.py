"""Does a value whose working has one ratio the wrong way up say so?"""

from __future__ import annotations

from math import cos, radians, sin, sqrt
from pathlib import Path

import pytest

from tutor import Along, Fy, Value, judge, load_problem

STALL = load_problem(Path(__file__).parents[1] / "paper/stall.toml")


def told(text: str, of: str) -> tuple[str, list[str]]:
    verdict = judge(STALL, Value(of), text)
    return verdict.kind, [each.code for each in verdict.mistakes]


@pytest.mark.parametrize("of", ["AD", "CD"])
@pytest.mark.parametrize("ratio", ["195*6/8", "195*(6/8)", "195*3/4", "195·(3/4)"])
def test_a_ratio_the_wrong_way_up_in_the_working_of_a_value_is_told(of: str, ratio: str) -> None:
    text = f"{of} = {ratio} = 146.25 lb T"
    assert told(text, of) == ("wrong", ["upside-down"])


def test_a_value_is_right_with_its_ratio_the_right_way_up() -> None:
    assert told("CD = 195*8/6 = 260 lb T", "CD")[0] == "right"


def test_another_wrong_value_is_not_told_of_its_ratio() -> None:
    assert told("CD = 195*6/7 = 167.1 lb T", "CD") != ("wrong", ["upside-down"])
    assert told("CD = 146.25 lb T", "CD") != ("wrong", ["upside-down"])


JETTY = load_problem(Path(__file__).parents[1] / "paper/more/gadget-jetty.toml")


@pytest.mark.parametrize("degrees", [10, 25, 30, 70, 100, 155])
def test_a_sum_along_any_slope_is_told_as_that(degrees: int) -> None:
    across, up = cos(radians(degrees)), sin(radians(degrees))
    sides = (-1.0, 0.0), (-sqrt(0.5), sqrt(0.5)), (0.0, -6.0)
    bc, cd, load = (x * across + y * up for x, y in sides)
    line, turned = (f"{bc:.4f} BC + {cd:.4f} CD + {n:.4f} = 0" for n in (load, -load))
    verdict = judge(JETTY, Fy("C"), line)
    assert isinstance(verdict.true_of, Along)
    assert verdict.true_of.degrees == pytest.approx(degrees, abs=0.3)
    assert judge(JETTY, Fy("C"), turned).true_of is None

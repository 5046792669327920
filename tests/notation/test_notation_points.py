"""A point at half height: is it a decimal one or a sign for times? T, C and arrows beside a size, strokes under it."""

from __future__ import annotations

from itertools import product
from pathlib import Path

import pytest

from tutor import Fx, Fy, M, Value, judge, load_problem

STALL = load_problem(Path(__file__).parents[1] / "paper/stall.toml")


def value(text: str, of: str = "AB") -> str:
    return judge(STALL, Value(of), text).kind


@pytest.mark.parametrize("text", ["175·0 lb (C)", "AB = 175·0 C", "AB = −175·0 lb", "AB = 35·5 C"])
def test_a_value_may_have_its_point_at_half_height_or_be_a_product(text: str) -> None:
    assert value(text) == "right"


@pytest.mark.parametrize("text", ["AB = 17·5 C", "AB = 1·75 C", "AB = 36·5 C", "AB = 35·5 T"])
def test_a_wrong_value_is_right_by_neither(text: str) -> None:
    assert value(text) == "wrong"


def test_a_nought_before_the_point_and_a_force_behind_make_it_a_decimal_one() -> None:
    known = {"A_x": -120.0}
    assert judge(STALL, Fx("A"), "AD + 0·8 AB − 120 = 0", known=known).right
    assert judge(STALL, Fy("A"), "A_y + 0·6 AB = 0").right
    swapped = judge(STALL, Fy("A"), "A_y + 0·8 AB = 0")
    assert [(each.code, each.force) for each in swapped.mistakes] == [("component", "AB")]


def test_a_nought_before_the_point_may_be_an_arm_where_no_force_stands_behind() -> None:
    assert judge(STALL, M("A"), "16·C_y − 0·6 − 6·120 − 8·300 = 0").right
    assert judge(STALL, Fx("D"), "CD − AD + 0·300 = 0").right


WAYS = {"C": ("C", "(C)", "compression"), "T": ("T", "(T)", "tension")}


@pytest.mark.parametrize(("sense", "said"), [("right", WAYS["C"]), ("wrong", WAYS["T"])])
def test_an_arrow_beside_tension_or_compression_only_draws_it(
    sense: str, said: tuple[str, ...]
) -> None:
    for way, arrow in product(said, "↑↓←→↗"):
        assert value(f"AB = 175 lb {way} {arrow}") == sense
    for way, arrow in product(said, "↑↓←"):
        assert value(f"AB = 175 lb {arrow} {way}") == sense


def test_an_arrow_says_the_way_of_a_reaction_whatever_is_said_behind_it_of_what_it_pushes() -> None:
    assert value("A_x = 120 lb ← (the pin pushes back)", "A_x") == "right"
    assert value("A_x = 120 lb → (the pin pushes back)", "A_x") == "wrong"


LEADS = ("{} 175 lb", "{} of 175 lb", "a {} of 175 lb", "{} force 175 lb", "AB = {} 175 lb")


@pytest.mark.parametrize("way", ["compressive", "compression", "thrust", "tensile", "tension"])
def test_what_a_force_does_may_stand_before_its_size(way: str) -> None:
    kinds = {value(lead.format(way)) for lead in LEADS}
    assert kinds == {"wrong" if way.startswith("tens") else "right"}


@pytest.mark.parametrize("stroke", ["___", "____", "‗‗‗", " ‗", "﹏﹏"])
def test_a_stroke_under_a_result_says_nothing(stroke: str) -> None:
    assert value(f"AB = -175 lb {stroke}") == "right"
    assert value(f"AB = 175 lb (T) {stroke}") == "wrong"

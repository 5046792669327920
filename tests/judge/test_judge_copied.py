"""Is a product with a number copied wrongly taken for a rounded one, where its other factor is coarse?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fx, Fy, M, judge, load_problem
from tutor.judge.factors import Factors

QUAY = load_problem(Path(__file__).parents[1] / "notation/hands/quay.toml")
JETTY = load_problem(Path(__file__).parents[1] / "paper/more/podium-jetty.toml")
KNOWN = {"CD": "-34.06"}


@pytest.mark.parametrize(
    "text",
    ["C_y - 0.6(34.60) = 0", "C_y - 34.60*0.6 = 0", "C_y = 0.6*34.40", "C_y - 3/5(34.60) = 0"],
)
def test_digits_swapped_beside_a_ratio_of_one_figure_are_a_number_copied_wrongly(text: str) -> None:
    verdict = judge(QUAY, Fy("C"), text, known=KNOWN)
    assert [(m.code, m.force) for m in verdict.mistakes] == [("carried", "CD")]


@pytest.mark.parametrize(
    "text", ["C_y - 0.6(34.1) = 0", "C_y - 0.6(34) = 0", "C_y = 20.4", "C_y - 0.6*34.06 = 0"]
)
def test_a_number_rounded_beside_such_a_ratio_is_right(text: str) -> None:
    assert judge(QUAY, Fy("C"), text, known=KNOWN).right


def test_a_load_copied_wrongly_beside_a_distance_of_two_figures_is_named() -> None:
    for text in ("8 C_y - 24.4*4 - 8*3 - 12*4 = 0", "8 C_y - 24.4*4.0 - 8*3 - 12*4 = 0"):
        assert not judge(QUAY, M("A"), text).right


def test_one_factor_precise_and_the_other_off_by_more_than_its_rounding_is_seen() -> None:
    def off(size: float, share: float, radius: float = 0.0) -> bool:
        return Factors((0.8, size), shares=(0.0625, share)).one_is_off(34.06, radius, 0.8)

    assert off(34.6, 0.05 / 34.6)
    assert not off(34.6, 0.05 / 34.6, radius=0.5)
    assert not off(34.1, 0.05 / 34.1)
    assert not Factors((0.79, 34.6), shares=(0.006, 0.001)).one_is_off(34.06, 0.0, 0.8)
    assert Factors((4.0, 34.6, 0.2), shares=(0.0, 0.001, 0.0)).one_is_off(34.06, 0.0, 0.8)


def test_a_number_copied_wrongly_is_named_though_a_sum_along_a_slope_is_as_near() -> None:
    """-675 + 407.1 = F_CE lies within a rounding of the sum along BE, whose numbers all but cancel."""
    known = {"EG": "-675", "BE": "-687.5", "DE": "-900", "E_y": "1450"}
    for copied in ("678.5", "697.5"):
        verdict = judge(JETTY, Fx("E"), f"-675 - F_CE - (3/5)(-{copied}) = 0", known=known)
        assert [(m.code, m.force) for m in verdict.mistakes] == [("carried", "BE")]
        assert verdict.true_of is None

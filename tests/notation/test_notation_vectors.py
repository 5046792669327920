"""Sums written with vectors, and rows of terms: are they the sums across, upwards and about a point that they say?

The loads of the ropeway are 8 kN to the right at C (4, 3) and 24 kN down at D (4, 0); it stands at A (0, 0) and B (8, 0).
"""

from __future__ import annotations

from typing import Any

import pytest
from paper.measure import problem

from tutor import Fx, Fy, M, judge

WHOLE = [
    "(A_x, A_y) + (0, B_y) + (8, 0) + (0, -24) = (0, 0)",
    "(A_x, A_y) + (0, B_y) + (8, 0) - (0, 24) = 0",
    "ΣF: (0, B_y) + (A_x, A_y) + (8, 0) + (0, −24) = 0",
    "A_x i + A_y j + B_y j + 8 i - 24 j = 0",
    "(A_x + 8) i + (A_y + B_y - 24) j = 0",
    "(A_x + 8)i + (A_y + B_y − 24)j = 0 i + 0 j",
]
AT_A = [
    "Joint A: (A_x, A_y) + (0.8 AC, 0.6 AC) + (AD, 0) = (0, 0)",
    "AC(4/5, 3/5) + AD(1, 0) + (A_x, A_y) = 0",
    "A_x i + A_y j + 0.8 AC i + 0.6 AC j + AD i = 0",
    "A_x i + A_y j + AC(0.8 i + 0.6 j) + AD i = 0",
    "AC (0.8i + 0.6j) + AD i + A_x i + A_y j = 0",
]
ABOUT_A = [
    "Σ r × F: (4i + 3j) × 8i + 4i × (−24j) + 8i × B_y j = 0",
    "(4i + 3j) × 8i - 4i × 24j + 8i × B_y j = 0",
    "ΣM_A: 8i × B_y j + 4i × (-24j) + (4i+3j) × 8i = 0",
    "ΣM_A = 8i × B_y j + 4i × (-24j) + (4i+3j) × (8i) = 0",
    "8i × B_y j + (4i + 0j) × (-24j) + 4i × 0j + 3j × 8i = 0",
]


def said(about: Fx | Fy | M, text: str, **more: Any) -> tuple[str, list[str]]:
    verdict = judge(problem("more/academy-ropeway"), about, text, **more)
    return verdict.kind, [mistake.code for mistake in verdict.mistakes]


@pytest.mark.parametrize(
    ("joint", "line"), [("", one) for one in WHOLE] + [("A", one) for one in AT_A]
)
def test_a_sum_of_vectors_is_both_sums(joint: str, line: str) -> None:
    asked = (Fx(joint), Fy(joint)) if joint else (Fx(), Fy())
    for about in asked:
        assert said(about, line) == ("right", [])
        assert said(about, line.replace("A_x", "2 A_x", 1))[0] == "wrong"
        assert (
            said(about, line.replace("24", "20").replace("0.6", "0.8").replace("3/5", "4/5"))[0]
            == "wrong"
        )


def test_the_wrong_component_of_a_pair_is_named() -> None:
    assert said(Fy(), WHOLE[0].replace("24", "20")) == ("wrong", ["magnitude"])
    assert said(Fx(), WHOLE[3].replace("+ 8 i", "- 8 i")) == ("wrong", ["sign"])
    assert said(Fx("A"), AT_A[1].replace("4/5", "3/5", 1)) == ("wrong", ["component"])


@pytest.mark.parametrize("line", ABOUT_A)
def test_vector_products_are_the_moments_of_their_forces(line: str) -> None:
    assert said(M("A"), line) == ("right", [])
    assert said(M("A"), line.replace("8i × B_y j", "4i × B_y j"))[1] in (["arm"], ["arm-from"])
    assert said(M("A"), line.replace("8i × B_y j", "-8i × B_y j", 1))[1] == ["turning"]
    assert said(M("B"), line)[0] != "right"


def test_a_row_of_the_terms_of_a_joint_is_their_sum() -> None:
    known = {"A_x": -8, "AC": -15, "AD": 20}
    for row in (
        "AC: −12 | AD: +20 | A_x: −8 | Σ = 0",
        "AD +20 | AC -12 | A_x -8 | sum 0",
        "A_x = -8 kN | AC = -12 kN | AD = 20 kN | Σ: 0",
    ):
        assert said(Fx("A"), row, known=known) == ("right", [])
        assert said(Fx("A"), row.replace("12", "9"), known=known)[0] == "wrong"
    assert said(Fx("A"), "AC: −12 | AQ: +20 | A_x: −8 | Σ = 0", known=known)[0] == "unreadable"

"""Is a line right at every multiple, and only where all of its terms show that multiple?"""

from __future__ import annotations

import pytest

from tutor.judge import Fx, M, judge
from tutor.model import Problem
from tutor.model.read import read_text

TEXT = """
title = "Davit over the lock gate"
force = "kN"
length = "m"
members = ["AB", "BC", "CA"]
joints = { A = [0, 0], B = [0, 3], C = [4, 3] }
supports = { A = "pin", B = { roller = 0 } }
loads = [{ at = "C", down = 9, right = 2 }]
"""


@pytest.fixture(scope="module")
def davit() -> Problem:
    found = read_text(TEXT, "davit.toml")
    assert found.problem is not None
    return found.problem


@pytest.mark.parametrize("by", [0.973, 0.99, 1.0043, 1.016573, 1.028, 1.6, -0.99, -3.7])
def test_a_line_multiplied_by_anything_is_right(davit: Problem, by: float) -> None:
    right = f"{-by:.6f}*BC - {0.8 * by:.6f}*AC + {2 * by:.6f} = 0"
    assert judge(davit, Fx("C"), right).right


@pytest.mark.parametrize("by", [0.99, 1.016573, 1.028])
@pytest.mark.parametrize("place", [0, 1, 2])
def test_a_multiple_that_one_term_does_not_show_is_not_taken(
    davit: Problem, by: float, place: int
) -> None:
    factors = [by, 0.8 * by, 2 * by]
    factors[place] *= 1.03
    one, other, number = (f"{factor:.6f}" for factor in factors)
    assert not judge(davit, Fx("C"), f"-{one}*BC - {other}*AC + {number} = 0").right


def test_arms_that_are_all_off_by_the_same_share_are_no_multiple(davit: Problem) -> None:
    assert judge(davit, M("A"), "-3 B_x - 9*4 - 2*3 = 0").right
    assert not judge(davit, M("A"), "-3.02 B_x - 9*4.026667 - 2*3.02 = 0").right


@pytest.mark.parametrize("by", ["2", "4"])
def test_a_force_without_its_arm_is_told_as_that_at_every_multiple(by: str) -> None:
    """ΣM_A is 173.2 R_B - 840 - 600 = 0; `by` is what it was multiplied by, and no distance."""
    text = """
title = "Winch frame"
force = "kN"
length = "cm"
members = ["AB", "BC", "CA"]
joints = { A = [0, 0], B = [200, 0], C = [0, 120] }
supports = { A = "pin", B = { roller = 120 } }
loads = [{ at = "C", right = 7 }, { at = "B", down = 3 }]
"""
    found = read_text(text, "winch.toml")
    assert found.problem is not None
    n = int(by)
    line = f"{by} R_B - {7 * 120 * n} - {3 * 200 * n} = 0"
    verdict = judge(found.problem, M("A"), line)
    assert [(m.code, m.force) for m in verdict.mistakes] == [("no-arm", "R_B")]

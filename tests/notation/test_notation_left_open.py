"""Is a side with the sine or cosine of a letter passed over only where the next side has its number, and told?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fx, Value, judge, load_problem

STALL = load_problem(Path(__file__).parents[1] / "paper/stall.toml")
KNOWN = {"AB": -175.0, "A_x": -120.0}


@pytest.mark.parametrize("letter", ["β", "θ", "(α)", "a"])
def test_the_number_behind_an_angle_left_open_is_judged(letter: str) -> None:
    for share, kind in (("4/5", "right"), ("3/5", "wrong")):
        line = f"AD = 120 − AB cos {letter} = 120 + 175 × {share}"
        verdict = judge(STALL, Fx("A"), line, known=KNOWN)
        assert verdict.kind == kind, line
        if verdict.right:
            assert any("cos" in remark.text for remark in verdict.remarks)


def test_an_angle_that_the_line_gives_is_not_passed_over() -> None:
    given = "AD = 120 − AB cos β = 120 + 175 × 4/5, β = 53.13°"
    assert not judge(STALL, Fx("A"), given, known=KNOWN).right


@pytest.mark.parametrize(
    "text",
    ["AD + AB cos β = 120", "AB cos β = CB cos β = −140", "AB sin β = −A_y", "AB = −A_y / sin β"],
)
def test_a_letter_with_no_number_behind_it_stays_unread(text: str) -> None:
    assert judge(STALL, Value("AB"), text).kind == "unreadable"

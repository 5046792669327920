"""Is a slanting arrow behind the value of an inclined reaction read as the way it acts?"""

from __future__ import annotations

import pytest
from families import exact, plain_problem

from tutor.judge import Value, judge_of
from tutor.model import Load, Problem, Support
from tutor.notation import Unreadable, read_line

HUNG: Problem = plain_problem(
    [("A", 0, 0), ("B", 5, 0), ("C", 2, 3)],
    ("AB", "BC", "CA"),
    [Support("A", "pin"), Support("B", "roller", exact(120))],
    [Load("C", (("down", exact(70)),))],
)
SIZE = 70 * 2 / 5 / 0.8660254
"""Moments about A: R_B sin 60° * 5 = 70 * 2."""


@pytest.mark.parametrize(("arrow", "kind"), [("↖", "right"), ("↘", "wrong"), ("↗", "undecided")])
def test_a_slanting_arrow_says_which_way_an_inclined_reaction_acts(arrow: str, kind: str) -> None:
    assert judge_of(HUNG).judge(Value("R_B"), f"R_B = {SIZE:.2f} kN {arrow}").kind == kind


@pytest.mark.parametrize("arrow", "↖↗↘↙")
def test_a_slanting_arrow_is_never_shown_as_another_character(arrow: str) -> None:
    line = read_line(f"{arrow} AB {arrow} = 3", HUNG.names)
    assert not isinstance(line, Unreadable) or "?" not in line.message

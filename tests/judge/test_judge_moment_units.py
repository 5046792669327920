"""A force in the unit of a moment, and a force that stands beside moments because its arm is one."""

from __future__ import annotations

from pathlib import Path

import pytest
from families import exact, plain_problem

from tutor import M, judge, load_problem
from tutor.model import Load, Support

QUAY = load_problem(Path(__file__).parents[1] / "notation" / "hands" / "quay.toml")
AT_ONE = plain_problem(
    [("A", 0, 0), ("B", 1, 0), ("C", 4, 0), ("D", 2, 2)],
    ("AB", "BC", "AD", "BD", "CD"),
    [Support("A", "pin"), Support("C", "roller")],
    [Load("B", (("down", exact(12)),))],
)


@pytest.mark.parametrize(
    "text",
    [
        "8C_y - 12*4 - 24*4 - 8*3 = 0, C_y = 21 kN m",
        "8C_y = 12*4 + 24*4 + 8*3, so C_y = 21 kN·m",
        "8 m*C_y = 168 kN m, C_y = 21 kN m",
        "C_y*8 m - 12 kN*4 m - 24 kN*4 m - 8 kN*3 m = 0, C_y = 21 kN m",
    ],
)
def test_a_reaction_in_the_unit_of_a_moment_behind_a_right_sum_is_told_by_its_unit(
    text: str,
) -> None:
    said = judge(QUAY, M("A"), text)
    assert [(mistake.code, mistake.force) for mistake in said.mistakes] == [("unit", "C_y")]
    assert "equation is right" in said.text


@pytest.mark.parametrize("text", ["4 m*C_y - 12 kN = 0", "C_y*4 m = 12 kN"])
def test_a_force_whose_arm_is_one_may_stand_beside_moments_and_it_is_said(text: str) -> None:
    said = judge(AT_ONE, M("A"), text)
    assert said.right
    assert [remark.code for remark in said.remarks] == ["arm"]


def test_with_no_unit_written_there_is_nothing_to_say_of_it() -> None:
    said = judge(AT_ONE, M("A"), "4C_y - 12 = 0")
    assert said.right
    assert not said.remarks
    wrong = judge(AT_ONE, M("A"), "4 m*C_y - 13 kN = 0")
    assert [(mistake.code, mistake.force) for mistake in wrong.mistakes] == [
        ("magnitude", "load B")
    ]

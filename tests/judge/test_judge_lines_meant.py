"""Headings that name a line of members by what it is called: the chord, the post, the rafter, the diagonal."""

from __future__ import annotations

from pathlib import Path

import pytest
from families import exact, plain_problem

from tutor import Along, Fx, Fy, judge, load_problem
from tutor.model import Load, Support

QUAY = load_problem(Path(__file__).parents[1] / "notation" / "hands" / "quay.toml")
ROOF = plain_problem(
    [("A", 0, 0), ("B", 4, 3), ("C", 8, 6), ("D", 12, 3), ("E", 16, 0), ("F", 8, 0)],
    ("AB", "BC", "CD", "DE", "AF", "EF", "BF", "DF", "CF"),
    [Support("A", "pin"), Support("E", "roller")],
    [Load("B", (("down", exact(6)),)), Load("C", (("down", exact(8)),))],
)
LEVEL, UPRIGHT, ALONG_THE_ROOF = "F_BC - F_AB = 0", "F_BD - 12 = 0", "F_BC - F_AB + 0.28 F_BF - 3.6 = 0"  # fmt: skip


@pytest.mark.parametrize(
    ("problem", "about", "text"),
    [
        (QUAY, Fx("B"), f"along the chord: {LEVEL}"),
        (QUAY, Fy("B"), f"along the post: {UPRIGHT}"),
        (QUAY, Fy("B"), f"perpendicular to the chord: {UPRIGHT}"),
        (QUAY, Fy("B"), f"normal to the chord: {UPRIGHT}"),
        (ROOF, Along(36.87, joint="B"), f"along the rafter: {ALONG_THE_ROOF}"),
        (ROOF, Along(36.87, joint="B"), f"along the chord: {ALONG_THE_ROOF}"),
        (ROOF, Along(126.87, joint="B"), "normal to the rafter: 0.96 F_BF + 4.8 = 0"),
    ],
)
def test_a_line_of_members_is_meant_by_what_it_is_called(problem, about, text: str) -> None:
    said = judge(problem, about, text)
    assert said.right
    assert not said.remarks


@pytest.mark.parametrize(
    ("about", "text", "other"),
    [
        (Fy("B"), f"along the chord: {LEVEL}", Fx("B")),
        (Fx("B"), f"along the post: {UPRIGHT}", Fy("B")),
    ],
)
def test_a_sum_along_another_line_than_is_asked_for_is_told_as_that(
    about, text: str, other
) -> None:
    assert judge(QUAY, about, text).true_of == other


@pytest.mark.parametrize("called", ["chord", "post", "strut", "bar"])
def test_where_a_joint_has_no_such_line_or_several_it_is_asked_which(called: str) -> None:
    said = judge(QUAY, Fx("A"), f"along the {called}: A_x + F_AB + 0.8 F_AD = 0")
    assert said.kind == "undecided"
    assert f"“{called}” may be more than one line at joint A" in said.text


def test_of_the_whole_truss_no_line_of_members_is_meant() -> None:
    said = judge(QUAY, Fy(), "along the diagonal: A_y + C_y - 36 = 0")
    assert said.kind == "undecided"
    assert "name a member" in said.text


def test_a_heading_that_names_another_line_of_the_joint_is_told_beside_a_right_sum() -> None:
    said = judge(QUAY, Fx("A"), "along the diagonal: A_x + F_AB + 0.8 F_AD = 0")
    assert said.right
    assert [remark.code for remark in said.remarks] == ["heading"]

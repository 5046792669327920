"""Lines of the parts of a truss that a section cuts off: which part is meant, and of which is a line true?"""

from __future__ import annotations

import pytest
from families import exact, plain_problem

from tutor import Fy, M, judge
from tutor.judge import judge_of
from tutor.judge.headings import headed
from tutor.model import Load, Support
from tutor.notation import read_line


def down(joint: str, size: int) -> Load:
    return Load(joint, (("down", exact(size)),))


SPAN = plain_problem(
    [("A", 0, 0), ("B", 3, 0), ("C", 6, 0), ("D", 9, 0), ("E", 3, 4), ("F", 6, 4)],
    ("AB", "BC", "CD", "AE", "BE", "CE", "CF", "DF", "EF"),
    [Support("A", "pin"), Support("D", "roller")],
    [down("B", 10), down("C", 16)],
)
ON_A_WALL = plain_problem(
    [("A", 0, 0), ("B", 0, 3), ("C", 4, 0), ("D", 4, 3), ("E", 8, 0)],
    ("AC", "BD", "CD", "BC", "DE", "CE", "AB"),
    [Support("A", "pin"), Support("B", "roller", exact(0))],
    [down("E", 10)],
)
LEFT, RIGHT = ("A", "B", "E"), ("C", "D", "F")
OUTER, INNER = ("C", "D", "E"), ("A", "B")


@pytest.mark.parametrize(
    ("asked", "other", "text"),
    [
        (LEFT, RIGHT, "D_y - 16 + 0.8 F_CE = 0"),
        (LEFT, RIGHT, "right part of cut EF, CE, BC: D_y + 0.8 F_CE = 16"),
        (RIGHT, LEFT, "A_y - 10 - 0.8 F_CE = 0"),
    ],
)
def test_a_line_of_the_other_part_is_told_as_that(asked, other, text: str) -> None:
    said = judge(SPAN, Fy(part=asked), text)
    assert said.true_of == Fy(part=other)
    assert [mistake.code for mistake in said.mistakes] == ["other-equation"]


@pytest.mark.parametrize(
    "text",
    [
        "section through BD, BC, AC, outer part: -10 + 0.6 F_BC = 0",
        "free part of the cut BD BC AC: 0.6 F_BC - 10 = 0",
        "0.6 F_BC - 10 = 0",
    ],
)
def test_the_outer_part_is_the_one_without_a_support(text: str) -> None:
    said = judge(ON_A_WALL, Fy(part=OUTER), text)
    assert said.right
    assert not said.remarks


def test_the_inner_part_is_the_one_with_the_supports() -> None:
    said = judge(ON_A_WALL, Fy(part=OUTER), "cut BD, BC, AC; inner part: A_y - 0.6 F_BC = 0")
    assert said.true_of == Fy(part=INNER)


@pytest.mark.parametrize(
    ("problem", "heading", "about"),
    [
        (ON_A_WALL, "ΣFy outer part, cut BD, BC, AC", Fy(part=OUTER)),
        (ON_A_WALL, "section through BD, BC, AC, outer part: ΣFy", Fy(part=OUTER)),
        (ON_A_WALL, "ΣFy of the inner part, section through BD, BC, AC", Fy(part=INNER)),
        (SPAN, "outer part, cut EF, CE, BC, ΣFy", None),
    ],
)
def test_a_heading_with_a_sum_of_the_outer_part_names_it_where_it_is_one(
    problem, heading: str, about: Fy | None
) -> None:
    line = read_line(f"{heading}: 0.6 F_BC = 0", judge_of(problem).names)
    assert headed(problem, line, None) == about


def test_where_both_parts_are_held_none_is_the_outer_one() -> None:
    said = judge(SPAN, Fy(part=LEFT), "outer part, cut EF, CE, BC: A_y - 10 - 0.8 F_CE = 0")
    assert said.right
    assert not said.remarks


def test_a_force_through_the_point_may_be_given_its_own_length_for_an_arm() -> None:
    given = {"A_y": "12", "F_CE": "2.5"}
    said = judge(SPAN, M("C", part=LEFT), "-6*12 + 10*3 - 4 F_EF - 12.5 = 0", known=given)
    assert [(mistake.code, mistake.force) for mistake in said.mistakes] == [("extra", "CE")]


def test_a_result_at_a_support_of_the_other_part_has_no_place_in_the_sum_of_this_one() -> None:
    """D_y = 14 is found; it acts beyond the cut."""
    text = "12 + 14 - 10 - 0.8 F_CE = 0"
    said = judge(SPAN, Fy(part=LEFT), text, known={"A_y": 12, "D_y": 14}).mistakes
    assert [(mistake.code, mistake.force) for mistake in said] == [("stray-reaction", "D_y")]


@pytest.mark.parametrize(
    "text",
    [
        "5/4 F_CE*3 + 3/5 F_CE*4 + 10*3 + 4 F_EF = 0",
        "F_CE*4/5*3 + F_CE*5/3*4 + 10*3 + 4 F_EF = 0",
    ],
)
def test_one_of_two_components_with_an_arm_may_have_its_ratio_upside_down(text: str) -> None:
    """CE pulls at E (3, 4), 4/5 of it down and 3/5 to the right: the moment of each is about A."""
    said = judge(SPAN, M("A", part=LEFT), text).mistakes
    assert [(mistake.code, mistake.force) for mistake in said] == [("upside-down", "CE")]

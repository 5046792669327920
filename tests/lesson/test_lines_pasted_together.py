"""Are several equations of one pasted formula each kept, whatever holds them together?"""

from __future__ import annotations

import pytest
from families import plain_problem

from tutor.judge import Fx, Fy
from tutor.lesson import Lesson
from tutor.model import Load, Support
from tutor.notation import Exact

BRACKET = plain_problem(
    (("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 4, 3)),
    ("AB", "BC", "AD", "CD", "BD"),
    (Support("A", "pin"), Support("C", "roller")),
    (Load("D", (("down", Exact.of(24)),)),),
)
"""A_y = C_y = 12, AD = CD = 20 in compression, AB = BC = 16 in tension."""


@pytest.fixture
def at_a() -> Lesson:
    lesson = Lesson(BRACKET)
    lesson.take("show", now=1.0, until="joints")
    lesson.take("joint", now=2.0, joint="A")
    return lesson


def standing(lesson: Lesson) -> set[Fx | Fy]:
    return {line.about for line in lesson.state.lines if line.about.joint}


@pytest.mark.parametrize(
    "text",
    [
        r"\begin{cases} A_x + F_{AB} + 0.8 F_{AD} = 0 \\ A_y + 0.6 F_{AD} = 0 \end{cases}",
        "solve([A_y + 0.6*AD, A_x + AB + 0.8*AD], [AB, AD])",
        "[Eq(A_y + 0.6*AD, 0), Eq(A_x + AB + 0.8*AD, 0)]",
        "A_x + F_AB + 0.8 F_AD = 0; A_y + 0.6 F_AD = 0",
        "| A | A_y + 0.6 F_AD = 0 | A_x + F_AB + 0.8 F_AD = 0 |",
    ],
)
def test_both_sums_of_a_joint_stand_and_go_with_one_undo(at_a: Lesson, text: str) -> None:
    reply = at_a.take("type", now=3.0, text=text)
    assert reply.accepted, reply.text
    assert standing(at_a) == {Fx("A"), Fy("A")}
    assert at_a.take("type", now=4.0, text="{{AB -> 16., AD -> -20.}}").accepted
    assert at_a.state.result.keys() >= {"AB", "AD"}
    at_a.take("undo", now=5.0)
    at_a.take("undo", now=6.0)
    assert standing(at_a) == set()


def test_of_two_sums_the_wrong_one_is_named_and_the_other_stands(at_a: Lesson) -> None:
    reply = at_a.take("type", now=3.0, text="solve([A_y + 0.6*AD, A_x + AB + 0.6*AD], [AB, AD])")
    assert standing(at_a) == {Fy("A")}
    assert reply.verdict is not None
    assert [mistake.code for mistake in reply.verdict.mistakes] == ["component"]


def test_a_row_of_a_table_goes_to_the_joint_in_its_first_cell_though_a_reaction_has_that_name(
    at_a: Lesson,
) -> None:
    assert at_a.take("type", now=3.0, text="| C | ΣFy | C_y + 0.6 F_CD = 0 |").accepted
    assert standing(at_a) == {Fy("C")}

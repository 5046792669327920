"""Is a proportion of forces kept as the sums it shows, and do values follow from it with T and C?"""

from __future__ import annotations

import pytest
from families import down, exact, plain_problem
from walks import walk_to

from tutor.judge import Fx, Fy
from tutor.model import Support

CRANE = plain_problem(
    [("A", 0, 3), ("B", 0, 0), ("C", 4, 3), ("D", 4, 0), ("E", 8, 3)],
    ("AB", "AC", "CE", "BD", "DE", "CD", "BC"),
    [Support("A", "pin"), Support("B", "roller", exact(0))],
    [down("E", 12), down("D", 8)],
)


@pytest.mark.parametrize("joint", ["E", "A", None])
def test_values_behind_a_proportion_are_taken_wherever_one_was(joint: str | None) -> None:
    lesson, do = walk_to("joints", CRANE)
    do("joint", joint=joint)
    reply = do("type", text="CE/4 = DE/5 = 12/3 ⇒ CE = 16 kN (T), DE = 20 kN (C)")
    assert [say.tone for say in reply.said if say.tone != "note"] == ["right"] * 3
    assert [line.about for line in lesson.state.lines_of("E")] == [Fx("E"), Fy("E")]
    assert {"CE", "DE"} <= set(lesson.state.result)
    do("undo")
    assert not lesson.state.lines_of("E")


def test_a_proportion_leaves_open_what_its_forces_do_to_the_members() -> None:
    lesson, do = walk_to("joints", CRANE)
    assert do("type", text="CE/4 = DE/5 = 12/3").accepted
    wrong = do("type", text="DE = 20 T")
    assert [m.code for m in wrong.verdict.mistakes] == ["tension-compression"]
    assert do("type", text="DE = 20 C").accepted
    assert lesson.state.result["DE"].value == -20


def test_a_wrong_side_keeps_nothing() -> None:
    lesson, do = walk_to("joints", CRANE)
    reply = do("type", text="CE/4 = DE/6 = 12/3, so CE = 16 T")
    assert [say.tone for say in reply.said] == ["wrong"]
    assert not lesson.state.lines_of("E")


def test_a_proportion_typed_again_adds_no_line() -> None:
    lesson, do = walk_to("joints", CRANE)
    do("type", text="CE/4 = DE/5 = 12/3")
    assert "stand already" in do("type", text="|DE|/5 = |CE|/4").text
    assert len(lesson.state.lines_of("E")) == 2

"""The second step: what each support puts on the truss, and how its arrows are drawn."""

from __future__ import annotations

import pytest
from walks import ARM, CRADLE, FOLDER, walk_to

from tutor.lesson import Lesson
from tutor.model import load_problem


@pytest.mark.parametrize(
    ("acts", "said", "code"),
    [
        (["x"], "less than the pin at A holds", "too-few-reactions"),
        (["x", "y", "moment"], "turning about A", "invented-moment"),
        (["x", "y", "slanting"], "more than the pin at A can hold", "too-many-reactions"),
        (["x", "slanting"], "which movement the pin at A stops", "reaction-direction"),
        ([], "that joint could move", "too-few-reactions"),
    ],
)
def test_a_wrong_kind_is_explained_by_what_the_support_can_hold(acts, said, code) -> None:
    lesson, do = walk_to("free body")
    reply = do("support", joint="A", acts=acts)
    assert said in reply.text
    assert (reply.accepted, reply.said[0].tone) == (False, "wrong")
    assert lesson.state.tries[-1].codes == (code,)


@pytest.mark.parametrize(
    ("joint", "acts", "code"),
    [
        ("A", ["x"], "too-few-reactions"),
        ("B", ["x", "y"], "too-many-reactions"),
        ("B", ["y"], "reaction-direction"),
        ("B", ["x", "moment"], "invented-moment"),
    ],
)
def test_the_hints_go_on_from_what_was_chosen(joint, acts, code) -> None:
    lesson, do = walk_to("free body")
    if joint == "B":
        do("support", joint="A", acts=["x", "y"])
    look = do("support", joint=joint, acts=acts).text
    told = [look, *(do("hint").text for _ in range(3))]
    assert lesson.state.tries[-1].codes == (code,)
    assert lesson.state.hints_used == (2, 3, 4)
    assert len(set(told)) == 4
    assert f"at {joint}" in told[2].replace("Joint", "at")
    assert told[3].startswith("There acts")
    assert not any(c.isdigit() for text in told for c in text)


def test_an_inclined_roller_acts_along_one_slanting_line() -> None:
    lesson, do = walk_to("free body", CRADLE)
    do("support", joint="A", acts=["x", "y"])
    assert "the inclined roller at B" in lesson.ask.question
    assert not do("support", joint="B", acts=["x", "y"]).accepted
    reply = do("support", joint="B", acts=["slanting"])
    assert "R_B" in reply.text
    assert "right angles" in reply.text


def test_a_link_acts_along_its_own_axis_and_is_drawn_pulling_or_pushing() -> None:
    problem = load_problem(FOLDER / "boarding-boom.toml")
    (link,) = (s for s in problem.supports if s.kind == "link")
    lesson, _ = walk_to("reactions", problem)
    assert lesson.state.senses[f"R_{link.joint}"] == "along"
    lesson, _ = walk_to("reactions", problem, **{f"R_{link.joint}": "against"})
    assert lesson.state.senses[f"R_{link.joint}"] == "against"


@pytest.mark.parametrize("sense", ["left", "right"])
def test_any_sense_is_legitimate(sense) -> None:
    lesson, do = walk_to("free body")
    reply = do("sense", unknown="A_x", sense=sense)
    assert reply.accepted
    assert lesson.state.senses["A_x"] == sense
    assert not lesson.state.tries or lesson.state.tries[-1].verdict == "right"


def test_a_sense_that_the_arrow_cannot_have_is_told_which_it_can() -> None:
    _, do = walk_to("free body")
    assert (
        do("sense", unknown="A_x", sense="up").text
        == "A_x can be drawn to the right or to the left."
    )
    assert do("sense", unknown="B_y", sense="up").text == "The reactions are A_x, A_y and B_x."


def test_an_arrow_can_be_turned_until_something_stands_under_it() -> None:
    lesson, do = walk_to("reactions")
    do("go", step="free body")
    assert do("sense", unknown="B_x", sense="left").accepted
    do("type", text="ΣM_A: -B_x - 360 = 0")
    do("go", step="free body")
    assert not do("sense", unknown="B_x", sense="right").accepted
    assert do("sense", unknown="A_y", sense="down").accepted
    assert lesson.state.senses["B_x"] == "left"


def test_a_given_reaction_keeps_the_arrow_its_value_stands_under() -> None:
    from dataclasses import replace

    lesson = Lesson(replace(ARM, given=("reactions",)))
    lesson.take("go", step="free body")
    assert not lesson.take("sense", unknown="A_x", sense="right").accepted
    assert lesson.state.signed("A_x") == -360


def test_neither_arrows_nor_turning_cost_a_hint() -> None:
    lesson, do = walk_to("free body")
    do("support", joint="A", acts=["x", "y"])
    do("support", joint="B", acts=["x"])
    assert "Either way is right" in do("hint").text
    assert lesson.table.hints == (0, 0, 0, 0)

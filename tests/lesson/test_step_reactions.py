"""The third step: equations of the whole truss, and the reactions they give."""

from __future__ import annotations

from dataclasses import replace

import pytest
from strategies import make_truss
from walks import ARM, RAIL, Clock, walk_to

from tutor.lesson import Lesson
from tutor.model import Load, Support
from tutor.notation import Exact


def test_a_moment_point_through_which_fewer_unknowns_pass_is_remarked_on() -> None:
    _, do = walk_to("reactions")
    assert "another point" in do("choose", about="M C").text
    assert "another point" not in do("choose", about="M A").text


def test_once_lines_stand_the_remark_counts_what_is_still_unknown() -> None:
    lesson, do = walk_to("reactions")
    do("type", text="ΣM_A: B_x = 360")
    do("type", text="B_x = 360")
    assert lesson.state.result["B_x"].value == 360
    assert "another point" not in do("choose", about="M B").text


def test_a_heading_chooses_the_equation() -> None:
    lesson, do = walk_to("reactions")
    do("choose", about="Fx")
    assert do("type", text="ΣM_A: B_x - 150*2.4 = 0").accepted
    assert [str(line.about.at) for line in lesson.state.lines] == ["A"]


def test_a_heading_may_name_a_joint_of_its_own() -> None:
    lesson, do = walk_to("reactions")
    assert do("type", text="ΣFy at C: -150 - 5/13 F_BC = 0").accepted
    assert lesson.state.lines[0].about.joint == "C"


def test_a_line_without_an_equation_to_belong_to_is_no_slip() -> None:
    lesson, do = walk_to("reactions")
    before = len(lesson.state.tries)
    assert "Which equation is this line?" in do("type", text="B_x - 300 = 0").text
    assert len(lesson.state.tries) == before


def test_a_value_without_a_line_that_gives_it_is_not_taken_as_wrong() -> None:
    lesson, do = walk_to("reactions")
    before = len(lesson.state.tries)
    for text in ("B_x = 360", "B_x = 17", "A_y = 17"):
        reply = do("type", text=text)
        assert [say.tone for say in reply.said] == ["note"]
        assert "No line stands yet that gives" in reply.text
    assert len(lesson.state.tries) == before


def test_a_value_that_is_the_whole_line_is_both() -> None:
    lesson, do = walk_to("reactions")
    do("choose", about="Fy")
    reply = do("type", text="A_y = 150")
    assert [say.tone for say in reply.said] == ["right", "right"]
    assert (len(lesson.state.lines), "A_y" in lesson.state.result) == (1, True)


def test_a_wrong_value_is_told_which_line_it_does_not_follow_from() -> None:
    lesson, do = walk_to("reactions")
    do("type", text="ΣM_A: B_x - 150*2.4 = 0")
    reply = do("type", text="B_x = 300")
    assert reply.text.startswith("ΣM about A of the whole truss is right, but this value")
    assert lesson.state.tries[-1].codes == ("arithmetic",)


def test_a_value_from_two_lines_together_names_both() -> None:
    _, do = walk_to("reactions")
    do("type", text="ΣFx: A_x + B_x = 0")
    do("type", text="ΣM_C: A_y*(-2.4) + B_x*1 = 0")
    assert "No line stands" in do("type", text="B_x = 1").text
    do("type", text="ΣM_B: -A_x*1 - 150*2.4 = 0")
    reply = do("type", text="B_x = 300")
    assert "ΣFx" in reply.text
    assert "ΣM about B" in reply.text


def test_a_negative_value_is_right_and_asks_what_the_minus_says() -> None:
    lesson, do = walk_to("reactions", B_x="left")
    do("type", text="ΣM_A: -B_x - 360 = 0")
    reply = do("type", text="B_x = -360")
    assert reply.accepted
    assert "What does the minus say about your arrow?" in reply.text
    assert "to the right" not in reply.text
    assert lesson.state.signed("B_x") == 360


@pytest.mark.parametrize("text", ["B_x = 360 N right", "B_x = 360 right"])
def test_a_value_may_say_its_way_in_words_whatever_the_arrow(text) -> None:
    lesson, do = walk_to("reactions", B_x="left")
    do("type", text="ΣM_A: -B_x - 360 = 0")
    reply = do("type", text=text)
    assert reply.accepted
    assert "What does the minus" not in reply.text
    assert lesson.state.result["B_x"].value == -360


def test_a_line_that_adds_nothing_stands_with_a_remark_and_gives_nothing() -> None:
    lesson, do = walk_to("reactions")
    do("type", text="ΣFx: A_x + B_x = 0")
    do("type", text="ΣM_A: B_x - 360 = 0")
    reply = do("type", text="ΣM_B: -A_x - 360 = 0")
    assert reply.accepted
    assert "adds nothing new" in reply.text
    assert [line.adds for line in lesson.state.lines] == [True, True, False]


def test_a_line_true_of_another_point_can_be_kept_as_that() -> None:
    lesson, do = walk_to("reactions")
    do("choose", about="M C")
    reply = do("type", text="B_x - 150*2.4 = 0")
    assert not reply.accepted
    assert "You can keep it as ΣM about A" in reply.text
    assert do("keep").accepted
    assert lesson.state.lines[0].about.at == "A"
    assert not do("keep").accepted


def test_a_line_kept_back_is_judged_again_under_the_arrows_drawn_since() -> None:
    lesson, do = walk_to("reactions")
    do("choose", about="M C")
    do("type", text="B_x - 150*2.4 = 0")
    do("go", step="free body")
    do("sense", unknown="B_x", sense="left")
    assert not do("keep").accepted
    assert lesson.state.lines == ()


def test_a_step_gone_back_to_is_not_left_by_itself() -> None:
    lesson, do = walk_to("joints")
    do("go", step="reactions")
    assert do("choose", about="M C").accepted
    assert lesson.state.step == "reactions"
    assert do("type", text="A_y*(-2.4) + B_x*1 = 0").accepted
    assert lesson.state.step == "reactions"


def test_given_reactions_stand_so_that_the_walk_begins_at_the_joints() -> None:
    lesson = Lesson(replace(ARM, given=("reactions",)))
    do = Clock(lesson)
    assert {name: lesson.state.signed(name) for name in ("A_x", "A_y", "B_x")} == {
        "A_x": -360,
        "A_y": 150,
        "B_x": 360,
    }
    assert lesson.state.senses == {"A_x": "left", "A_y": "up", "B_x": "right"}
    do("reasons", chosen=["pins", "joints", "weight"])
    do("count", m=3, r=3, **{"2j": 6})
    assert lesson.state.step == "joints"
    do("joint", joint="A")
    assert do("type", text="F_AC - 360 = 0").accepted


def test_where_the_whole_truss_does_not_give_all_reactions_the_joints_are_named() -> None:
    problem = make_truss(3, 4, wall=True)
    assert len(problem.reactions) == 4
    lesson, do = walk_to("reactions", problem)
    for about in ("Fx", "Fy", f"M {problem.joints[0].name}"):
        do("choose", about=about)
        for _ in range(4):
            line = do("hint").text
            do("type", text="1 = 2")
        assert do("type", text=line.partition("For instance: ")[2].partition(". Type")[0]).accepted
    assert "the joints have to help" in lesson.ask.question
    assert "repeat" in do("hint").text


def test_the_best_first_line_is_named_by_the_last_hint_alone() -> None:
    _, do = walk_to("reactions", RAIL)
    told = [do("hint").text for _ in range(4)]
    assert told[3] == "Take ΣFx of the whole truss."
    assert all("ΣFx" not in text for text in told[:3])


@pytest.mark.parametrize(("load", "pulls"), [("right", True), ("left", False)])
def test_a_roller_that_would_have_to_pull_is_told_of_with_its_value(load: str, pulls: bool) -> None:
    problem = replace(
        ARM,
        supports=(Support("A", "pin"), Support("B", "roller", angle=Exact.of(0))),
        loads=(Load("C", (("up" if pulls else "down", Exact.of(150)),)),),
    )
    _, do = walk_to("reactions", problem)
    sign = "+" if pulls else "-"
    assert do("type", text=f"ΣM_A: B_x {sign} 150*2.4 = 0").accepted
    reply = do("type", text=f"B_x = {'-360' if pulls else '360'}")
    assert reply.accepted
    assert ("would have to pull" in reply.text) == pulls
    assert any(say.tone == "remark" and "roller" in say.text for say in reply.said) == pulls


def test_what_the_minus_says_is_asked_once() -> None:
    _, do = walk_to("reactions", B_x="left", A_y="down")
    do("type", text="ΣM_A: -B_x - 360 = 0")
    assert "What does the minus" in do("type", text="B_x = -360").text
    do("type", text="ΣFy: -A_y - 150 = 0")
    assert "What does the minus" not in do("type", text="A_y = -150").text


def test_a_way_in_words_is_no_minus_that_was_spoken_of() -> None:
    _, do = walk_to("reactions", B_x="left", A_y="down")
    do("type", text="ΣM_A: -B_x - 360 = 0")
    assert "What does the minus" not in do("type", text="B_x = 360 N right").text
    do("type", text="ΣFy: -A_y - 150 = 0")
    assert "What does the minus" in do("type", text="A_y = -150").text

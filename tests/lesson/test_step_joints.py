"""The fourth step: joint by joint, lines and the member forces they give."""

from __future__ import annotations

import pytest
from walks import ARM, MAST, RAIL, walk_to

from tutor.judge import Fx, Fy
from tutor.lesson import Lesson, Option
from tutor.lesson.steps.joints import GIVEN_BY_NOW, RULES
from tutor.model import load_problem
from tutor.shipped import shipped_problems


def test_a_joint_with_more_than_two_unknown_members_is_explained_and_not_refused() -> None:
    _, do = walk_to("joints", RAIL)
    reply = do("joint", joint="C")
    assert reply.accepted
    assert "here 4 forces are unknown" in reply.text
    assert "not all of its forces follow from them alone" in reply.text
    assert do("type", text="F_CD - F_AC + 0.6 F_CF = 0").accepted
    assert "No line stands yet" in do("type", text="CD = 12 T").text


def test_lines_of_two_joints_together_give_what_neither_gives_alone() -> None:
    lesson, do = walk_to("joints", RAIL)
    do("joint", joint="C")
    do("type", text="F_CD - F_AC + 0.6 F_CF = 0")
    do("type", text="ΣFy: -F_CE - 0.8 F_CF = 0")
    assert "Both equations of this joint stand" in lesson.ask.question
    assert "another joint" in lesson.ask.question
    assert lesson.ask.about is not None
    hinted = do("hint")
    assert hinted.text == "This joint has nothing more to give by itself."
    do("joint", joint="E")
    do("type", text="F_EF - 0.6 F_AE = 0")
    do("type", text="F_CE + 0.8 F_AE - 24 = 0")
    do("joint", joint="A")
    do("type", text="F_AC + 0.6 F_AE = 0")
    do("type", text="20 - 0.8 F_AE = 0")
    for text in ("AE = 25 T", "AC = 15 C", "EF = 15 T", "CE = 4 T", "CF = 5 C", "CD = 12 C"):
        assert do("type", text=text).accepted, text


def test_wherever_the_lines_give_a_value_the_question_asks_for_one() -> None:
    lesson, do = walk_to("joints", RAIL)
    do("joint", joint="A")
    do("type", text="F_AC + 0.6 F_AE = 0")
    assert "Type a value" not in lesson.ask.question
    do("type", text="20 - 0.8 F_AE = 0")
    assert "Type a value with T or C" in lesson.ask.question
    for joint in ("C", "E", "B", None):
        do("joint", joint=joint)
        given = "Type a value with T or C" if joint in ("C", "E") else GIVEN_BY_NOW
        assert given in lesson.ask.question
    do("type", text="AE = 25 T")
    assert GIVEN_BY_NOW in lesson.ask.question
    do("type", text="AC = 15 C")
    assert GIVEN_BY_NOW not in lesson.ask.question


def test_a_joint_where_all_is_known_can_be_gone_to_as_a_check() -> None:
    lesson, do = walk_to("joints")
    do("joint", joint="A")
    do("type", text="F_AC - 360 = 0")
    do("type", text="ΣFy: 150 - F_AB = 0")
    do("type", text="AC = 360 T")
    do("type", text="AB = 150 T")
    assert lesson.state.joint is None
    assert "can serve as a check" in do("joint", joint="A").text
    assert lesson.ask.kind == "joint-line"
    assert "adds nothing new" in do("type", text="ΣFx: 360 - 360 = 0").text


def test_the_sum_square_to_a_member_leaves_it_out_however_the_angle_is_rounded() -> None:
    lesson, do = walk_to("joints")
    do("joint", joint="C")
    words = {option.words: option.key for option in lesson.ask.options}
    assert "ΣF perpendicular to BC, 112.6°" in words
    for about in (
        words["ΣF perpendicular to BC, 112.6°"],
        "along 112.62 @ C",
        "along 292.6199 @ C",
    ):
        assert do("choose", about=about).accepted
        assert isinstance(lesson.ask.options[3], Option)
        assert lesson.ask.options[3].chosen
        assert do("type", text="0.384615 F_AC - 150*0.923077 = 0").accepted
        do("undo")
    assert do("type", text="ΣF along 112.6: 0.384615 F_AC - 150*0.923077 = 0").accepted


@pytest.mark.parametrize(
    "about", ["Fx @ B", "M A @ C", "Fx @ Q", "along 1e999 @ C", "value AB", ""]
)
def test_an_equation_that_is_none_of_this_joint_is_not_chosen(about) -> None:
    lesson, do = walk_to("joints")
    do("joint", joint="C")
    before = lesson.state.about
    assert not do("choose", about=about).accepted
    assert lesson.state.about == before


def test_a_member_may_be_drawn_pushing_and_its_value_then_goes_by_that_arrow() -> None:
    lesson, do = walk_to("joints")
    assert do("assume", member="CB", sense="C").accepted
    do("joint", joint="C")
    assert do("type", text="ΣFy: 5/13 F_BC - 150 = 0").accepted
    assert not do("assume", member="BC", sense="T").accepted
    reply = do("type", text="BC = 390")
    assert reply.text.splitlines()[0] == "Right: BC = 390 N C."
    assert "minus" not in reply.text
    assert lesson.state.signed("BC") == -390


@pytest.mark.parametrize(
    ("text", "code"),
    [("BC = 390 T", "tension-compression"), ("BC = 390", "sign"), ("BC = 300 C", "arithmetic")],
)
def test_a_wrong_value_says_which_kind_of_slip_it_is(text, code) -> None:
    lesson, do = walk_to("joints")
    do("joint", joint="C")
    do("type", text="ΣFy: -5/13 F_BC - 150 = 0")
    assert not do("type", text=text).accepted
    assert lesson.state.tries[-1].codes == (code,)
    assert "BC" not in lesson.state.result


def test_a_value_may_be_typed_again_with_one_more_figure() -> None:
    lesson, do = walk_to("joints")
    do("joint", joint="C")
    do("type", text="ΣFy: -5/13 F_BC - 150 = 0")
    do("type", text="BC = 389 C")
    assert lesson.state.result["BC"].value == -389
    reply = do("type", text="BC = 390.0 C")
    assert reply.accepted
    assert lesson.state.result["BC"].value == -390
    assert not do("type", text="BC = 300 C").accepted
    assert lesson.state.result["BC"].value == -390


def test_a_value_that_already_follows_is_no_line_of_its_own() -> None:
    lesson, do = walk_to("joints")
    do("joint", joint="A")
    do("type", text="ΣFy: 150 - F_AB = 0")
    do("choose", about="Fy @ A")
    before = lesson.state.lines
    assert do("type", text="AB = 150").accepted
    assert lesson.state.lines == before


def test_a_right_line_moves_on_to_the_direction_not_yet_used() -> None:
    lesson, do = walk_to("joints")
    do("joint", joint="A")
    assert lesson.ask.about == Fx("A")
    do("type", text="F_AC - 360 = 0")
    assert lesson.ask.about == Fy("A")
    do("joint", joint="A")
    assert lesson.ask.about == Fy("A")


def test_a_zero_force_member_is_stated_at_once_with_the_rule_that_shows_it() -> None:
    lesson, do = walk_to("joints", MAST)
    reply = do("zero", member="FE", rule="two")
    assert reply.accepted
    assert reply.text.startswith("Yes. At F ")
    assert lesson.state.result["EF"].value == 0


def test_both_members_of_a_bare_corner_are_zero_by_the_same_rule() -> None:
    for first, second in (("EF", "DF"), ("DF", "EF")):
        lesson, do = walk_to("joints", MAST)
        assert do("zero", member=first, rule="two").accepted
        assert do("zero", member=second, rule="two").accepted
        do("undo")
        assert do("zero", member=second, rule="along").accepted
        assert {first, second} <= lesson.state.result.keys()


@pytest.mark.parametrize(("member", "rule"), [("EF", "three"), ("CD", "two"), ("AB", "along")])
def test_a_rule_that_does_not_show_it_is_not_taken(member, rule) -> None:
    lesson, do = walk_to("joints", MAST)
    before = lesson.state.results
    reply = do("zero", member=member, rule=rule)
    assert reply.said[0].tone == "wrong"
    assert lesson.state.results == before
    told = [do("hint").text for _ in range(3)]
    assert all(end in reply.text for end in member)
    assert len({reply.text, *told}) == 4


@pytest.mark.parametrize("data", [{}, {"member": "AZ"}, {"member": "EF"}, {"rule": "two"}])
def test_half_a_statement_is_no_slip(data) -> None:
    lesson, do = walk_to("joints", MAST)
    before = lesson.state.tries
    assert do("zero", **data).said[0].tone == "note"
    assert lesson.state.tries == before
    assert set(RULES) == {"two", "three", "along"}


def test_zero_force_members_may_be_stated_before_the_reactions_are_known() -> None:
    lesson, do = walk_to("reactions", MAST)
    assert do("zero", member="EF", rule="two").accepted
    assert lesson.state.step == "reactions"


def test_the_joints_may_come_before_the_reactions() -> None:
    lesson, do = walk_to("reactions")
    do("joint", joint="C")
    do("type", text="ΣFy: -5/13 F_BC - 150 = 0")
    do("type", text="BC = 390 C")
    do("type", text="ΣFx: -F_AC + 390*12/13 = 0")
    do("type", text="AC = 360 T")
    do("joint", joint="B")
    do("type", text="ΣFx: B_x - 390*12/13 = 0")
    assert do("type", text="B_x = 360").accepted
    assert lesson.state.step == "joints"
    do("go", step="reactions")
    do("type", text="ΣFx: A_x + 360 = 0")
    do("type", text="A_x = -360")
    do("type", text="ΣFy: A_y - 150 = 0")
    do("type", text="A_y = 150")
    assert lesson.state.step == "joints"
    assert [o.key for o in lesson.ask.options] == ["A", "B"]


def test_a_line_of_another_joint_is_named_and_may_be_kept() -> None:
    lesson, do = walk_to("joints")
    do("joint", joint="A")
    reply = do("type", text="-F_AC - 12/13 F_BC = 0")
    assert not reply.accepted
    assert "You can keep it as ΣFx at joint C" in reply.text
    assert do("keep").accepted
    assert lesson.state.lines[-1].about.joint == "C"


def test_a_line_that_may_be_kept_is_offered_no_longer_at_another_joint_or_step() -> None:
    for kind, data in (("joint", {"joint": "B"}), ("go", {"step": "reactions"})):
        lesson, do = walk_to("joints")
        do("joint", joint="C")
        do("type", text="ΣFx: F_AC - 360 = 0")
        assert lesson.state.offered is not None
        assert do(kind, **data).accepted
        assert lesson.state.offered is None
        assert not do("keep").accepted


def test_unreadable_is_neither_a_slip_nor_a_try() -> None:
    lesson, do = walk_to("joints")
    do("joint", joint="A")
    before = lesson.state.tries
    reply = do("type", text="F_AD - 360 = 0")
    assert reply.said[0].tone == "unreadable"
    assert lesson.state.tries == before


def test_the_senses_and_values_of_the_student_are_what_a_line_is_judged_by() -> None:
    lesson, do = walk_to("joints", ARM, A_x="left")
    assert lesson.state.result["A_x"].value == pytest.approx(360)
    do("joint", joint="A")
    assert not do("type", text="F_AC + A_x = 0").accepted
    assert do("type", text="F_AC - A_x = 0").accepted


def test_a_line_true_of_a_cut_part_counts_as_that_and_not_as_one_of_the_whole_truss() -> None:
    lesson, do = walk_to("joints", RAIL)
    do("undo")
    do("joint", joint="E")
    do("choose", about="Fy @ E")
    reply = do("type", text="A_y - 24 - 0.8 F_CF = 0")
    assert "of the part with" in reply.text
    assert do("keep").accepted
    kept = lesson.state.lines[-1]
    assert kept.about.part
    assert kept not in lesson.state.lines_of(None)
    assert kept.adds


@pytest.mark.parametrize(
    "about", ["Fx of Z", "Fx @ A of B", "Fx of A B C", "M Q of A", "along 1e99 of A"]
)
def test_a_part_that_cannot_be_cut_off_is_not_chosen(about) -> None:
    _, do = walk_to("reactions")
    assert not do("choose", about=about).accepted


def test_the_part_of_a_cut_can_be_chosen_and_hinted_at() -> None:
    _, do = walk_to("reactions")
    assert do("choose", about="Fy of A B").accepted
    assert "cut" in do("hint").text
    assert do("type", text="A_y + 5/13 F_BC = 0").accepted


def test_what_is_chosen_at_a_joint_is_named_as_it_was_offered() -> None:
    lesson, do = walk_to("joints")
    assert {o.words for o in lesson.ask.options} == {f"joint {j}: 2 unknowns" for j in "ABC"}
    do("joint", joint="C")
    square = next(o for o in lesson.ask.options if o.words.startswith("ΣF perpendicular to BC"))
    assert do("choose", about=square.key).text == f"Write {square.words}, at joint C."


def test_a_minus_of_a_member_nobody_drew_speaks_of_no_drawn_arrow() -> None:
    _, do = walk_to("joints")
    do("joint", joint="C")
    do("type", text="ΣFy: -5/13 F_BC - 150 = 0")
    reply = do("type", text="BC = -390")
    assert "The line takes the member as pulling" in reply.text
    assert "you drew" not in reply.text


def test_a_line_that_is_the_sum_of_one_joint_and_a_multiple_of_another_is_named_as_the_sum() -> (
    None
):
    """ΣFy at C of the lamp arm as it stands; ΣFx at B is 360 + 12/13 BC, so -5/12 times that as well."""
    lesson = Lesson(load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml"))
    lesson.take("show", until="joints", now=1.0)
    lesson.take("joint", joint="A", now=2.0)
    reply = lesson.take("type", text="Fy: -150 - 5/13 BC = 0", now=3.0)
    assert reply.said[0].text == "This is true: it is ΣFy at joint C, not ΣFy at joint A."
    assert lesson.take("keep", now=4.0).accepted

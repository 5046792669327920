"""Is a value with its working taken as the value it is, in the lesson?"""

from __future__ import annotations

import pytest
from walks import Clock, walk_to

from tutor.judge import Fy


def test_a_value_with_its_working_is_recorded() -> None:
    lesson, do = walk_to("reactions")
    assert do("type", text="ΣM_A: B_x - 150*2.4 = 0").accepted
    assert do("type", text="so B_x = 150*2.4 = 360 N").accepted
    assert lesson.state.result["B_x"].value == 360


def test_the_value_behind_its_equation_is_recorded_with_it() -> None:
    lesson, do = walk_to("reactions")
    assert do("type", text="ΣM_A: B_x - 150*2.4 = 0 => 360 N").accepted
    assert lesson.state.result["B_x"].value == 360
    assert len(lesson.state.lines) == 1


@pytest.mark.parametrize("end", ["=> 306 N", "= 0 + 306", "so B_x = 360 left", "=> B_x = -360"])
def test_the_equation_before_a_wrong_value_stands_and_only_the_value_is_typed_again(
    end: str,
) -> None:
    lesson, do = walk_to("reactions")
    reply = do("type", text=f"ΣM_A: B_x - 150*2.4 = 0 {end}")
    assert [say.tone for say in reply.said] == ["right", "wrong"]
    assert [line.text for line in lesson.state.lines] == ["ΣM_A: B_x - 150*2.4 = 0"]
    assert not lesson.state.result
    assert "360" not in reply.text
    assert do("type", text="B_x = 360").accepted
    assert lesson.state.result["B_x"].value == 360


def test_a_wrong_value_behind_a_line_that_stands_already_adds_no_line() -> None:
    lesson, do = walk_to("reactions")
    do("type", text="ΣM_A: B_x - 150*2.4 = 0")
    do("type", text="ΣM_A: B_x - 150*2.4 = 0 => 306 N")
    assert sum(line.adds for line in lesson.state.lines) == 1
    assert not lesson.state.result


@pytest.mark.parametrize("end", ["= 340", "=> 340", "= 379"])
def test_a_wrong_end_of_the_working_is_wrong_as_a_value(end: str) -> None:
    lesson, do = walk_to("reactions")
    do("type", text="ΣM_A: B_x - 150*2.4 = 0")
    reply = do("type", text=f"B_x = 150*2.4 {end}")
    assert reply.said[-1].tone == "wrong"
    assert len(lesson.state.lines) == 1
    assert not lesson.state.result


def test_a_number_with_its_working_is_the_value_just_found() -> None:
    lesson, do = walk_to("reactions")
    do("type", text="ΣM_A: B_x - 150*2.4 = 0")
    assert do("type", text="400 - 40 = 360").accepted
    assert lesson.state.result["B_x"].value == 360


def test_a_line_that_only_says_another_again_is_not_kept_under_the_one_chosen() -> None:
    lesson, do = walk_to("joints")
    do("joint", joint="A")
    assert do("type", text="F_AC - 360 = 0").accepted
    assert lesson.ask.about == Fy("A")
    assert do("type", text="2 F_AC = 720").accepted
    assert len(lesson.state.lines_of("A")) == 1
    assert lesson.ask.about == Fy("A")


def test_what_was_passed_over_is_said_once() -> None:
    _, do = walk_to("reactions")
    said = [say.text for say in do("type", text="ΣM_A: B_x - 150*2.4 = 0 => 360 N obvious").said]
    assert len(said) == len(set(said))


@pytest.fixture
def at_a() -> Clock:
    """At joint A of the lamp arm, where A_x = -360 N and A_y = 150 N: AC = 360 N, AB = 150 N."""
    _, do = walk_to("joints")
    do("joint", joint="A")
    return do


@pytest.mark.parametrize(
    "text", ["F_AC = -A_x = 360 N (T)", "AC = -A_x = 360", "AC = -A_x = -(-360) = 360 = 360 t"]
)
def test_the_value_of_a_chain_with_names_in_it_is_recorded(at_a: Clock, text: str) -> None:
    assert at_a("type", text=text).accepted
    assert at_a.lesson.state.result["AC"].value == 360


@pytest.mark.parametrize("text", ["F_AC = -A_x = 360 N (C)", "AC = -A_x = -(-360) = 360 = 360 c"])
def test_of_a_chain_with_the_wrong_letter_only_the_equation_stands(at_a: Clock, text: str) -> None:
    reply = at_a("type", text=text)
    assert [say.tone for say in reply.said] == ["right", "wrong"]
    assert len(at_a.lesson.state.lines_of("A")) == 1
    assert "AC" not in at_a.lesson.state.result


def test_a_chain_whose_equation_stands_already_gives_its_value(at_a: Clock) -> None:
    at_a("type", text="F_AC = -A_x")
    reply = at_a("type", text="F_AC = -A_x = 360 N (T)")
    assert [say.text for say in reply.said] == ["Right: AC = 360 N T."]
    assert len(at_a.lesson.state.lines_of("A")) == 1


def test_the_link_that_fails_is_named(at_a: Clock) -> None:
    reply = at_a("type", text="F_AC = -A_x = 630 N")
    assert "-A_x is 360, not 630 N" in reply.text
    assert "term too many" not in reply.text


@pytest.mark.parametrize(
    "text", ["B_x = 360, A_y = 150", "A_y = 150 N up and B_x = 360 N.", "Bx=360; Ay=150"]
)
def test_values_beside_each_other_are_each_taken(text: str) -> None:
    lesson, do = walk_to("reactions")
    do("type", text="ΣM_A: B_x - 150*2.4 = 0")
    do("type", text="ΣFy: A_y - 150 = 0")
    assert do("type", text=text).accepted
    assert {name: found.value for name, found in lesson.state.result.items()} == {
        "B_x": 360,
        "A_y": 150,
    }


def test_of_values_beside_each_other_the_wrong_one_is_named_and_the_right_one_kept() -> None:
    lesson, do = walk_to("reactions")
    do("type", text="ΣM_A: B_x - 150*2.4 = 0")
    do("type", text="ΣFy: A_y - 150 = 0")
    reply = do("type", text="B_x = -360, A_y = 150")
    assert reply.accepted
    assert reply.said[0].text == "Of B_x:"
    assert list(lesson.state.result) == ["A_y"]


@pytest.mark.parametrize("text", ["B_x = -360, A_y = 150", "A_y = 150, B_x = -360"])
def test_undo_takes_back_what_was_kept_of_a_line_and_nothing_before_it(text: str) -> None:
    lesson, do = walk_to("reactions")
    do("type", text="ΣM_A: B_x - 150*2.4 = 0")
    do("type", text="ΣFy: A_y - 150 = 0")
    do("type", text=text)
    do("undo")
    assert [line.text for line in lesson.state.lines] == [
        "ΣM_A: B_x - 150*2.4 = 0",
        "ΣFy: A_y - 150 = 0",
    ]
    assert not lesson.state.result
    assert [tried.verdict for tried in lesson.state.tries].count("wrong") == 1


def test_a_line_of_which_nothing_is_kept_is_nothing_to_take_back() -> None:
    lesson, do = walk_to("reactions")
    do("type", text="ΣM_A: B_x - 150*2.4 = 0")
    assert not do("type", text="B_x = -360, A_y = 105").accepted
    do("undo")
    assert not lesson.state.lines


@pytest.mark.parametrize(
    ("text", "code", "said"),
    [
        ("BC = 5/13*150*2 = 115.4 C", "arithmetic", "does not follow from it."),
        ("AC = 390*5/13 = 150 T", "component", "does not follow from it: one of the components"),
        ("AC = 390 T", "carried", "the value of something else"),
    ],
)
def test_a_value_that_does_not_follow_is_told_by_the_one_slip_of_its_working(
    text: str, code: str, said: str
) -> None:
    """ΣFy at C gives BC = -150*13/5 = -390, ΣFx gives AC = 390*12/13 = 360."""
    lesson, do = walk_to("joints")
    do("joint", joint="C")
    do("type", text="ΣFy: -5/13 F_BC - 150 = 0")
    if text.startswith("AC"):
        do("type", text="BC = 390 C")
        do("type", text="ΣFx: -F_AC - 12/13 F_BC = 0")
    reply = do("type", text=text)
    assert reply.verdict is not None
    assert [mistake.code for mistake in reply.verdict.mistakes] == [code]
    assert said in reply.text
    assert not any(figure in reply.text for figure in ("360", "390"))
    assert lesson.state.tries[-1].codes == (code,)

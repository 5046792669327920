"""A line such as "A_x = 12" reads like a value: when is it met as which?"""

from __future__ import annotations

import pytest
from walks import walk_to

from tutor.judge import Fy


def test_a_wrong_line_that_reads_like_a_value_is_met_by_its_mistake() -> None:
    lesson, do = walk_to("reactions")
    do("choose", about="Fy")
    reply = do("type", text="A_y = -150")
    assert [say.tone for say in reply.said] == ["wrong"]
    assert lesson.state.tries[-1].codes == ("sign",)
    assert "wrong sign" in [do("hint").text for _ in range(2)][1]


def test_a_true_value_typed_before_its_line_is_not_called_wrong() -> None:
    lesson, do = walk_to("reactions")
    do("choose", about="M C")
    before = len(lesson.state.tries)
    reply = do("type", text="B_x = 360")
    assert [say.tone for say in reply.said] == ["note"]
    assert len(lesson.state.tries) == before


def test_the_last_hint_on_a_value_can_be_typed_as_it_stands() -> None:
    _, do = walk_to("reactions", A_x="right")
    do("type", text="ΣM_A: B_x - 150*2.4 = 0")
    do("type", text="B_x = 360")
    do("type", text="ΣFx: A_x + B_x = 0")
    for _ in range(4):
        told = do("hint").text
    assert told.startswith("A_x = 360 N to the left.")
    assert do("type", text=told.partition(". Type")[0]).accepted


def test_a_number_alone_is_the_value_of_what_the_last_line_has_left_open() -> None:
    lesson, do = walk_to("reactions")
    do("type", text="ΣM_A: B_x - 150*2.4 = 0")
    assert do("type", text="360").accepted
    assert lesson.state.result["B_x"].value == 360
    do("type", text="ΣFy: A_y - 150 = 0")
    assert do("type", text="150 N up").accepted
    assert "A_y" in lesson.state.result


def test_a_number_alone_is_a_value_though_another_line_is_asked_for_next() -> None:
    lesson, do = walk_to("joints")
    do("joint", joint="A")
    do("type", text="F_AC - 360 = 0")
    assert lesson.ask.about == Fy("A")
    assert do("type", text="360 T").accepted
    assert "AC" in lesson.state.result


def test_a_wrong_number_alone_is_told_what_it_was_taken_for() -> None:
    lesson, do = walk_to("reactions")
    do("type", text="ΣM_A: B_x - 150*2.4 = 0")
    reply = do("type", text="28.3")
    assert reply.said[0].text == "This is taken as the value of B_x."
    assert [say.tone for say in reply.said] == ["note", "wrong"]
    assert lesson.state.tries[-1].place == "value B_x"


@pytest.mark.parametrize(
    "lines",
    [
        (),
        ("ΣFx: A_x + B_x = 0",),
        ("ΣM_A: B_x - 150*2.4 = 0", "B_x = 360"),
    ],
    ids=["no line", "two unknowns", "nothing open"],
)
def test_a_number_alone_that_may_be_anything_is_asked_for_its_name_and_is_no_slip(lines) -> None:
    lesson, do = walk_to("reactions")
    for text in lines:
        assert do("type", text=text).accepted
    tries = lesson.state.tries
    reply = do("type", text="28.3 kN")
    assert [say.tone for say in reply.said] == ["note"]
    assert reply.text.startswith("Which force is this the value of?")
    assert lesson.state.tries == tries


def test_a_number_alone_is_the_value_of_the_one_force_that_the_lines_give_and_that_it_fits() -> (
    None
):
    lesson, do = walk_to("reactions")
    for text in ("ΣM_A: B_x - 150*2.4 = 0", "ΣFy: A_y - 150 = 0", "A_y = 150"):
        assert do("type", text=text).accepted
    tries = lesson.state.tries
    assert do("type", text="380").text.endswith("as for B_x.")
    assert lesson.state.tries == tries
    assert do("type", text="360").accepted
    assert lesson.state.result["B_x"].value == 360


def test_a_number_alone_at_another_joint_is_not_taken_for_what_was_open_before() -> None:
    _, do = walk_to("joints")
    do("joint", joint="A")
    do("type", text="F_AC - 360 = 0")
    do("joint", joint="B")
    assert "Which force" in do("type", text="360").text


def test_a_number_alone_after_a_refused_line_is_the_value_of_the_only_force_left_at_the_joint() -> (
    None
):
    lesson, do = walk_to("joints")
    do("joint", joint="A")
    do("type", text="F_AC - 360 = 0")
    do("type", text="AC = 360 T")
    assert [say.tone for say in do("type", text="150 - F_AB = 7*12").said] == ["wrong"]
    assert "No line stands yet that gives AB" in do("type", text="150 T").text
    do("type", text="150 - F_AB = 0")
    do("type", text="F_AB*2 = 7")
    assert do("type", text="150 T").accepted
    assert lesson.state.result["AB"].value == 150


def test_a_number_alone_after_a_refused_line_is_the_value_of_the_only_reaction_left() -> None:
    lesson, do = walk_to("reactions")
    for text in ("ΣM_A: B_x - 150*2.4 = 0", "B_x = 360", "ΣFy: A_y - 150 = 0", "A_y = 150"):
        assert do("type", text=text).accepted
    assert do("type", text="ΣFx: A_x + B_x = 0").accepted
    do("type", text="ΣFx: A_x + B_x = 5*77")
    assert do("type", text="360 left").accepted
    assert "A_x" in lesson.state.result


@pytest.mark.parametrize(
    "text", ["ΣFx: A_x + 3 2 = 0", "ΣFx: A_x + B_x =", "A_x + Q_x = 0", "hello"]
)
def test_a_line_of_no_equation_is_told_first_what_cannot_be_read(text: str) -> None:
    lesson, do = walk_to("reactions")
    tries = lesson.state.tries
    reply = do("type", text=text)
    assert [say.tone for say in reply.said] == ["unreadable"]
    assert reply.text.startswith("At column")
    assert lesson.state.tries == tries


def test_a_sum_beside_an_unknown_is_a_line_whatever_is_wrong_in_it() -> None:
    lesson, do = walk_to("reactions")
    do("choose", about="Fy")
    reply = do("type", text="A_y = 150 - 77 + 13*3")
    assert [say.tone for say in reply.said] == ["wrong"]
    assert lesson.state.tries[-1].place == "Fy"


@pytest.mark.parametrize("between", ["ΣFy: A_y + 150 = 0", "ΣM_A: B_x + 360 = 0"])
def test_a_number_alone_after_another_wrong_line_is_asked_for_its_name(between: str) -> None:
    _, do = walk_to("reactions")
    do("type", text="ΣM_A: B_x - 150*2.4 = 0")
    do("type", text=between)
    assert "Which force" in do("type", text="28.3").text


@pytest.mark.parametrize("text", ["360 C", "360 N T"])
def test_a_letter_is_not_taken_for_the_value_of_a_reaction(text: str) -> None:
    _, do = walk_to("reactions")
    do("type", text="ΣM_A: B_x - 150*2.4 = 0")
    assert "Which force" in do("type", text=text).text


@pytest.mark.parametrize("text", ["1 = 1", "5/13*390 - 150 = 0", "0.5 - 0.5 = 0"])
def test_two_equal_numbers_that_are_not_the_values_are_no_line(text: str) -> None:
    lesson, do = walk_to("reactions")
    do("type", text="ΣM_A: B_x - 150*2.4 = 0")
    do("type", text="360")
    for about in ("M A", "Fy"):
        do("choose", about=about)
        reply = do("type", text=text)
        assert [say.tone for say in reply.said] != ["right"]
        assert not reply.accepted
    assert len(lesson.state.lines) == 1


@pytest.mark.parametrize("text", ["ΣFy: A_y = 150", "ΣFy: A_y = 150 N"])
def test_a_headed_line_that_gives_the_value_is_both(text: str) -> None:
    lesson, do = walk_to("reactions")
    reply = do("type", text=text)
    assert [say.tone for say in reply.said] == ["right", "right"]
    assert "A_y" in lesson.state.result


def test_a_headed_line_of_nothing_is_no_value() -> None:
    lesson, do = walk_to("reactions")
    assert "wrong" in [say.tone for say in do("type", text="ΣFy: A_y = 77").said]
    assert lesson.state.results == ()

"""Is a sentence that states a zero-force member taken as that, and nothing else for it?"""

from __future__ import annotations

import pytest
from families import exact, plain_problem
from walks import walk_to

from tutor.deeds import deed_of
from tutor.deeds.deed import Do, Tell, Unfinished
from tutor.lesson import Lesson
from tutor.model import Load, Problem, Support

BOX: Problem = plain_problem(
    [("A", 0, 0), ("B", 4, 0), ("C", 4, 3), ("D", 0, 3)],
    ("AB", "BC", "CD", "DA", "AC"),
    [Support("A", "pin"), Support("B", "roller")],
    [Load("C", (("right", exact(35)),))],
)
"""Two members meet at D and nothing else acts there: CD and DA are zero, and AC is not."""


@pytest.fixture
def lesson() -> Lesson:
    return walk_to("joints", BOX)[0]


@pytest.mark.parametrize(
    "text",
    [
        "CD is a zero-force member",
        "Joint D: F_CD is a zero-force member",
        "F_CD = 0 (zero-force member)",
        "cd is a zero-force member",
        "At D: CD is zero",
    ],
)
def test_the_rule_is_asked_for_where_a_sentence_states_a_zero_force_member(
    lesson: Lesson, text: str
) -> None:
    deed = deed_of(lesson, text)
    assert isinstance(deed, Unfinished)
    assert (deed.deed, deed.given) == ("zero", "CD")


@pytest.mark.parametrize(
    "text",
    [
        "By inspection of joint D: F_CD = 0",
        "By inspection, CD is a zero-force member",
        "F_CD = 0 by inspection",
    ],
)
def test_any_rule_that_shows_it_will_do_by_inspection(lesson: Lesson, text: str) -> None:
    deed = deed_of(lesson, text)
    assert isinstance(deed, Do)
    assert lesson.take(deed.kind, **deed.data).accepted
    assert lesson.state.result["CD"].how == "zero-force"


def test_a_member_that_no_rule_shows_to_be_zero_is_not_so_by_inspection(lesson: Lesson) -> None:
    deed = deed_of(lesson, "By inspection: F_AC = 0")
    assert isinstance(deed, Do)
    reply = lesson.take(deed.kind, **deed.data)
    assert not reply.accepted
    assert "AC" not in lesson.state.result


def test_of_several_members_the_rule_is_asked_for_one_after_the_other(lesson: Lesson) -> None:
    deed = deed_of(lesson, "CD and DA are zero-force members")
    assert isinstance(deed, Tell)
    assert "one zero-force member after the other" in deed.lines[0]


@pytest.mark.parametrize(
    "text",
    [
        "By inspection CD and DA are zero-force members",
        "CD and DA are zero-force members, as no load acts at D",
        "F_CD = F_DA = 0 by inspection",
    ],
)
def test_several_members_that_a_rule_shows_are_all_taken(lesson: Lesson, text: str) -> None:
    deed = deed_of(lesson, text)
    assert isinstance(deed, Do)
    reply = lesson.take(deed.kind, **deed.data)
    assert reply.accepted
    assert [say.tone for say in reply.said] == ["right", "right"]
    assert {lesson.state.result[name].how for name in ("CD", "DA")} == {"zero-force"}
    assert "CD = DA = 0" in lesson.take("undo").text


def test_of_several_members_those_before_the_first_wrong_one_are_taken(lesson: Lesson) -> None:
    deed = deed_of(lesson, "By inspection CD and AC are zero-force members")
    assert isinstance(deed, Do)
    reply = lesson.take(deed.kind, **deed.data)
    assert [say.tone for say in reply.said] == ["right", "wrong"]
    assert "CD" in lesson.state.result
    assert "AC" not in lesson.state.result


@pytest.mark.parametrize(
    "text", ["ΣFy = 0 => F_DA = 0 (by inspection)", "F_CD = 0", "F_CD = 5 (by inspection)"]
)
def test_a_sum_or_a_value_stays_a_line(lesson: Lesson, text: str) -> None:
    deed = deed_of(lesson, text)
    assert isinstance(deed, Do)
    assert deed.kind == "type"


def test_a_zero_that_a_standing_line_gives_is_its_value(lesson: Lesson) -> None:
    assert lesson.take("type", text="Joint D: ΣFx = CD = 0").accepted
    deed = deed_of(lesson, "F_CD = 0 (zero-force member)")
    assert isinstance(deed, Do)
    assert lesson.take(deed.kind, **deed.data).accepted
    assert lesson.state.result["CD"].how == "solved"


def test_one_who_has_seen_it_is_not_told_that_it_can_be_seen(lesson: Lesson) -> None:
    reply = lesson.take("type", text="Joint D: ΣFy = 0 => F_DA = 0 (by inspection)")
    assert reply.accepted
    assert "without a line" not in reply.text


def test_a_reason_in_words_is_enough_of_a_rule(lesson: Lesson) -> None:
    deed = deed_of(lesson, "CD is a zero-force member, since no load acts at D")
    assert isinstance(deed, Do)
    assert deed.data["rule"] == "along"


@pytest.mark.parametrize(
    "text",
    [
        "CD and DA in line, no load",
        "(ab and bc in line, no load)",
        "D is unloaded",
        "no load at D",
        "no load on AC",
        "AB and BC straight, no force at B",
        "AB and BC in line, zero load",
    ],
)
def test_a_reason_alone_says_no_member_to_be_zero_and_is_told_so(lesson: Lesson, text: str) -> None:
    deed = deed_of(lesson, text)
    assert isinstance(deed, Tell)
    assert text.strip("()") in deed.lines[0]
    assert "(member) is a zero-force member" in deed.lines[0]


@pytest.mark.parametrize("text", ["CD carries no load", "CD takes no load, since D is unloaded"])
def test_a_member_that_carries_no_load_is_said_to_be_zero(lesson: Lesson, text: str) -> None:
    deed = deed_of(lesson, text)
    assert isinstance(deed, Do)
    assert lesson.take(deed.kind, **deed.data).accepted
    assert lesson.state.result["CD"].value == 0.0


def test_the_rule_is_asked_for_in_the_same_words_whether_there_is_one_or_none(
    lesson: Lesson,
) -> None:
    right, wrong = (deed_of(lesson, f"{name} is a zero-force member") for name in ("CD", "AC"))
    assert isinstance(right, Unfinished)
    assert isinstance(wrong, Unfinished)
    assert [line.replace("CD", "AC") for line in right.lines] == list(wrong.lines)
    assert "if any" in right.lines[0]


def test_undo_says_that_a_line_refused_since_needs_none(lesson: Lesson) -> None:
    lesson.take("zero", member="CD", rule="two")
    assert not lesson.take("type", text="Joint D: ΣFx: CD + 5 = 0").accepted
    assert lesson.take("undo").text == (
        "Taken back: CD = 0.\n"
        "What you typed after it, Joint D: ΣFx: CD + 5 = 0, was not kept: it needs no undo."
    )
    lesson.take("zero", member="CD", rule="two")
    assert lesson.take("undo").text == "Taken back: CD = 0."

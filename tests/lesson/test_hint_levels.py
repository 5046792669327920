"""Hints: four levels in order, one at a time, and from the first again at the next place."""

from __future__ import annotations

import pytest
from walks import START, walk_to

from tutor.lesson import Lesson
from tutor.lesson.hints import PAUSE

WRONG = "B_x + 150*2.4 = 0"
RIGHT = "B_x - 150*2.4 = 0"


@pytest.fixture
def at_moments() -> Lesson:
    lesson, do = walk_to("reactions")
    do("choose", about="M A")
    return lesson


NOW = START + 1000


def level(lesson: Lesson) -> int:
    return lesson.state.hints_used[-1]


def test_the_levels_come_in_order_each_on_request(at_moments) -> None:
    for n in range(1, 5):
        assert at_moments.take("hint", now=NOW + n * PAUSE).accepted
        assert level(at_moments) == n
    at_moments.take("hint", now=NOW + 5 * PAUSE)
    assert level(at_moments) == 4


def test_the_next_level_needs_some_seconds_or_another_try(at_moments) -> None:
    at_moments.take("hint", now=NOW)
    early = at_moments.take("hint", now=NOW + PAUSE - 0.1)
    assert not early.accepted
    assert at_moments.state.hints_used == (1,)
    at_moments.take("type", text=WRONG, now=NOW + PAUSE - 0.1)
    assert at_moments.take("hint", now=NOW + PAUSE - 0.1).accepted
    at_moments.take("hint", now=NOW + 3 * PAUSE)
    assert at_moments.state.hints_used == (1, 2, 3)


def test_a_line_that_cannot_be_read_is_not_another_try(at_moments) -> None:
    at_moments.take("hint", now=NOW)
    at_moments.take("type", text="B_x +* 2", now=NOW + 1)
    assert not at_moments.take("hint", now=NOW + 1).accepted


def test_a_clock_set_back_does_not_shut_the_hints(at_moments) -> None:
    at_moments.take("hint", now=NOW)
    assert at_moments.take("hint", now=NOW - 3600).accepted


def test_the_verdict_of_a_wrong_line_is_the_first_level(at_moments) -> None:
    verdict = at_moments.take("type", text=WRONG, now=NOW).verdict
    assert verdict is not None
    (mistake,) = verdict.mistakes
    told = [at_moments.take("hint", now=NOW + n * PAUSE).text for n in range(3)]
    assert told[:2] == [mistake.reason, mistake.place]
    assert "For instance: " in told[2]
    assert at_moments.state.hints_used == (2, 3, 4)


def test_another_mistake_starts_at_its_own_first_level(at_moments) -> None:
    at_moments.take("type", text=WRONG, now=NOW)
    for n in range(3):
        at_moments.take("hint", now=NOW + n * PAUSE)
    verdict = at_moments.take("type", text="B_x - 150*1 = 0", now=NOW + 20).verdict
    assert at_moments.take("hint", now=NOW + 20).text == verdict.mistakes[0].reason


def test_after_the_last_level_the_student_types_the_line_and_the_next_place_starts_anew(
    at_moments,
) -> None:
    for n in range(4):
        told = at_moments.take("hint", now=NOW + n * PAUSE).text
    assert told.endswith("Type it yourself, so that it stays with you.")
    assert at_moments.state.lines == ()
    line = told.removeprefix("For instance: ").partition(". Type")[0]
    assert at_moments.take("type", text=line, now=NOW + 50).accepted
    at_moments.take("choose", about="Fy", now=NOW + 51)
    at_moments.take("hint", now=NOW + 52)
    assert level(at_moments) == 1
    at_moments.take("choose", about="M A", now=NOW + 60)
    at_moments.take("hint", now=NOW + 70)
    assert level(at_moments) == 1


def test_a_hint_is_about_what_just_went_wrong() -> None:
    _, do = walk_to("joints")
    do("joint", joint="A")
    do("type", text="F_AC - 360 = 0")
    do("choose", about="Fy @ A")
    do("type", text="150 + F_AB = 0")
    assert "away from the joint" in do("hint").text
    do("type", text="AC = 350 T")
    assert "Put the value back" in do("hint").text
    do("zero", member="AB", rule="two")
    assert "balance" in do("hint").text


def test_with_nothing_wrong_a_value_that_can_be_had_comes_first() -> None:
    _, do = walk_to("joints")
    do("joint", joint="A")
    do("type", text="F_AC - 360 = 0")
    told = [do("hint").text for _ in range(4)]
    assert told[0] == "One of your lines has only one unknown left."
    assert told[2] == "AC follows from ΣFx at joint A."
    assert told[3].startswith("AC = 360 N T.")


def test_no_countdown_is_shown(at_moments) -> None:
    told = [at_moments.take("hint", now=NOW + n * PAUSE).text for n in range(4)]
    assert not any("left" in text.split() and "hint" in text.lower() for text in told)
    assert len(set(told)) == 4

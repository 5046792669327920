"""Is a value that a sentence of talk ends in taken as the same value typed alone?"""

from __future__ import annotations

import itertools
from pathlib import Path

import pytest

from tutor import Lesson, load_problem
from tutor.lesson import Reply

COALING = load_problem(Path(__file__).parents[1] / "paper/coaling.toml")
LIFTS = "CE is dead level so it can't lift anything, 3/5 DE minus 12 kip = 0."
CLOCK = itertools.count(1_700_000_000.0, 7.0)


def typed(*texts: str) -> tuple[Lesson, Reply]:
    """A lesson at joint E with lines typed one after the other, and what is said of the last."""
    lesson = Lesson(COALING)
    events = [("show", {"until": "joints"}), ("joint", {"joint": "E"})]
    for kind, data in (*events, *(("type", {"text": text}) for text in texts)):
        reply = lesson.take(kind, now=next(CLOCK), **data)
    return lesson, reply


@pytest.mark.parametrize(
    "text",
    [
        "DE is the one that lifts the lot, so it is 20 kip T.",
        "It all hangs on the one that slopes, so it is 20 kip T.",
        "DE has to hold the coal up all alone, 20 kip T.",
    ],
)
def test_a_value_behind_talk_is_kept_as_the_value_of_its_force(text: str) -> None:
    lesson, reply = typed(LIFTS, text)
    assert reply.accepted
    assert "DE" in lesson.state.result
    assert any("Passed over" in say.text for say in reply.said)


def test_a_wrong_letter_behind_talk_is_told_and_kept_as_a_try() -> None:
    lesson, reply = typed(LIFTS, "DE is the one that lifts the lot, so it is 20 kip C.")
    assert not reply.accepted
    assert [say.tone for say in reply.said] == ["wrong"]
    assert "DE" not in lesson.state.result


def test_a_wrong_sum_behind_talk_is_told_where_none_was_chosen() -> None:
    _, reply = typed(
        "E is where the coal hangs, 12 kip, CE can't lift it, DE can, hence 4/5 DE = 12 kip."
    )
    assert reply.said[-1].tone == "wrong"


def test_talk_without_a_value_is_answered_as_text_that_cannot_be_read() -> None:
    _, reply = typed("DE is the one that lifts the lot, so there it is.")
    assert [say.tone for say in reply.said] == ["unreadable"]

"""What must hold of whatever a lesson says: the field's words, whole sentences, true of what is there."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from strategies import make_truss
from walks import ARM, START, Clock, script

from tutor.judge.called import called
from tutor.lesson import Lesson, Reply
from tutor.lesson.hints import PAUSE
from tutor.lesson.steps.sound import WORDS
from tutor.model import Problem
from tutor.statics import solve

NEVER_SAID = re.compile(r"slanting|upright|Or else|slope triangle|picture", re.IGNORECASE)
OWN_LINE = re.compile(r"\b(?:your|this) line\b|\byour lines\b", re.IGNORECASE)
MOST_LETTERS = 600
"""Room for the reasons of three mistakes, one behind the other."""
TRUSSES = [(ARM, "arm"), *((make_truss(seed, 3 + seed % 3), f"seed {seed}") for seed in range(2))]


def hinted(problem: Problem) -> Iterator[tuple[Lesson, Reply]]:
    """Every reply of a walk with slips, and the four hints at each place of it, with the lesson."""
    lesson, now = Lesson(problem), START
    for event in script(problem):
        for _ in range(4):
            now += 2 * PAUSE
            yield lesson, lesson.take("hint", now=now)
        now += PAUSE
        if event.kind != "hint":
            yield lesson, lesson.take(event.kind, now=now, **event.data)


@pytest.mark.parametrize("problem", [t for t, _ in TRUSSES], ids=[name for _, name in TRUSSES])
def test_all_is_said_once_in_whole_sentences_in_the_words_of_the_field_and_of_lines_that_are_there(
    problem: Problem,
) -> None:
    for lesson, reply in hinted(problem):
        texts = [say.text for say in reply.said]
        assert len(set(texts)) == len(texts), texts
        for text in texts:
            assert not NEVER_SAID.search(text), text
            assert text.endswith((".", "?")), text
            assert len(text) <= MOST_LETTERS, text
        if OWN_LINE.search(" ".join(s.text for s in reply.said if s.tone in ("hint", "wrong"))):
            assert lesson.state.lines or any(t.text for t in lesson.state.tries), reply.text


def test_a_wrong_value_among_those_brought_along_has_its_hints_though_no_line_gives_it() -> None:
    values = {name: f"{value:.4g}" for name, value in solve(ARM).values.items()}
    lesson = Lesson(ARM)
    do = Clock(lesson)
    do("bring", values=values, senses={}, joint="C")
    do("type", text="AB = 7")
    told = [do("hint").text for _ in range(3)]
    assert len(set(told)) == 3
    assert not OWN_LINE.search(" ".join(told))
    assert told[-1].startswith("AB = ")


def test_what_a_truss_was_wrongly_said_to_be_is_called_in_words() -> None:
    assert len(WORDS) == 3
    assert called("soundness") not in ("soundness", "")

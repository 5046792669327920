"""Do the words of the board say what is meant: shown next, guessed, cut by a section?"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tutor.deeds import deed_of
from tutor.deeds.board import can_show
from tutor.deeds.deed import Do, Tell, Unfinished
from tutor.lesson import Lesson
from tutor.lesson.watching.show import NOT_SHOWN
from tutor.model import load_problem
from tutor.model.rules import Rules
from tutor.shipped import shipped_problems

COMPOUND = load_problem(Path(__file__).parents[1] / "paper" / "compound.toml")
LAMP = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")


@pytest.mark.parametrize(
    ("text", "data"),
    [
        ("show", {}),
        ("watch", {}),
        ("show until joints", {"until": "joints"}),
        ("Show until the reactions", {"until": "reactions"}),
        ("show to half", {"until": "half"}),
    ],
)
def test_what_is_shown_is_one_thing_or_all_up_to_a_place(text: str, data: object) -> None:
    assert deed_of(Lesson(LAMP), text) == Do("show", data)  # type: ignore[arg-type]


def test_a_place_that_is_none_is_answered_with_those_there_are() -> None:
    deed = deed_of(Lesson(LAMP), "show until tea")
    assert isinstance(deed, Tell)
    assert "reactions, joints, half, close" in deed.lines[0]


@pytest.mark.parametrize("said", ["4", "ΣM about B", "M B", "m b"])
def test_a_guess_is_known_by_its_number_its_words_or_its_key(said: str) -> None:
    lesson = Lesson(LAMP)
    lesson.take("show", until="reactions", now=1.0)
    assert deed_of(lesson, f"guess {said}") == Do("guess", {"guess": "M B"})


@pytest.mark.parametrize("said", ["7", "ΣM", "tea"])
def test_a_guess_that_could_be_several_or_none_is_answered_with_the_answers(said: str) -> None:
    lesson = Lesson(LAMP)
    lesson.take("show", until="reactions", now=1.0)
    deed = deed_of(lesson, f"guess {said}")
    assert isinstance(deed, Tell)
    assert len(deed.lines) == 6


def test_guess_alone_asks_what_is_guessed_with_the_answers_numbered() -> None:
    lesson = Lesson(LAMP)
    lesson.take("show", until="reactions", now=1.0)
    deed = deed_of(lesson, "guess")
    assert isinstance(deed, Unfinished)
    assert deed.deed == "guess"
    assert deed.lines[1] == "1. ΣFx"
    assert len(deed.lines) == 6


def test_where_the_set_shows_nothing_a_guess_is_told_so_and_nothing_else() -> None:
    lesson = Lesson(replace(LAMP, rules=Rules(mode="check")))
    assert not can_show(lesson)
    for text in ("show", "guess", "guess 1"):
        deed = deed_of(lesson, text)
        assert isinstance(deed, Do)
        assert lesson.take(deed.kind, now=1.0).text == NOT_SHOWN


def test_where_nothing_is_to_guess_that_is_said() -> None:
    assert isinstance(deed_of(Lesson(LAMP), "guess 1"), Tell)


@pytest.mark.parametrize(
    "text",
    [
        "section AD BE CF keep A",
        "section AD, EB and F_CF keep joint A",
        "cut ad, be, cf keep a",
        "section AD BE CF with A",
    ],
)
def test_a_section_names_what_is_cut_and_what_is_kept(text: str) -> None:
    deed = deed_of(Lesson(COMPOUND), text)
    assert deed == Do("section", {"members": ["AD", "BE", "CF"], "keep": "A"})


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("section", "A section cuts the truss in two"),
        ("section AD BE CF", "Name the members that are cut"),
        ("section AD XY keep A", "Cannot read XY"),
        ("section AD BE CF keep Q", "Name a joint of the part you keep"),
    ],
)
def test_half_a_section_is_answered_with_what_is_missing(text: str, said: str) -> None:
    deed = deed_of(Lesson(COMPOUND), text)
    assert isinstance(deed, Tell)
    assert said in deed.lines[0]


def test_a_section_is_left_by_a_word() -> None:
    assert deed_of(Lesson(COMPOUND), "leave section") == Do("section", {"members": []})

"""Is a letter that one line gives a number taken in the lines behind it, and gone when that is undone?"""

from __future__ import annotations

import pytest
from families import plain_problem

from tutor.deeds import deed_of
from tutor.deeds.deed import Do
from tutor.homework import read_paper
from tutor.lesson import Lesson
from tutor.model import Load, Support
from tutor.notation import Exact

BRACKET = plain_problem(
    (("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 4, 3)),
    ("AB", "BC", "AD", "CD", "BD"),
    (Support("A", "pin"), Support("C", "roller")),
    (Load("D", (("down", Exact.of(24)),)),),
)
ALONG, ACROSS = "A_x + F_AB + c F_AD = 0", "A_y + s F_AD = 0"


@pytest.fixture
def at_a() -> Lesson:
    lesson = Lesson(BRACKET)
    lesson.take("show", now=1.0, until="joints")
    lesson.take("joint", now=2.0, joint="A")
    return lesson


def typed(lesson: Lesson, text: str) -> list[tuple[str, str]]:
    reply = lesson.take("type", now=3.0, text=text)
    return [(say.tone, say.text) for say in reply.said]


@pytest.mark.parametrize(
    "text",
    [
        "s = 3/5, c = 4/5",
        "let s = 3/5 and c = 4/5",
        "let s be 3/5 and c be 4/5",
        "s := 0.6; c := 0.8",
        "with s = sin 36.87°, c = cos 36.87°",
        "put c = 0.8 and s = 0.6",
    ],
)
def test_ratios_are_kept_for_the_lines_behind_though_a_joint_has_the_same_letter(
    at_a: Lesson, text: str
) -> None:
    [(tone, said)] = typed(at_a, text)
    assert tone == "note"
    assert "s = 0.6" in said
    assert "c = 0.8" in said
    assert " m" not in said
    for line in (ALONG, ACROSS):
        assert "right" in [tone for tone, _ in typed(at_a, line)]


def test_a_letter_that_was_taken_back_says_nothing_any_more(at_a: Lesson) -> None:
    typed(at_a, "s = 3/5, c = 4/5")
    at_a.take("undo", now=4.0)
    for line in (ALONG, ACROSS):
        assert [tone for tone, _ in typed(at_a, line)] == ["unreadable"]


@pytest.mark.parametrize("text", ["c = 0.8", "c = 12", "let c = 12", "C = 0.8"])
def test_a_letter_of_a_reaction_is_that_reaction_where_no_word_brings_in_a_ratio(
    at_a: Lesson, text: str
) -> None:
    typed(at_a, text)
    assert not at_a.state.letters


def test_a_length_is_told_with_its_unit_and_a_plain_number_without(at_a: Lesson) -> None:
    assert typed(at_a, "h = 300 cm") == [("note", "Kept for your lines: h = 3 m.")]
    assert typed(at_a, "s = 3/5") == [("note", "Kept for your lines: s = 0.6.")]


def test_letters_of_a_pasted_page_hold_for_its_lines() -> None:
    page = f"let s = 3/5, c = 4/5\nJoint A\nΣFx: {ALONG}\nΣFy: {ACROSS}\n"
    written = read_paper(BRACKET, page)
    assert written.refused == ()
    assert [text for _, text in written.paper.lines] == [f"ΣFx: {ALONG}", f"ΣFy: {ACROSS}"]


@pytest.mark.parametrize("text", ["let T be the force in AD", "Call the tension in AD S1"])
def test_a_letter_that_stands_for_a_force_alone_is_told_to_be_used_in_its_own_line(
    at_a: Lesson, text: str
) -> None:
    assert isinstance(deed_of(at_a, text), Do)
    [(tone, said)] = typed(at_a, text)
    assert tone == "unreadable"
    assert "in the same line, or F_AD itself" in said

"""Is of a sentence only the talk left out, and never what takes it back or belongs to a formula?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor.model import load_problem
from tutor.notation import Line, Unreadable, read_line
from tutor.shipped import shipped_problems

QUAY = Path(__file__).parent / "hands/quay.toml"

NAMES = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml").names
"""Joints A, B and C; members AB, BC and AC."""


def terms(text: str) -> list[tuple[tuple[str | None, float], ...]]:
    """What the statements of a line set equal, side by side."""
    line = read_line(text, NAMES)
    assert isinstance(line, Line), line
    return [
        tuple((term.name, round(term.value, 6)) for side in step.sides for term in side.terms)
        for step in line.steps
    ]


@pytest.mark.parametrize(
    ("text", "same"),
    [
        (
            "Joint C: the strut must prop up the lamp, so 3/5 F_AC = 12 kN, whence F_AC = 20 kN.",
            "3/5 F_AC = 12 kN, so F_AC = 20 kN",
        ),
        (
            "Let F_AC and F_BC be the tensions. ΣV: 3/5 F_AC = 12 ... (1); ΣH: F_BC = 16 ... (2)",
            "3/5 F_AC = 12; F_BC = 16",
        ),
        (
            "Since the lamp hangs there, we must have F_BC = 16 kN, i.e. BC is a tie.",
            "F_BC = 16 kN",
        ),
    ],
)
def test_a_sentence_says_what_its_formulas_say(text: str, same: str) -> None:
    assert terms(text) == terms(same)


@pytest.mark.parametrize(
    "words",
    [
        "{} is wrong",
        "{}, which is wrong",
        "It is not true that {}",
        "{} does not hold",
        "Instead of this one writes {}",
        "Is it true that {}?",
        "{}. That isn't right",
        "It would be a mistake to write {}",
    ],
)
def test_words_that_take_back_what_is_said_are_never_left_out(words: str) -> None:
    assert isinstance(read_line(words.format("3/5 F_AC = 12"), NAMES), Unreadable)


@pytest.mark.parametrize(
    "text",
    [
        "The pull is 3 + F_AQ so F_AC = 12",
        "We have here F_AC cso 30 = 12 kN and no more",
        "The tie then has F_AC + tbd - 12 = 0 in all",
        "The rest of the forces must be 12 = F_AC",
    ],
)
def test_a_piece_of_a_formula_is_never_taken_for_talk(text: str) -> None:
    assert isinstance(read_line(text, NAMES), Unreadable)


def test_talk_that_names_a_force_beside_a_number_is_marked_as_unread() -> None:
    text = "Since the tie BC pulls with 16 kN there, 3/5 F_AC = 12"
    line = read_line(text, NAMES)
    assert isinstance(line, Line)
    assert [text[span.start : span.end] for span in line.unread] == [text.partition(",")[0]]


def test_a_word_of_talk_is_no_faulty_number_and_names_no_force() -> None:
    line = read_line("It is wrong to say so, with a comma, that F_AC = 12", NAMES)
    assert isinstance(line, Unreadable)
    assert "sentence" in line.message


@pytest.mark.parametrize("text", ["AAa:0=AAa=", "so = so AB =", "AB = so =", "= = so AB = 3"])
def test_an_equals_sign_by_itself_among_words_is_met_with_a_sentence(text: str) -> None:
    assert isinstance(read_line(text, load_problem(QUAY).names), Unreadable)

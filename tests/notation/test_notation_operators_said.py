"""Are words for operators read as the signs they stand for, between figures, units and names alone?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import load_problem
from tutor.judge import judge_of
from tutor.notation import Line, Unreadable, read_line
from tutor.notation.elements.source import Source
from tutor.notation.sentences.operators_said import operators_written

NAMES = judge_of(load_problem(Path(__file__).parents[1] / "paper/coaling.toml")).names


def terms(text: str) -> list[list[tuple[str | None, float]]]:
    line = read_line(text, NAMES)
    assert isinstance(line, Line), line
    return [[(term.name, term.value) for term in side.terms] for side in line.result.sides]


@pytest.mark.parametrize(
    ("said", "written"),
    [
        ("A_x times 6 ft = 6 kip times 8 ft plus 12 kip times 16 ft", "A_x*6 ft = 6 kip*8 ft + 12 kip*16 ft"),
        ("6 kip times 8 ft minus A_x times 6 ft = 0", "6 kip*8 ft - A_x*6 ft = 0"),
        ("0 = minus 12 plus DE sin 36.87", "0 = -12 + DE sin 36.87"),
        ("3/5 of DE minus 4/5 of 15 kip = 0", "3/5 DE - 4/5*15 kip = 0"),
        ("3/5 DE minus 12 kip = 0", "3/5 DE - 12 kip = 0"),
        ("DE = 12 over 3/5 = 20 T", "DE = 12/(3/5) = 20 T"),
        ("DE = 12 divided by 0.6", "DE = 12/0.6"),
        ("15 over 17 times CD = 8", "15/17*CD = 8"),
        ("A_x into 6 ft = 6 kip into 8 ft", "A_x*6 ft = 6 kip*8 ft"),
        ("6 mal A_x = 6 mal 8", "6*A_x = 6*8"),
        ("6 times (A_x plus B_x) = 5 multiplied by 6", "6*(A_x + B_x) = 5*6"),
        ("A_x times 6 ft is 6 kip times 8 ft plus 12 kip times 16 ft", "A_x*6 ft = 6 kip*8 ft + 12 kip*16 ft"),
        ("so DE times 3/5 is 12 kip", "3/5 DE = 12 kip"),
        ("Moments about B: 6 times A_x equals 45 times 6", "6 A_x = 45*6"),
        ("DE = 4/5 of 15 kip = 12 kip", "DE = 4/5*15 kip = 12 kip"),
        ("3/5 of 15 = 9, DE = 9 T", "3/5*15 = 9, DE = 9 T"),
        ("3/5 DE - 0.8 of 15 kip = 0", "3/5 DE - 0.8*15 kip = 0"),
    ],
)  # fmt: skip
def test_a_line_in_words_says_what_it_says_in_signs(said: str, written: str) -> None:
    assert terms(said) == terms(written)


@pytest.mark.parametrize(
    "text",
    [
        "the load is 12 times as large as the other",
        "6 over the top, and nothing else = 0",
        "A_x = 45 plus or minus nothing",
        "B_y plus minus 18 = 0",
        "Resolving DE into CE = 3 and CD = 4",
        "clockwise is 12 kip times 16 ft, A_x = 45",
        "turn over A: A_x = 45",
        "A_x is 45",
        "Sheet 3 of 12: A_x = 45",
        "3/4 of 12 pages done: A_x = 45",
    ],
)
def test_words_that_stand_between_no_two_sides_are_left_as_they_are(text: str) -> None:
    assert operators_written(Source.of(text), NAMES).text == text


def test_each_sign_stands_where_its_word_was_typed() -> None:
    line = read_line("DE times 3/5 minus 12 kip = 0", NAMES)
    assert isinstance(line, Line)
    side = line.result.sides[0].span
    assert line.text[side.start : side.end] == "DE times 3/5 minus 12 kip"


def test_a_word_without_its_second_side_is_no_operator() -> None:
    assert isinstance(read_line("3/5 DE times = 12", NAMES), Unreadable)

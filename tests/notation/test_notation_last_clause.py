"""Is the clause that a sentence of talk ends in found, and nothing taken that the talk denies or leaves open?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import load_problem
from tutor.judge import judge_of
from tutor.notation import Line, Unreadable, read_line, read_pieces
from tutor.notation.lines.reading import MOST_CHARACTERS

NAMES = judge_of(load_problem(Path(__file__).parents[1] / "paper/coaling.toml")).names


def last(text: str) -> Line | None:
    """The line of the last clause; the whole cannot be read."""
    assert isinstance(read_line(text, NAMES), Unreadable), text
    return read_pieces(text, NAMES)


@pytest.mark.parametrize(
    ("text", "talk", "name"),
    [
        ("CD is the one that hangs the winch up, 6 kip T.", "CD is the one that hangs the winch up", "CD"),
        ("CD takes the winch and that is all so it is 6 kip T.", "CD takes the winch and that is all", "CD"),
        ("The far bar got off easy, but CD is 6 kip, T.", "The far bar got off easy", "CD"),
        ("That leaves the shoe with the lot so it is 45 kip.", "That leaves the shoe with the lot", None),
        ("The winch hangs up there, that makes 6 kip T.", "The winch hangs up there", None),
    ],
)  # fmt: skip
def test_a_value_behind_talk_is_of_the_force_that_it_or_the_talk_alone_names(
    text: str, talk: str, name: str | None
) -> None:
    line = last(text)
    assert line is not None
    *named, value = line.result.sides
    assert [side.name for side in named] == ([] if name is None else [name])
    assert value.numeric
    assert [text[span.start : span.end].rstrip(", ") for span in line.unread] == [talk]


@pytest.mark.parametrize(
    "text",
    [
        "CE lies flat and DE hangs on to it, 20 kip T.",
        "CD does it all alone, and the strut is 6 kip T.",
        "DE pulls on it so the other one is 21 kip C.",
    ],
)
def test_a_value_of_which_it_is_not_clear_whose_it_is_is_not_taken(text: str) -> None:
    assert last(text) is None


@pytest.mark.parametrize(
    "text",
    [
        "CE is a tie of sorts for the tip, 21 kip C.",
        "The bottom boom is squashed all along so it is 21 kip T.",
        "CE is pressed and pushes on C with all it has, 21 kip.",
    ],
)
def test_a_value_whose_sense_the_talk_says_otherwise_or_alone_is_not_taken(text: str) -> None:
    assert last(text) is None


@pytest.mark.parametrize(
    "text",
    [
        "It is not true that CD hangs the winch up, 6 kip T.",
        "I was wrong about the winch on CD, 6 kip T.",
        "CD should be the tie here, 6 kip T.",
        "Don't take CD for the tie here, 6 kip T.",
        "CD is the one that hangs the winch up, 6 kip T, twice that.",
        "CD is the one that hangs the winch up, 6 kip T, no wait.",
        "Is it CD that holds the winch up?, so it is 6 kip T.",
    ],
)
def test_talk_that_takes_back_supposes_or_forbids_leads_to_nothing(text: str) -> None:
    assert last(text) is None


def test_talk_of_any_length_a_line_can_have_is_read_and_no_longer_one() -> None:
    talk = "the coal swings out and the winch hangs there and it is late, "
    times = MOST_CHARACTERS // len(talk)
    text = f"{talk * (times - 1)}but CD is 6 kip, T."
    assert len(text) <= MOST_CHARACTERS
    assert last(text) is not None
    assert last(talk * times + text) is None

"""Is what stands apart from a whole equation talk, whatever its words, and never what could change the equation?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fx, Value, judge, load_problem

QUAY = load_problem(Path(__file__).parent / "hands/quay.toml")
RIGHT = "0.8 F_AD + F_AB + A_x = 0"
WRONG = "0.6 F_AD + F_AB + A_x = 0"
TALK = [
    "{}, AD flat",
    "{}, A_y is vertical so no",
    "{}; A_y, the 12 and the 24 are square to it",
    "{} % 12 kip and 2 kip go through A",
    "{} // the 24 hangs at D",
    "{} .. the AD one at 4 to 3",
    "{}, AD gulls",
    "{}. the crane does not sit here",
    "{} | nothing else at the pin",
    "{} ? big but ok",
    "ok so pin A, AD has the 3-4-5 slope. {}",
]
CHANGES = [
    "{}, no wait that is wrong",
    "{}, AD pressed",
    "{}, 12 kN",
    "{}, and 12 kN at D",
    "{}, gulls 12",
    "{}, should be 0.8",
    "{}, is it?",
    "{}, not AB",
    "{}, forgot the 12",
    "{} // + 12 gulls hang there",
]


@pytest.mark.parametrize("talk", TALK)
def test_a_right_equation_is_right_beside_any_talk(talk: str) -> None:
    assert judge(QUAY, Fx("A"), talk.format(RIGHT)).right


@pytest.mark.parametrize("talk", TALK)
def test_a_wrong_equation_is_told_its_mistake_beside_any_talk(talk: str) -> None:
    verdict = judge(QUAY, Fx("A"), talk.format(WRONG))
    assert [(mistake.code, mistake.force) for mistake in verdict.mistakes] == [("component", "AD")]


@pytest.mark.parametrize("change", CHANGES)
def test_what_changes_or_takes_back_an_equation_is_no_talk(change: str) -> None:
    assert judge(QUAY, Fx("A"), change.format(RIGHT)).kind == "unreadable"


def test_a_word_behind_a_value_that_may_say_its_way_in_other_letters_is_no_talk() -> None:
    assert judge(QUAY, Value("AD"), "AD = 25, AD shorter").kind == "unreadable"
    assert judge(QUAY, Value("AD"), "AD = -25, AD gulls").right


@pytest.mark.parametrize(
    "talk",
    ["(gulls)", "[the 12 and the 5 sit there]", "- gulls say so", "[1]", "from (1)", "% gulls"],
)
def test_a_letter_in_brackets_counts_whatever_is_said_behind_it(talk: str) -> None:
    assert judge(QUAY, Value("AD"), f"F_AD = 25 kN (C) {talk}").right
    assert judge(QUAY, Value("AD"), f"F_AD = 25 kN (T) {talk}").kind == "wrong"

"""Is a line of which only some clauses can be read taken for right by these, and for nothing else?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fx, Fy, judge, load_problem
from tutor.judge import judge_of
from tutor.notation import Unreadable, read_line, read_pieces
from tutor.notation.pieces import MOST_TRIED, in_pieces

QUAY = load_problem(Path(__file__).parent / "hands/quay.toml")
NAMES = judge_of(QUAY).names
RIGHT = "0.8 F_AD + F_AB + A_x = 0"
WRONG = "0.6 F_AD + F_AB + A_x = 0"
AROUND = [
    "Joint A, →+, all three have the same slope so 12/13 cancels: {}",
    "at the deck, F_BC 3/5 gulls not met: {}",
    "at the quay, 4/5 F_BC gulls not seen there: {}",
    "both have the same slope so 3/5 cancels later on: {}",
    "walking through the pin, →+, nobody but the foot pulls: {}",
    "the wind blows 8 m above, 4/5 each: {}",
    "{}; qwertz the gulls are loud",
    "the gulls: {}, gulls again",
]


@pytest.mark.parametrize("around", AROUND)
def test_words_that_cannot_be_read_around_a_right_equation_are_passed_over_and_told(around) -> None:
    text = around.format(RIGHT)
    verdict = judge(QUAY, Fx("A"), text)
    assert verdict.right
    assert any(remark.code == "passed" for remark in verdict.remarks)


@pytest.mark.parametrize("around", AROUND)
def test_a_wrong_equation_among_such_words_is_never_right(around) -> None:
    assert not judge(QUAY, Fx("A"), around.format(WRONG)).right
    assert not judge(QUAY, Fy("A"), around.format(RIGHT)).right


@pytest.mark.parametrize(
    "text",
    [
        f"it is wrong that the gulls fly: {RIGHT}",
        f"{RIGHT}, gulls say otherwise, not so",
        f"{RIGHT}; the gulls press AB",
        f"{RIGHT}, gulls, hence (T)",
        f"{RIGHT}, gulls 12",
        f"the gulls: {RIGHT}, gulls {WRONG}",
        f"the gulls: {WRONG}, no wait gulls {RIGHT} gulls =",
    ],
)
def test_what_denies_or_says_more_is_not_passed_over(text: str) -> None:
    line = read_pieces(text, NAMES)
    assert line is None or not judge(QUAY, Fx("A"), text).right


def test_parts_are_read_only_where_no_reading_of_the_whole_is_found() -> None:
    read = [read_line(around.format(RIGHT), NAMES) for around in AROUND]
    assert sum(isinstance(line, Unreadable) for line in read) >= 2
    assert any(not isinstance(line, Unreadable) for line in read)


def test_the_parts_of_a_line_are_tried_a_bounded_number_of_times() -> None:
    tried = []
    text = "; ".join("gulls 1 gulls 2 gulls 3 gulls = 4 gulls 5 gulls 6" for _ in range(9))
    assert in_pieces(text, NAMES, tried.append) is None
    assert 0 < len(tried) <= MOST_TRIED

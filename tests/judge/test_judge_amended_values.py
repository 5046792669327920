"""A part of a value that is put right in the same breath counts as it is said last, right and wrong alike."""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fy, Value, judge, load_problem
from tutor.judge.verdict import Verdict

QUAY = load_problem(Path(__file__).parents[1] / "notation/hands/quay.toml")
WORDS = (
    " oops {}", ", sorry, {}", " no wait {}", " - I mean {}", ", make that {}", " scratch that, {}", " (typo, {})",
    ", or rather {}", " correction: {}", ". Edit: {}", " hang on, its {}", ", sorry, should be {}", " (should be {})",
)  # fmt: skip
PAIRS = [
    ("AD", "AD = 25 kN T", "C", "AD = 25 kN C"),
    ("AD", "AD = 25 kN C", "T", "AD = 25 kN T"),
    ("AD", "AD = 25 tension", "compression", "AD = 25 C"),
    ("AD", "AD = 52 C", "25 C", "AD = 25 C"),
    ("AD", "AD = 25 C", "52 C", "AD = 52 C"),
    ("AD", "AD = 52 kN C", "25", "AD = 25 kN C"),
    ("AD", "AD = 25", "-25", "AD = -25"),
    ("AD", "AD = 25", "minus", "AD = -25"),
    ("AD", "AD = -25", "positive", "AD = 25"),
    ("AD", "AD = 25 C", "minus", "AD = -25 C"),
    ("A_x", "A_x = -9", "8 left", "A_x = 8 left"),
    ("AD", "AD = 25 N C", "kN", "AD = 25 kN C"),
    ("A_x", "A_x = 8 kN right", "left", "A_x = 8 kN left"),
    ("A_x", "A_x = 8 kN left", "to the right", "A_x = 8 kN right"),
    ("A_x", "A_x = 8 →", "←", "A_x = 8 left"),
]


def said(verdict: Verdict) -> tuple[str, list[str]]:
    return verdict.kind, [mistake.code for mistake in verdict.mistakes]


@pytest.mark.parametrize("words", WORDS)
@pytest.mark.parametrize(("name", "first", "second", "meant"), PAIRS)
def test_what_is_said_last_of_a_value_counts(
    name: str, first: str, second: str, meant: str, words: str
) -> None:
    typed = judge(QUAY, Value(name), first + words.format(second))
    assert said(typed) == said(judge(QUAY, Value(name), meant))
    assert typed.kind in ("right", "wrong")


def test_a_value_may_be_put_right_more_than_once_and_behind_its_equation() -> None:
    line = "0.6 AD + 15 = 0 so AD = 52 T oops 25 T, no wait, C"
    assert judge(QUAY, Fy(joint="A"), line, known={"A_y": 15}).right
    assert (
        judge(QUAY, Fy(joint="A"), line[: -len(", no wait, C")], known={"A_y": 15}).kind == "wrong"
    )


@pytest.mark.parametrize(
    "line",
    [
        "AD = 25 T oops",
        "AD = 25 T, no C",
        "AD = -52 oops 25",
        "AD = 25 T wait is it C?",
        "AD = 25 T sorry minus",
        "AD = 25 C wait or T",
    ],
)
def test_where_it_is_not_clear_what_is_meant_it_is_asked(line: str) -> None:
    assert judge(QUAY, Value("AD"), line).kind in ("unreadable", "undecided")


@pytest.mark.parametrize(
    "talk",
    ["sorry for the mess", "no load there", "rather big", "it should be up there", "wrong ink"],
)
def test_talk_that_puts_nothing_right_leaves_the_value(talk: str) -> None:
    assert judge(QUAY, Value("AD"), f"AD = 25 C, {talk}").kind != "wrong"
    assert not judge(QUAY, Value("AD"), f"AD = 25 T, {talk}").right


@pytest.mark.parametrize(
    "row", ["AD | 25 | {}", "AD   25   {}", "AD; 25; {}", "AD = 25 kN {}", "AD\t25\t{}"]
)
@pytest.mark.parametrize(("ways", "kind"), [("T, no, C", "right"), ("C, no, T", "wrong")])
def test_a_letter_denied_by_a_no_between_commas_gives_way_to_the_next(
    row: str, ways: str, kind: str
) -> None:
    assert judge(QUAY, Value("AD"), row.format(ways)).kind == kind


def test_a_no_that_may_belong_to_the_letter_behind_it_is_asked_about() -> None:
    assert judge(QUAY, Value("AD"), "AD = 25 kN T, no C").kind in ("unreadable", "undecided")


@pytest.mark.parametrize(
    "stamp",
    ["[18:20]", "[Tue 18:20]", "[Tuesday, 6:20 pm]", "[12.3.24, 18:20]", "[18:20, Di]", "Fri 9:05"],
)
def test_the_hour_of_a_message_is_no_part_of_it(stamp: str) -> None:
    assert judge(QUAY, Value("AD"), f"{stamp} AD = 25 kN C").kind == "right"
    assert judge(QUAY, Value("AD"), f"{stamp} AD = 25 kN T").kind == "wrong"

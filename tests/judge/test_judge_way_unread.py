"""Are words that say T or C heeded where the rest of what stands behind a value is not read?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fy, Value, judge, load_problem
from tutor.judge.way_unread import _way_in

QUAY = load_problem(Path(__file__).parents[1] / "notation/hands/quay.toml")


@pytest.mark.parametrize("behind", ["compression 😅", "compression lol", "in compression hm"])
def test_a_value_with_the_wrong_word_behind_it_is_not_right_whatever_else_stands_there(
    behind: str,
) -> None:
    verdict = judge(QUAY, Value("BD"), f"and BD = 12 kN, {behind}")
    assert [(m.code, m.force) for m in verdict.mistakes] == [("tension-compression", "BD")]
    assert not judge(QUAY, Fy("B"), f"and BD - 12 = 0, BD = 12 kN, {behind}").right


@pytest.mark.parametrize(
    "behind", ["tension 😅", "tension lol", "the others are in compression lol", "gulls cry"]
)
def test_a_value_with_the_right_word_or_one_about_others_stays_right(behind: str) -> None:
    assert judge(QUAY, Value("BD"), f"and BD = 12 kN, {behind}").kind != "wrong"


@pytest.mark.parametrize(
    ("words", "way"),
    [
        ("compression", "C"),
        ("so in tension lol", "T"),
        ("compression in the other diagonals", None),
        ("the others are in tension", None),
        ("not tension", None),
        ("C lol", None),
    ],
)
def test_only_words_that_say_hardly_more_than_a_way_are_heeded(words: str, way: str | None) -> None:
    assert _way_in(words) == way


@pytest.mark.parametrize("behind", ["pushed", "squeezed lol", "so 12 kN C", "which shows, so 12 C"])
def test_a_value_said_again_or_said_to_be_pushed_is_held_against_its_sign(behind: str) -> None:
    verdict = judge(QUAY, Value("BD"), f"The post on the left is BD = 12 kN, {behind}")
    assert not verdict.right


@pytest.mark.parametrize("word", ["zorg", "zorg."])
def test_an_unknown_word_behind_a_value_of_the_right_size_is_asked_about(word: str) -> None:
    verdict = judge(QUAY, Value("BD"), f"BD = -12 kN ({word})")
    assert verdict.kind == "undecided"
    assert verdict.text.startswith("“zorg” is no word that is known here")
    assert judge(QUAY, Value("BD"), f"BD = 12 kN ({word})").right
    assert judge(QUAY, Value("BD"), f"BD = -13 kN ({word})").kind == "wrong"


@pytest.mark.parametrize("behind", ["final", "good grief", "see above"])
def test_words_that_say_no_way_leave_a_wrong_sign_wrong(behind: str) -> None:
    verdict = judge(QUAY, Value("BD"), f"BD = -12 kN ({behind})")
    assert [each.code for each in verdict.mistakes] == ["sign"]


@pytest.mark.parametrize("behind", ["(press.)", "press.", "©", " (©)", "(pressure)"])
def test_compression_as_pages_and_other_languages_write_it_is_compression(behind: str) -> None:
    assert not judge(QUAY, Value("BD"), f"BD = 12 kN {behind}").right
    assert judge(QUAY, Value("AD"), f"AD = 25 kN {behind}").right


TOLD = [
    "so the left post is {} with about 12 kN",
    "so it is {} with 12",
    "hence the post must be {} with a good 12.0 kN",
    "which means the post is {} with 12 kN.",
    "so the post gets {} with 12 kN",
]


@pytest.mark.parametrize("told", TOLD)
@pytest.mark.parametrize(("way", "kind"), [("pulled", "right"), ("pushed", "wrong")])
def test_what_a_sentence_makes_of_a_value_is_held_against_its_sign(
    told: str, way: str, kind: str
) -> None:
    verdict = judge(QUAY, Value("BD"), f"BD = 12 kN, {told.format(way)}")
    assert verdict.kind == kind
    assert [m.code for m in verdict.mistakes] == ["tension-compression"] * (kind == "wrong")


@pytest.mark.parametrize(
    "behind",
    [
        "so the other post is pushed with 12 kN",
        "so the post is pulled together with the load of 12 kN (T)",
        "so the left post is pushed with 7 kN",
        "so the post pulls as the load of 12 kN pushes",
    ],
)
def test_what_is_said_of_another_force_or_size_leaves_a_value_right(behind: str) -> None:
    assert judge(QUAY, Value("BD"), f"BD = 12 kN, {behind}").kind != "wrong"


@pytest.mark.parametrize(
    "comes", ["comes out at", "came out as", "works out to", "turns out to be", "comes to"]
)
def test_a_value_that_comes_out_is_one_with_talk_behind_it_as_well(comes: str) -> None:
    for size, right in ((12, True), (15, False)):
        text = f"BD {comes} 4/5 × {size * 5 / 4:g} = {size} kN, so the left post is pulled with {size} kN (T)."
        assert judge(QUAY, Value("BD"), text).right == right

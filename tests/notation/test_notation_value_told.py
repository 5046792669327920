"""Is a value that is told in words read with all that is said of it, and nothing taken that may be another size?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import load_problem
from tutor.judge import judge_of
from tutor.notation import Line, read_line, read_pieces

NAMES = judge_of(load_problem(Path(__file__).parents[1] / "paper/stall.toml")).names


def read(text: str) -> Line | None:
    """The line as a whole, or else what can be read of it."""
    line = read_line(text, NAMES)
    return line if isinstance(line, Line) else read_pieces(text, NAMES)


@pytest.mark.parametrize(
    ("text", "name", "value", "way"),
    [
        ("BD works out at minus 300 lb, so the post is squeezed", "BD", -300.0, "C"),
        ("the rafter turns out to be 175 lb, and it is squashed", None, 175.0, "C"),
        ("So the hanger in the middle carries about 300 lb and it is a tie, T", None, 300.0, "T"),
        ("That makes it a tie of 300 lb", None, 300.0, "T"),
        ("so the bar is pushed together with 175 lb (C)", None, 175.0, "C"),
        ("the pin holds it back to the left with 120 lb", None, 120.0, "left"),
        ("so the right support pushes up with 195 lb", None, 195.0, "up"),
        ("From moments 16 C_y = 3120, so the roller carries 195 lb", "C_y", 195.0, None),
        ("AB comes out at 105*5/3 = 175 lb, so the rafter is pushed together with 175 lb (C).", "AB", 175.0, "C"),
    ],
)  # fmt: skip
def test_a_value_in_words_has_its_force_its_size_and_its_way(
    text: str, name: str | None, value: float, way: str | None
) -> None:
    line = read(text)
    assert line is not None
    side = line.result.sides[-1]
    named = [each.name for each in line.result.sides[:-1] if each.name is not None]
    assert named == ([] if name is None else [name])
    assert sum(term.value for term in side.terms) == value
    assert (side.letter or side.sense) == way or (value < 0.0 and way == "C")
    assert text == line.text == line.result.text


@pytest.mark.parametrize(
    "text",
    [
        "the hanger carries 300 lb C, and it is a tie",
        "the bar is pulled with 300 lb, C",
        "the bar is pulled with minus 300 lb",
        "the rope pushes with 300 lb",
        "so the pin pulls left with 120 lb",
        "the strut BD comes to 300 lb T",
    ],
)
def test_sayings_of_the_sense_that_contradict_each_other_make_no_value(text: str) -> None:
    assert read(text) is None


@pytest.mark.parametrize(
    "text",
    [
        "the upright share of BD comes to 300 lb T",
        "half of the tie comes to 260 lb",
        "the two supports carry 300 lb",
        "the load on the hanger comes to 300 lb",
        "so the crates weigh 300 lb",
        "I first thought the hanger carries 300 lb T",
        "the hanger does not carry 300 lb, it is a tie",
        "without the wind the hanger carries 300 lb",
        "the hanger carries 300 lb, or rather 200 lb",
        "the hanger carries 300 lb more than AD",
        "the hanger in BD's place carries 300 lb",
        "The hanger is 300 lb",
        "BC is flat, so the bar carries 300 lb T",
        "the rafter comes to 175 lb, is it a strut?",
    ],
)
def test_a_size_that_may_be_of_something_else_or_is_denied_is_no_value(text: str) -> None:
    assert read(text) is None


def test_the_subject_of_a_value_alone_is_told_as_unread() -> None:
    text = "The bar under the ridge comes to 300 lb tension"
    line = read(text)
    assert line is not None
    assert [text[span.start : span.end] for span in line.unread] == ["The bar under the ridge"]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("M A: 16 C_y - 300(4) no D is at 8!! -> 16 C_y - 2400 - 720 = 0", "16 C_y - 300(4) no D is at 8"),
        ("y: A_y + C_y - 120 XX sorry, down !  A_y + C_y - 300 = 0", "A_y + C_y - 120 XX sorry, down"),
        ("M A: 16 C_y - 2400 - ... = 0 hmm arm 6 → 16 C_y - 2400 - 720 = 0", "16 C_y - 2400 - ... = 0 hmm arm 6"),
    ],
)  # fmt: skip
def test_a_sum_that_is_broken_off_and_given_up_is_told_and_the_equation_behind_it_read(
    text: str, told: str
) -> None:
    line = read(text)
    assert line is not None
    assert [text[span.start : span.end] for span in line.unread] == [told]
    assert len(line.steps) == 1


@pytest.mark.parametrize(
    "text",
    [
        "M A: 16 C_y - 2400 + 720 no wind goes right -> C_y = 195",
        "M A: 16 C_y - 2400 XX gives C_y = 150, → 16 C_y - 2400 - 720 = 0",
        "M A: 16 C_y - 2400 XX 16 C_y - 2400 - 720 = 0 wrong",
    ],
)
def test_what_is_not_clearly_given_up_is_not_left_out(text: str) -> None:
    assert read(text) is None

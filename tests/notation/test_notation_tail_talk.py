"""Is what stands behind a whole equation and only talks left out and told, and nothing else?"""

from __future__ import annotations

from itertools import product

import pytest
from truss_names import LETTERED

from tutor.notation import Line, read_line
from tutor.notation.elements.source import Source
from tutor.notation.sentences.tail_talk import without_lead, without_tail

EQUATIONS = ("A_y - 12 + 0.6 BC = 0", "B: 6 + 12/13 (BC - AB) = 0", "4 B_y = 12·3", "AB = 20 - 8")
MARKS = (", ", "; ", " .. ", " ... ", " | ", " % ", " // ", " -- ", " !! ")
TALK = (
    "CD flat",
    "CD is vertical so no",
    "the 12 and the 8 both go through D",
    "12 kN goes through B",
    "AD CD level",
    "hangs straight at B",
    "big but fine",
)
CHANGING = (
    "minus CD",
    "times 13",
    "CD too",
    "CD as well",
    "CD is missing",
    "not CD",
    "wrong sign",
    "other sign at BC",
    "CD forgotten",
    "scrap that",
    "should be 13",
    "CD = AB flat",
    "-CD flat",
    "3 CD flat",
    "sin flat",
    "ignore it",
    "and another 5 kN",
    "swap AB and BC",
    "BC the other way round",
)


def left(text: str) -> str | None:
    """What is left of a line without the talk behind its equation; None where it has none."""
    made = without_tail(Source.of(text), LETTERED)
    if made is None:
        return None
    source, (told,) = made
    assert len(source.text) == len(text)
    assert told.end == len(text)
    return source.text.strip()


@pytest.mark.parametrize("talk", TALK)
def test_talk_behind_a_whole_equation_is_left_out(talk: str) -> None:
    for equation, mark in product(EQUATIONS, MARKS):
        assert left(f"{equation}{mark}{talk}") == equation


@pytest.mark.parametrize("said", CHANGING)
def test_what_may_turn_an_equation_or_add_to_it_is_never_left_out(said: str) -> None:
    for equation, mark in product(EQUATIONS, MARKS):
        assert left(f"{equation}{mark}{said}") is None


def test_a_doubt_is_talk_only_where_it_is_settled() -> None:
    whole = "A_y + 0.6 BC = 0 → -20"
    assert left(f"{whole} ?? big but ok") == whole
    for said in ("big", "why", "20 or 30"):
        assert left(f"{whole} ?? {said}") is None


def test_the_way_of_a_value_is_no_talk() -> None:
    for said in ("it pushes somehow", "squashed flat, AB", "compression as drawn", "AB pulls hard"):
        assert left(f"AB = 12, {said}") is None
    assert left("AB = 12, CD pulls hard") == "AB = 12"


def test_nothing_is_left_out_behind_what_is_no_equation() -> None:
    for text in ("A_y - 12, CD flat", "A_y + 0.6 BC =, CD flat", "CD flat, A_y = 12"):
        assert left(text) is None


def test_a_line_that_cannot_be_read_as_a_whole_is_read_up_to_its_talk() -> None:
    plain = read_line("B: 6 + 12/13 (BC - AB) = 0", LETTERED)
    line = read_line("B: 6 + 12/13 (BC - AB) = 0, CD is vertical so no", LETTERED)
    assert isinstance(plain, Line)
    assert isinstance(line, Line)
    assert line.label == plain.label
    assert line.steps[0].sides == plain.steps[0].sides
    assert [line.text[span.start : span.end] for span in line.passed] == ["CD is vertical so no"]


LEADS = (" → ", ", so ", " so ", "; ", ", ", " => ", ": ", " ∴ ")
BEFORE = ("CD is flat", "we had 6 down at B", "30° is square to R_D", "6 hangs at D", "CD pushes")
NO_TALK = ("12 kN", "5 times", "5 CD", "minus CD", "wrong", "not CD", "CD", "Σ", "along", "sin 30")


@pytest.mark.parametrize("said", BEFORE)
def test_talk_between_a_heading_and_an_equation_is_left_out(said: str) -> None:
    for head, mark, equation in product(("", "D: ", "joint D, up: "), LEADS, EQUATIONS[::2]):
        made = without_lead(Source.of(f"{head}{said}{mark}{equation}"), LETTERED)
        assert made is not None, (head, said, mark)
        assert made[0].text.split() == f"{head}{equation}".split()
        start = made[1][0].start
        assert start == len(head)


@pytest.mark.parametrize("said", NO_TALK)
def test_what_may_belong_to_an_equation_or_turn_it_is_not_left_out_before_it(said: str) -> None:
    for mark, equation in product(LEADS, EQUATIONS):
        assert without_lead(Source.of(f"{said}{mark}{equation}"), LETTERED) is None, (said, mark)


def test_a_heading_is_no_talk_before_an_equation() -> None:
    for head in ("vertically", "joint B", "moments about B", "resolving upwards", "sum about B"):
        assert without_lead(Source.of(f"{head}, {EQUATIONS[0]}"), LETTERED) is None


def test_a_joint_before_a_force_that_is_spoken_of_heads_the_sum() -> None:
    for said in ("AD drawn pushing", "AD slopes", "AD (a strut) pushes"):
        line = read_line(f"D: {said}, R_D + 0.6 AB = 0", LETTERED)
        assert isinstance(line, Line)
        assert line.label is not None
        assert line.label.point == "D"
        assert len(line.steps) == 1
    line = read_line("R_D: 12", LETTERED)
    assert isinstance(line, Line)
    assert line.steps[0].sides[0].name == "R_D"


def test_a_fraction_behind_the_sign_of_division_is_divided_by() -> None:
    for text, value in (("6 ÷ 3/5", 10.0), ("6÷3/5", 10.0), ("6 ÷ 3 / 5", 0.4), ("6/3/5", 0.4)):
        line = read_line(f"AB = {text}", LETTERED)
        assert isinstance(line, Line)
        assert line.steps[0].sides[1].terms[0].value == pytest.approx(value)

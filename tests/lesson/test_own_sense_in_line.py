"""Is a value kept with the sense that its own line gives the member?

The truss is our own (paper/rack.toml). By hand: A_y = 80, A_x = -120; joint A: 0.8 AE + 80 = 0, so
AE = -100 N, in compression.
"""

from __future__ import annotations

import pytest
from paper.measure import problem
from walks import Clock

from tutor.lesson import Lesson


@pytest.fixture
def at_a() -> Clock:
    do = Clock(Lesson(problem("rack")))
    do("show", until="joints")
    do("joint", joint="A")
    return do


@pytest.mark.parametrize(
    "text",
    [
        "AE pushes: 0.8 AE = 80, AE = 100 C",
        "AE pushes: 0.8 AE = 80, AE = 100",
        "0.8 AE = 80, AE in compression, AE = 100 C",
        "AE in compression: 80 - 0.8 AE = 0 so AE = 80/0.8 = 100",
    ],
)
def test_a_value_is_kept_in_the_sense_that_its_line_says(at_a: Clock, text: str) -> None:
    reply = at_a("type", text=text)
    assert at_a.lesson.state.result["AE"].value == -100
    assert "AE = 100 N C" in reply.text
    assert "minus" not in reply.text


def test_the_next_line_goes_by_the_sense_as_drawn_before(at_a: Clock) -> None:
    at_a("type", text="AE pushes: 0.8 AE = 80, AE = 100")
    assert at_a("type", text="ΣFx: AB + 0.6 AE - 120 = 0").accepted
    assert at_a("type", text="AB = 180").accepted


def test_a_minus_under_the_sense_that_a_line_says_is_no_compression(at_a: Clock) -> None:
    at_a("type", text="AE pushes: 80 - 0.8 AE = 0, AE = -100")
    assert "AE" not in at_a.lesson.state.result


@pytest.mark.parametrize(
    "text", ["AE pushes: 0.8 AE + 80 = 0", "AE in compression: 0.8 AE + 80 = 0, AE = -100"]
)
def test_of_words_and_signs_that_disagree_nothing_is_kept(at_a: Clock, text: str) -> None:
    reply = at_a("type", text=text)
    assert not reply.accepted
    assert "You say that AE pushes" in reply.text
    assert not at_a.lesson.state.lines_of("A")
    assert "100" not in reply.text


@pytest.mark.parametrize("first", ["AE = 100 (C)", "AE = 100 compression", "AE = 100 N, a strut"])
def test_of_a_minus_it_is_spoken_where_the_first_is_typed_and_no_letter(
    at_a: Clock, first: str
) -> None:
    assert at_a("type", text="ΣFy: 0.8 AE + 80 = 0").accepted
    reply = at_a("type", text=first)
    assert reply.accepted
    assert "What does the minus say" not in reply.text
    at_a("undo")
    assert "What does the minus say" in at_a("type", text="AE = -100").text
    at_a("undo")
    assert "What does the minus say" not in at_a("type", text="AE = -100").text
    assert "minus of a pull" in at_a.lesson.state.taught

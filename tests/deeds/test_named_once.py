"""Is a force named twice, by the program and by the student, named once?"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from paper.measure import problem

from tutor.deeds import deed_of
from tutor.deeds.deed import Do
from tutor.deeds.named_once import named_once
from tutor.judge import Value, judge
from tutor.lesson import Lesson

RACK = problem("rack")
FORCES = st.sampled_from(["AE", "CF", "A_y", "C_y"])
SAID = st.sampled_from(["", "Top chord ", "so ", "by symmetry, ", "Hence the bar "])
SIGNS = st.sampled_from([" = ", "=", ": ", " : "])
VALUES = st.sampled_from(["16", "-16 N", "16 C", "80 - 96 = -16", "16 N, i.e. 16 N T", "CF = 3"])


@given(FORCES, SAID, SIGNS, VALUES)
def test_a_name_said_behind_the_one_that_was_put_there_is_said_once(
    force: str, said: str, sign: str, value: str
) -> None:
    equals = " = " if said and ":" in sign else sign
    once = f"{said}{force}{equals}{value}"
    assert named_once(f"{force} = {said}{force}{sign}{value}", RACK.names) == once
    assert named_once(f"{said}{force}{sign}{value}", RACK.names, awaited=force) == once


@given(FORCES, FORCES, SIGNS, VALUES)
def test_another_name_stays_where_it_is(force: str, other: str, sign: str, value: str) -> None:
    if force == other or value.startswith(force):
        return
    for text, awaited in (
        (f"{force} = {other}{sign}{value}", None),
        (f"{other}{sign}{value}", force),
        (f"{force}{sign}{value}", None),
    ):
        assert named_once(text, RACK.names, awaited) == text


@given(FORCES, st.sampled_from(["0.8 ", "2*", "30 - ", "(", "-", "sin "]), VALUES)
def test_a_force_with_a_factor_is_not_named_again(force: str, before: str, value: str) -> None:
    text = f"{force} = {before}{force} = {value}"
    assert before.strip().isalpha() or named_once(text, RACK.names) == text


@given(st.text(max_size=40), st.sampled_from([None, "AE", "CF"]))
def test_whatever_is_typed_is_read_once_as_well_as_twice(text: str, awaited: str | None) -> None:
    once = named_once(text, RACK.names, awaited)
    assert named_once(once, RACK.names, awaited) in (once, named_once(once, RACK.names))


@pytest.mark.parametrize("text", ["CF = 5 T", "CF: 5 T", "Diagonal CF: -5 N, i.e. 5 N C"])
def test_what_is_typed_for_an_awaited_value_and_behind_its_name_is_the_same_line(text: str) -> None:
    lesson = Lesson(RACK)
    lesson.take("show", now=1.0, until="joints")
    lesson.take("joint", now=2.0, joint="C")
    awaited, behind = deed_of(lesson, text, "CF"), deed_of(lesson, f"CF = {text}")
    assert isinstance(awaited, Do)
    assert awaited == behind
    assert judge(RACK, Value("CF"), str(awaited.data["text"])).kind in ("right", "wrong")

"""Each first answer is evidence of the skills that it needs, and of no other."""

from __future__ import annotations

import pytest

from tutor.judge import Fx, Fy, M
from tutor.judge.example import MAST, TRUSSES
from tutor.judge.mistakes import KINDS
from tutor.lesson import Lesson
from tutor.lesson.place import place_of
from tutor.lesson.state import Result, State, Try
from tutor.skills import seen_in
from tutor.skills.seen import first_answers, may_be_made
from tutor.skills.table import NO_SKILL


def state_of(*tries: Try) -> State:
    return State(MAST, tries=tries)


def test_only_the_first_answer_at_a_place_counts() -> None:
    wrong = Try("joints", place_of("Fx @ A"), "…", "wrong", ("component",), 1.0)
    right = Try("joints", place_of("Fx @ A"), "…", "right", (), 2.0)
    assert first_answers((wrong, right)) == (wrong,)
    seen = {each.skill: each.right for each in seen_in(state_of(wrong, right))}
    assert seen == {"step joints": False, "component": False}


def test_a_right_line_shows_what_could_have_gone_wrong_in_it() -> None:
    right = Try("joints", place_of("Fx @ A"), "…", "right", (), 1.0)
    seen = {each.skill for each in seen_in(state_of(right))}
    assert {"step joints", "component", "missing", "sign"} <= seen
    assert not seen & {"arm", "no-arm", "tension-compression", "invented-moment"}


def test_a_right_value_shows_nothing_of_the_lines_behind_it() -> None:
    right = Try("joints", place_of("value AB"), "AB = 4 T", "right", (), 1.0)
    seen = {each.skill for each in seen_in(state_of(right))}
    assert {"step values", "arithmetic", "tension-compression"} <= seen
    assert not seen & {"component", "sign", "arm", "missing"}


def test_a_sum_of_upright_forces_alone_shows_nothing_of_components() -> None:
    level = may_be_made(state_of(), Fy("B"))  # BD and two loads, all upright; AB and BC level
    assert "missing" in level
    assert "arm" not in level
    assert "arm" in may_be_made(state_of(), M("A"))


def test_a_mistake_of_the_whole_line_is_avoided_where_it_can_be_made() -> None:
    at_load = may_be_made(state_of(), Fy("B"))  # BD and two loads at B
    assert {"magnitude", "lost-load", "stray-reaction"} <= at_load
    assert "pull-push" not in at_load  # one member in it
    whole = may_be_made(state_of(), Fx())
    assert not whole & {"pull-push", "stray-load", "stray-reaction"}


@pytest.mark.parametrize("code", sorted(KINDS.keys() - NO_SKILL - {"minus"}))
def test_every_mistake_that_counts_can_be_seen_avoided(code: str) -> None:
    """Else whoever made it once could never be said to have learnt better."""
    shown = [
        (State(TRUSSES[each.truss], senses=each.senses), each.about)
        for each in KINDS[code].examples
    ]
    assert any(code in may_be_made(state, about) for state, about in shown)


def test_the_minus_of_a_value_is_kept_only_where_the_value_was_found_before() -> None:
    value = Try("reactions", place_of("value A_x"), "A_x = -5", "right", (), 1.0)
    before, after = (
        Try("joints", place_of("Fx @ A"), "…", "right", (), time) for time in (0.5, 2.0)
    )
    for line, kept in ((before, False), (after, True)):
        for number in (-5.0, 5.0):
            found = Result("A_x", f"{number:g}", number, 0.0)
            state = State(MAST, results=(found,), tries=(value, line))
            seen = {each.skill for each in seen_in(state)}
            assert ("minus" in seen) == (kept and number < 0)


def test_steps_are_told_apart_by_their_place() -> None:
    places = {
        "Fx": "step reactions",
        "M A": "step reactions",
        "Fy @ B": "step joints",
        "value AB": "step values",
        "zero AB": "step zero",
    }
    for place, step in places.items():
        tried = Try("joints", place_of(place), "…", "wrong", (), 1.0)
        assert [each.skill for each in seen_in(state_of(tried))] == [step]
    for step, skill in (("idealise", "step idealise"), ("free body", "step free body")):
        tried = Try(step, place_of("support A"), "", "wrong", (), 1.0)
        assert [each.skill for each in seen_in(state_of(tried))] == [skill]


def test_a_line_wrong_in_another_way_says_nothing_of_a_mistake() -> None:
    wrong = Try("joints", place_of("Fx @ A"), "…", "wrong", ("component",), 1.0)
    assert "sign" not in {each.skill for each in seen_in(state_of(wrong))}


def test_a_lesson_not_begun_shows_nothing() -> None:
    assert seen_in(Lesson(MAST).state) == ()

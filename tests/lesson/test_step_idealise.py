"""The first step: why the members carry axial force only, and the counts."""

from __future__ import annotations

from dataclasses import replace

import pytest
from every_problem import FORCES, problem_of
from hypothesis import given
from strategies import trusses
from walks import ARM, FOLDER, Clock, walk_to

from tutor.lesson import Lesson
from tutor.lesson.steps.reasons import BENDING, TRUE_REASONS, statements
from tutor.model import load_problem

AGAIN = {
    ("m",): "the members",
    ("r",): "the reactions",
    ("2j",): "the equations of the joints",
    ("m", "r"): "the members and the reactions",
    ("m", "2j"): "the members and the equations of the joints",
    ("r", "2j"): "the reactions and the equations of the joints",
    ("m", "r", "2j"): "the members, the reactions and the equations of the joints",
}
"""What is to be counted again, for everything that may be off."""


def test_all_true_reasons_and_no_other_are_taken() -> None:
    lesson, do = walk_to("idealise")
    reply = do("reasons", chosen=["pins", "joints", "weight"])
    assert reply.accepted
    assert lesson.ask.kind == "count"


@pytest.mark.parametrize(
    ("chosen", "said", "code"),
    [
        (["rigid", "pins"], "bend", "extra"),
        (["pins", "joints", "weight", "triangles"], "does not make the force axial", "extra"),
        (["pins", "joints"], "one more thing", "missing"),
        (["pins"], "alone", "missing"),
    ],
)
def test_a_wrong_choice_is_told_what_kind_of_thing_is_wrong(chosen, said, code) -> None:
    lesson, do = walk_to("idealise")
    reply = do("reasons", chosen=chosen)
    assert not reply.accepted
    assert said in reply.text
    assert lesson.state.tries[-1].codes == (code,)
    assert lesson.ask.kind == "reasons"


def test_choosing_nothing_is_no_slip() -> None:
    lesson, do = walk_to("idealise")
    assert not do("reasons", chosen=["none of these"]).accepted
    assert lesson.state.tries == ()


def test_the_count_that_is_off_is_named_and_the_right_ones_are_not() -> None:
    lesson, do = walk_to("idealise")
    do("reasons", chosen=["pins", "joints", "weight"])
    for off, told in AGAIN.items():
        counted = {key: n + (key in off) for key, n in {"m": 3, "r": 3, "2j": 6}.items()}
        assert do("count", **counted).text == f"Count {told} again."
    reply = do("count", m=3, r=3, **{"2j": 6})
    assert "m + r = 3 + 3 = 6 = 2j" in reply.text
    assert lesson.state.step == "free body"


@pytest.mark.parametrize("data", [{}, {"m": "3", "r": 3, "2j": 6}, {"m": True, "r": 3, "2j": 6}])
def test_what_is_no_count_is_no_slip(data) -> None:
    lesson, do = walk_to("idealise")
    do("reasons", chosen=["pins", "joints", "weight"])
    before = lesson.state.tries
    assert "three whole numbers" in do("count", **data).text
    assert lesson.state.tries == before


def test_the_step_can_be_passed_over_and_come_back_to() -> None:
    lesson = Lesson(ARM)
    do = Clock(lesson)
    assert do("go", step="free body").accepted
    assert lesson.ask.kind == "support"
    assert do("go", step="idealise").accepted
    assert lesson.ask.kind == "reasons"


def test_a_line_typed_too_soon_is_told_what_comes_first() -> None:
    lesson, do = walk_to("idealise")
    assert "first" in do("type", text="B_x = 360").text
    do("go", step="free body")
    assert "Finish the free body first" in do("type", text="x").text
    assert lesson.state.lines == ()


@given(trusses())
def test_every_problem_asks_for_the_same_three_reasons_among_three_others(problem) -> None:
    options = Lesson(problem).ask.options
    keys = {option.key for option in options}
    assert len(options) == len({option.words for option in options}) == 6
    assert keys >= set(TRUE_REASONS)
    assert len(keys & set(BENDING)) == 1


def test_the_right_numbers_of_one_problem_are_seldom_those_of_another() -> None:
    numbers = []
    for path in FORCES:
        options = Lesson(problem_of(path)).ask.options
        numbers.append(tuple(n for n, o in enumerate(options) if o.key in TRUE_REASONS))
    most = max(map(numbers.count, numbers))
    assert most <= len(numbers) / 3


def test_the_statements_of_a_problem_stand_in_one_order_on_every_machine_and_each_time() -> None:
    order = ["triangles", "joints", "between", "supports", "weight", "pins"]
    assert [option.key for option in Lesson(ARM).ask.options] == order
    again = load_problem(FOLDER / "lamp-arm.toml")
    assert [option.key for option in Lesson(again).ask.options] == order


def test_a_corrected_story_leaves_the_statements_where_they_stand() -> None:
    told = replace(ARM, story="Another story.")
    assert statements(told) == statements(ARM)


def test_steps_done_right_before_are_passed_over_in_one_deed_down_to_the_first_equation() -> None:
    lesson = Lesson(ARM)
    do = Clock(lesson)
    reply = do("skip", steps=["idealise", "free body"])
    assert reply.accepted
    assert "A_x to the right" in reply.text
    assert lesson.ask.kind == "line"
    assert do("sense", unknown="B_x", sense="left").accepted
    assert do("undo").accepted
    assert do("undo").accepted
    assert lesson.ask.kind == "reasons"


@pytest.mark.parametrize("steps", [[], ["free body"], ["joints"], "idealise", None])
def test_a_step_that_may_not_be_passed_over_is_not(steps) -> None:
    lesson = Lesson(ARM)
    assert not Clock(lesson)("skip", steps=steps).accepted
    assert lesson.ask.kind == "reasons"


def test_only_the_first_steps_can_be_passed_over() -> None:
    lesson, do = walk_to("reactions")
    assert not do("skip", steps=["idealise", "free body", "reactions"]).accepted
    assert lesson.state.step == "reactions"

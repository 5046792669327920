"""The first step: why the members carry axial force only, and the counts."""

from __future__ import annotations

import pytest
from walks import ARM, Clock, walk_to

from tutor.lesson import Lesson

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
    assert "Replace the supports" in do("go", step="free body").text + do("type", text="x").text
    assert lesson.state.lines == ()

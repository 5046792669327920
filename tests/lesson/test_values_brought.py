"""What does a walk begin with that goes on from work done on paper?"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import trusses

from tutor.lesson import Event, Lesson
from tutor.model import Problem
from tutor.statics import solve


@given(trusses(max_joints=6), st.data())
def test_only_right_values_stand_and_each_as_it_is(problem: Problem, data: st.DataObject) -> None:
    true = solve(problem).values
    wrong = data.draw(st.sampled_from(problem.members)).name
    joint = data.draw(st.sampled_from(problem.joints)).name
    values = {name: f"{value:.6g}" for name, value in true.items()}
    values[wrong] = f"{true[wrong] + 3 * (max(map(abs, true.values())) or 1.0):.6g}"
    lesson = Lesson(problem)
    lesson.take("bring", values=values, senses={}, joint=joint)
    assert wrong not in lesson.state.result
    assert set(lesson.state.result) == set(true) - {wrong}
    assert lesson.state.step == "joints"
    for name in lesson.state.result:
        assert lesson.state.signed(name) == pytest.approx(true[name], rel=1e-4, abs=1e-6)
    again = Lesson(problem, [Event.from_record(event.as_record()) for event in lesson.events])
    assert again.state == lesson.state


@given(trusses(max_joints=4))
def test_nothing_is_brought_once_the_walk_has_begun(problem: Problem) -> None:
    lesson = Lesson(problem)
    lesson.take("reasons", chosen=[])
    before = lesson.state
    reply = lesson.take("bring", values={}, senses={}, joint="")
    assert not reply.accepted or not before.tries


@pytest.mark.parametrize(
    "data",
    [
        {},
        {"values": 3, "senses": [], "joint": 5},
        {"values": {"A_x": 4, "ZZ": "1", "": ""}, "senses": {"A_x": "sideways"}, "joint": "Q"},
    ],
)
@given(problem=trusses(max_joints=4))
def test_data_that_does_not_fit_is_passed_over(problem: Problem, data: dict[str, object]) -> None:
    lesson = Lesson(problem)
    reply = lesson.take("bring", **data)
    assert reply.accepted
    assert not lesson.state.results
    assert lesson.state.step == "reactions"

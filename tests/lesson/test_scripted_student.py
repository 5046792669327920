"""Does a student who slips at every place still finish every shipped problem?"""

from __future__ import annotations

import itertools
from pathlib import Path
from typing import Any

import pytest
from every_problem import SHARED, problem_of
from student import Student

from tutor.lesson import Event, Lesson, Reply
from tutor.statics import solve


@pytest.fixture(scope="module", params=SHARED)
def walked(request: pytest.FixtureRequest) -> Lesson:
    path: Path = request.param
    lesson = Lesson(problem_of(path))
    clock = itertools.count(1_000_000_000, 7)

    def do(kind: str, **data: Any) -> Reply:
        return lesson.take(kind, now=float(next(clock)), **data)

    Student(lesson, do).walk()
    return lesson


def test_the_table_holds_the_forces_that_statics_gives(walked: Lesson) -> None:
    truth = solve(walked.problem)
    table = walked.table
    assert [row.member for row in table.rows] == [m.name for m in walked.problem.members]
    largest = max(abs(value) for value in truth.values.values())
    for row in table.rows:
        assert row.force == pytest.approx(truth.force(row.member), abs=5e-3 * largest)


def test_every_slip_and_hint_is_in_the_record_of_the_walk(walked: Lesson) -> None:
    codes = dict(walked.table.mistakes)
    assert codes["extra"] >= 1
    assert codes["count"] >= 1
    assert "sign" in codes
    assert walked.table.hints[1] >= 3


def test_no_true_line_was_called_wrong(walked: Lesson) -> None:
    assert not [t for t in walked.state.tries if t.verdict == "undecided"]


def test_the_events_alone_give_the_same_lesson_again(walked: Lesson) -> None:
    again = Lesson(
        walked.problem, (Event.from_record(event.as_record()) for event in walked.events)
    )
    assert again.state == walked.state

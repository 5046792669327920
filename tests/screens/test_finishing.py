"""A student finishes shipped problems through the real screens, with slips on the way."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
from pressing import finished, lesson_of, load, press_event, seen, settle, walking
from student import Student

from tutor.lesson import CAUTION, Event, Lesson
from tutor.records import Keep

WALKED = ("lamp-arm", "drying-rail", "slipway-cradle")


def script(problem: str) -> list[tuple[str, Mapping[str, Any]]]:
    """What the scripted student does on this problem, with slips; on the first, hints too."""
    lesson = Lesson(load(problem))
    Student(lesson, lesson.take).walk()
    hinted = problem == WALKED[0]
    return [(e.kind, e.data) for e in lesson.events if hinted or e.kind != "hint"]


class TestAStudentFinishes:
    @pytest.mark.parametrize("problem", WALKED)
    async def test_a_shipped_problem_by_keys_alone_and_all_of_it_is_kept(
        self, tmp_path: Path, problem: str
    ) -> None:
        async with walking(tmp_path, problem) as pilot:
            for kind, data in script(problem):
                before = len(lesson_of(pilot).events)
                await press_event(pilot, kind, data)
                assert len(lesson_of(pilot).events) > before, (kind, data, seen(pilot))
            await settle(pilot, lambda: finished(pilot))
            assert lesson_of(pilot).done
            assert CAUTION in " ".join(seen(pilot).split())
            state = lesson_of(pilot).state
        (kept,) = Keep(tmp_path).lessons()
        with Keep(tmp_path).resume(kept.path) as journal:
            again = Lesson(load(problem), map(Event.from_record, journal.events))
        assert again.state == state

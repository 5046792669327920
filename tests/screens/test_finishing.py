"""A student finishes shipped problems through the real screens, with slips on the way."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
from pressing import finished, lesson_of, load, press_event, seen, settle, walking
from student import Student

from tutor.lesson import CAUTION, Lesson, Reply
from tutor.lesson.replay import events_of
from tutor.records import Keep

WALKED = ("lamp-arm", "drying-rail", "slipway-cradle")


def script(problem: str) -> list[tuple[str, Mapping[str, Any]]]:
    """What the scripted student does: on the first problem with every slip and hint, on the others
    with the first slip of each kind."""
    lesson, done, slips = Lesson(load(problem)), [], set()

    def do(kind: str, **data: Any) -> Reply:
        reply = lesson.take(kind, **data)
        slip = kind if not reply.accepted else ""
        if problem == WALKED[0] or (kind != "hint" and slip not in slips):
            done.append((kind, data))
        if slip:
            slips.add(slip)
        return reply

    Student(lesson, do).walk()
    return done


class TestAStudentFinishes:
    @pytest.mark.parametrize(
        "problem", [WALKED[0], *(pytest.param(each, marks=pytest.mark.slow) for each in WALKED[1:])]
    )
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
            again = Lesson(load(problem), events_of(journal.events))
        assert again.state == state

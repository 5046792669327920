"""A class at work, without a disk: students walk problems, and their journals are handed in as bytes."""

from __future__ import annotations

import contextlib
from collections.abc import Mapping, Sequence
from datetime import UTC, datetime, timedelta
from functools import lru_cache
from pathlib import Path
from typing import Any

from habits import HABITS, Habit
from walker import Walker

from tutor.cohort.handed import written
from tutor.lesson import Event, Lesson, Reply
from tutor.model import Problem, load_problem, load_set
from tutor.records.belonging import content_of, key_of
from tutor.records.contents import Header
from tutor.records.line import whole_line, write_line
from tutor.variants import variant_of

HABIT = {habit.name: habit for habit in HABITS}
DAY = datetime(2026, 11, 2, 9, 0, tzinfo=UTC)
Record = Mapping[str, Any]

HOIST = """\
title = "Hoist for the eel trap"
force = "kN"
length = "m"
members = ["AB", "BC", "AC"]
[joints]
A = [0, 0]
B = [0, 3]
C = [4, 3]
[supports]
A = { roller = 0 }
B = "pin"
[[loads]]
at = "C"
down = 6
"""
VARY = "[vary]\nloads = { C = { down = [3, 6, 9, 12, 15] } }\n"
TRESTLE = """\
title = "Trestle for the nets"
force = "kN"
length = "m"
members = ["AB", "AC", "BC"]
[joints]
A = [0, 0]
B = [8, 0]
C = [4, 3]
[supports]
A = "pin"
B = "roller"
[[loads]]
at = "C"
down = 12
"""


def make_set(folder: Path, vary: bool = True) -> Path:
    """A set of two problems, the first of which varies."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "set.toml").write_text(
        'title = "Week 3"\nid = "week-3"\norder = ["eel-trap", "trestle"]\n', encoding="utf-8"
    )
    (folder / "eel-trap.toml").write_text(HOIST + (VARY if vary else ""), encoding="utf-8")
    (folder / "trestle.toml").write_text(TRESTLE, encoding="utf-8")
    return folder


class Recorder(Walker):
    """A walker whose lesson is taken down as a session does; `most` events and it stops."""

    def __init__(self, problem: Problem, habit: Habit, seed: int, most: int = 10**6) -> None:
        super().__init__(problem, habit, seed)
        self.records: list[Record] = []
        self.most = most
        self.do = self._noted

    def _noted(self, kind: str, **data: Any) -> Reply:
        if len(self.lesson.events) >= self.most:
            raise Stopped
        before = self.lesson.state
        reply = self._take(kind, **data)
        self.records += taken_down(self.lesson, before, reply)
        return reply


class Stopped(Exception):  # noqa: N818
    """The student goes home."""


def taken_down(lesson: Lesson, before: Any, reply: Reply) -> list[Record]:
    """The last event of a lesson and its outcome, as a session keeps them."""
    event = lesson.events[-1]
    return [event.as_record(), lesson.outcome(before, event, reply).as_record(event)]


def records_of(problem: Problem, habit: Habit, seed: int = 1, most: int = 10**6) -> list[Record]:
    """All that one student's walk leaves in the journal."""
    recorder = Recorder(problem, habit, seed, most)
    with contextlib.suppress(Stopped):
        recorder.walk()
    return recorder.records


@lru_cache(maxsize=512)
def _walked(path: Path, text: str, student: str, set_name: str, habit: str, seed: int, most: int):
    problem = load_problem(path)
    own = variant_of(problem, student=student, set=set_name)
    return own, records_of(own, HABIT[habit], seed, most)


def journal(problem: Problem, records: Sequence[Record], begun: datetime = DAY) -> bytes:
    """A journal of these records, begun at a time of its own."""
    header = Header(key_of(problem), problem.title, begun, content=content_of(problem))
    rows = [write_line(0, header.problem, "", begun, header.event())]
    for number, record in enumerate(records, 1):
        last = whole_line(rows[-1])
        assert last is not None
        at = begun + timedelta(seconds=number)
        rows.append(write_line(number, header.problem, last.sum, at, record))
    return b"".join(row + b"\n" for row in rows)


def lesson(
    path: Path,
    student: str,
    habit: str = "careful",
    *,
    set_name: str = "week-3",
    seed: int = 1,
    most: int = 10**6,
    begun: datetime = DAY,
) -> bytes:
    """The journal of one student on the problem in a file; the walk itself is kept ready."""
    text = path.read_text(encoding="utf-8")
    own, records = _walked(path, text, student, set_name, habit, seed, most)
    started = begun + timedelta(seconds=sum(student.encode()))
    return journal(own, records, started)


def handed_in(
    folder: Path,
    student: str,
    habit: str = "careful",
    *,
    seed: int = 1,
    most: Mapping[str, int] | None = None,
    made: datetime = DAY,
) -> bytes:
    """The file of one student who worked every problem of a set, each up to `most` events."""
    among = load_set(folder)
    journals = [
        lesson(
            p.source,
            student,
            habit,
            set_name=among.name,
            seed=seed,
            most=(most or {}).get(p.source.stem, 10**6),
        )
        for p in among.problems
        if p.source is not None
    ]
    return written(student, among.name, among.title, made, journals)


def events_in(records: Sequence[Record]) -> list[Event]:
    """The events among records."""
    return [Event.from_record(r) for r in records if r["kind"] not in ("outcome", "outcomes")]

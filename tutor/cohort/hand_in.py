"""What does a student hand in of a set? The journals of all lessons on its problems, in one file."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from tutor.cohort.handed import written
from tutor.model import Problem, ProblemSet
from tutor.records import Keep, disk
from tutor.records.contents import read_contents
from tutor.records.kept import Kept
from tutor.records.lessons import Lessons


@dataclass(frozen=True)
class Handing:
    """The bytes to hand in, how many lessons on how many problems are in it, and what is not."""

    data: bytes
    lessons: int
    problems: int
    left_out: tuple[str, ...] = ()


def handing(among: ProblemSet, keep: Keep, student: str, title: str, made: datetime) -> Handing:
    """All lessons kept in `keep` on the problems of a set, as this student has them.

    `among` has the student's own numbers. Lessons on other numbers are left out, and told.
    """
    lessons = Lessons(keep.lessons())
    journals: list[bytes] = []
    left_out: list[str] = []
    worked = 0
    for problem in among.problems:
        found = _journals(problem, lessons, left_out)
        worked += bool(found)
        journals += found
    data = written(plain(student), among.name, title, made, journals)
    return Handing(data, len(journals), worked, tuple(left_out))


def plain(student: str) -> str:
    """An id as it is written into the file."""
    return student.strip()


def _journals(problem: Problem, lessons: Lessons, left_out: list[str]) -> list[bytes]:
    found = []
    for kept, how in reversed(lessons.of(problem)):
        if how.changes:
            left_out.append(f"a lesson on {problem.title}, begun with other numbers, is left out")
            continue
        try:
            data = whole_lines(kept)
        except OSError as refused:
            left_out.append(f"a lesson on {problem.title} cannot be read: {disk.why_not(refused)}")
            continue
        if data:
            found.append(data)
    return found


def whole_lines(kept: Kept) -> bytes:
    """The bytes of a journal without a last line that is only half written; empty without an entry."""
    data = disk.read_file(kept.path)
    contents = read_contents(data)
    whole = data[: contents.whole] if contents.torn else data
    return whole if contents.lines else b""


def told(handed: Handing) -> Sequence[str]:
    """What is said once the file is written."""
    lessons = "1 lesson" if handed.lessons == 1 else f"{handed.lessons} lessons"
    problems = "1 problem" if handed.problems == 1 else f"{handed.problems} problems"
    return (f"{lessons} on {problems} in it.", *(f"Note: {each}." for each in handed.left_out))

"""How is the report on a class read into a grade book or a spreadsheet? Rows as RFC 4180 has them.

A cell that a spreadsheet would take for a formula begins with an apostrophe, so that nothing a student
typed can be run (common practice, no standard).
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence

from tutor.cohort.facts import ClassReport, Student, StudentWork
from tutor.cohort.times import moment

RUNS = ("=", "+", "-", "@", "\t", "\r")
BOM = "\ufeff"
WORKS = (
    *("id", "name", "problem", "title", "state", "step", "found", "of", "lines", "slips", "hints"),
    *("told", "minutes", "lessons", "first", "last", "shown"),
)
STUDENTS = (
    *("id", "name", "handed_in", "finished", "problems", "lines", "slips", "hints", "told"),
    *("minutes", "skills_mastered", "skills_seen", "watched", "shown"),
)
Cell = str | int | float | None


def works_as_csv(report: ClassReport) -> str:
    """A row for each student and problem."""
    return _table(
        WORKS, (_work(student, work) for student in report.students for work in student.problems)
    )


def students_as_csv(report: ClassReport) -> str:
    """A row for each student."""
    return _table(STUDENTS, map(_student, report.students))


def harmless(cell: Cell) -> Cell:
    """A cell that no spreadsheet takes for a formula; numbers stay as they are."""
    if isinstance(cell, str) and cell.startswith(RUNS):
        return f"'{cell}"
    return "" if cell is None else cell


def _table(head: Sequence[str], rows: Iterable[Sequence[Cell]]) -> str:
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(head)
    writer.writerows([harmless(cell) for cell in row] for row in rows)
    return BOM + text.getvalue()


def _work(student: Student, work: StudentWork) -> Sequence[Cell]:
    return (
        student.id,
        student.name,
        work.problem,
        work.title,
        work.state,
        work.step,
        work.found,
        work.of,
        work.lines,
        work.slips,
        work.hints,
        work.told,
        work.minutes,
        work.lessons,
        moment(work.first),
        moment(work.last),
        work.shown,
    )


def _student(student: Student) -> Sequence[Cell]:
    works = student.problems
    return (
        student.id,
        student.name,
        "yes" if student.handed_in else "no",
        student.finished,
        len(works),
        sum(work.lines for work in works),
        sum(work.slips for work in works),
        sum(work.hints for work in works),
        sum(work.told for work in works),
        round(sum(work.minutes for work in works), 1),
        sum(each.mastered for each in student.skills),
        len(student.skills),
        sum(work.state == "watched" for work in works),
        sum(work.shown for work in works),
    )

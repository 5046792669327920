"""Which tables can be looked through of a report on a class, and what is behind each row?"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from tutor.cohort.as_text import (
    amount_in_words,
    called_in_full,
    counted,
    middle,
    shown_in_words,
    works_on,
)
from tutor.cohort.counting import wrong_answers
from tutor.cohort.facts import STATES, ClassReport, Mistaken, Student, StudentWork
from tutor.cohort.skilled import skilled
from tutor.judge.called import called
from tutor.skills import skill_called
from tutor.skills.mastery import IN_PLAIN_WORDS
from tutor.skills.places import place_in_words
from tutor.text import listed, one_line, so_many, so_often

Cell = str | int
MOST_TYPED = 40


@dataclass(frozen=True)
class ViewRow:
    """One row: its cells, and what is shown where it is opened."""

    cells: tuple[Cell, ...]
    title: str
    text: str


@dataclass(frozen=True)
class View:
    """One table: its name, the heads of its columns, and its rows in the order of the report."""

    name: str
    heads: tuple[str, ...]
    rows: tuple[ViewRow, ...]

    def sorted_by(self, column: int, reverse: bool) -> tuple[ViewRow, ...]:
        """The rows by one column, equal ones in the order of the report; -1 for that order."""
        if column < 0:
            return self.rows

        def rank(row: ViewRow) -> tuple[bool, int, str]:
            cell = row.cells[column]
            if isinstance(cell, int):
                return False, cell, ""
            return True, 0, cell.casefold()

        return tuple(sorted(self.rows, key=rank, reverse=reverse))


def views(report: ClassReport) -> tuple[View, ...]:
    """Every table, in the order in which it is offered."""
    return (
        _again(report),
        _mistakes(report),
        _problems(report),
        _students(report),
        _skills(report),
        _files(report),
    )


def _again(report: ClassReport) -> View:
    rows = (
        ViewRow((number, sentence), "What to explain again", sentence)
        for number, sentence in enumerate(report.again, 1)
    )
    return View("explain again", ("no.", "what to explain again"), tuple(rows))


def _mistakes(report: ClassReport) -> View:
    rows = []
    for kind in report.kinds:
        places = [place for place in report.mistakes if place.code == kind.code]
        text = "\n\n".join([_made_by(report, kind.code), *("\n".join(_place(p)) for p in places)])
        cells = (kind.called, kind.students, kind.times, f"{kind.problem} ({kind.step})")
        rows.append(ViewRow(cells, kind.called, text))
    return View("mistakes", ("mistake", "students", "times", "most in"), tuple(rows))


def _made_by(report: ClassReport, code: str) -> str:
    """Who made a mistake, those who made it most often first."""
    times: Counter[str] = Counter()
    for student, _, answer in wrong_answers(report.students):
        times[called_in_full(student)] += code in answer.codes
    made = [f"{count} × {name}" for name, count in times.most_common() if count]
    return f"By {listed(made, MOST_TYPED)}."


def _place(place: Mistaken) -> Iterator[str]:
    yield (
        f"{place.problem} ({place.step}): {so_many(place.students, 'student')}, "
        f"{so_often(place.times)}"
    )
    pairs = list(zip(place.counts, place.typed, strict=True))
    for count, text in pairs[:MOST_TYPED]:
        yield f"  {count:3} × {text}"
    if len(pairs) > MOST_TYPED:
        more = len(pairs) - MOST_TYPED
        yield f"  and {so_many(more, 'other line')}"


def _problems(report: ClassReport) -> View:
    rows = []
    for problem in report.problems:
        works = works_on(report.students, problem)
        parts = [f"{problem.title}\nMedian of those who finished: {middle(works)}"]
        parts += [f"{said}."] if (said := shown_in_words(works)) else []
        stops = [
            f"  {so_many(s.students, 'student')} at “{s.step}”"
            + (f", last in vain at {place_in_words(s.place)}" if s.place else "")
            for s in report.stops
            if s.problem == problem.name
        ]
        parts += ["\n".join(["Where students stopped", *stops])] if stops else []
        parts += [
            "\n".join([place.called, *_place(place)])
            for place in report.mistakes
            if place.problem == problem.name
        ]
        rows.append(
            ViewRow(
                (problem.name, *counted(works), middle(works)), problem.title, "\n\n".join(parts)
            )
        )
    heads = ("problem", *STATES, "median")
    return View("problems", heads, tuple(rows))


def _students(report: ClassReport) -> View:
    rows = []
    for student in report.students:
        works = student.problems
        sums = [sum(getattr(w, key) for w in works) for key in ("lines", "hints", "slips")]
        minutes = round(sum(work.minutes for work in works))
        name = called_in_full(student)
        cells = (name, student.finished, *sums, minutes)
        rows.append(ViewRow(cells, name, "\n\n".join(_student(student))))
    heads = ("student", "finished", "lines", "hints", "slips", "minutes")
    return View("students", heads, tuple(rows))


def _student(student: Student) -> Iterator[str]:
    if not student.handed_in:
        yield "Nothing was handed in."
        return
    for work in student.problems:
        yield "\n".join(_work(work))
    if student.skills:
        yield "\n".join(
            ["Skills, and how likely each is learnt by now"]
            + [
                f"  {each.likely:4.0%}  {skill_called(each.skill)} "
                f"({each.right} of {each.answers} first answers right)"
                for each in sorted(student.skills, key=lambda each: each.likely)
            ]
        )


def _work(work: StudentWork) -> Iterator[str]:
    yield f"{work.title}: {work.state}"
    if work.state == "not begun":
        return
    yield (
        f"  {amount_in_words(work)}{work.lines} lines, {work.slips} slips, "
        f"{work.hints} hints, {work.told} lines given, {work.minutes:.0f} minutes"
    )
    for answer in work.answers:
        if answer.verdict == "wrong":
            typed = one_line(answer.text) or "(chosen)"
            slips = listed([called(code) for code in answer.codes])
            yield f"  {place_in_words(answer.place)}: {typed}   [{slips}]"


def _skills(report: ClassReport) -> View:
    rows = []
    for each in skilled(report.students):
        likely = [
            f"  {mastery.likely:4.0%}  {called_in_full(student)}"
            for student in report.students
            for mastery in student.skills
            if mastery.skill == each.code
        ]
        text = "\n".join([IN_PLAIN_WORDS, "", *sorted(likely)])
        rows.append(ViewRow((each.called, each.mastered, each.students), each.called, text))
    return View("skills", ("skill", "mastered by", "of"), tuple(rows))


def _files(report: ClassReport) -> View:
    rows = (ViewRow((f.file, f.message), f.file, f.message) for f in report.faults)
    return View("files", ("file", "what is to be looked at"), tuple(rows))

"""How is the report on a class told in plain text, for a terminal 80 columns wide?"""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from statistics import median

from tutor.cohort.facts import STATES, ClassReport, ProblemOf, Student, StudentWork, VerdictsChecked
from tutor.cohort.skilled import SkillOf, skilled
from tutor.model.caution import CAUTION
from tutor.skills.mastery import IN_PLAIN_WORDS
from tutor.skills.places import place_in_words
from tutor.text import so_many, so_often

WIDTH = 80
MOST_PLACES = 12
MOST_LINES = 3
MOST_STOPS = 10


def as_text(report: ClassReport, everything: bool = False) -> str:
    """The whole report; `everything` leaves out no mistake, stop or line typed."""
    parts = (
        _head(report),
        _again(report),
        _kinds(report),
        _places(report, everything),
        _problems(report),
        _stops(report, everything),
        _skills(report),
        _students(report),
        _faults(report),
        [wrapped(checked_in_words(report.checked)), wrapped(CAUTION)],
    )
    return "\n".join("\n".join(part) + "\n" for part in (list(p) for p in parts) if part)


def wrapped(text: str, first: str = "", indent: str = "") -> str:
    """Text in lines of at most 80 columns."""
    return textwrap.fill(
        text, WIDTH, initial_indent=first, subsequent_indent=indent, break_on_hyphens=False
    )


def _head(report: ClassReport) -> Iterator[str]:
    yield wrapped(f"{report.title} ({report.set})")
    yield wrapped(f"{report.handed_in} of {len(report.students)} students handed in.")


def _again(report: ClassReport) -> Iterator[str]:
    yield "What to explain again"
    for number, sentence in enumerate(report.again, 1):
        yield wrapped(sentence, f"  {number}. ", "     ")


def _kinds(report: ClassReport) -> Iterator[str]:
    if not report.kinds:
        return
    yield f"{'Mistakes by kind':38}students times  most in"
    for kind in report.kinds:
        where = f"{kind.problem} ({kind.step})"
        yield f"  {_cut(kind.called, 35):35} {kind.students:8} {kind.times:5}  {_cut(where, 27)}"


def _places(report: ClassReport, everything: bool) -> Iterator[str]:
    if not report.mistakes:
        return
    yield "Where they are made, and the lines typed"
    most = len(report.mistakes) if everything else MOST_PLACES
    for found in report.mistakes[:most]:
        head = f"{found.called}, in {found.problem} ({found.step}): {so_many(found.students, 'student')}"
        yield wrapped(f"{head}, {so_often(found.times)}", "  ", "    ")
        lines = list(zip(found.counts, found.typed, strict=True))
        for count, text in lines if everything else lines[:MOST_LINES]:
            yield f"    {count:4} × {_cut(text, WIDTH - 11)}"
    if (left := len(report.mistakes) - most) > 0:
        yield wrapped(f"and {left} more places: --html and --json have all of them", "  ", "  ")


def _problems(report: ClassReport) -> Iterator[str]:
    yield "Problems          finished watched begun not begun  median of those who finished"
    for problem in report.problems:
        works = works_on(report.students, problem)
        done, watched, begun, not_begun = counted(works)
        yield (
            f"  {_cut(problem.name, 15):15} {done:8} {watched:7} {begun:5} {not_begun:9}  "
            f"{middle(works)}"
        )
        if said := shown_in_words(works):
            yield wrapped(said, "    ", "    ")


def works_on(students: Sequence[Student], problem: ProblemOf) -> list[StudentWork]:
    """What each student did on one problem."""
    return [w for student in students for w in student.problems if w.problem == problem.name]


def counted(works: Sequence[StudentWork]) -> tuple[int, ...]:
    """How many works are in each of `STATES`."""
    states = [work.state for work in works]
    return tuple(states.count(state) for state in STATES)


def shown_in_words(works: Sequence[StudentWork]) -> str:
    """How many of those who finished had forces shown to them; empty where none had."""
    done = [work for work in works if work.state == "finished"]
    helped = sum(work.shown > 0 for work in done)
    return f"{helped} of the {len(done)} who finished had forces shown to them" if helped else ""


def amount_in_words(work: StudentWork) -> str:
    """Of what was asked for, how much a student found, and how much was shown; with a comma behind it,
    empty where no forces are asked for."""
    if not work.of:
        return ""
    shown = f", {work.shown} shown" if work.shown else ""
    return f"{work.found} of {work.of} forces found{shown}, "


def middle(works: Sequence[StudentWork]) -> str:
    """The medians of lines, hints and minutes of those who finished."""
    done = [work for work in works if work.state == "finished"]
    if not done:
        return "-"
    lines, hints = (median(getattr(w, key) for w in done) for key in ("lines", "hints"))
    minutes = median(work.minutes for work in done)
    return f"{_many(lines, 'line')}, {_many(hints, 'hint')}, {minutes:.0f} min"


def _many(count: float, what: str) -> str:
    return f"{count:g} {what}" if count == 1 else f"{count:g} {what}s"


def _stops(report: ClassReport, everything: bool) -> Iterator[str]:
    if not report.stops:
        return
    yield "Where students stopped"
    most = len(report.stops) if everything else MOST_STOPS
    for stop in report.stops[:most]:
        last = f", last in vain at {place_in_words(stop.place)}" if stop.place else ""
        yield wrapped(
            f"{so_many(stop.students, 'student')} in {stop.problem}, step “{stop.step}”{last}",
            "  ",
            "    ",
        )
    if (left := len(report.stops) - most) > 0:
        yield f"  and {left} more places"


def _skills(report: ClassReport) -> Iterator[str]:
    found = skilled(report.students)
    if not found:
        return
    yield "Skills, those mastered by fewest first" + " " * 20 + "mastered by"
    for each in found:
        yield _skill(each)
    yield wrapped(IN_PLAIN_WORDS, "  ", "  ")


def _skill(each: SkillOf) -> str:
    return f"  {_cut(each.called, 56):56} {each.mastered:4} of {each.students}"


def _students(report: ClassReport) -> Iterator[str]:
    if not report.students:
        return
    wide = min(34, max(len(called_in_full(s)) for s in report.students))
    yield f"{'Students':{wide + 2}}  finished   lines   hints   slips  minutes"
    for student in report.students:
        name = _cut(called_in_full(student), wide)
        if not student.handed_in:
            yield f"  {name:{wide}}  nothing handed in"
            continue
        works = student.problems
        done = f"{student.finished} of {len(works)}"
        numbers = (sum(getattr(w, key) for w in works) for key in ("lines", "hints", "slips"))
        cells = "".join(f"{number:8}" for number in numbers)
        minutes = sum(work.minutes for work in works)
        yield f"  {name:{wide}}  {done:>8}{cells} {minutes:8.0f}"


def called_in_full(student: Student) -> str:
    """A student by name and id, or by what the report has of them."""
    return f"{student.name} ({student.id})" if student.name else student.id


def _faults(report: ClassReport) -> Iterator[str]:
    if not report.faults:
        return
    yield "Files to look at"
    for fault in report.faults:
        yield wrapped(f"{fault.file}: {fault.message}", "  ", "    ")


def checked_in_words(checked: VerdictsChecked) -> str:
    """How the verdicts came about."""
    if not checked.answers:
        return "There was nothing to judge."
    answers, lessons = so_many(checked.answers, "answer"), so_many(checked.lessons, "lesson")
    said = f"Replayed: {answers} in {lessons}, {checked.again} of them judged again"
    if checked.lessons_again:
        said += f", and {so_many(checked.lessons_again, 'lesson')} as a whole"
    said += "."
    if checked.otherwise:
        said += f" Of {so_many(checked.otherwise, 'answer')} more or less is said now than before."
    return said


def _cut(text: str, most: int) -> str:
    return text if len(text) <= most else f"{text[: most - 1]}…"

"""How do the files of a class become one report? Which of them count, and what follows from them.

The order of the files does not matter, nor who gathered them: the same files give the same report.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from functools import reduce

from tutor.cohort.again import again
from tutor.cohort.counting import kinds, mistakes, stops
from tutor.cohort.course import Course
from tutor.cohort.facts import ClassReport, FileFault, Student, StudentWork, VerdictsChecked
from tutor.cohort.gathering import Gathered
from tutor.text import listed
from tutor.variants.lot import plain_name

TWICE = "it is the same file as {other}, byte for byte; it counts once"
NEWER = "{other}, handed in later, is by the same student; only that one counts"
ALIKE = (
    "it holds {count} begun at the very same moment as in {others}, under {ids}: one is a copy of the "
    "other; all count, look at them"
)
MOST_ALIKE = 4
"""So many other files are named beside a copy."""
NOT_LISTED = "its id is not in the roster; it counts all the same"


def report_of(
    course: Course, gathered: Iterable[Gathered], roster: Mapping[str, str] | None = None
) -> ClassReport:
    """The report on the files gathered; `roster` has the names by id, in the instructor's order."""
    every = sorted(gathered, key=lambda each: each.file)
    faults = [fault for each in every for fault in each.faults]
    counted, twice = _counted(every)
    faults += twice
    faults += _alike(counted)
    if roster is not None:
        on_it = {plain_name(name) for name in roster}
        faults += [
            FileFault(each.file, NOT_LISTED, each.student)
            for each in counted
            if plain_name(each.student) not in on_it
        ]
    students = _students(course, counted, roster or {})
    found = mistakes(students)
    whole = kinds(students, found)
    stopped = stops(students)
    titles = {problem.name: problem.title for problem in course.problems}
    return ClassReport(
        course.among.name,
        course.among.title,
        course.problems,
        students,
        found,
        whole,
        stopped,
        again(students, stopped, titles),
        tuple(sorted(faults, key=lambda fault: (fault.file, fault.message))),
        reduce(_added, (each.checked for each in counted), VerdictsChecked()),
    )


def _counted(every: Sequence[Gathered]) -> tuple[list[Gathered], list[FileFault]]:
    """One file for each student, the one made last; and what is to be said of the others."""
    faults = []
    by_digest: dict[str, Gathered] = {}
    for each in every:
        if not each.digest:
            continue
        first = by_digest.setdefault(each.digest, each)
        if first is not each:
            faults.append(FileFault(each.file, TWICE.format(other=first.file), each.student))
    of_student: defaultdict[str, list[Gathered]] = defaultdict(list)
    for each in by_digest.values():
        if each.student:
            of_student[plain_name(each.student)].append(each)
    counted = []
    for files in of_student.values():
        last = max(files, key=lambda each: (bool(each.checked.lessons), each.made, each.file))
        counted.append(last)
        faults += [
            FileFault(each.file, NEWER.format(other=last.file), each.student)
            for each in files
            if each is not last
        ]
    return sorted(counted, key=lambda each: plain_name(each.student)), faults


def _alike(counted: Sequence[Gathered]) -> list[FileFault]:
    """Lessons that more than one student handed in."""
    holders: defaultdict[str, list[Gathered]] = defaultdict(list)
    for each in counted:
        for lesson in dict.fromkeys(each.lessons):
            holders[lesson].append(each)
    return [_copied(each, holders) for each in counted if _with_others(each, holders)]


def _with_others(each: Gathered, holders: Mapping[str, Sequence[Gathered]]) -> list[str]:
    """The lessons of a file that are in others too."""
    return [lesson for lesson in dict.fromkeys(each.lessons) if len(holders[lesson]) > 1]


def _copied(each: Gathered, holders: Mapping[str, Sequence[Gathered]]) -> FileFault:
    shared = _with_others(each, holders)
    others = sorted({o.file for lesson in shared for o in holders[lesson]} - {each.file})
    said = ALIKE.format(
        count="a lesson" if len(shared) == 1 else f"{len(shared)} lessons",
        others=listed(others, MOST_ALIKE),
        ids="another id" if len(others) == 1 else "other ids",
    )
    return FileFault(each.file, said, each.student)


def _students(
    course: Course, counted: Sequence[Gathered], roster: Mapping[str, str]
) -> tuple[Student, ...]:
    """Those who handed in, and those of the roster who did not; in its order, then by id."""
    nothing = tuple(
        StudentWork(each.name, each.title, "not begun", of=course.asked[each.name])
        for each in course.problems
    )
    by_id = {plain_name(each.student): each for each in counted}
    found = []
    for whose, name in roster.items():
        each = by_id.pop(plain_name(whose), None)
        if each is None:
            found.append(Student(whose, name, nothing))
        else:
            found.append(replace(_student(each), id=whose, name=name))
    return (*found, *(_student(each) for each in by_id.values()))


def _student(each: Gathered) -> Student:
    return Student(each.student, "", each.works, each.file, each.skills)


def _added(one: VerdictsChecked, other: VerdictsChecked) -> VerdictsChecked:
    return VerdictsChecked(
        one.answers + other.answers,
        one.again + other.again,
        one.lessons + other.lessons,
        one.lessons_again + other.lessons_again,
        one.otherwise + other.otherwise,
    )

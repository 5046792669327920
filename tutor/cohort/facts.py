"""What is told of a class? Plain facts, from one answer to the whole report.

Every collection is in a fixed order, so that the same files give the same report to the byte.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from tutor.skills import Mastery

HowFar = Literal["not begun", "begun", "watched", "finished"]
STATES: tuple[HowFar, ...] = ("finished", "watched", "begun", "not begun")
"""How far a work got, furthest first; `watched` is gone through to its end, with next to nothing of the student's own."""


@dataclass(frozen=True)
class AnswerGiven:
    """One thing typed or chosen: in which step, for which equation or value, and how it was judged.

    `place` is the equation or value ("Fx @ C", "value AB", "support A"), `verdict` "right" or
    "wrong", `codes` the mistakes, `time` seconds since 1970; `others` are mistakes of which each explains
    it as well (`leaning` says which of them is among `codes`).
    """

    step: str
    place: str
    text: str
    verdict: str
    codes: tuple[str, ...]
    time: float
    others: tuple[str, ...] = ()


@dataclass(frozen=True)
class StudentWork:
    """One student's work on one problem, all lessons on it together.

    Of the `of` forces that are asked for (0 where statics does not solve the truss) `found` are the
    student's own and `shown` were shown at the board. `lines` counts what was typed, `slips` wrong
    answers, `hints` hints asked for, `told` lines that were given as the last hint; `minutes` is the
    time on task, pauses left out. `step` is where the lesson that got furthest stands; `first` and
    `last` are seconds since 1970, None if not begun.
    """

    problem: str
    title: str
    state: HowFar
    step: str = ""
    found: int = 0
    of: int = 0
    lines: int = 0
    hints: int = 0
    told: int = 0
    minutes: float = 0.0
    slips: int = 0
    lessons: int = 0
    first: float | None = None
    last: float | None = None
    shown: int = 0
    answers: tuple[AnswerGiven, ...] = ()

    @property
    def share(self) -> float:
        """The share of the forces asked for that are the student's own; where none is asked for,
        whether the student finished."""
        return self.found / self.of if self.of else float(self.state == "finished")


@dataclass(frozen=True)
class Student:
    """One student: the id handed in, the name where a roster has one, a work for each problem of
    the set, and how far each skill is mastered."""

    id: str
    name: str
    problems: tuple[StudentWork, ...]
    file: str = ""
    skills: tuple[Mastery, ...] = ()

    @property
    def finished(self) -> int:
        """How many problems are finished, those only watched left out."""
        return sum(work.state == "finished" for work in self.problems)

    @property
    def handed_in(self) -> bool:
        return bool(self.file)


@dataclass(frozen=True)
class Mistaken:
    """A mistake made at one problem in one step: how often, by how many students, and with which
    lines, each with how often it was typed, most frequent first."""

    code: str
    called: str
    problem: str
    step: str
    times: int
    students: int
    typed: tuple[str, ...]
    counts: tuple[int, ...]


@dataclass(frozen=True)
class KindOverSet:
    """A mistake over the whole set: how often, by how many of the students who handed in, and where
    most of them made it."""

    code: str
    called: str
    times: int
    students: int
    problem: str
    step: str


@dataclass(frozen=True)
class Stop:
    """Where students stopped who have begun a problem and not finished it, and what they tried last
    in vain: `place`, empty where nothing was."""

    problem: str
    step: str
    place: str
    students: int


@dataclass(frozen=True)
class FileFault:
    """What is wrong with one file, in one sentence; whose it is where that can be read."""

    file: str
    message: str
    student: str = ""


@dataclass(frozen=True)
class ProblemOf:
    """A problem of the set: the name of its file or its id, and its title."""

    name: str
    title: str


@dataclass(frozen=True)
class VerdictsChecked:
    """How the verdicts came about: answers in all, how many were judged again now, lessons that were
    judged again as a whole, and answers of which today's judge says otherwise than when given."""

    answers: int = 0
    again: int = 0
    lessons: int = 0
    lessons_again: int = 0
    otherwise: int = 0


@dataclass(frozen=True)
class ClassReport:
    """What a class did with a set, and what it gets wrong.

    `mistakes` are by kind, problem and step; `kinds` over the whole set; both most students first.
    `again` are the sentences on what to explain again. `faults` are files with something wrong.
    """

    set: str
    title: str
    problems: tuple[ProblemOf, ...]
    students: tuple[Student, ...]
    mistakes: tuple[Mistaken, ...]
    kinds: tuple[KindOverSet, ...]
    stops: tuple[Stop, ...]
    again: tuple[str, ...]
    faults: tuple[FileFault, ...]
    checked: VerdictsChecked = field(default_factory=VerdictsChecked)

    @property
    def handed_in(self) -> int:
        """How many students handed something in that can be read."""
        return sum(student.handed_in for student in self.students)

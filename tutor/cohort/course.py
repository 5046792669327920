"""Which problems has each student of a set, and to which of them does a lesson belong?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from tutor.cohort.facts import ProblemOf
from tutor.cohort.owned import asked
from tutor.lesson import Lesson
from tutor.model import Problem, ProblemSet, load_set
from tutor.records.belonging import belonging, content_of
from tutor.records.contents import Header
from tutor.statics import Unsolvable, solve
from tutor.variants import NoVariant, variant_of
from tutor.variants.choose import problem_name


@dataclass(frozen=True)
class Own:
    """The problems of one student by name, each as it is written into a journal, and by that text."""

    problems: Mapping[str, Problem]
    by_content: Mapping[str, str]


class Course:
    """A set as its instructor has it; the numbers of each student follow from their id."""

    def __init__(self, among: ProblemSet) -> None:
        self.among = among
        self.base = {problem_name(problem): problem for problem in among.problems}
        self._contents: dict[int, tuple[Problem, str]] = {}
        self._solvable: dict[int, tuple[Problem, bool]] = {}

    @property
    def problems(self) -> tuple[ProblemOf, ...]:
        """The problems in the order of the set; titles as in the files."""
        return tuple(ProblemOf(name, problem.title) for name, problem in self.base.items())

    @cached_property
    def asked(self) -> Mapping[str, int]:
        """How many forces each problem asks for."""
        return {name: _asked(problem) for name, problem in self.base.items()}

    def of(self, student: str) -> Own:
        """The problems with this student's numbers; one that has none for them is left out."""
        found: dict[str, Problem] = {}
        for name, problem in self.base.items():
            try:
                own = variant_of(problem, student=student, set=self.among.name)
            except NoVariant:
                continue
            if self._can_be_solved(own):
                found[name] = own
        return Own(found, {self._content(own): name for name, own in found.items()})

    def belongs(self, own: Own, header: Header, student: str) -> tuple[str, Problem] | str:
        """The problem that a lesson is on, or in one phrase why it does not count."""
        name = own.by_content.get(header.content)
        if name is not None:
            return name, own.problems[name]
        others = False
        for name, problem in own.problems.items():
            how = belonging(problem, header.problem, header.content, header.title)
            if how is not None and not how.changes:
                return name, problem
            others = others or how is not None
        if self._is_as_written(header):
            return f"it was done with the numbers of the file, before the id {student} was given"
        if others:
            return f"its numbers are not those of {student}, or the problem was changed since"
        return "it is on no problem of this set"

    def _is_as_written(self, header: Header) -> bool:
        for problem in self.base.values():
            how = belonging(problem, header.problem, header.content, header.title)
            if how is not None and not how.changes:
                return True
        return False

    def _content(self, problem: Problem) -> str:
        kept = self._contents.get(id(problem))
        if kept is None:
            kept = self._contents[id(problem)] = problem, content_of(problem)
        return kept[1]

    def _can_be_solved(self, problem: Problem) -> bool:
        kept = self._solvable.get(id(problem))
        if kept is None:
            try:
                solve(problem)
            except Unsolvable:
                kept = problem, problem.truss is not None
            else:
                kept = problem, True
            self._solvable[id(problem)] = kept
        return kept[1]


def _asked(problem: Problem) -> int:
    try:
        return asked(Lesson(problem))
    except Unsolvable:
        return 0


def course_at(path: Path) -> Course:
    """The set at a path. ProblemError where there is nothing that can be used."""
    return Course(load_set(path))

"""What does the line *mean*? Right, or which mistake, or not decided.

The room can be called as `judge` in it: `from tutor import judge` gives the room, whether or not
`tutor.judge` was imported before.
"""

from __future__ import annotations

import sys
from collections import OrderedDict
from collections.abc import Mapping, Sequence
from contextlib import suppress
from copy import copy
from dataclasses import replace
from importlib import import_module
from inspect import signature
from types import ModuleType
from typing import Any, Literal

from tutor.judge.about import Along, Asked, Equation, Fx, Fy, M, Value, about_called, in_words
from tutor.judge.below_the_bar import all_below
from tutor.judge.chain import readings_of
from tutor.judge.declared import drawn_otherwise, senses_turned
from tutor.judge.desk import Desk
from tutor.judge.elimination import by_elimination
from tutor.judge.figures_meant import with_decimals
from tutor.judge.in_part import stands_in_part
from tutor.judge.in_size import of_sizes
from tutor.judge.kind import Case
from tutor.judge.known_values import NOTHING_OWN, KnownValues, checked_known
from tutor.judge.lines_meant import unclear
from tutor.judge.mistakes import KINDS
from tutor.judge.other_equation import holds_at_solution
from tutor.judge.proportion import proportion_in
from tutor.judge.steps import judge_typewritten
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import TypedEquation, typed_equation
from tutor.judge.verdict import Mistake, Remark, Verdict
from tutor.judge.worked import ends_in_moment, sized
from tutor.judge.written import true_line
from tutor.model import Problem
from tutor.notation import Line, Names, Unreadable, read_letters, read_line, read_pieces
from tutor.notation.sentences.set_equal import value_spaced
from tutor.statics import Unsolvable, solve

__all__ = [
    "Along",
    "Asked",
    "Equation",
    "Fx",
    "Fy",
    "Judge",
    "M",
    "Mistake",
    "Remark",
    "Value",
    "Verdict",
    "in_words",
    "judge",
    "judge_of",
    "right_line",
]


class Judge:
    """Judges lines about one problem, keeping its names and its solution ready."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.names: Names = problem.names
        self.letters: Mapping[str, float] = {}
        self._values: dict[str, float] | None = None

    def knowing(self, letters: Mapping[str, float]) -> Judge:
        """This judge for a student whose earlier lines give these letters a size."""
        if letters == self.letters:
            return self
        with suppress(Unsolvable):
            self.values()
        other = copy(self)
        other.letters = letters
        return other

    def read(self, text: str) -> Line | Unreadable:
        """A line as typed, with the letters that earlier lines give a size."""
        return read_line(text, self.names, said=self.letters)

    def read_in_part(self, text: str) -> Line | None:
        """The clauses that can be read of a line which cannot; to be trusted where they are right."""
        return read_pieces(text, self.names, said=self.letters)

    def values(self) -> dict[str, float]:
        """The true value of every unknown, in its positive sense. Unsolvable where there is none."""
        if self._values is None:
            self._values = dict(solve(self.problem).values)
        return self._values

    def known_values(
        self,
        senses: Mapping[str, str] | None = None,
        known: Mapping[str, float | int | str] | None = None,
    ) -> KnownValues:
        """The student's senses and values, checked; ValueError as in `known_values.checked`."""
        return checked_known(self.problem, self.names, senses, known)

    def judge(
        self,
        about: Asked,
        text: str,
        own: KnownValues | None = None,
        standing: Sequence[Equation] = (),
        lines: Sequence[str] = (),
    ) -> Verdict:
        """The verdict on `text` as an answer to `about`.

        `standing` are the equations that stand for the same body; `lines` the student's own right
        lines as typed, from which a value may have been worked out.
        """
        own = own or NOTHING_OWN
        said = self._letters_in(lines)
        if isinstance(about, Value):
            text = value_spaced(text, self.names, about.unknown)
        line = read_line(text, self.names, said=said)
        if isinstance(line, Unreadable) and isinstance(about, Value):
            text = with_decimals(self.problem, text, line) or text
            line = read_line(text, self.names, said=said)
        mixed = isinstance(line, Unreadable) and line.code == "dimension" and isinstance(about, M)
        if mixed:
            again = read_line(text, self.names, said=said, mixed=True)
            line = line if isinstance(again, Unreadable) else again
        if isinstance(line, Unreadable):
            in_part = read_pieces(text, self.names, said=said)
            if in_part is not None:
                verdict = _judged(self._desk(own, standing, lines, said), about, in_part)
                if stands_in_part(verdict, in_part, self.names):
                    return verdict
            return Verdict("unreadable", line.message, about=about, unreadable=line)
        desk = self._desk(own, standing, lines, said)
        verdict = _judged(desk, about, line)
        if mixed and verdict.right:
            if (name := ends_in_moment(line)) is not None:
                return _in_unit_of_moment(desk, about, name)
            return replace(verdict, remarks=(*verdict.remarks, Remark("arm", ARM_OF_ONE)))
        return verdict

    def follows(
        self, about: Equation, line: Line, own: KnownValues, standing: Sequence[Equation]
    ) -> bool:
        """Whether `judge` would say of a line that it follows, or does not, from those of its body."""
        desk = Desk(self.problem, self.names, own, standing, (), self.values, list)
        return bool(line.referred) and by_elimination(desk, about, line) is not None

    def _desk(
        self,
        own: KnownValues,
        standing: Sequence[Equation],
        lines: Sequence[str],
        said: Mapping[str, float],
    ) -> Desk:
        """What a line is judged with, the student's own lines read."""
        return Desk(
            *(self.problem, self.names, own, standing, self._read(lines, own, said)),
            *(self.values, lambda: self._read(lines, own, said, "radians")),
        )

    def _letters_in(self, lines: Sequence[str]) -> Mapping[str, float]:
        """The angles and lengths that the student's own lines give a letter."""
        found = dict(self.letters)
        for text in lines:
            found |= read_letters(text, self.names, found)
        return found

    def _read(
        self,
        lines: Sequence[str],
        own: KnownValues,
        said: Mapping[str, float],
        angles: Literal["degrees", "radians"] = "degrees",
    ) -> list[TypedEquation]:
        """The student's own lines in numbers, each equation of them; not those that cannot be read."""
        found = []
        for text in lines:
            line = read_line(text, self.names, angles=angles, said=said)
            if isinstance(line, Unreadable):
                line = read_pieces(text, self.names, said=said) or line
            if not isinstance(line, Unreadable):
                senses = drawn_otherwise(line, self.names, self.problem.member, own)
                line = sized(line) or line
                if proportion_in(line) is not None or of_sizes(line):
                    continue  # it tells sizes and no signs
                found += [self._as_drawn(each, own, senses) for each in self._equations(line, own)]
        return found

    def _equations(self, line: Line, own: KnownValues) -> list[TypedEquation]:
        """The equations of a right line, as it is written or, where it is right only so, all below one bar."""
        desk = Desk(self.problem, self.names, own, (), (), self.values, list)
        ways = [
            [typed_equation(r) for step in each.steps for r in readings_of(desk, each, step)]
            for each in (line, all_below(line))
            if each is not None
        ]
        rest = self.problem, own, self.values(), self.problem.tolerance
        right = (way for way in ways if all(holds_at_solution(each, *rest) for each in way))
        return next(right, ways[0]) if len(ways) > 1 else ways[0]

    def _as_drawn(
        self, line: TypedEquation, own: KnownValues, senses: Mapping[str, str]
    ) -> TypedEquation:
        """A right line under the student's senses, also where it holds only as it says it is drawn."""
        if not senses:
            return line
        rest = self.problem, own, self.values(), self.problem.tolerance
        other = senses_turned(line, senses)
        return (
            other
            if holds_at_solution(other, *rest) and not holds_at_solution(line, *rest)
            else line
        )


def _in_unit_of_moment(desk: Desk, about: Asked, name: str) -> Verdict:
    """The verdict on a right sum of moments behind which a force is given in the unit of a moment."""
    kind, case = KINDS["unit"], Case(desk.problem, Value(name), name)
    mistake = Mistake(kind.code, name, OF_A_MOMENT, kind.reason(case), kind.place(case).text)
    return Verdict("wrong", OF_A_MOMENT, (mistake,), about=about)


def _judged(desk: Desk, about: Asked, line: Line) -> Verdict:
    """The verdict on a line that may be a sum of its own, or only follow from the lines that stand."""
    if isinstance(about, Fx | Fy) and (asked := unclear(desk.problem, line.label, about.joint)):
        return Verdict("undecided", asked, about=about)
    if line.referred and (followed := by_elimination(desk, about, line)) is not None:
        return followed
    verdict = judge_typewritten(desk, about, line)
    if verdict.kind != "wrong" or not desk.standing:
        return verdict
    return by_elimination(desk, about, line, claimed=False) or verdict


MOST_KEPT = 16
ARM_OF_ONE = (
    "A force stands beside moments here; its arm is one, and is better written all the same."
)
OF_A_MOMENT = "The equation is right, but its result is a force and stands in the unit of a moment."
_judges: OrderedDict[int, Judge] = OrderedDict()


def judge_of(problem: Problem) -> Judge:
    """The judge of a problem; the last few are kept ready."""
    kept = _judges.get(id(problem))
    if kept is None or kept.problem is not problem:
        kept = _judges[id(problem)] = Judge(problem)
    _judges.move_to_end(id(problem))
    while len(_judges) > MOST_KEPT:
        _judges.popitem(last=False)
    return kept


def judge(
    problem: Problem,
    about: Asked,
    text: str,
    *,
    senses: Mapping[str, str] | None = None,
    known: Mapping[str, float | int | str] | None = None,
    standing: Sequence[Equation] = (),
    lines: Sequence[str] = (),
) -> Verdict:
    """Judge one typed line or value.

    `senses` maps unknowns to the sense the student drew ("left", "down"; "C" for a member drawn
    pushing on the joint; "against" for R_C); `known` maps unknowns to the student's own values
    under those senses, a string keeping the precision it was written with; `standing` are the
    equations that already stand for the same body; `lines` are the student's own right lines, from
    which a value may have been worked out. Names may be spelled in every way that can be typed in a
    line. ValueError for a name or sense that the problem does not have; it says which is nearest.
    """
    desk = judge_of(problem)
    about = about_called(problem, about)
    standing = [about_called(problem, each) for each in standing]
    return desk.judge(about, text, desk.known_values(senses, known), standing, lines)


def right_line(problem: Problem, about: Equation, own: KnownValues) -> str:
    """A right line for `about`, with the student's senses and values: the last hint."""
    return true_line(TrueEquation(problem, about, own))


class Room(ModuleType):
    """This module, which is called as its function `judge`."""

    __call__ = staticmethod(judge)
    __signature__ = signature(judge)

    def __reduce__(self) -> tuple[Any, ...]:
        return import_module, (self.__name__,)


sys.modules[__name__].__class__ = Room

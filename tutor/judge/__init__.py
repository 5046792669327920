"""What does the line *mean*? Right, or which mistake, or not decided."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Mapping, Sequence
from typing import Literal

from tutor.judge.about import About, Along, Fx, Fy, LineAbout, M, Value, in_words
from tutor.judge.given import Given, canonical, given, names_of
from tutor.judge.line import Line, judge_line
from tutor.judge.truth import TrueLine
from tutor.judge.typed import Typed, typed
from tutor.judge.values import judge_value
from tutor.judge.verdict import Mistake, Remark, Verdict
from tutor.judge.written import written
from tutor.model import Problem
from tutor.notation import Names, Unreadable, read_equation, read_value
from tutor.statics import solve

__all__ = [
    "About",
    "Along",
    "Fx",
    "Fy",
    "Judge",
    "LineAbout",
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
        self.names: Names = names_of(problem)
        self._values: dict[str, float] | None = None

    def values(self) -> dict[str, float]:
        """The true value of every unknown, in its positive sense. Unsolvable where there is none."""
        if self._values is None:
            self._values = dict(solve(self.problem).values)
        return self._values

    def given(
        self,
        senses: Mapping[str, str] | None = None,
        known: Mapping[str, float | int | str] | None = None,
    ) -> Given:
        """The student's senses and values, checked; ValueError as in `truth.given`."""
        return given(self.problem, self.names, senses, known)

    def judge(
        self,
        about: About,
        text: str,
        own: Given | None = None,
        standing: Sequence[LineAbout] = (),
        lines: Sequence[str] = (),
    ) -> Verdict:
        """The verdict on `text` as an answer to `about`.

        `standing` are the equations that stand for the same body; `lines` the student's own right
        lines as typed, from which a value may have been worked out.
        """
        own = own if own is not None else Given({}, {})
        if isinstance(about, Value):
            return self._value(about, text, own, lines)
        reading = read_equation(text, self.names)
        if isinstance(reading, Unreadable):
            return Verdict("unreadable", reading.message, about=about, unreadable=reading)
        own_lines = self._read(lines)
        return judge_line(
            Line(self.problem, about, reading, self.names, own, standing, own_lines, self.values)
        )

    def _value(self, about: Value, text: str, own: Given, lines: Sequence[str]) -> Verdict:
        reading = read_value(text, self.names, about.unknown)
        if isinstance(reading, Unreadable):
            return Verdict("unreadable", reading.message, about=about, unreadable=reading)
        true = self.values()[about.unknown]
        return judge_value(
            self.problem,
            about,
            reading,
            own,
            true,
            self._read(lines),
            lambda: self._read(lines, "radians"),
        )

    def _read(
        self, lines: Sequence[str], angles: Literal["degrees", "radians"] = "degrees"
    ) -> list[Typed]:
        """The student's own lines in numbers, without those that cannot be read."""
        read = (read_equation(line, self.names, angles=angles) for line in lines)
        return [typed(line) for line in read if not isinstance(line, Unreadable)]


MOST_KEPT = 16
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
    about: About,
    text: str,
    *,
    senses: Mapping[str, str] | None = None,
    known: Mapping[str, float | int | str] | None = None,
    standing: Sequence[LineAbout] = (),
    lines: Sequence[str] = (),
) -> Verdict:
    """Judge one typed line or value.

    `senses` maps unknowns to the sense the student drew ("left", "down"; "C" for a member drawn
    pushing on the joint; "against" for R_C); `known` maps unknowns to the student's own values
    under those senses, a string keeping the precision it was written with; `standing` are the
    equations that already stand for the same body; `lines` are the student's own right lines, from
    which a value may have been worked out. ValueError for a name or sense the problem does
    not have; KeyError for an unknown joint.
    """
    desk = judge_of(problem)
    if isinstance(about, Value):
        about = Value(canonical(problem, about.unknown))
    return desk.judge(about, text, desk.given(senses, known), standing, lines)


def right_line(problem: Problem, about: LineAbout, own: Given) -> str:
    """A right line for `about`, with the student's senses and values: the last hint."""
    return written(TrueLine(problem, about, own))

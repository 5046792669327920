"""A student with a habit: types lines and values, some of them wrong, and mends them by the hints.

What is true comes from `statics` and the free body; which slip is made, from a seed. Of the lesson the
student reads only what is said.
"""

from __future__ import annotations

import itertools
from collections import Counter
from dataclasses import dataclass, field
from random import Random
from typing import Any

from habits import Habit
from lines import Piece, Style, figures, pieces, written
from mending import KEEP, alternatives, mended, values
from slips import slips
from student import Student

from tutor.judge.about import as_text, from_text
from tutor.lesson import Ask, Lesson, Reply
from tutor.lesson.solvable import is_determined
from tutor.model import Problem

MOST_TRIES = 12
TOLD = "For instance: "
VALUE_TOLD = "Type it yourself"
"""Where the line as typed already decides a value, the last hint is that value."""


@dataclass
class Counts:
    """What one walk took: lines and values typed, refused ones, hints by level.

    `followed` are the third hints on lines that were taken at their word, and whether the line was
    right then; `missed` those that named nothing that could be mended.
    """

    lines: int = 0
    values: int = 0
    refused: int = 0
    hints: Counter[int] = field(default_factory=Counter)
    followed: list[tuple[str, bool]] = field(default_factory=list)
    missed: list[str] = field(default_factory=list)

    def add(self, other: Counts) -> None:
        self.lines += other.lines
        self.values += other.values
        self.refused += other.refused
        self.hints += other.hints
        self.followed += other.followed
        self.missed += other.missed


class Walker(Student):
    """One student with a habit at one lesson."""

    def __init__(self, problem: Problem, habit: Habit, seed: int = 1) -> None:
        self.habit = habit
        self.rng = Random(f"{habit.name} {problem.title} {seed}")
        self.counts = Counts()
        self.clock = itertools.count(1_000_000_000, 7)
        self.accuracy: Counter[str] = Counter()
        super().__init__(Lesson(problem), self._take)

    def _take(self, kind: str, **data: Any) -> Reply:
        reply = self.lesson.take(kind, now=float(next(self.clock)), **data)
        if kind == "hint" and reply.accepted:
            self.counts.hints[self.lesson.state.hints_used[-1]] += 1
        return reply

    def slip(self, kind: str, *, count_slip: bool = True, **data: Any) -> None:
        """Now and then a wrong answer where answers are chosen."""
        if kind != "type" and self.rng.random() < self.habit.rate / 2:
            super().slip(kind, count_slip=count_slip, **data)

    def write(self, about: Any, ask: Ask) -> None:
        """One line, perhaps wrong at first; right in the end."""
        key = next(o.key for o in ask.options if from_text(o.key) == about)
        if ask.about != about:
            self.right("choose", about=key)
        known = {n: own.value for n, own in self.lesson.state.own.known.items()}
        true = tuple(pieces(self.lesson.problem, about, self.lesson.state.senses, known))
        ways, hint = [self.with_slip(about, true)], ""
        for _ in range(MOST_TRIES):
            accepted = any(self.type_line(about, each).accepted for each in ways)
            if hint and self.habit.sees_at == 3:
                self.counts.followed.append((hint, accepted or self.is_only_rounded()))
            if accepted:
                return
            hint = self.hint_at(max(2, self.habit.sees_at))
            if TOLD in hint:
                told = hint.partition(TOLD)[2].partition(". Type it")[0]
                assert self._typed(told).accepted, told
                return
            ways = self.mended(about, hint, ways[-1], true)
        raise AssertionError(f"{self.habit.name} never gets {about} right")

    def with_slip(self, about: Any, true: tuple[Piece, ...]) -> tuple[Piece, ...]:
        """The line as first typed."""
        if self.rng.random() >= self.habit.rate:
            return true
        found = [
            slipped
            for slipped in slips(self.lesson.problem, about, true, self.lesson.state.senses)
            if slipped.code in self.habit.codes
        ]
        return self.rng.choice(found).line if found else true

    def type_line(self, about: Any, line: tuple[Piece, ...]) -> Reply:
        """Type it, and again as it is if that is the habit; as many figures as the student keeps."""
        count = self.habit.figures + self.accuracy[as_text(about)]
        text = written(self.rng, self.lesson.problem, line, Style(figures=count, copied=4))
        reply = self._typed(text)
        for _ in range(self.habit.repeats):
            if reply.accepted:
                break
            reply = self._typed(text)
        return reply

    def _typed(self, text: str) -> Reply:
        self.counts.lines += 1
        reply = self.do("type", text=text)
        self.counts.refused += not reply.accepted
        return reply

    def is_only_rounded(self) -> bool:
        """Whether the line typed last is right, but for the few figures that this student keeps."""
        return self.lesson.state.tries[-1].codes == ("rounding",)

    def mended(
        self, about: Any, hint: str, line: tuple[Piece, ...], true: tuple[Piece, ...]
    ) -> list[tuple[Piece, ...]]:
        """The line put right as far as this hint lets this student, in each way it leaves open."""
        if "more figures" in hint:
            self.accuracy[as_text(about)] += 1
            return [line]
        if self.habit.sees_at < 3 or KEEP in hint or VALUE_TOLD in hint:
            return [true]
        ways = (mended(each, line, true) for each in alternatives(hint))
        found = [way for way in ways if way is not None and values(way) != values(line)]
        if not found:
            self.counts.missed.append(hint)
        return found or [true]

    def hint_at(self, level: int) -> str:
        """What the hint of this level says, asked for one after the other."""
        for _ in range(8):
            reply = self.do("hint")
            if reply.accepted and self.lesson.state.hints_used[-1] >= level:
                return reply.text
        raise AssertionError(f"there is no hint of level {level}: {reply.text}")

    def give_values(self, names: list[str]) -> bool:
        """Every value that the standing lines give, some of them wrong at first."""
        given = False
        for name in names:
            if name in self.lesson.state.result or not is_determined(self.lesson.state, name):
                continue
            self.give_value(name)
            given = True
        return given

    def give_value(self, name: str) -> None:
        """One value, perhaps wrong at first; right in the end."""
        if self.rng.random() < self.habit.value_rate and self.own_value(name):
            text = self.wrong_value(name)
            for _ in range(1 + self.habit.repeats):
                if self._value(name, text).accepted:
                    return
        else:
            text = self.right_value(name)
            if self._value(name, text).accepted:
                return
        for _ in range(MOST_TRIES):
            hint = self.hint_at(max(2, self.habit.sees_at))
            if self.habit.sees_at == 4:
                told = hint.partition(". Type it")[0].partition(" = ")[2]
                assert self._value(name, told).accepted, hint
                return
            self.accuracy[name] += "more figures" in hint or "too hard" in hint or "early" in hint
            if self._value(name, self.right_value(name)).accepted:
                return
        raise AssertionError(f"{self.habit.name} never gets {name} right")

    def right_value(self, name: str) -> str:
        count = self.habit.figures + self.accuracy[name]
        value = self.own_value(name)
        text = figures(abs(value), count)
        if name in self.lesson.problem.reaction or value == 0:
            return text if value >= 0 else f"-{text}"
        return f"{text} {'T' if self.truth[name] > 0 else 'C'}"

    def wrong_value(self, name: str) -> str:
        """A value wrong in one of the ways of the habit."""
        value = self.own_value(name)
        way = self.rng.choice(self.habit.value_slips)
        factor = {"sign": -1.0, "unit": 1000.0, "component": 0.8, "moment": 3.0}.get(way, 1.37)
        if way == "letter" and name in self.lesson.problem.member:
            return f"{figures(abs(value), 4)} {'C' if self.truth[name] > 0 else 'T'}"
        return figures((-1.0 if way == "letter" else factor) * value, 4)

    def _value(self, name: str, text: str) -> Reply:
        self.counts.values += 1
        reply = self.do("type", text=f"{name} = {text}")
        self.counts.refused += not reply.accepted
        return reply

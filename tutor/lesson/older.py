"""What stood in a lesson that was kept without its outcomes, by an earlier version?

Its events are judged by today's judge, and what follows them tells where the judge of that time must
have said otherwise: a value that only a refused line can have given, a value gone on with, a
question that is only asked after another one is done. Nothing is given that was not typed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from tutor.judge import Equation, Judge, Value
from tutor.judge.about import equation_of
from tutor.judge.known_values import KnownValue, KnownValues
from tutor.lesson.compare import Differing, stands_though
from tutor.lesson.event import Event
from tutor.lesson.lesson import Lesson
from tutor.lesson.reply import Reply
from tutor.lesson.solvable import lines_giving
from tutor.lesson.state import Result, StandingLine, State
from tutor.lesson.steps.headings import is_bare_value, value_named
from tutor.lesson.trying import right
from tutor.model import Tolerance
from tutor.notation import read_line

USUAL = Tolerance(0.005, 0.02)
"""The tolerance of a problem that names none, from the first version on."""
WIDE = Tolerance(0.1, 0.1)
"""What may have passed for a value that was gone on with."""
FREE_BODY = frozenset({"support", "sense", "turning"})
"""The events that no front end sends before the idealisation is done."""


@dataclass(frozen=True)
class RefusedToday:
    """A line that is refused today, and the equation it was written for."""

    about: Equation
    text: str
    said: str


class Older:
    """Takes the events of one lesson, one after the other, into `lesson`."""

    def __init__(self, lesson: Lesson, events: Sequence[Event]) -> None:
        self.lesson = lesson
        self.events = events
        self.differing: list[Differing] = []
        self._refused: list[RefusedToday] = []

    @cached_property
    def _values(self) -> list[str | None]:
        """By event, the unknown that it gives the value of; read only for what has no outcome."""
        return [self._value_of(event) for event in self.events]

    def take(self, place: int) -> Reply:
        """Fold in the event at `place`, as it must have been taken then."""
        event, lesson = self.events[place], self.lesson
        before = lesson.state
        if event.kind in FREE_BODY and before.step == "idealise":
            lesson.state = replace(before, reasons_done=True, count_done=True, step="free body")
        reply = lesson.apply(event)
        if event.kind != "type" or reply.accepted:
            return reply
        unknown = self._values[place] or self._bare_value_of(event)
        if unknown is not None and unknown not in lesson.state.result:
            return self._value_after_all(place, unknown, before, reply)
        if before.step == "close" and place >= self._last_typed():
            return self._close_after_all(event, before, reply)
        about = self._about(before)
        if about is not None and unknown is None:
            self._refused.append(RefusedToday(about, event.text("text"), reply.text))
        return reply

    def _value_of(self, event: Event) -> str | None:
        """The unknown that a typed text is a value of, or None."""
        if event.kind != "type":
            return None
        return value_named(read_line(event.text("text"), self.lesson.desk.names))

    def _bare_value_of(self, event: Event) -> str | None:
        """The unknown whose value a number alone must be: the one open in the line just refused."""
        line = read_line(event.text("text"), self.lesson.desk.names)
        if not self._refused or not is_bare_value(line):
            return None
        state = self.lesson.state
        linear = equation_of(state.problem, self._refused[-1].about).linear
        names = [name for name in linear if name is not None and name not in state.result]
        return names[0] if len(names) == 1 else None

    def _last_typed(self) -> int:
        return max((i for i, event in enumerate(self.events) if event.kind == "type"), default=-1)

    def _about(self, before: State) -> Equation | None:
        """The equation that the line just refused was held against."""
        now = self.lesson.state
        if len(now.tries) > len(before.tries):
            tried = now.tries[-1].at
            return tried if isinstance(tried, Equation) else None
        return now.about or before.about

    def _value_after_all(self, place: int, unknown: str, before: State, reply: Reply) -> Reply:
        """A value refused today: kept where it must have stood, with the lines that it rests on."""
        event, lesson, now = self.events[place], self.lesson, self.lesson.state
        typed_again = unknown in self._values[place + 1 :]
        gone_on = any(later.kind == "type" for later in self.events[place + 1 :])
        if typed_again:
            return reply
        tolerance = WIDE if gone_on else USUAL
        desk = Judge(replace(lesson.problem, tolerance=tolerance))
        own = KnownValues(now.senses, {k: v for k, v in now.own.known.items() if k != unknown})
        verdict = desk.judge(Value(unknown), event.text("text"), own)
        if not verdict.right or verdict.value is None:
            return reply
        lines = self._lines_behind(unknown)
        if lines is None:
            return reply
        text = event.text("text")
        for line in lines:
            self.differing.append(Differing(line.text, stands_though(line.text, line.said)))
        if not lines:
            self.differing.append(Differing(text, stands_though(text, reply.text)))
        standing = tuple(StandingLine(line.about, line.text) for line in lines)
        tries = tuple(t for t in now.tries if t.text not in {text, *(x.text for x in lines)})
        result = Result(unknown, text, verdict.value, verdict.radius)
        after = replace(
            now,
            lines=(*now.lines, *standing),
            results=(*now.results, result),
            tries=tries,
            step="joints" if self._reactions_stand(now, unknown) else now.step,
        )
        lesson.let_stand(event, before, after)
        self._refused = [each for each in self._refused if each not in lines]
        return Reply(reply.said, True, verdict)

    def _reactions_stand(self, now: State, unknown: str) -> bool:
        found = {*now.result, unknown}
        return now.step == "reactions" and all(r.name in found for r in now.problem.reactions)

    def _lines_behind(self, unknown: str) -> list[RefusedToday] | None:
        """The fewest of the refused lines, the last ones first, that give this value; None for none."""
        state = self.lesson.state
        taken: list[RefusedToday] = []
        if lines_giving(state, unknown):
            return []
        for each in reversed(self._refused):
            if unknown in equation_of(state.problem, each.about).linear or taken:
                taken.insert(0, each)
                more = tuple(StandingLine(line.about, line.text) for line in taken)
                if lines_giving(replace(state, lines=(*state.lines, *more)), unknown):
                    return taken
        return None

    def _close_after_all(self, event: Event, before: State, reply: Reply) -> Reply:
        """The last line of a lesson, at the close: it closed where it is true of what it was for."""
        lesson, now = self.lesson, self.lesson.state
        about = now.about or before.about
        text = event.text("text")
        if about is None:
            return reply
        known = {k: KnownValue(v.value, v.radius) for k, v in now.own.known.items()}
        if not lesson.desk.judge(about, text, KnownValues(now.senses, known)).right:
            return reply
        self.differing.append(Differing(text, stands_though(text, "")))
        line = StandingLine(about, text, False, True)
        closed = right(now, event, about, text)
        after = replace(
            closed, lines=(*now.lines, line), about=None, step="table", ended=event.time
        )
        lesson.let_stand(event, before, after)
        return Reply(reply.said, True, reply.verdict)

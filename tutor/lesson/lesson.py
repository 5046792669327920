"""A lesson: a fold over what the student did. The same events give the same state."""

from __future__ import annotations

import time
from collections.abc import Iterable

from tutor.judge import Judge
from tutor.lesson.event import Event
from tutor.lesson.fold import beginning, step_once
from tutor.lesson.hints import Levels
from tutor.lesson.reply import Ask, Reply, Say
from tutor.lesson.state import State
from tutor.lesson.steps import STEP
from tutor.lesson.steps.table import Table, table
from tutor.model import Problem

UNDOABLE = frozenset(
    {"reasons", "count", "support", "sense", "turning", "type", "keep", "assume", "zero"}
)


class Lesson:
    """One student's walk through one problem.

    `take` is the only way to change it; `events` is all that has to be kept, and
    `Lesson(problem, events)` is the same lesson again. Unsolvable is raised by a problem that is
    not statically determinate and stable.
    """

    def __init__(self, problem: Problem, events: Iterable[Event] = ()) -> None:
        self.problem = problem
        self.desk = Judge(problem)
        self.desk.values()
        self.events: list[Event] = []
        self._standing: list[tuple[Event, bool]] = []
        self.state: State = beginning(problem, self.desk)
        for event in events:
            self.apply(event)

    def take(self, kind: str, *, now: float | None = None, **data: object) -> Reply:
        """Do one thing, at time `now` (seconds since 1970; the clock's by default)."""
        return self.apply(Event(kind, data, time.time() if now is None else now))

    def apply(self, event: Event) -> Reply:
        """Fold one event in; it is part of `events` from then on, whatever it led to."""
        self.events.append(event)
        if event.kind == "undo":
            return self._undo()
        self.state, reply = step_once(self.state, event, self.desk)
        self._standing.append((event, reply.accepted))
        return reply

    def _undo(self) -> Reply:
        """Take back the last thing that changed where the student is."""
        for i in reversed(range(len(self._standing))):
            event, accepted = self._standing[i]
            if accepted and event.kind in UNDOABLE:
                del self._standing[i]
                self.state = beginning(self.problem, self.desk)
                for kept, _ in self._standing:
                    self.state, _reply = step_once(self.state, kept, self.desk)
                return Reply((Say("note", f"Taken back: {_undone(event)}."),), True)
        return Reply((Say("note", "There is nothing to take back."),))

    @property
    def ask(self) -> Ask:
        """What is asked now."""
        return STEP[self.state.step].ask(self.state)

    @property
    def levels(self) -> Levels:
        """The hints for what is asked now; the front end shows them only through a hint event."""
        return STEP[self.state.step].hints(self.state, self.desk)

    @property
    def table(self) -> Table:
        """The forces found so far and how the walk went."""
        return table(self.state)

    @property
    def done(self) -> bool:
        return self.state.step == "table"


def _undone(event: Event) -> str:
    for key in ("text", "unknown", "joint", "member", "positive"):
        if key in event.data:
            return str(event.data[key])
    return "the last answer" if event.kind != "keep" else "the kept line"

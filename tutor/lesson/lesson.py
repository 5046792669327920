"""A lesson: a fold over what the student did. The same events give the same state."""

from __future__ import annotations

import time
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from tutor.judge import Judge
from tutor.judge.version import judge_version
from tutor.lesson.event import Event
from tutor.lesson.fold import beginning, step_once
from tutor.lesson.hints import Hints
from tutor.lesson.outcome import Outcome, changed, changed_by_all, changes
from tutor.lesson.practice import practice
from tutor.lesson.reply import Ask, Reply, Say
from tutor.lesson.state import State, Try
from tutor.lesson.steps import STEP
from tutor.lesson.steps.table import Table, table
from tutor.model import Problem
from tutor.statics import forces_follow


@dataclass(frozen=True)
class Undoable:
    """One accepted event that can be taken back: the state before it, and the tries it added."""

    event: Event
    before: State
    tries: tuple[Try, ...]


class Lesson:
    """One student's walk through one problem.

    `take` is the only way to change it; `events` is all that has to be kept, and
    `Lesson(problem, events)` is the same lesson again; `desk` may be a judge of the problem that is
    there already. Unsolvable is raised by a problem that is not statically determinate and stable.
    """

    def __init__(
        self, problem: Problem, events: Iterable[Event] = (), desk: Judge | None = None
    ) -> None:
        self.problem = problem
        self.desk = Judge(problem) if desk is None else desk
        if forces_follow(problem):
            self.desk.values()
        self.events: list[Event] = []
        self._changes: list[Undoable] = []
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
            return self._undo(event)
        before = self.state
        self.state, reply = step_once(before, event, self.desk)
        if reply.accepted and event.kind in TAKEN_BACK:
            self._can_be_taken_back(event, before)
        return reply

    def outcome(self, before: State, event: Event, reply: Reply) -> Outcome:
        """What came of the last event, which found the lesson at `before`."""
        verdict = "" if reply.verdict is None else reply.verdict.kind
        back = reply.accepted and event.kind in TAKEN_BACK
        made = {} if event.kind == "undo" else changes(before, self.state)
        return Outcome(judge_version(self.problem), reply.accepted, verdict, back, made)

    def restore(self, event: Event, kept: Outcome) -> None:
        """Take an event as it was taken when it was done; nothing is judged.

        ValueError, and nothing is changed, where the outcome does not fit this truss.
        """
        if event.kind == "undo":
            self.apply(event)
            return
        before = self.state
        self.state = changed(before, event, kept.changed)
        self.events.append(event)
        if kept.back:
            self._can_be_taken_back(event, before)

    def restore_all(self, taken: Sequence[tuple[Event, Outcome]]) -> None:
        """Take several events as they were taken, none of them an undo; nothing is judged.

        Only the state after the last of them is made, so none can be undone from here: for a lesson
        that is looked at and not gone on with. ValueError as of `restore`.
        """
        if taken:
            self.state = changed_by_all(
                self.state, [(event, kept.changed) for event, kept in taken]
            )
            self.events += [event for event, _ in taken]

    def let_stand(self, event: Event, before: State, state: State) -> None:
        """Have the last event, which was refused, stand after all: at `state`, and to be undone."""
        self.state = state
        self._can_be_taken_back(event, before)

    def _can_be_taken_back(self, event: Event, before: State) -> None:
        """Undo takes back what was right of the event or shown; what was wrong beside it stays counted."""
        added = self.state.tries[len(before.tries) :]
        rights = tuple(made for made in added if made.verdict in ("right", "shown"))
        self._changes.append(Undoable(event, before, rights))

    def _undo(self, event: Event) -> Reply:
        """Back to where the last change was made; wrong tries, hints and the clock stay counted."""
        if not self._changes:
            return Reply((Say("note", "There is nothing to take back."),))
        change, now = self._changes.pop(), self.state
        gone = {id(made) for made in change.tries}
        self.state = replace(
            change.before,
            tries=tuple(made for made in now.tries if id(made) not in gone),
            hints=now.hints,
            hints_used=now.hints_used,
            taught=now.taught,
            in_row=now.in_row,
            practice=now.practice,
            started=now.started,
            last_time=max(now.last_time, event.time),
        )
        said = Say("note", f"Taken back: {_undone(change.event)}.")
        refused = self._refused_after(change.event)
        more = (
            () if refused is None else (Say("note", NOT_KEPT.format(refused.text("text").strip())),)
        )
        return Reply((said, *more), True)

    def _refused_after(self, change: Event) -> Event | None:
        """The last line typed after `change`, with nothing taken back since: none of those was kept."""
        for event in reversed(self.events[:-1]):
            if event is change or event.kind == "undo":
                return None
            if event.kind == "type":
                return event
        return None

    @property
    def ask(self) -> Ask:
        """What is asked now."""
        return STEP[self.state.step].ask(self.state)

    @property
    def levels(self) -> Hints:
        """The hints for what is asked now; a front end shows them only through a hint event."""
        return STEP[self.state.step].hints(self.state, self.desk)

    @property
    def table(self) -> Table:
        """The forces found so far and how the walk went."""
        return table(self.state)

    @property
    def practice(self) -> Problem | None:
        """The smaller problem that is offered, or None."""
        return None if self.state.practice is None else practice(*self.state.practice)

    @property
    def done(self) -> bool:
        """Whether the truss has closed and the table is shown."""
        return self.state.step == "table"


TAKEN_BACK = {
    "reasons": "the reasons",
    "count": "the counts",
    "soundness": "what the truss is",
    "loose": "what moves",
    "shares": "{text}",
    "halves": "what is so of a load at the joints",
    "support": "what acts at {joint}",
    "sense": "the arrow of {unknown}",
    "turning": "the positive turning direction",
    "skip": "the steps passed over",
    "type": "{text}",
    "keep": "the kept line",
    "assume": "the arrow of {member}",
    "zero": "{member} = 0",
    "section": "the section",
    "show": "what was shown last",
}
"""The kinds of event that undo takes back, and how each is called then."""
NOT_KEPT = "What you typed after it, {}, was not kept: it needs no undo."
"""What is said where a line was refused, and undo took back what came before it."""


def _undone(event: Event) -> str:
    names = {key: event.text(key).strip() for key in ("joint", "unknown", "text", "member")}
    return TAKEN_BACK.get(event.kind, "what you did").format(**names)

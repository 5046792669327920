"""Which hint comes next at a place? Four levels in order, each on request, none counted down."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tutor.judge import Mistake
from tutor.lesson.event import Event
from tutor.lesson.reply import Reply, Say
from tutor.lesson.state import HintsGiven, State

PAUSE = 5.0
LEVELS = ("look", "reason", "place", "line")


@dataclass(frozen=True)
class Levels:
    """The four hints of one place; only `line` may hold an answer."""

    place: str
    look: str
    reason: str
    where: str
    line: str

    def text(self, level: int, mistakes: tuple[Mistake, ...] = ()) -> str:
        """The hint at `level` (1 to 4); a mistake that was made there speaks for itself."""
        if mistakes and level in (1, 2, 3):
            parts = [(m.text, m.reason, m.place)[level - 1] for m in mistakes]
            return " ".join(dict.fromkeys(part for part in parts if part))
        return (self.look, self.reason, self.where, self.line)[level - 1]


def next_hint(state: State, event: Event, levels: Levels) -> tuple[State, Reply]:
    """The next level at a place, or a nudge to try first when the last one is still fresh."""
    given = state.hints.get(levels.place, HintsGiven())
    fresh = not given.tried_since and event.time - given.time < PAUSE
    if fresh:
        return state, Reply(
            (Say("note", "Try it with this hint first, or look at the picture for a moment."),)
        )
    level = min(given.level + 1, len(LEVELS))
    text = levels.text(level, given.mistakes)
    if level == len(LEVELS):
        text += " Type it yourself, so that it stays with you."
    kept = replace(given, level=level, time=event.time, tried_since=False)
    state = replace(
        state,
        hints={**state.hints, levels.place: kept},
        hints_used=(*state.hints_used, level),
    )
    return state, Reply((Say("hint", text),), True)

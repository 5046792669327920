"""Which hint comes next at a place? Four levels in order, each on request, none counted down."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tutor.judge import Mistake
from tutor.lesson.allowed import most_level, no_more
from tutor.lesson.event import Event
from tutor.lesson.place import Place
from tutor.lesson.practice import offered
from tutor.lesson.reply import Reply, Say
from tutor.lesson.state import HintsGiven, State

PAUSE = 5.0
LEVELS = ("look", "reason", "place", "line")


@dataclass(frozen=True)
class Levels:
    """The four hints of one place; only `line` may hold an answer.

    `typed` says that the answer is typed, not chosen.
    """

    place: Place
    look: str
    reason: str
    where: str
    line: str
    typed: bool = False

    def text(self, level: int, mistakes: tuple[Mistake, ...] = ()) -> str:
        """The hint at `level` (1 to 4); a mistake that was made there speaks for itself."""
        if mistakes and level in (1, 2, 3):
            parts = [(m.text, m.reason, m.place)[level - 1] for m in mistakes]
            return " ".join(dict.fromkeys(part for part in parts if part))
        return (self.look, self.reason, self.where, self.line)[level - 1]


Hints = Levels | str
"""The levels at a place, or one sentence where nothing has to be found out."""


def next_hint(state: State, event: Event, hints: Hints) -> tuple[State, Reply]:
    """The next level at a place, or a nudge to try first when the last one is still fresh."""
    if isinstance(hints, str):
        return state, Reply((Say("note", hints),))
    given = state.hints.get(hints.place, HintsGiven())
    if not given.tried_since and 0.0 <= event.time - given.time < PAUSE:
        nudge = "Try it with this hint first; the next one can be had in a moment."
        return state, Reply((Say("note", nudge),))
    most = most_level(state, hints.place)
    if given.level >= most < len(LEVELS):
        return state, Reply((Say("note", no_more(state)),))
    level = min(given.level + 1, len(LEVELS))
    text = hints.text(level, given.mistakes)
    if level == len(LEVELS) and hints.typed:
        text += " Type it yourself, so that it stays with you."
    kept = replace(given, level=level, time=event.time, tried_since=False)
    state = replace(
        state,
        hints={**state.hints, hints.place: kept},
        hints_used=(*state.hints_used, level),
    )
    said = (Say("hint", text),)
    if level < len(LEVELS):
        return state, Reply(said, True)
    state, offer = offered(state, hints.place, given.mistakes)
    return state, Reply((*said, *offer), True)

"""What changes in the state when something was tried?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Mistake, Value
from tutor.lesson.event import Event
from tutor.lesson.place import Place
from tutor.lesson.state import HintsGiven, State, Try

LAST = 4
"""The level of the hint that holds the line itself."""


def right(state: State, event: Event, place: Place, text: str = "") -> State:
    """After a right try: noted, and the hints at its place start from the beginning again."""
    done = Try(state.step, place, text, "right", (), event.time)
    hints = {key: given for key, given in state.hints.items() if key != place}
    told = isinstance(place, Value) or state.hints.get(place, HintsGiven()).level == LAST
    in_row = state.in_row if told else ()
    return replace(state, tries=(*state.tries, done), hints=hints, in_row=in_row)


def wrong(
    state: State,
    event: Event,
    place: Place,
    codes: tuple[str, ...],
    text: str = "",
    mistakes: tuple[Mistake, ...] = (),
    verdict: str = "wrong",
    others: tuple[str, ...] = (),
) -> State:
    """After a try that was not right: noted, and the next hint at its place may be asked for.

    The verdict itself is the first level; another mistake than before starts at that level again.
    """
    done = Try(state.step, place, text, verdict, codes, event.time, others)
    before = state.hints.get(place, HintsGiven())
    same = [(m.code, m.force) for m in before.mistakes] == [(m.code, m.force) for m in mistakes]
    level = max(before.level, 1) if same else 1
    given = HintsGiven(level, before.time, True, mistakes)
    return replace(state, tries=(*state.tries, done), hints={**state.hints, place: given})

"""The steps of a lesson, one file each: what it asks, what it takes, what it hints."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from tutor.judge import Judge
from tutor.lesson.event import Event
from tutor.lesson.hints import Hints
from tutor.lesson.reply import Ask, Reply
from tutor.lesson.state import State, StepName
from tutor.lesson.steps import close, free_body, idealise, joints, reactions, table

Handler = Callable[[State, Event, Judge], tuple[State, Reply]]


@dataclass(frozen=True)
class Step:
    """What one step asks, which events it takes in its own way, and its hints."""

    ask: Callable[[State], Ask]
    hints: Callable[[State, Judge], Hints]
    handles: Mapping[str, Handler]


STEP: Mapping[StepName, Step] = {
    "idealise": Step(idealise.ask, idealise.hints, idealise.HANDLES),
    "free body": Step(free_body.ask, free_body.hints, free_body.HANDLES),
    "reactions": Step(reactions.ask, reactions.hints, reactions.HANDLES),
    "joints": Step(joints.ask, joints.hints, joints.HANDLES),
    "close": Step(close.ask, close.hints, close.HANDLES),
    "table": Step(table.ask, table.hints, {}),
}

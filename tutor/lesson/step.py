"""What does one step of the walk have to say of itself?"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from tutor.judge import Judge
from tutor.lesson.event import Event
from tutor.lesson.hints import Hints
from tutor.lesson.move import Move
from tutor.lesson.reply import Ask, Reply, Say
from tutor.lesson.state import State

Handler = Callable[[State, Event, Judge], tuple[State, Reply]]


@dataclass(frozen=True)
class LessonStep:
    """One step: what it asks, takes and hints at, when it is done, and what is said about it.

    `order` is its place in the walk: the six of every walk stand at 1 to 6, another one may stand at
    2.5. `handles` are the events it takes in its own way, by kind; each is one by which its `Ask` is
    answered. `done` is whether nothing of it is left to do, `barred` why it cannot be entered yet, or
    None. `arrived` is said on arriving (`arrival`, where it depends on how things stand), `not_here` of an event that does not fit, `where` is how one
    says that a lesson stands there.

    `chosen`: its answers are chosen, not typed, and one who comes back leaves it with the next of
    them. `stays`: it is left by what it does itself. `without_forces`: it is there also for a truss
    that statics does not solve. `skill` is the skill that a first answer in it shows, empty where that
    follows from the equation. `pass_over` does it for one who may pass over it, with what is said.
    `move` is what is done next at the board, where that does not follow from the kind of question.
    """

    name: str
    order: float
    where: str
    arrived: Say
    not_here: str
    ask: Callable[[State], Ask]
    hints: Callable[[State, Judge], Hints]
    handles: Mapping[str, Handler]
    done: Callable[[State], bool]
    barred: Callable[[State], str | None] = lambda state: None
    chosen: bool = False
    stays: bool = False
    without_forces: bool = False
    skill: str = ""
    pass_over: Callable[[State], tuple[State, str]] | None = None
    arrival: Callable[[State], Say] | None = None
    move: Callable[[State, Ask, Judge], Move | None] | None = None

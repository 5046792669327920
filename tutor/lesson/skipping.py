"""Which of the first steps may be passed over by one who has done them right often enough?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Judge
from tutor.lesson.event import Event
from tutor.lesson.reply import Reply, Say
from tutor.lesson.state import State
from tutor.lesson.steps import STEP
from tutor.text import listed

SKIPPABLE: tuple[str, ...] = tuple(name for name, step in STEP.items() if step.pass_over)
NOT_YET = "A step can be passed over once you have done it right twice, at the first try each time."
NOTHING = "Only the idealisation and the free body can be passed over."


def skip(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student passes over this step and those behind it: data `steps`, those that may be."""
    if state.step not in SKIPPABLE:
        return state, Reply((Say("note", NOTHING),))
    allowed = event.strings("steps")
    passed: list[str] = []
    told: list[str] = []
    for name in SKIPPABLE[SKIPPABLE.index(state.step) :]:
        pass_over = STEP[name].pass_over
        if name not in allowed or pass_over is None:
            break
        passed.append(name)
        state, said = pass_over(replace(state, step=name))
        told.append(said)
    if not passed:
        return state, Reply((Say("note", NOT_YET),))
    sentences = filter(None, [f"Passed over: {listed(passed)}.", *told])
    return state, Reply((Say("note", " ".join(sentences)),), True)

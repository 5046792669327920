"""Which of the first steps may be passed over by one who has done them right often enough?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Judge
from tutor.judge.known_values import senses_for
from tutor.lesson.event import Event
from tutor.lesson.reply import Reply, Say
from tutor.lesson.state import State, StepName
from tutor.lesson.steps.free_body import TURNINGS, sense_in_words
from tutor.lesson.steps.spread import all_brought, in_words
from tutor.text import listed

SKIPPABLE: tuple[StepName, ...] = ("idealise", "free body")
NOT_YET = "A step can be passed over once you have done it right twice, at the first try each time."
NOTHING = "Only the idealisation and the free body can be passed over."


def skip(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student passes over this step and those behind it: data `steps`, those that may be.

    Arrows not drawn yet are drawn in the positive sense, and moments count counter-clockwise.
    """
    if state.step not in SKIPPABLE:
        return state, Reply((Say("note", NOTHING),))
    allowed = event.strings("steps")
    passed: list[str] = []
    for step in SKIPPABLE[SKIPPABLE.index(state.step) :]:
        if step not in allowed:
            break
        passed.append(step)
        state = replace(_done(state, step), step=step)
    if not passed:
        return state, Reply((Say("note", NOT_YET),))
    said = f"Passed over: {listed(passed)}."
    if "idealise" in passed and state.problem.spreads:
        said += f" What lay on the members acts at the joints: {in_words(state.problem)}."
    if "free body" in passed:
        said += f" {_drawn(state)}"
    return state, Reply((Say("note", said),), True)


def _done(state: State, step: StepName) -> State:
    if step == "idealise":
        return replace(all_brought(state), reasons_done=True, count_done=True)
    problem = state.problem
    senses = {r.name: senses_for(problem, r.name)[0] for r in problem.reactions}
    return replace(
        state,
        supports_done=tuple(support.joint for support in problem.supports),
        senses={**senses, **state.senses},
        turning=state.turning or TURNINGS[0],
    )


def _drawn(state: State) -> str:
    """How the arrows stand now."""
    arrows = [
        f"{r.name} {sense_in_words(state.problem, r.name, state.senses[r.name])}"
        for r in state.problem.reactions
    ]
    return (
        f"Drawn: {listed(arrows)}; moments count {state.turning} positive. Until it is used, an "
        "arrow can be drawn the other way."
    )

"""How does one event change where the student is?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Judge
from tutor.lesson.event import Event
from tutor.lesson.hints import next_hint
from tutor.lesson.reply import Reply, Say
from tutor.lesson.state import STEPS, Result, State, StepName
from tutor.lesson.steps import STEP, Handler, joints, writing
from tutor.model import Problem

ANYWHERE: dict[str, Handler] = {"joint": joints.pick, "keep": writing.keep_offered}


def beginning(problem: Problem, desk: Judge) -> State:
    """The state before the first event; given reactions stand with their senses and values."""
    if "reactions" not in problem.given:
        return State(problem)
    senses, results = {}, []
    for reaction in problem.reactions:
        value = desk.values()[reaction.name]
        positive, negative = writing.senses_for(problem, reaction.name)
        senses[reaction.name] = positive if value >= 0 else negative
        text = f"{abs(value):.5g}"
        results.append(Result(reaction.name, text, abs(value), 0.0, "given"))
    supports = tuple(s.joint for s in problem.supports)
    return State(
        problem,
        supports_done=supports,
        senses=senses,
        turning="counter-clockwise",
        results=tuple(results),
    )


def step_once(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The state after one event, and what is said; an event that does not fit changes nothing."""
    started = state.started if state.started is not None else event.time
    state = replace(state, started=started, last_time=max(state.last_time, event.time))
    if event.kind == "hint":
        return next_hint(state, event, STEP[state.step].hints(state, desk))
    if event.kind == "go":
        return _go(state, event)
    handler = STEP[state.step].handles.get(event.kind) or ANYWHERE.get(event.kind)
    if handler is None:
        return state, Reply((Say("note", f"That does not belong to this step ({state.step})."),))
    if event.kind == "joint" and (barred := _barred(state, "joints")):
        return state, Reply((Say("note", barred),))
    before = state.step
    state, reply = handler(state, event, desk)
    state = _advance(state)
    if state.step != before and reply.accepted:
        reply = replace(reply, said=(*reply.said, Say("note", ARRIVED[state.step])))
    return state, reply


ARRIVED: dict[StepName, str] = {
    "idealise": "Back to the idealisation.",
    "free body": "Next: the free body. The supports are taken away and replaced by what they do.",
    "reactions": "Next: the reactions, from the equilibrium of the whole truss.",
    "joints": "Next: the joints, one after the other.",
    "close": "All forces are found. Next: does the truss close?",
    "table": "Done: the table is complete.",
}


def _barred(state: State, step: StepName) -> str | None:
    """Why a step cannot be entered yet, or None."""
    found = state.reactions_done and state.members_done
    if step in ("reactions", "joints") and not state.free_body_done:
        return "First replace every support and draw its arrows: the lines need them."
    if step in ("close", "table") and not found:
        return "Some forces are still unknown."
    return None


def _go(state: State, event: Event) -> tuple[State, Reply]:
    """The student goes to another step: data `step`."""
    wanted = event.data.get("step")
    if wanted not in STEPS:
        return state, Reply((Say("note", f"The steps are {', '.join(STEPS)}."),))
    step: StepName = wanted
    if barred := _barred(state, step):
        return state, Reply((Say("note", barred),))
    about = None if step != state.step else state.about
    moved = replace(state, step=step, about=about, joint=state.joint if step == "joints" else None)
    return moved, Reply((Say("note", ARRIVED[step]),), True)


def _advance(state: State) -> State:
    """On to the next step where this one is done."""
    if state.step == "idealise" and state.reasons_done and state.count_done:
        state = replace(state, step="free body")
    if state.step == "free body" and state.free_body_done:
        state = replace(state, step="reactions")
    if state.step == "reactions" and state.reactions_done:
        state = replace(state, step="joints", about=None, joint=None)
    if state.step == "joints":
        if state.joint is not None and not state.unknown_at(state.joint):
            state = replace(state, joint=None, about=None)
        if state.reactions_done and state.members_done:
            state = replace(state, step="close", about=None, joint=None)
    return state

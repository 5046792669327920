"""How does one event change where the student is?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Judge
from tutor.judge.known_values import senses_for
from tutor.lesson.allowed import as_allowed
from tutor.lesson.event import Event
from tutor.lesson.hints import next_hint
from tutor.lesson.reply import Reply, Say
from tutor.lesson.skipping import skip
from tutor.lesson.state import Result, State
from tutor.lesson.step import Handler
from tutor.lesson.steps import (
    STEP,
    STEPS,
    brought,
    free_body,
    idealise,
    joints,
    line_kept,
    section,
    sound,
    zero,
)
from tutor.lesson.steps.letters import with_letters
from tutor.lesson.watching.guessing import guess
from tutor.lesson.watching.show import show
from tutor.model import Problem
from tutor.statics import forces_follow

ANYWHERE: dict[str, Handler] = {
    "bring": brought.bring,
    "joint": joints.pick,
    "keep": line_kept.keep_offered,
    "assume": joints.assume,
    "zero": zero.state_zero,
    "skip": skip,
    "section": section.take_section,
    "sense": free_body.sense,
}
ON_FREE_BODY = frozenset({"joint", "assume", "zero", "sense", "section"})
ANSWERS = {kind for step in STEP.values() if step.chosen for kind in step.handles} | {"skip"}


def beginning(problem: Problem, desk: Judge) -> State:
    """The state before the first event; given reactions stand with their senses and values."""
    if "reactions" not in problem.given:
        return State(problem)
    senses, results = {}, []
    for reaction in problem.reactions:
        value = desk.values()[reaction.name]
        positive, negative = senses_for(problem, reaction.name)
        senses[reaction.name] = positive if value >= 0 else negative
        size = float(f"{abs(value):.12g}")
        results.append(Result(reaction.name, f"{size:.5g}", size, 0.0, "given"))
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
    desk = desk.knowing(state.letters)
    if event.kind == "hint":
        return next_hint(state, event, STEP[state.step].hints(state, desk))
    if event.kind == "show":
        return show(state, event, desk, step_once)
    if event.kind == "guess":
        return guess(state, event, desk, step_once)
    if event.kind == "go":
        return _go(state, event)
    handler = STEP[state.step].handles.get(event.kind) or ANYWHERE.get(event.kind)
    if handler is None:
        return state, Reply((Say("note", STEP[state.step].not_here),))
    if event.kind in ON_FREE_BODY - STEP[state.step].handles.keys() and (
        why := barred(state, "joints")
    ):
        return state, Reply((Say("note", why),))
    after, reply = as_allowed(state, *handler(state, event, desk))
    if event.kind == "type" and reply.accepted:
        after = with_letters(after, event, desk)
    if not reply.accepted:
        return after, reply
    moved = _left_behind(state, _advance(state, after, event))
    if moved.step != state.step:
        reply = replace(reply, said=(*reply.said, _arrival(state, moved)))
    return moved, reply


def barred(state: State, step: str) -> str | None:
    """Why a step cannot be entered yet, or None."""
    if STEP[step].order > idealise.STEP.order and (why := idealise.unsaid(state)):
        return why
    if not forces_follow(state.problem):
        return None if STEP[step].without_forces else sound.NO_FORCES
    return STEP[step].barred(state)


def _go(state: State, event: Event) -> tuple[State, Reply]:
    """The student goes to another step: data `step`."""
    wanted = event.data.get("step")
    step = next((step for step in STEPS if step == wanted), None)
    if step is None:
        return state, Reply((Say("note", f"The steps are {', '.join(STEPS)}."),))
    if why := barred(state, step):
        return state, Reply((Say("note", why),))
    if step == state.step:
        return state, Reply((Say("note", f"You are at this step ({step})."),))
    moved = replace(state, step=step, about=None, joint=None, part=(), offered=None)
    return moved, Reply((_arrival(state, moved),), True)


def _left_behind(before: State, after: State) -> State:
    """A line that was offered to be kept belongs to where it was typed, and is not offered elsewhere."""
    here, there = ((s.step, s.joint, s.part) for s in (before, after))
    return after if here == there else replace(after, offered=None)


def _arrival(before: State, after: State) -> Say:
    now = after.step
    if now == STEPS[-1] and not forces_follow(before.problem):
        return Say("note", "Done: there are no forces to find here.")
    back = STEP[now].order < STEP[before.step].order
    if back:
        return Say("note", f"Back at an earlier step: {now}.")
    arrival = STEP[now].arrival
    return STEP[now].arrived if arrival is None else arrival(after)


def _advance(before: State, after: State, event: Event) -> State:
    """On to the first step not done, where this event has finished one.

    A step gone back to is not left by itself, save that one whose answers are chosen asks nothing
    more once done.
    """
    step = STEP[after.step]
    finished = step.done(after) and (
        event.kind in ANSWERS if step.chosen else not step.done(before)
    )
    if step.stays or not finished:
        return _leave_joint(before, after)
    later = STEPS[STEPS.index(step.name) + 1 :]
    following = next((name for name in later if not STEP[name].done(after)), STEPS[-1])
    if not forces_follow(after.problem):
        following = STEPS[-1]
    return replace(after, step=following, about=None, joint=None, part=())


def _leave_joint(before: State, after: State) -> State:
    """A joint is left when its last unknown is found."""
    joint = after.joint
    if joint is not None and before.unknown_at(joint) and not after.unknown_at(joint):
        return replace(after, joint=None, about=None)
    return after

"""How does one event change where the student is?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Judge
from tutor.judge.known_values import senses_for
from tutor.lesson.allowed import as_allowed
from tutor.lesson.event import Event
from tutor.lesson.hints import next_hint
from tutor.lesson.reply import Reply, Say
from tutor.lesson.state import STEPS, Result, State, StepName
from tutor.lesson.steps import (
    STEP,
    Handler,
    brought,
    free_body,
    joints,
    section,
    skipping,
    sound,
    spread,
    writing,
    zero,
)
from tutor.lesson.watching.show import show
from tutor.model import Problem

ANYWHERE: dict[str, Handler] = {
    "bring": brought.bring,
    "joint": joints.pick,
    "keep": writing.keep_offered,
    "assume": joints.assume,
    "zero": zero.state_zero,
    "skip": skipping.skip,
    "section": section.take_section,
    "sense": free_body.sense,
}
ON_FREE_BODY = frozenset({"joint", "assume", "zero", "sense", "section"})
ANSWERS = frozenset(
    {
        *("reasons", "count", "soundness", "loose", "halves", "shares"),
        *("support", "sense", "turning", "skip"),
    }
)
ARRIVED: dict[StepName, str] = {
    "idealise": "Back to the idealisation.",
    "free body": "Next: the free body. The supports are taken away and replaced by what they do.",
    "reactions": "Next: the reactions, from the equilibrium of the whole truss.",
    "joints": "Next: the joints, one after the other.",
    "close": "All forces are found. Next: does the truss close?",
    "table": "Done: the table is complete.",
}
NOT_HERE: dict[StepName, str] = {
    "idealise": "Say first why the members carry axial force only, and count. Lines are written "
    "from the reactions on.",
    "free body": "Replace the supports and draw the arrows first: lines are written from them.",
    "reactions": "This belongs to another step; now the reactions are asked for.",
    "joints": "This belongs to another step; now the joints are asked for.",
    "close": "This belongs to another step; now an equation that was not needed is asked for.",
    "table": "The walk is done. To change something, take back the last line or go to a step.",
}


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
    if event.kind == "hint":
        return next_hint(state, event, STEP[state.step].hints(state, desk))
    if event.kind == "show":
        return show(state, event, desk, step_once)
    if event.kind == "go":
        return _go(state, event)
    handler = STEP[state.step].handles.get(event.kind) or ANYWHERE.get(event.kind)
    if handler is None:
        return state, Reply((Say("note", NOT_HERE[state.step]),))
    if event.kind in ON_FREE_BODY - STEP[state.step].handles.keys() and (
        why := barred(state, "joints")
    ):
        return state, Reply((Say("note", why),))
    after, reply = as_allowed(state, *handler(state, event, desk))
    if not reply.accepted:
        return after, reply
    moved = _advance(state, after, event)
    if moved.step != state.step:
        arrival = Say("note", _arrival(state, moved.step))
        reply = replace(reply, said=(*reply.said, arrival))
    return moved, reply


def barred(state: State, step: StepName) -> str | None:
    """Why a step cannot be entered yet, or None."""
    if step != "idealise" and spread.asked_for(state):
        return spread.FIRST
    if step != "idealise" and sound.asked_for(state):
        return "First say what this truss is: whether it is held, and whether statics can solve it."
    if not sound.can_be_solved(state):
        return None if step in ("idealise", "table") else sound.NO_FORCES
    if step in ("reactions", "joints", "close", "table") and not state.free_body_done:
        return "First replace every support and draw its arrows: the lines need them."
    if step in ("close", "table") and not (state.reactions_done and state.members_done):
        missing = [name for name in state.problem.unknowns if name not in state.result]
        return f"Some forces are still unknown: {', '.join(missing)}."
    if step == "table" and not state.closed:
        return "First see whether the truss closes: write one equation that was not needed."
    return None


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
    moved = replace(state, step=step, about=None, joint=None, part=())
    return moved, Reply((Say("note", _arrival(state, step)),), True)


def _arrival(before: State, now: StepName) -> str:
    back = STEPS.index(now) < STEPS.index(before.step)
    if now == "table" and not sound.can_be_solved(before):
        return "Done: there are no forces to find here."
    return f"Back at an earlier step: {now}." if back else ARRIVED[now]


def _advance(before: State, after: State, event: Event) -> State:
    """On to the first step not done, where this event has finished one.

    A step gone back to is not left by itself, save that the first two ask nothing more once done.
    """
    step = after.step
    finished = _is_done(after, step) and (
        event.kind in ANSWERS if step in ("idealise", "free body") else not _is_done(before, step)
    )
    if step in ("close", "table") or not finished:
        return _leave_joint(before, after)
    later = STEPS[STEPS.index(step) + 1 :]
    following: StepName = next((s for s in later if not _is_done(after, s)), "table")
    if not sound.can_be_solved(after):
        following = "table"
    return replace(after, step=following, about=None, joint=None, part=())


def _is_done(state: State, step: StepName) -> bool:
    match step:
        case "idealise":
            asked = spread.asked_for(state) or sound.asked_for(state)
            return state.reasons_done and state.count_done and not asked
        case "free body":
            return state.free_body_done
        case "reactions":
            return state.reactions_done
        case "joints":
            return state.reactions_done and state.members_done
        case "close":
            return state.closed
    return True


def _leave_joint(before: State, after: State) -> State:
    """A joint is left when its last unknown is found."""
    joint = after.joint
    if joint is not None and before.unknown_at(joint) and not after.unknown_at(joint):
        return replace(after, joint=None, about=None)
    return after

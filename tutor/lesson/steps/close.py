"""Step 5: do the equations that were not needed hold?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Fx, Fy, Judge, M
from tutor.judge.about import LineAbout, as_text, equation_of, in_words
from tutor.judge.independent import adds_something
from tutor.lesson.event import Event
from tutor.lesson.hints import Levels
from tutor.lesson.reply import Ask, Option, Reply, Say
from tutor.lesson.state import State
from tutor.lesson.steps import reactions
from tutor.lesson.steps.writing import headed, line_hints, take_text


def unused(state: State) -> tuple[LineAbout, ...]:
    """The joint equations that no standing line has used."""
    found: list[LineAbout] = []
    for joint in state.problem.joints:
        standing = [line.about for line in state.lines_of(joint.name)]
        for about in (Fx(joint.name), Fy(joint.name)):
            if adds_something(state.problem, about, standing):
                terms = equation_of(state.problem, about).terms
                if any(term.coefficient != 0.0 for term in terms):
                    found.append(about)
                    standing.append(about)
    return tuple(found)


def checks(state: State) -> tuple[LineAbout, ...]:
    """The equations worth writing to close: unused ones of joints, else those of the whole truss."""
    if found := unused(state):
        return found
    used = [line.about for line in state.lines_of(None)]
    whole: list[LineAbout] = [Fx(), Fy(), *(M(joint.name) for joint in state.problem.joints)]
    return tuple(about for about in whole if about not in used)


def ask(state: State) -> Ask:
    """Choose an equation that was not needed, and write it."""
    chosen = None if state.about is None else as_text(state.about)
    options = tuple(Option(as_text(a), in_words(a), as_text(a) == chosen) for a in checks(state))
    return Ask(
        "close",
        "close",
        "Close",
        "All forces are found, and some equations were not needed. They must hold as well: write "
        "one of them, with your values, and see what is left over.",
        options,
        None,
        chosen,
    )


def typed(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student typed a closing line: data `text`, and `about` where not chosen before."""
    if "about" in event.data:
        state, reply = choose(state, event, desk)
        if not reply.accepted:
            return state, reply
    joint = state.about.joint if state.about is not None else None
    about = headed(desk, str(event.data.get("text", "")), joint) or state.about
    state, reply = take_text(state, event, desk, about, closing=True)
    if reply.accepted and about is not None:
        said = (*reply.said, Say("note", left_over(state, about)))
        reply = replace(reply, said=said)
        state = replace(state, about=None, step="table", ended=event.time)
    return state, reply


def choose(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student chose an unused equation: data `about`."""
    joint = str(event.data.get("about", "")).partition(" @ ")[2] or None
    kept = state.joint
    state, reply = reactions.choose(replace(state, joint=joint), event, desk)
    return replace(state, joint=kept), reply


def left_over(state: State, about: LineAbout) -> str:
    """What is left of an equation with the student's values, and whether rounding explains it."""
    left, parts, slack = 0.0, 0.0, 0.0
    for term in equation_of(state.problem, about).terms:
        name = term.force.name
        size = 1.0 if term.force.size is not None else state.signed(name)
        left += term.coefficient * size
        parts += abs(term.coefficient * size)
        if term.force.size is None:
            slack += abs(term.coefficient) * state.result[name].radius
    unit = state.problem.force
    if abs(left) <= 1e-9 * max(parts, 1.0):
        return "With your values nothing is left over: the truss closes."
    shown = f"With your values {abs(left):.2g} {unit} is left over, of {parts:.4g} {unit} added up"
    if abs(left) <= slack + state.problem.tolerance.silent * parts:
        return f"{shown}; your rounding explains it."
    return f"{shown}; that is more than rounding explains."


def hints(state: State, desk: Judge) -> Levels:
    """For the equation chosen, else for the choice."""
    if state.about is not None:
        return line_hints(
            state,
            desk,
            state.about,
            "Put the value of every force at this joint into the sum.",
            "Each value keeps its sign: tension pulls away from the joint, compression pushes into it.",
        )
    where = in_words(checks(state)[0])
    return Levels(
        "close",
        "The reactions came from the whole truss, so some joints were not used in full.",
        "Every joint gives two equations; the ones you did not write must hold by themselves.",
        "Look at the joint you came to last.",
        f"Take {where}.",
    )


HANDLES = {"type": typed, "choose": choose}

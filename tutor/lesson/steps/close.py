"""Step 5: do the equations that were not needed hold?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Fx, Fy, Judge, M, Verdict
from tutor.judge.about import LineAbout, as_text, equation_of, in_words
from tutor.judge.independent import adds_something
from tutor.lesson.event import Event
from tutor.lesson.hints import Levels
from tutor.lesson.reply import Ask, Option, Reply, Say
from tutor.lesson.shown import parts_of, shows_nothing, shows_values
from tutor.lesson.state import State
from tutor.lesson.steps import reactions
from tutor.lesson.steps.hinting import line_hints, value_hints, value_in_trouble
from tutor.lesson.steps.unchosen import equation_meant
from tutor.lesson.steps.writing import keep_line, keep_offered, take_text
from tutor.notation import Unreadable, read_equation

QUESTION = (
    "All forces are found, and some equations were not needed. They must hold as well: write one "
    "of them, with your values, and see what is left over."
)


def unused(state: State) -> tuple[LineAbout, ...]:
    """The joint equations that no standing line has used, the last joints first."""
    found: list[LineAbout] = []
    visited = [line.about.joint for line in state.lines]
    latest = {joint: i for i, joint in enumerate(visited)}
    order = sorted(state.problem.joints, key=lambda joint: -latest.get(joint.name, len(visited)))
    for joint in order:
        used = [line.about for line in state.lines_of(joint.name) if not line.closing]
        for about in (Fx(joint.name), Fy(joint.name)):
            if adds_something(state.problem, about, used):
                found.append(about)
                used.append(about)
    return tuple(found)


def checks(state: State) -> tuple[LineAbout, ...]:
    """The equations worth writing to close.

    Those of joints that were not used and in which at least two forces must balance; where there
    are none, those of the whole truss; where nothing at all has to balance, any that is not used.
    """
    left = unused(state)
    used = [line.about for line in state.lines_of(None) if not line.closing]
    whole: list[LineAbout] = [Fx(), Fy(), *(M(joint.name) for joint in state.problem.joints)]
    others = tuple(about for about in whole if about not in used)
    for choice in (left, others):
        if worth := tuple(about for about in choice if len(parts_of(state, about)) > 1):
            return worth
    return left or others


def ask(state: State) -> Ask:
    """Choose an equation that was not needed, and write it."""
    chosen = None if state.about is None else as_text(state.about)
    options = tuple(Option(as_text(a), in_words(a), as_text(a) == chosen) for a in checks(state))
    return Ask("close", "close", "Close", QUESTION, options, None, chosen)


def typed(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student typed a closing line: data `text`, and `about` where not chosen before."""
    if "about" in event.data:
        state, reply = choose(state, event, desk)
        if not reply.accepted:
            return state, reply
    text = event.text("text")
    joint = state.about.joint if state.about is not None else None
    at = replace(state, joint=joint)
    about, how = equation_meant(at, text, desk, checks(state))
    if how and about is None:
        return state, Reply(how)
    state = replace(state, about=about)
    if about is None:
        return take_text(state, event, desk, None, closing=True)
    verdict = with_rest(state, text, desk, about)
    holds = verdict is not None or desk.judge(about, text, state.own).right
    if holds and not shows_values(state, text, desk, about):
        return state, Reply((Say("note", shows_nothing(about)),))
    if verdict is not None:
        found, reply = keep_line(state, event, about, text, verdict, closing=True)
    else:
        found, reply = take_text(state, event, desk, about, closing=True)
    return _closed(state, found, event, replace(reply, said=(*how, *reply.said)))


def keep(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student keeps a line that is true of something else: it closes as that."""
    found, reply = keep_offered(state, event, desk, closing=True)
    return _closed(state, found, event, reply)


def _closed(before: State, after: State, event: Event, reply: Reply) -> tuple[State, Reply]:
    """On to the table where a line was added, with what is left over in it."""
    if len(after.lines) == len(before.lines):
        return after, reply
    said = (*reply.said, Say("note", left_over(after, after.lines[-1].about)))
    done = replace(after, about=None, step="table", ended=event.time)
    return done, replace(reply, said=said)


def with_rest(state: State, text: str, desk: Judge, about: LineAbout) -> Verdict | None:
    """The right verdict on a line that ends in what the student's own sum leaves over, or None.

    "360 - 390*0.923 = 0.03" says the same as "360 - 390*0.923 = 0", and how far it is off.
    """
    left, equals, right = text.rpartition("=")
    line, rest = read_equation(f"{left}= 0", desk.names), read_equation(f"{right}= 0", desk.names)
    if not equals or isinstance(line, Unreadable) or isinstance(rest, Unreadable):
        return None
    if line.names or rest.names:
        return None
    size = sum(abs(term.value) for term in line.terms)
    off = sum(term.value for term in line.terms) - sum(term.value for term in rest.terms)
    if abs(off) > sum(term.radius for term in rest.terms) + 1e-9 * size:
        return None
    verdict = desk.judge(about, f"{left}= 0", state.own)
    return verdict if verdict.right else None


def choose(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student chose an unused equation: data `about`."""
    joint = event.text("about").partition(" @ ")[2] or None
    kept = state.joint
    state, reply = reactions.choose(replace(state, joint=joint), event, desk)
    return replace(state, joint=kept), reply


def left_over(state: State, about: LineAbout) -> str:
    """What is left of an equation with the student's values, and whether rounding explains it."""
    parts = parts_of(state, about)
    left, added = sum(parts), sum(map(abs, parts))
    slack = state.problem.tolerance.silent * added
    for term in equation_of(state.problem, about).terms:
        if term.force.size is None:
            slack += abs(term.coefficient) * state.result[term.force.name].radius
    problem = state.problem
    unit = f"{problem.force}·{problem.length}" if isinstance(about, M) else problem.force
    if abs(left) <= 1e-9 * max(added, 1.0):
        return "With your values nothing is left over: the truss closes."
    shown = f"With your values {abs(left):.2g} {unit} is left over, of {added:.4g} {unit} added up"
    if abs(left) <= slack:
        return f"{shown}: that is what rounding leaves, and the truss closes."
    return (
        f"{shown}: that is more than the rounding of your values explains. The line is right; look "
        "for a value that was rounded hard."
    )


def hints(state: State, desk: Judge) -> Levels:
    """For what was just wrong; for the equation chosen; else for the choice."""
    if unknown := value_in_trouble(state):
        return value_hints(state, desk, unknown)
    if state.about is not None:
        levels = line_hints(state, desk, state.about)
        body = f"joint {state.about.joint}" if state.about.joint else "the whole truss"
        return replace(
            levels,
            look=f"Put the value of every force on {body} into the sum.",
            reason="Each value keeps its sign: along its arrow plus, against it minus. A member "
            "pulls away from the joint in tension and pushes into it in compression.",
        )
    return Levels(
        "close",
        "The reactions came from the whole truss, so some joints were not used in full.",
        "Every joint gives two equations; the ones you did not write must hold by themselves.",
        "Look at the joint you came to last.",
        f"Take {in_words(checks(state)[0])}.",
    )


HANDLES = {"type": typed, "choose": choose, "keep": keep}

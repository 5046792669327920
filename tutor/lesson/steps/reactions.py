"""Step 3: which equations of the whole truss give the reactions?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Fx, Fy, Judge, M, in_words
from tutor.judge.about import LineAbout, Value, as_text, equation_of, from_text
from tutor.judge.independent import how_many
from tutor.lesson.event import Event
from tutor.lesson.hints import Levels
from tutor.lesson.reply import Ask, Option, Reply, Say
from tutor.lesson.state import State
from tutor.lesson.steps.writing import (
    headed,
    line_hints,
    solvable_now,
    take_text,
    value_hints,
)


def ask(state: State) -> Ask:
    """Choose an equation of the whole truss, write it, then its values."""
    open_names = [r.name for r in state.problem.reactions if r.name not in state.result]
    options = [Option("Fx", "ΣFx"), Option("Fy", "ΣFy")]
    options += [Option(f"M {j.name}", f"ΣM about {j.name}") for j in state.problem.joints]
    chosen = None if state.about is None else as_text(state.about)
    question = f"Find {_listed(open_names)}. Choose an equation of the whole truss and type it"
    question += "." if solvable_now(state) is None else ", or type a value that your lines give."
    return Ask(
        "reactions",
        "line",
        "Reactions",
        question,
        tuple(replace(option, chosen=option.key == chosen) for option in options),
        None,
        chosen,
    )


def _listed(names: list[str]) -> str:
    if len(names) < 2:
        return "".join(names) or "no more reactions"
    return ", ".join(names[:-1]) + " and " + names[-1]


def choose(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student chose an equation: data `about`, as `as_text` writes it."""
    try:
        about = from_text(str(event.data.get("about", "")))
        if isinstance(about, Value):
            raise ValueError
        equation = equation_of(state.problem, about)
    except (ValueError, KeyError):
        return state, Reply(
            (Say("note", "There is no such equation; choose ΣFx, ΣFy or ΣM about a joint."),)
        )
    if about.joint is not None and about.joint != state.joint:
        return state, Reply((Say("note", f"Go to joint {about.joint} first."),))
    said = [Say("note", f"Write {in_words(about)}.")]
    if isinstance(about, M) and isinstance(about.at, str):
        unknowns = [n for n in equation.linear if n is not None and n not in state.result]
        if len(unknowns) > 1 and len(state.lines_of(None)) == 0:
            said.append(Say("remark", _better_point(state, len(unknowns))))
    return replace(state, about=about), Reply(tuple(s for s in said if s.text), True)


def _better_point(state: State, now: int) -> str:
    for joint in state.problem.joints:
        about = M(joint.name)
        names = [
            n
            for n in equation_of(state.problem, about).linear
            if n is not None and n not in state.result
        ]
        if len(names) < now:
            return "There is a point through which more of the unknown forces pass; about it the line is shorter."
    return ""


def typed(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student typed a line or a value: data `text`, and `about` where not chosen before."""
    about = state.about
    if "about" in event.data:
        state, reply = choose(state, event, desk)
        if not reply.accepted:
            return state, reply
        about = state.about
    named = headed(desk, str(event.data.get("text", "")), None)
    if named is not None:
        about = named
    if about is not None and about.joint is not None:
        about = None
    state, reply = take_text(replace(state, about=about), event, desk, about)
    if reply.accepted and reply.verdict is not None and reply.verdict.right:
        state = replace(state, about=None) if not isinstance(reply.verdict.about, Value) else state
    return state, reply


def hints(state: State, desk: Judge) -> Levels:
    """For the line chosen; else for a value that can be had; else for the choice of a line."""
    if state.about is not None and state.about.joint is None:
        about: LineAbout = state.about
        if isinstance(about, M):
            look = "Go round the free body and ask of each force: does it turn the truss about this point?"
            reason = (
                "Each force counts with its perpendicular distance from the point; one whose line of "
                "action passes through the point has no moment about it."
            )
        else:
            look = "Go round the free body and ask of each force: does it have a part in this direction?"
            reason = (
                "What points along the positive direction enters with plus, the rest with minus."
            )
        return line_hints(state, desk, about, look, reason)
    unknown = solvable_now(state)
    if unknown is not None:
        return value_hints(state, desk, unknown)
    best = _shortest(state)
    return Levels(
        "reactions",
        "Look for an equation in which only one reaction is left.",
        "A sum of moments about a point leaves out every force whose line of action passes through "
        "that point.",
        "Follow the lines of action of the reactions: where do two of them meet?",
        f"Take {in_words(best)}." if best is not None else "All reactions are found.",
    )


def _shortest(state: State) -> LineAbout | None:
    """The equation of the whole truss that adds something and has the fewest unknowns."""
    standing = [line.about for line in state.lines_of(None) if line.adds]
    choices: list[LineAbout] = [M(j.name) for j in state.problem.joints]
    choices += [Fx(), Fy()]
    counted = []
    for about in choices:
        names = [
            n
            for n in equation_of(state.problem, about).linear
            if n is not None and n not in state.result
        ]
        if names and how_many(state.problem, [*standing, about], None) > how_many(
            state.problem, standing, None
        ):
            counted.append((len(names), as_text(about), about))
    return min(counted)[2] if counted else None


HANDLES = {"type": typed, "choose": choose}

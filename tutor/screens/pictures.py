"""Which pictures belong to where the student is? Titles and figures, made from the state alone."""

from __future__ import annotations

from collections.abc import Mapping

from tutor.figure import (
    Figure,
    joint_figure,
    moment_figure,
    part_figure,
    result_figure,
    truss_figure,
)
from tutor.figure.parts import Turn
from tutor.judge import M
from tutor.judge.kind import force_in_words
from tutor.lesson import Ask, State
from tutor.lesson.pointing import pointed_out
from tutor.lesson.steps.spread import pictured

TURNS: Mapping[str, Turn] = {"counter-clockwise": "ccw", "clockwise": "cw"}
Picture = tuple[str, Figure]


def pictures(state: State, ask: Ask, preview: tuple[str, str] | None = None) -> tuple[Picture, ...]:
    """What is worth looking at now, the most fitting picture first.

    `preview` is an unknown and the sense it would be drawn in.
    """
    if state.step == "table":
        return (("Results", results(state)),)
    whole = ("The whole truss", truss(state, ask, preview))
    if (arm := pointed_arm(state)) is not None:
        return arm, whole
    if state.part:
        part = free_part(state)
        return (part.title, part), whole
    joint = state.joint
    if joint is None and ask.about is not None:
        joint = ask.about.joint
    if joint is None or state.step not in ("joints", "close"):
        return (whole,)
    return (f"Joint {joint}, cut free", free_joint(state, joint)), whole


def truss(state: State, ask: Ask, preview: tuple[str, str] | None = None) -> Figure:
    """The truss as the student has drawn it so far, with the values found."""
    problem = pictured(state)
    senses = {**state.senses, **dict([preview] if preview else [])}
    arrows = {name: sense for name, sense in senses.items() if name in problem.reaction}
    if state.step == "idealise":
        arrows = {}
    turning = None if state.turning is None else TURNS.get(state.turning)
    return truss_figure(
        problem,
        reactions=arrows,
        forces=as_drawn(state),
        senses=senses,
        highlight=_pointed_out(state, ask, preview),
        turning=turning if state.step == "reactions" else None,
    )


def pointed_arm(state: State) -> Picture | None:
    """The arm that a hint has pointed at, without its length; None where it pointed at none."""
    pointed = pointed_out(state)
    if pointed is None or not pointed.arm or not isinstance(pointed.about, M) or pointed.about.part:
        return None
    turning = None if state.turning is None else TURNS.get(state.turning)
    senses = {n: s for n, s in state.senses.items() if n in state.problem.reaction}
    try:
        figure = moment_figure(
            state.problem, pointed.force, pointed.about.at, senses=senses, turning=turning
        )
    except KeyError:
        return None
    thing = force_in_words(state.problem, pointed.force)
    return f"Where the arm of {thing} runs", figure


def free_joint(state: State, joint: str) -> Figure:
    """One joint cut free: every arrow as drawn, found forces with their value under it.

    The force that a hint has named is pointed out.
    """
    pointed = pointed_out(state)
    problem = state.problem
    lit = {pointed.force} if pointed is not None and pointed.about.joint == joint else set()
    return joint_figure(problem, joint, known=as_drawn(state), senses=state.senses, highlight=lit)


def free_part(state: State) -> Figure:
    """The part kept by a section, cut free as a joint is."""
    pointed, about = pointed_out(state), state.about
    return part_figure(
        state.problem,
        state.part,
        known=as_drawn(state),
        senses=state.senses,
        about=about.at if isinstance(about, M) else None,
        highlight={pointed.force} if pointed is not None and pointed.about.part else (),
        turning=None if state.turning is None else TURNS.get(state.turning),
    )


def as_drawn(state: State) -> dict[str, float]:
    """Values as figures take them: members tension positive, reactions along the student's arrow."""
    members = state.problem.member
    return {
        name: state.signed(name) if name in members else result.value
        for name, result in state.result.items()
    }


def results(state: State) -> Figure:
    """The truss with every force found."""
    return result_figure(state.problem, {name: state.signed(name) for name in state.result})


def _pointed_out(state: State, ask: Ask, preview: tuple[str, str] | None) -> set[str]:
    pointed = pointed_out(state)
    names = {state.joint, preview[0] if preview else None, pointed.force if pointed else None}
    if ask.kind in ("support", "sense"):
        names.add(ask.subject)
    if isinstance(state.about, M) and isinstance(state.about.at, str):
        names.add(state.about.at)
    return {name for name in names if name is not None}

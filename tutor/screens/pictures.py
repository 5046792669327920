"""Which pictures belong to where the student is? Titles and figures, made from the state alone."""

from __future__ import annotations

from collections.abc import Mapping

from tutor.figure import Figure, joint_figure, result_figure, truss_figure
from tutor.figure.parts import Turn
from tutor.judge import M
from tutor.lesson import Ask, State

TURNS: Mapping[str, Turn] = {"counter-clockwise": "ccw", "clockwise": "cw"}
Picture = tuple[str, Figure]


def pictures(state: State, ask: Ask, preview: tuple[str, str] | None = None) -> tuple[Picture, ...]:
    """What is worth looking at now, the most fitting picture first.

    `preview` is an unknown and the sense it would be drawn in.
    """
    if state.step == "table":
        return (("Results", results(state)),)
    whole = ("The whole truss", truss(state, ask, preview))
    joint = state.joint if state.joint is not None else _joint_of(ask)
    if joint is None or state.step not in ("joints", "close"):
        return (whole,)
    return (f"Joint {joint}, cut free", free_joint(state, joint)), whole


def truss(state: State, ask: Ask, preview: tuple[str, str] | None = None) -> Figure:
    """The truss as the student has drawn it so far, with the values found."""
    problem = state.problem
    senses = {**state.senses, **dict([preview] if preview else [])}
    arrows = {name: sense for name, sense in senses.items() if name in problem.reaction}
    if state.step == "idealise":
        arrows = {}
    forces = {}
    for name, result in state.result.items():
        forces[name] = state.signed(name) if name in problem.member else result.value
    turning = None if state.turning is None else TURNS.get(state.turning)
    return truss_figure(
        problem,
        reactions=arrows,
        forces=forces,
        senses=senses,
        highlight=_pointed_out(state, ask, preview),
        turning=turning if state.step == "reactions" else None,
    )


def free_joint(state: State, joint: str) -> Figure:
    """One joint cut free: found forces in their real direction, others as assumed."""
    problem = state.problem
    known = {
        name: state.signed(name) if name in problem.member else result.value
        for name, result in state.result.items()
    }
    return joint_figure(problem, joint, known=known, senses=state.senses)


def results(state: State) -> Figure:
    """The truss with every force found."""
    return result_figure(state.problem, {name: state.signed(name) for name in state.result})


def _joint_of(ask: Ask) -> str | None:
    """The joint whose equation is asked for."""
    return (ask.about or "").partition(" @ ")[2] or None


def _pointed_out(state: State, ask: Ask, preview: tuple[str, str] | None) -> set[str]:
    names = {state.joint, preview[0] if preview else None}
    if ask.kind in ("support", "sense"):
        names.add(ask.subject)
    if isinstance(state.about, M) and isinstance(state.about.at, str):
        names.add(state.about.at)
    return {name for name in names if name is not None}

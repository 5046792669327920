"""Which part of the truss does a line cut off by its heading, or show by itself?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from tutor.judge import Equation, Fx, Fy, Judge, M
from tutor.judge.parts import part_on
from tutor.lesson.event import Event
from tutor.lesson.reply import Reply, Say
from tutor.lesson.state import State
from tutor.lesson.steps import section
from tutor.lesson.steps.headings import label_of
from tutor.lesson.steps.part_shown import part_shown
from tutor.lesson.steps.section import arrived, cut_members, no_section
from tutor.notation.elements.label import Label, PartSaid
from tutor.statics import section_through

AXES: Mapping[str | None, Equation] = {"x": Fx(), "y": Fy()}
WHICH_CUT = (
    "This line speaks of a part: name the members that are cut as well, like “section through "
    "BC, CG and FG, left part”."
)
WHICH_SIDE = "Say which of the two parts you keep: the one with {parts}."


def take_headed(state: State, event: Event, desk: Judge) -> tuple[State, Reply] | None:
    """A line whose heading cuts off a part, or names the one that is cut off, or names no body and is
    right for a part alone; None for any other."""
    label = label_of(event.text("text"), desk.names)
    if label is not None and label.part is None:
        return _of_a_part_alone(state, event, desk, label)
    if label is None or label.part is None:
        return None
    cut = where_cut(state, label.part)
    return (state, Reply((cut,))) if isinstance(cut, Say) else _typed_there(*cut, event, desk)


def _of_a_part_alone(
    state: State, event: Event, desk: Judge, label: Label
) -> tuple[State, Reply] | None:
    """A sum whose heading names no body, where it is that of a part and not that of the whole truss."""
    if label.whole or state.part:
        return None
    if label.kind == "moment" and label.point is not None:
        about: Equation = M(label.point)
    elif label.kind in AXES and label.point is None and state.joint is None:
        about = AXES[label.kind]
    else:
        return None
    verdict = desk.judge(about, event.text("text"), state.own)
    if verdict.right or verdict.true_of is None or not verdict.true_of.part:
        return None
    return _typed_there(*_cut_off(state, verdict.true_of.part), event, desk)


def take_shown(state: State, event: Event, desk: Judge) -> tuple[State, Reply] | None:
    """A line that is right for a part of the truss and says nothing of it; None for any other."""
    part = part_shown(state, event.text("text"), desk)
    return _typed_there(*_cut_off(state, part), event, desk) if part else None


def _typed_there(
    state: State, arrived_there: tuple[Say, ...], event: Event, desk: Judge
) -> tuple[State, Reply]:
    """The line taken at the part, behind what is said of arriving there."""
    state, reply = section.typed(state, event, desk)
    return state, replace(reply, said=(*arrived_there, *reply.said))


def where_cut(state: State, said: PartSaid) -> tuple[State, tuple[Say, ...]] | Say:
    """The state with the part before it that a heading names, and what is said of it.

    A side alone is that of the section that stands open. Where no part is named so, what is missing.
    """
    cut = said.cut or cut_members(state)
    if not cut:
        return Say("note", WHICH_CUT)
    found = section_through(state.problem, cut)
    if not found.divides:
        return Say("note", no_section(found))
    part = None if said.side is None else part_on(state.problem, found, said.side)
    if part is None and set(state.part) in map(set, found.parts):
        part = state.part
    if part is None:
        parts = ", or the one with ".join(", ".join(each) for each in found.parts)
        return Say("note", WHICH_SIDE.format(parts=parts))
    return _cut_off(state, part)


def _cut_off(state: State, part: tuple[str, ...]) -> tuple[State, tuple[Say, ...]]:
    """The state with this part before it, and what is said on arriving."""
    if set(part) == set(state.part):
        return state, ()
    step = state.step if state.step in ("joints", "close") else "joints"
    state = replace(state, step=step, joint=None, about=None, part=part)
    return state, tuple(arrived(state))

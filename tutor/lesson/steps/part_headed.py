"""Which part of the truss does the heading of a line cut off, or is it the one that is cut off already?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge.parts import part_on
from tutor.lesson.reply import Say
from tutor.lesson.state import State
from tutor.lesson.steps.section import arrived, cut_members, no_section
from tutor.notation.label import PartSaid
from tutor.statics import section

WHICH_CUT = (
    "This line speaks of a part: name the members that are cut as well, like “section through "
    "BC, CG and FG, left part”."
)
WHICH_SIDE = "Say which of the two parts you keep: the one with {parts}."


def where_cut(state: State, said: PartSaid) -> tuple[State, tuple[Say, ...]] | Say:
    """The state with the part before it that a heading names, and what is said of it.

    A side alone is that of the section that stands open. Where no part is named so, what is missing.
    """
    cut = said.cut or cut_members(state)
    if not cut:
        return Say("note", WHICH_CUT)
    found = section(state.problem, cut)
    if not found.divides:
        return Say("note", no_section(found))
    part = None if said.side is None else part_on(state.problem, found, said.side)
    if part is None and set(state.part) in map(set, found.parts):
        part = state.part
    if part is None:
        parts = ", or the one with ".join(", ".join(each) for each in found.parts)
        return Say("note", WHICH_SIDE.format(parts=parts))
    if set(part) == set(state.part):
        return state, ()
    step = state.step if state.step in ("joints", "close") else "joints"
    state = replace(state, step=step, joint=None, about=None, part=part)
    return state, tuple(arrived(state))

"""Whose value is a number without a name?"""

from __future__ import annotations

from tutor.judge import Judge, Value
from tutor.judge.about import equation_of
from tutor.lesson.solvable import lines_giving
from tutor.lesson.state import State


def just_found(state: State) -> str | None:
    """The one unknown without value in the line that was just found to be right, or None.

    It stays so while only its value is tried, and the student stays at the body of that line.
    """
    if not state.lines or state.lines[-1].about.joint not in (None, state.joint):
        return None
    about = state.lines[-1].about
    linear = equation_of(state.problem, about).linear
    names = [name for name in linear if name is not None and name not in state.result]
    if len(names) != 1:
        return None
    last = state.tries[-1]
    just_now = last.at == about and last.verdict in ("right", "shown")
    return names[0] if just_now or last.at == Value(names[0]) else None


def only_one_left(state: State) -> str | None:
    """The one unknown without value at the joint, or among the reactions where no joint is chosen."""
    names = state.unknown_at(state.joint) if state.joint else ()
    if state.step == "reactions":
        names = tuple(r.name for r in state.problem.reactions if r.name not in state.result)
    return names[0] if len(names) == 1 else None


def the_one_it_is(state: State, desk: Judge, text: str) -> str | None:
    """The one unknown here that the lines give and whose right value `text` is, or None."""
    here = state.unknown_at(state.joint) if state.joint else state.problem.unknowns
    given = (name for name in here if name not in state.result and lines_giving(state, name))
    names = [name for name in given if desk.judge(Value(name), text, state.own).right]
    return names[0] if len(names) == 1 else None

"""Which letters does a line give a size, for the lines that follow it: tan θ = 3/4, a = 3 m?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Judge
from tutor.lesson.event import Event
from tutor.lesson.reply import Reply, Say
from tutor.lesson.state import State
from tutor.notation import read_letters
from tutor.notation.symbols import FREE_LETTERS, LOAD_LETTERS
from tutor.text import listed


def with_letters(state: State, event: Event, desk: Judge) -> State:
    """The state with the letters that a line taken as right gives a size."""
    found = read_letters(event.text("text"), desk.names, desk.letters)
    return replace(state, letters={**state.letters, **found}) if found else state


def take_letters(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """A line that only says how large letters are: kept for the lines that follow."""
    found = read_letters(event.text("text"), desk.names, desk.letters)
    said = [f"{name} = {size:.4g}{_unit(state, name)}" for name, size in found.items()]
    return state, Reply((Say("note", f"Kept for your lines: {listed(said)}."),), True)


def _unit(state: State, name: str) -> str:
    if name in LOAD_LETTERS:
        return f" {state.problem.force}"
    return f" {state.problem.length}" if name in FREE_LETTERS else "°"

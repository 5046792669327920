"""Which letters does a line give a size, for the lines that follow it: tan θ = 3/4, a = 3 m?"""

from __future__ import annotations

import re
from dataclasses import replace

from tutor.judge import Judge
from tutor.lesson.event import Event
from tutor.lesson.reply import Reply, Say
from tutor.lesson.state import State
from tutor.notation import read_letters
from tutor.notation.elements.units import METRES, NEWTONS
from tutor.notation.naming.symbols import FREE_LETTERS, LOAD_LETTERS
from tutor.notation.pages.convention import letter_of_all
from tutor.text import listed

OF_ALL = "Kept: {letter} with a member behind it is the force in that member."
_UNITS = "|".join((*NEWTONS, *METRES, "kips"))


def with_letters(state: State, event: Event, desk: Judge) -> State:
    """The state with the letters that a line taken as right gives a size."""
    found = read_letters(event.text("text"), desk.names, desk.letters)
    return replace(state, letters={**state.letters, **found}) if found else state


def take_letters(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """A line that only says how large letters are: kept for the lines that follow."""
    text = event.text("text")
    if (letter := letter_of_all(text)) is not None:
        return state, Reply((Say("note", OF_ALL.format(letter=letter)),), True)
    found = read_letters(text, desk.names, desk.letters)
    said = [f"{name} = {size:.4g}{_unit(state, name, text)}" for name, size in found.items()]
    return state, Reply((Say("note", f"Kept for your lines: {listed(said)}."),), True)


def _unit(state: State, name: str, text: str) -> str:
    """The unit that a letter was given in, as the problem has it; none where none was typed."""
    if name not in LOAD_LETTERS | FREE_LETTERS:
        return "°"
    typed = re.search(rf"{name} *=[^=,;]*?[0-9)] *(?:['\"]|(?:{_UNITS})\b)", text) is not None
    unit = state.problem.force if name in LOAD_LETTERS else state.problem.length
    return f" {unit}" if typed else ""

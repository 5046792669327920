"""What is said of a text that means nothing where it was entered? What would mean something there."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from tutor.lesson import Ask
from tutor.screens.clean import one_line
from tutor.screens.deeds import Deed
from tutor.text import listed

LOST = "Cannot read: this is no answer here and no word that does something."
MANY = "Type the numbers of all that hold, like 1 3."
ONE = "Type the number of your answer."
LINE = "Type an equation, or a number to choose one."
WOULD_DO: Mapping[str, str] = {
    "reasons": MANY,
    "halves": MANY,
    "support": MANY,
    "loose": "Type the joints that can move, with blanks between them.",
    "count": "Type the three numbers in this order: m, r, 2j.",
    "turning": ONE,
    "soundness": ONE,
    "joint": "Type the name of a joint, or its number.",
    "line": LINE,
    "joint-line": LINE,
    "close": LINE,
}


def lost(ask: Ask, text: str, deeds: Sequence[Deed], meant: str | None) -> str:
    """What was typed, that it is not understood, and what would be; `deeds` can be done now."""
    if key := key_typed(text, deeds):
        return key
    if meant:
        return f"{LOST} Did you mean “{meant}”?"
    if ask.kind == "sense":
        ways = listed([one_line(option.words) for option in ask.options], last="or")
        return f"{LOST} Type the direction: {ways}."
    return f"{LOST} {WOULD_DO.get(ask.kind, '')}".rstrip()


def key_typed(text: str, deeds: Sequence[Deed]) -> str:
    """How a deed is done whose letter alone was entered as a line; nothing for any other text."""
    for deed in deeds:
        if text.strip() == deed.letter:
            return (
                f"Cannot read: in the line, {deed.letter} is a text. Type {deed.label}; or press "
                f"escape, then {deed.letter}."
            )
    return ""

"""Which force does a word beside an equation name, and which is only a word: must BE or be in tension?"""

from __future__ import annotations

import re

from tutor.notation import Line, Names
from tutor.notation.elements.lexicon import MEANINGS, folded

_EVERYDAY = frozenset((
    "he", "she", "her", "me", "my", "us", "do", "go", "am", "has", "had", "can", "bed", "bad", "fed", "tab", "fab",
    "cab", "see", "fee", "each", "head", "ahead", "ad", "bead", "face", "faced",
))  # fmt: skip
"""Words of no meaning for statics that a member may be spelled as in small letters."""


def forces_named(word: str, names: Names, line: Line) -> tuple[str, ...]:
    """The forces that a word of a sentence may mean.

    One that is also an everyday word is a force in capitals, or where the statements of the line have it so.
    """
    named = names.plainly(word)
    if not named or word.isupper() or "_" in word:
        return named
    if folded(word) not in MEANINGS and word.lower() not in _EVERYDAY:
        return named
    here = re.compile(rf"(?<!\w){re.escape(word)}(?!\w)")
    typed = any(here.search(line.text, step.span.start, step.span.end) for step in line.steps)
    return named if typed else ()

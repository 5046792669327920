"""Which pictures does a message set beside its words? 🎉, 😅, ★: they say nothing of a truss.

A picture is passed over where it stands apart: before or behind what is said, or beside a mark. Within a
formula it may stand for something, and is left to be complained of. What shows a way, a turn, a cross or a
number is none.
"""

from __future__ import annotations

import re

from tutor.notation.elements.characters import ON_A_KEY
from tutor.notation.elements.lexicon import says
from tutor.notation.elements.source import Source
from tutor.notation.formulas.words import FUNCTIONS

_PICTURE = (
    "[\u2600-\u2610\u2612\u2616-\u2704\u2706-\u2712\u2719-\u274b\u274d\u274f-\u2775\u2b50\u2b55"
    "\U0001f300-\U0001f445\U0001f449-\U0001f44d\U0001f44f-\U0001f502\U0001f505-\U0001f51e"
    "\U0001f520-\U0001f539\U0001f53e-\U0001f7ef\U0001f7f1-\U0001faff]"
)
"""All but ticks and crosses, hands and wheels that show a way or a turn, and a number on a key."""
_SEEN = re.compile(_PICTURE)
_PICTURES = re.compile(rf"{_PICTURE}(?:[ ]?{_PICTURE})*")
_MARKS = frozenset(",;:!?⇒→∴")
_WORD = re.compile(r"\(?(?P<word>I (?=[a-z])|[A-Za-z']+)")
_POINTS = "\U0001f449"
"""A hand that points on."""


def without_pictures(source: Source) -> Source:
    """The source without the pictures that stand apart; a hand that points from one equation to the next is ⇒."""
    source = source.rewritten(ON_A_KEY, lambda found: f"{found['before']}{found['count']}. ")
    return source.rewritten(_PICTURES, _apart) if _SEEN.search(source.text) else source


def _apart(found: re.Match[str]) -> str | None:
    text = found.string
    before, after = text[: found.start()].rstrip(" ."), text[found.end() :].lstrip(" .")
    if _POINTS in found[0] and "=" in before and "=" in after:
        return " ⇒ "
    ends = not before or before[-1] in _MARKS or not after or after[0] in _MARKS or after[0] in ")]"
    return " " if ends or ("=" in before and _talks(after)) else None


def _talks(after: str) -> bool:
    """Whether a word of talk follows, and no name or function of a formula."""
    found = _WORD.match(after)
    if found is None:
        return False
    word = found["word"]
    long = len(word) > 3 and word.islower() and word not in FUNCTIONS
    return says(word, "so", "and", "lead") or long or word == "I "

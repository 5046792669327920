"""What does a member do, said before a colon and its size: "So CE is being squeezed: 18 kN", "The strut CE pulls: 12"?

It is spelled as its value: the name where one is named, the size, and T or C where nothing behind the size says it.
"""

from __future__ import annotations

import re

from tutor.notation.elements.lexicon import WAYS, Meaning, folded, said, says
from tutor.notation.elements.source import Source
from tutor.notation.elements.unreadable import Broken
from tutor.notation.headings.heading import heading_in
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.sentences.value_words import MEMBERS, SUPPORTS, meant
from tutor.notation.sides.heeded import DENIES, PUSHING

_SIZE = r"(?P<size>[0-9][0-9.,]*(?<=[0-9])(?: ?(?:k?N|MN|kips?|k|lbs?|#)(?!\w))?)(?P<rest>[^=:;0-9+*/]*)$"
_WHOLE = re.compile(rf"^ *(?P<said>[{LETTERS}][^=:;+*/]*?) *: *{_SIZE}")
_BY = re.compile(
    rf"^ *(?P<said>(?:(?:[Ss]o|[Tt]hen|[Tt]hus|[Hh]ence|and|[Tt]he|[Mm]ember|[Bb]ar) +)*[A-Z][\w{{}}-]* +(?:is|gets|must be|has to be|ends up)"
    rf" +(?:pushed|pulled|squeezed|squashed|stretched|compressed)) +(?:with|by)(?: +about)? +{_SIZE}"
)
"""A size behind what is done to a member: CD is squeezed by 300 lb."""
_WORD = re.compile(rf"[{LETTERS}][\w{{}}'’-]*")
SHORTEST = 3
"""Characters of the shortest word that says T or C: one letter may be a joint."""


def said_before_size(source: Source, names: Names) -> Source:
    """The source with such words as a value. Raises Broken where they deny or contradict themselves."""
    text = source.text
    if "=" in text or not (":" in text or " is " in text or "ed " in text):
        return source
    found = _WHOLE.match(text) or _BY.match(text)
    if found is None:
        return source
    words = [word for word in _WORD.findall(found["said"]) if len(word) >= SHORTEST]
    ways = {way for word in words if (way := _way(word, names))}
    forces = {name for word in _WORD.findall(found["said"]) for name in meant(word, names)}
    members = {name for name, _, _ in names.members}
    if not ways or len(forces) > 1 or not forces <= members or (not forces and _may_hold(words)):
        return source
    if _heads(text, *found.span("said"), names):
        return source
    if len(ways) > 1 or DENIES.search(found["said"]) is not None:
        place = source.span(*found.span("said"))
        raise Broken("label", place.start, place.end)
    name = next((word for word in _WORD.findall(found["said"]) if meant(word, names)), "")
    lead = f"{name} = " if name else ""
    told = any(says(word, *WAYS) for word in _WORD.findall(found["rest"]))
    letter = "" if told else f" {ways.pop()}"
    made = f"{lead}{found['size']}{letter}{found['rest']}"
    return source.rewritten(found.re, lambda _: made)


def _may_hold(words: list[str]) -> bool:
    """Whether words that name no force may speak of what holds a truss: it pushes."""
    spoken = {folded(word) for word in words}
    return not spoken & MEMBERS and bool(spoken & (SUPPORTS | PUSHING))


def _way(word: str, names: Names) -> Meaning | None:
    return None if meant(word, names) else said(word, "T", "C")


def _heads(text: str, start: int, end: int, names: Names) -> bool:
    """Whether the words may say which sum is meant."""
    try:
        head = heading_in(text, start, end, names)
    except Broken:
        return True
    return head is not None and head.label is not None

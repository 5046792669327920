"""Which members does a line say in words to carry nothing: "BD is a zero-force member"?"""

from __future__ import annotations

import re

from tutor.notation.lexicon import says
from tutor.notation.names import Names
from tutor.notation.symbols import LETTERS
from tutor.notation.tree import Span

_ZERO_WORDS = re.compile(
    r"(?<![\w-])(?:zero|zfm|nil|no force|no load|nullst[aä]be?|keine kraft|effort nul|fuerza (?:nula|cero)|barras? nulas?|nul(?:le)?s?|0[- ]force)(?![\w])",
    re.IGNORECASE,
)
_MEASURED = re.compile(r" *(?:k?N|MN|lbs?|lbf|kips?|k)\b")


def zero_members(text: str, names: Names) -> list[tuple[str, Span]]:
    """The members that `text` says to be zero, each with its place; none where it says no such thing."""
    if "=" in text or (found := _ZERO_WORDS.search(text)) is None:
        return []
    before = re.sub(r"[:,;]", " ", text[: found.start()])
    places = [
        (match.start() + offset, match.group())
        for part, offset in ((before, 0), (text[found.end() :], found.end()))
        for match in re.finditer(rf"[{LETTERS}][\w{{}}'-]*", part)
    ]
    named = [(at, word) for at, word in places if _names_one(word, names)]
    others = [word for at, word in places if (at, word) not in named]
    figures = re.search(r"[0-9+*/]", re.sub(r"[\w{}'-]*\d[\w{}'-]*", "", text))
    if _MEASURED.match(text, found.end()) or figures:
        return []
    if any(names.two_joints(word) and not word.islower() for word in others):
        return []
    return [(names.meant(word)[0], Span(at, at + len(word))) for at, word in named]


def _names_one(word: str, names: Names) -> bool:
    return len(names.meant(word)) == 1 and not says(word, "filler")

"""Which force or joint do letters name that stand apart: A y, F A B, R sub E, L zero U one?

All that stands together has to be one name.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from tutor.notation.elements.tree import Span
from tutor.notation.naming.names import Names, spelling
from tutor.notation.sentences.number_words import figure_said
from tutor.notation.sentences.words_taken import SpokenWord

_LETTER = re.compile(r"[A-Za-z][0-9]{0,2}")
_FORCE = re.compile(r"[FSNTPRfsntpr]")
_SUBS = frozenset(("sub", "subscript"))
_NO_NAMES = (["a", "zero"], ["a", "nil"])
"""What is said of a member: a zero bar."""
_MOST = 12
"""Words of the longest name: F sub L one one U one two."""


def name_apart(tokens: Sequence[SpokenWord], at: int, names: Names) -> tuple[str, int] | None:
    """The name of a force that all letters together from a word on make, and where they end.

    A name that two forces share is given as it is typed, without the blanks.
    """
    word, end = letters_apart(tokens, at)
    if not word:
        return None
    spelled = _spelled(word, names)
    meanings = names.meanings(spelled) if spelled else ()
    if spelled is None or not meanings:
        return None
    plain = len(meanings) == 1 and meanings[0].share is None
    return (spelling(meanings[0].name) if plain else spelled), end


def joint_apart(tokens: Sequence[SpokenWord], at: int, names: Names) -> tuple[str, int] | None:
    """The joint that begins at a word, and where it ends: L zero, of L zero y."""
    word = ""
    found = None
    for place, token in enumerate(tokens[at : at + 3], at):
        part = figure_said(token.text.lower()) if word else None
        word += part or token.text
        if (joint := names.joint(word)) is not None:
            found = joint, place + 1
    return found


def _spelled(word: str, names: Names) -> str | None:
    """A word as one of the ways to write a force, with the letter case of its joints."""
    flat = word.replace("_", "")
    return next((each for each in (word, flat, flat.upper()) if names.meanings(each)), None)


def letters_apart(tokens: Sequence[SpokenWord], at: int) -> tuple[str, int]:
    """What the letters and figures from a word on are together, and where they end; a "sub" as its mark."""
    word, below = "", False
    if [token.text for token in tokens[at : at + 2]] in _NO_NAMES:
        return "", at
    for place, token in enumerate(tokens[at : at + _MOST], at):
        if token.text.lower() in _SUBS and word and not below:
            word, below = (word if "_" in word else f"{word}_"), True
            continue
        part = _part(token, word, below)
        if part is None:
            return ("", at) if below else (word, place)
        word, below = word + part, False
    return ("", at) if below else (word, min(len(tokens), at + _MOST))


def _part(token: SpokenWord, word: str, below: bool) -> str | None:
    """What a word adds to the name that the words before it begin; None where it is no part of it."""
    if token.kind == "word" and _LETTER.fullmatch(token.text):
        return token.text
    if token.kind == "word" and len(token.text) < 6:
        led = below or _FORCE.fullmatch(word) is not None
        if led and token.text[:1].isupper() and any(map(str.isupper, token.text[1:])):
            return token.text
    return figure_said(token.text.lower()) if word and token.kind in ("word", "number") else None


def span_of(tokens: Sequence[SpokenWord], start: int, end: int) -> Span:
    """From the first of some tokens to the last."""
    return Span(tokens[start].span.start, tokens[end - 1].span.end)

"""Which brackets say an equation of their own: (RB sin 60 = 10), (7.5 = 15/17*8.5, 7.2 = 0.6*12), (arm = 2.25/cos 30 = 2.6)?

Asked where a line cannot be read with them. Each is read as a statement before the one that it stands in.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.sentences.aside_words import Token, tokens_of
from tutor.notation.sentences.bracket_talk import is_spoken, takes_back

_BEGINS = re.compile(r"[;:∴⇒→]|=>|->|[,.](?![0-9])|\b(?:so|hence|thus|therefore|gives)\b")
_CUT = re.compile(r"[,;](?![0-9])|\band\b")
_CALLED = re.compile(rf" *(?P<words>(?:[{LETTERS}'’.-]+ *)+)(?P<sign>=|\bis\b|:) *")
_LEADS = re.compile(
    r" *(?:where|since|as|because|with|using|for|from|since|note|remember|note that|i\.?e\.?|,|:)(?: +|$)",
    re.IGNORECASE,
)


def with_brackets_said(source: Source, names: Names) -> tuple[Source, tuple[Span, ...]] | None:
    """The source with such brackets as statements, and the places of what they are called by; None where there is none."""
    text, told, found = source.text, [], False
    pieces: list[Span | str] = []
    at = 0
    for token in tokens_of(text, 0):
        if token.start < at or token.kind != "bracket" or not _is_apart(text, token):
            continue
        said = list(_statements(text, token, names))
        if not said or takes_back(
            text[token.start + 1 : token.end - 1], text[: token.start], names
        ):
            continue
        begins = max(at, _start(text, token.start))
        pieces.append(Span(at, begins))
        for statement, words in said:
            told += [source.place(words)] if words else []
            pieces += [" ", statement, "; "] if statement else []
        pieces.append(Span(begins, token.start))
        at, found = token.end, True
    return (source.made_of([*pieces, Span(at, len(text))]), tuple(told)) if found else None


def works_out(text: str, token: Token, names: Names) -> bool:
    """Whether a bracket says of numbers alone what they are: (14 = 28/2)."""
    named = any(map(names.meanings, re.findall(rf"[{LETTERS}][\w{{}}]*", token.text)))
    return not named and any(place for place, _ in _statements(text, token, names))


def _is_apart(text: str, token: Token) -> bool:
    return text[token.start - 1 : token.start] in ("", " ") and "=" in token.text


def _start(text: str, end: int) -> int:
    """The column where the statement begins that stands before `end`, outside brackets."""
    depth, begins = 0, 0
    marks = {mark.start(): mark.end() for mark in _BEGINS.finditer(text, 0, end)}
    for at in range(end):
        depth += (text[at] in "([{") - (text[at] in ")]}")
        if depth == 0 and at in marks:
            begins = marks[at]
    return begins if text[begins:end].strip() else 0 if begins == end else begins


def _statements(text: str, token: Token, names: Names) -> Iterator[tuple[Span | None, Span | None]]:
    """The equations in a bracket and the words that call what they say; nothing where it says more than those."""
    places = []
    at, end = token.start + 1, token.end - 1
    for cut in _CUT.finditer(text, at, end):
        places.append(Span(at, cut.start()))
        at = cut.end()
    found = [_statement(text, place, names) for place in (*places, Span(at, end))]
    if all(found):
        yield from (each for each in found if each is not None)


def _statement(text: str, place: Span, names: Names) -> tuple[Span | None, Span | None] | None:
    start, words = place.start, None
    while (lead := _LEADS.match(text, start, place.end)) is not None:
        start = lead.end()
    called = _CALLED.match(text, start, place.end)
    if called is not None and _only_words(called["words"], names):
        words, start = Span(*called.span("words")), called.end()
    rest = text[start : place.end]
    if not any(map(str.isdigit, rest)) or _speaks(rest, names):
        return None
    if "=" not in rest:
        return (None, words) if words is not None else None
    return Span(start, place.end), words


def _only_words(said: str, names: Names) -> bool:
    words = re.findall(rf"[{LETTERS}'’]+", said)
    return all(len(word) > 1 and is_spoken(word, names) for word in words)


def _speaks(rest: str, names: Names) -> bool:
    """Whether words of a language stand in an equation."""
    words = re.findall(rf"[{LETTERS}][\w{{}}]*", rest)
    return any(len(word) > 2 and is_spoken(word.rstrip("0123456789"), names) for word in words)

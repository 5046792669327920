"""Which words, figures and signs is a line of dictation made of, and which of them are operators, functions and units?"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from tutor.notation.elements import units
from tutor.notation.elements.tree import Span
from tutor.notation.naming.symbols import LETTERS

_HEAD = r"Σ ?(?:[FM] [A-Za-z][0-9]{0,2}(?!\w)|[A-Za-z]\w*+)?|[Ss]um (?:of )?[FM] ?[A-Za-z][0-9]{0,2}(?!\w)"
"""A heading in letters, set apart or not: ΣFy, Σ M A, Sum F y."""
_TOKEN = re.compile(
    rf" *(?:(?P<head>{_HEAD})|(?P<word>[{LETTERS}](?:[\w{{}}']|-(?=[A-Z]))*+)|(?P<number>[0-9]++(?:[.,][0-9]++)*+|\.[0-9]++)"
    r"|(?P<hyphen>(?<=[a-z0-9])-(?=[a-z]))|(?P<sign>[-+*/^()\[\]√°²·×=])|(?P<mark>[:;,.])|(?P<other>[^ ]))"
)


class SpokenWord(NamedTuple):
    """A word, a number in figures, a sign or a mark, and where it stands; `hyphened` to the word before."""

    kind: str
    text: str
    span: Span
    hyphened: bool = False


def spoken_words(text: str) -> Iterator[SpokenWord]:
    """The tokens of a text, in their order; a hyphen within a word goes with what is behind it."""
    hyphened = False
    for found in _TOKEN.finditer(text):
        kind = str(found.lastgroup)
        if kind != "hyphen":
            yield SpokenWord(kind, found[kind], Span(*found.span(kind)), hyphened)
        hyphened = kind == "hyphen"


_BRACKETS = r"(?:round |square |curly )?(?:brackets?|paren(?:s|thesis|theses)?|braces?)"
_SAID = (
    ("+", "operator", r"plus"),
    ("-", "operator", r"minus|negative"),
    ("*", "operator", r"times|multiplied by"),
    ("2 *", "operator", r"twice"),
    ("/", "operator", r"over|divided by"),
    ("=", "equals", r"(?:(?:is|are) )?(?:equals? to|equals)|is"),
    ("^2", "close", r"squared"),
    ("0", "number", r"a zero[ -]force (?:member|bar)"),
    ("(", "open", rf"(?:open(?:ing)?|left) {_BRACKETS}"),
    (")", "close", rf"(?:closed?|closing|right) {_BRACKETS}"),
    ("√", "open", r"(?:the )?(?:square )?root(?: of)?"),
    *(
        (name, "open", rf"(?:the )?(?:{name}{more}(?: of)?|{name} of)(?: the angle)?")
        for name, more in (("sin", "e"), ("cos", "ine"), ("tan", "gent"))
    ),
)
_PHRASES = tuple(
    (sign, kind, re.compile(rf"(?:{said})(?![\w-])", re.IGNORECASE)) for sign, kind, said in _SAID
)


def operator_said(text: str, at: int) -> tuple[str, str, int] | None:
    """The sign that words stand for from `at` on, its kind and where the words end."""
    longest: tuple[str, str, int] | None = None
    for sign, kind, pattern in _PHRASES:
        found = pattern.match(text, at)
        if found is not None and (longest is None or found.end() > longest[2]):
            longest = sign, kind, found.end()
    return longest


_UNITS = {
    "kN": r"kilo-? ?newtons?",
    "MN": r"mega-? ?newtons?",
    "N": r"newtons?",
    "kip": r"kips?|kilo-? ?pounds?",
    "lb": r"pounds?(?:[ -]force)?|lbs",
    "mm": r"millimet(?:re|er)s?",
    "cm": r"centimet(?:re|er)s?",
    "m": r"met(?:re|er)s?",
    "ft": r"foot|feet",
    "in": r"inch(?:es)?",
}
_MEASURES = tuple(
    (unit, re.compile(rf"(?:{said})(?!\w)", re.IGNORECASE)) for unit, said in _UNITS.items()
)
_BETWEEN = re.compile(r"[ -]")


def unit_said(text: str, at: int) -> tuple[str, int] | None:
    """The unit that words stand for from `at` on, one of a moment too, and where they end."""
    found = _measure(text, at)
    if found is None or _BETWEEN.match(text, found[1]) is None:
        return found
    other = _measure(text, found[1] + 1)
    if other is None or found[0] + other[0] not in units.SPELLED:
        return found
    return found[0] + other[0], other[1]


def _measure(text: str, at: int) -> tuple[str, int] | None:
    for unit, pattern in _MEASURES:
        if (found := pattern.match(text, at)) is not None:
            return unit, found.end()
    return None

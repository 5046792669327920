"""Which words of a formula stand for its operators: "B_y times 30 ft = 960 lb times 15 ft plus ...", "AB over 5 is 12 minus 3",
"4/5 of 7.5 kN = 6 kN"?

A word is an operator only within a stretch of figures, units, names and signs that holds an equals sign, or, in a
line that has none, an "is" between its two sides.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from tutor.notation.elements import units
from tutor.notation.elements.lexicon import says
from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.formulas.words import ANGLES, FUNCTIONS, american
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.sentences.talk import CONCLUDING

_SIGNS = {
    "times": "*", "of": "*", "multiplied by": "*", "into": "*", "mal": "*", "fois": "*", "plus": "+", "minus": "-", "over": "/", "durch": "/", "divided by": "/",
}  # fmt: skip
_OPERATOR = r"times|mal|fois|multiplied +by|into|plus|minus|over|durch|divided +by"
_MAY = re.compile(rf"\b(?:{_OPERATOR})\b|(?:\d/\d+|\.\d+)[ )]+of +\d")
_SAID = rf"{_OPERATOR}|of"
_IS = r"is +equal +to|equals|is|comes +to|must +be|has +to +be|makes|gives"
_TOKEN = re.compile(
    rf" *(?:(?P<operator>(?:{_SAID})\b)|(?P<is>(?:{_IS})\b)|(?P<word>[{LETTERS}](?:[\w{{}}']|-(?=[A-Z]))*)"
    r"|(?P<number>[0-9]++(?:[.,][0-9]++)*+|\.[0-9]++)|(?P<equals>=(?!>))|(?P<sign>[-+*/^()\[\]√°²³·×#])|(?P<other>[^ ]))"
)
_FRACTION = re.compile(r" *(?P<whole>[0-9.]+/[0-9.]+)(?![\w.(/^])")
"""What is divided by as a whole: 12 over 3/5."""
_OPENS = frozenset("([√")
_CLOSES = frozenset(")]°²³#")


@dataclass(frozen=True)
class _Token:
    kind: str
    text: str
    start: int
    end: int


def operators_written(source: Source, names: Names) -> Source:
    """The source with the words for operators, and an "is" between two sides, as the signs they stand for."""
    text = source.text
    if _MAY.search(text) is None:
        return source
    worded = "=" not in text
    pieces: list[Span | str] = []
    at = 0
    for stretch in _stretches(text, names, worded):
        for token in _operators(stretch, worded):
            sign = "=" if token.kind == "is" else _SIGNS[" ".join(token.text.split())]
            pieces += [Span(at, token.start), sign]
            at = token.end
            if sign == "/" and (whole := _FRACTION.match(text, at)) is not None:
                pieces += ["(", Span(*whole.span("whole")), ")"]
                at = whole.end()
    return source.made_of([*pieces, Span(at, len(text))]) if pieces else source


def _stretches(text: str, names: Names, worded: bool) -> Iterator[list[_Token]]:
    """Tokens of formulas that stand together; where an "is" is `worded` for =, behind a mark or a word that leads on."""
    run: list[_Token] = []
    apart = True
    for found in _TOKEN.finditer(text):
        kind = str(found.lastgroup)
        token = _Token(kind, found[kind], *found.span(kind))
        if _of_formula(token, run, names, worded):
            run.append(token)
            continue
        if apart or not worded:
            yield run
        run = []
        led = says(token.text, "so", "and", "lead") or token.text in CONCLUDING
        apart = led or token.kind == "other"
    if apart or not worded:
        yield run


def _of_formula(token: _Token, run: Sequence[_Token], names: Names, worded: bool) -> bool:
    if token.kind in ("is", "other"):
        return token.kind == "is" and worded
    if token.text == "of":
        return bool(run) and run[-1].kind == "number"
    if token.kind != "word":
        return True
    word = token.text
    if word.lower() in FUNCTIONS or word.lower() in ANGLES:
        return True
    measured = bool(run) and run[-1].kind in ("number", "sign")
    if measured and (word in units.SPELLED or american(word, names) is not None):
        return True
    return bool(names.meanings(word)) and not (word.islower() and says(word, "filler", "is", "and"))


def _operators(stretch: Sequence[_Token], worded: bool) -> list[_Token]:
    """The words of a stretch that are operators: all that are none leave it as it is."""
    links = [token for token in stretch if token.kind == ("is" if worded else "equals")]
    if not links or (worded and len(links) > 1):
        return []
    said = [token for token in stretch if token.kind in ("operator", "is")]
    for before, token, behind in zip([None, *stretch], stretch, [*stretch[1:], None], strict=False):
        if token.kind in ("operator", "is", "equals") and not _stands(before, token, behind):
            return []
    return said if any(token.kind == "operator" for token in said) else []


def _stands(before: _Token | None, token: _Token, behind: _Token | None) -> bool:
    """Whether an operator has something on both sides; a minus may begin a side."""
    begins = behind is not None and (
        behind.kind in ("word", "number")
        or behind.text in _OPENS
        or (token.kind != "operator" and behind.text in ("-", "minus"))
        or (token.kind == "equals" and behind.text == "+")
    )
    if token.text == "into":
        return before is not None and behind is not None and behind.kind == "number"
    if token.text == "minus" and (before is None or before.kind in ("equals", "is")):
        return begins
    ends = before is not None and (before.kind in ("word", "number") or before.text in _CLOSES)
    return begins and ends

"""Which stretches of a sentence are formulas, headings and marks, and which are words?

A sentence about a truss is formulas in between words: "Resolving vertically, 3/5 F_AB + 9 = 0, from which
F_AB = -15 kN, i.e. a strut". Nothing is read here; each stretch is only told from its neighbours.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from tutor.notation.elements import units
from tutor.notation.elements.lexicon import says
from tutor.notation.formulas.words import ANGLES, FUNCTIONS, american
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import COUNT, LETTERS, PARTNER
from tutor.notation.sides.ending import wordy

Kind = Literal["formula", "equals", "heading", "word", "aside", "count", "mark", "so"]

_BRACKETED = rf"[(\[]\ ?(?:eqn?s?\.?\ ?)?(?:{COUNT}|\*{{1,3}})\ ?[)\]]"
_ENDS = r"(?=\ *(?:[,;.:∴⇒]|$|(?:and|so|hence|thus|or|whence|therefore)\b))"
_TOKEN = re.compile(
    rf"""\ *+(?:
  (?P<heading>[-+(]*+[←→↑↓↺↻]?+[-+)]*+\ ?Σ\ ?(?:[{LETTERS}][{LETTERS}0-9_']*+(?:(?<=_)\{{[^{{}}=]*+\}})?)?(?:\ ?=\ ?0(?![\w.]|\ *+[-+*/=(]))?)
| (?P<count>(?:(?:\.{{2,}}|…|(?<=\ )-{{1,3}})\ *+{_BRACKETED}|(?<=[=\ ]0\ ){_BRACKETED}{_ENDS}|(?<=[kN]N\ ){_BRACKETED}{_ENDS}|(?:eqn?s?|equations?)\b\.?\ *+(?:{_BRACKETED}|[0-9]{{1,2}}(?![\w.]))))
| (?P<so>∴|⇒|∵|=++>|-++>|→|(?:i\.\ ?e\.|d\.\ ?h\.)(?!\w))
| (?P<word>[{LETTERS}](?:[{LETTERS}0-9']|_(?:\{{[^{{}}=]*+\}})?|-(?=[a-z]{{2}})|(?<=[0-9])-(?=[A-Z][0-9]))*+)
| (?P<number>[0-9]++(?:[.,][0-9]++)*+(?:x(?=[0-9.]))?+|\.[0-9]++)
| (?P<equals>=)
| (?P<mark>[,;:.!?]++|…)
| (?P<sign>[^ ])
)""",
    re.VERBOSE,
)
_APPLIED = re.compile(r"(?:sin|cos|tan)[0-9]++")
_STATES = frozenset(
    ("at", "of", "for", "joint", "node", "pin", "knoten", "about", "point", "support")
)
_ABBREVIATED = frozenset(
    ("vert", "horiz", "hor", "ver", "comp", "comps", "eq", "eqn", "eqs", "eqns", "approx", "resp", "no", "nos", "i", "e", "g",
     "ie", "eg", "viz", "fig", "cf", "wrt", "ans", "o", "k", "d", "h", "z", "b", "opp", "adj", "tens", "compr")
)  # fmt: skip
"""Words that end in a full stop without ending a sentence."""


@dataclass(frozen=True)
class Bit:
    """A stretch of one kind, from `start` to `end`."""

    kind: Kind
    start: int
    end: int


def bits_of(text: str, names: Names) -> list[Bit]:
    """The stretches of a sentence, from left to right, with nothing but blanks between them."""
    found: list[Bit] = []
    closed = _partners(text)
    at = 0
    while (token := _TOKEN.match(text, at)) is not None:
        group = str(token.lastgroup)
        start, end = token.span(group)
        kind, end = _kind(text, group, start, end, found, closed, names)
        at = end
        last = found[-1] if found else None
        if last is not None and last.kind == kind == "formula":
            found[-1] = Bit("formula", last.start, end)
        else:
            found.append(Bit(kind, start, end))
    return list(_joined(text, found))


def _kind(
    text: str,
    group: str,
    start: int,
    end: int,
    found: list[Bit],
    closed: dict[int, int],
    names: Names,
) -> tuple[Kind, int]:
    """Of which kind a token is, and where the stretch that it begins ends."""
    if group == "heading":
        chained = not text[start:end].rstrip().endswith("0") and text[end:].lstrip()[:1] == "="
        return ("formula" if chained else "heading"), end
    if group == "sign" and text[start] in "([{" and start in closed:
        return _bracketed(text, start, closed[start], names)
    if group == "word":
        return _worded(text, start, end, found, names), end
    if group == "mark":
        return _marked(text, start, end, found), end
    if group == "so":
        return ("formula" if _points(text, start, end) else "so"), end
    if group in ("number", "sign"):
        return "formula", end
    return group, end  # type: ignore[return-value]


def _worded(text: str, start: int, end: int, found: list[Bit], names: Names) -> Kind:
    """Whether a word is a piece of a formula: a force, a function, an angle, a unit behind a number."""
    word = text[start:end]
    before = found[-1] if found else None
    led = before is not None and before.kind == "word"
    last = text[before.start : before.end].lower() if led and before is not None else ""
    if _APPLIED.fullmatch(word) is not None:
        return "formula"
    if word.lower() in FUNCTIONS or word.lower() in ANGLES or word in ("π", "x"):
        return (
            "formula" if before is None or not led or word.lower() not in ("x", "sec") else "word"
        )
    if names.joint(word) is not None and (last in _STATES or (len(word) == 1 and led)):
        return "word"
    if word in ("T", "C") and not _operated(text, start, end):
        return "word"
    unit = word in units.SPELLED or american(word, names) is not None
    measured = before is not None and before.kind == "formula" and unit
    if measured and word != "in":
        return "formula"
    spoken = (
        word.istitle() and len(word) > 2 and says(word, "filler", "so", "and", "lead", "because")
    )
    named = bool(names.meanings(word)) and not spoken and not wordy(word, names)
    if named and word.islower() and len(word) < 3 and says(word, "filler", "is", "and"):
        return "word"
    return "formula" if named else "word"


def _operated(text: str, start: int, end: int) -> bool:
    """Whether an operator stands beside a letter."""
    return text[:start].rstrip()[-1:] in ("+", "-", "*", "/") or text[end:].lstrip()[:1] in (
        "+",
        "-",
        "*",
        "/",
        "=",
    )


def _marked(text: str, start: int, end: int, found: list[Bit]) -> Kind:
    """Whether a sign ends a clause; the stop of an abbreviation belongs to its word, one within a number to it."""
    word = found[-1] if found else None
    if text[start:end] == "." and word is not None and word.kind == "word" and word.end == start:
        said = text[word.start : word.end]
        if said.lower() in _ABBREVIATED and (len(said) > 1 or said.islower()):
            return "word"
    glued = text[start:end] in (".", ",") and text[end : end + 1] not in ("", " ")
    return "formula" if glued else "mark"


def _points(text: str, start: int, end: int) -> bool:
    """Whether an arrow says which way a force acts, or which sense counts as positive."""
    if text[start] in "∴⇒∵=id" or (text[end - 1] == ">" and end - start > 2):
        return False
    return text[:start].rstrip()[-1:] in ("", "+", "(") or text[end:].lstrip()[:1] in (
        "",
        *",;.):+",
    )


def _bracketed(text: str, start: int, end: int, names: Names) -> tuple[Kind, int]:
    """A bracket of words is an aside as a whole; one that is a factor is opened like any sign."""
    inner = text[start + 1 : end - 1]
    words = re.findall(rf"[{LETTERS}][{LETTERS}0-9'_{{}}]*+", inner)
    if not any(char.isalpha() for char in inner):
        return "formula", start + 1
    spoken = [
        word
        for word in words
        if (word in ("T", "C") and inner.strip() == word)
        or (
            (not names.meanings(word) or wordy(word, names))
            and word.lower() not in FUNCTIONS
            and word.lower() not in ANGLES
            and (word not in units.SPELLED or word == "in")
        )
    ]
    return ("aside", end) if spoken else ("formula", start + 1)


def _partners(text: str) -> dict[int, int]:
    """For each opening bracket, the column behind the one that closes it."""
    opened: list[int] = []
    found: dict[int, int] = {}
    for index, char in enumerate(text):
        if char in "([{":
            opened.append(index)
        elif char in ")]}" and opened and text[opened[-1]] == PARTNER[char]:
            found[opened.pop()] = index + 1
    return found


def _joined(text: str, found: list[Bit]) -> Iterator[Bit]:
    """The bits with the sides of an equation and its = as one formula; the rest as it is."""
    at = 0
    while at < len(found):
        last = at
        while last + 1 < len(found) and found[last].kind in ("formula", "equals"):
            if found[last + 1].kind not in ("formula", "equals"):
                break
            last += 1
        bit = found[at]
        kind: Kind = "formula" if bit.kind == "equals" else bit.kind
        yield Bit(kind, bit.start, found[last].end)
        at = last + 1

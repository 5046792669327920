"""Which words and numbers are in a typed line, each with its place?"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from tutor.model.amounts import Wrong, amount
from tutor.model.supports import SUPPORTS
from tutor.model.toml_read import Decimals
from tutor.notation import Exact
from tutor.text import shown

FORCES = ("kN", "N", "MN", "lb", "kip")
LENGTHS = ("m", "mm", "cm", "in", "ft")
WORDS_FOR = {
    "lb": ("lbf", "lbs", "pound", "pounds"),
    "kip": ("kips",),
    "kN": ("kilonewton", "kilonewtons"),
    "N": ("newton", "newtons"),
    "ft": ("foot", "feet"),
    "in": ("inch", "inches"),
    "m": ("metre", "metres", "meter", "meters"),
}
UNITS: Mapping[str, str] = {unit.lower(): unit for unit in (*FORCES, *LENGTHS)} | {
    word: unit for unit, words in WORDS_FOR.items() for word in words
}
COMMAS = re.compile(r"[-+]?[1-9]\d{0,2}(?:,\d{3})+")
IN_THOUSANDS = ("N", "lb", "kip", "mm", "in", "ft")
"""Units in which a comma before three figures parts thousands, and is no decimal sign."""
OPEN_TO_BOTH = ("kN",)
"""Units in which it may be either."""
FUNCTIONS = "sqrt|sin|cos|tan|asin|acos|atan|arcsin|arccos|arctan"
PIECES = re.compile(
    rf"(?!(?:{FUNCTIONS})\()(?<![\w)*/^.])[A-Za-z]\w*(?=\([^()]*,)|@|[^\s@=:]+", re.IGNORECASE
)
"""A word; a name that a pair in brackets is written to, like F(3,4), is one by itself."""
PLAIN = re.compile(r"[-+]?(?:\d+[.,]?\d*|[.,]\d+)(?:[eE][-+]?\d+)?")
WITH_UNIT = re.compile(r"(?P<number>.*[\d.)])(?P<unit>[A-Za-z]{1,11}|°)")
LIKE_NUMBER = re.compile(r"[-+(\[√.,]*\d|[-+(]*(?:sqrt|sin|cos|tan|√)\s*\(", re.IGNORECASE)
PAIR = re.compile(r"(?P<x>[^,]+),(?P<y>[^,]+)")
OPEN, CLOSE = "([{", ")]}"
QUOTES = "\"'"
MINUS = str.maketrans({"−": "-", "–": "-", "‐": "-", "‑": "-"})


@dataclass(frozen=True)
class Word:
    """One word of a line and where it stands, from `start` up to `end`.

    A word in quotes is a name as it stands: in its own capitals, and none of the words known here
    but a support, which a file writes in quotes.
    """

    text: str
    start: int
    end: int
    quoted: bool = False

    @property
    def lower(self) -> str:
        """The word as it is compared with those known; one in quotes is none of them."""
        is_name = self.quoted and self.text not in SUPPORTS
        return f'"{self.text}"' if is_name else self.text.lower()

    @property
    def is_number(self) -> bool:
        """Whether it begins as a number does."""
        return LIKE_NUMBER.match(self.text) is not None


class Bad(Exception):  # noqa: N818 - a sentence on its way to the student
    """What is wrong with a line: what was read, what is wrong, what would be right, and where."""

    def __init__(self, read: str, wrong: str, cure: str, word: Word | None = None) -> None:
        super().__init__(wrong)
        self.what = f"{shown(read)}: {wrong}; {cure}."
        self.word = word


def words_of(text: str, start: int = 0) -> list[Word]:
    """The words of a statement that begins at column `start` of its line."""
    found = []
    for piece in PIECES.finditer(text.translate(MINUS)):
        word, left = _bare(piece.group())
        if word and word.lower() not in ("and", "&"):
            first = start + piece.start() + left
            quoted = left > 0 and piece.group()[left - 1] in QUOTES
            found.append(Word(word, first, start + piece.end(), quoted))
    return found


def _bare(word: str) -> tuple[str, int]:
    """A word without commas, quotes and brackets around it, and how much went on the left."""
    left = 0
    while word:
        if word[0] in "\"'," or (word[0] in OPEN and not _closes_inside(word)):
            word, left = word[1:], left + 1
        elif word[-1] in "\"'," or (word[-1] in CLOSE and _depth(word) < 0):
            word = word[:-1]
        elif word[0] in OPEN and word[-1] in CLOSE and _is_wrapped(word):
            word, left = word[1:-1], left + 1
        else:
            return word, left
    return word, left


def _depth(word: str) -> int:
    return sum(char in OPEN for char in word) - sum(char in CLOSE for char in word)


def _closes_inside(word: str) -> bool:
    return _depth(word) <= 0


def _is_wrapped(word: str) -> bool:
    """Whether the first bracket is closed by the last."""
    depth = 0
    for place, char in enumerate(word):
        depth += (char in OPEN) - (char in CLOSE)
        if depth == 0:
            return place == len(word) - 1
    return False


def number_of(word: Word, what: str, own: str = "") -> tuple[Exact, str]:
    """The number in a word and the unit written to it ("" where there is none); Bad.

    `own` is the unit that is meant where none is written.
    """
    text, unit = word.text, ""
    found = WITH_UNIT.fullmatch(text)
    if found and (found["unit"] == "°" or found["unit"].lower() in (*UNITS, "deg")):
        text, unit = found["number"], found["unit"]
    read = exact(_without_commas(word, text, UNITS.get(unit.lower(), own)))
    if isinstance(read, Wrong):
        raise Bad(word.text, f"{what} {read.why}", read.cure, word)
    return read, UNITS.get(unit.lower(), "")


def _without_commas(word: Word, text: str, unit: str) -> str:
    """A number without the commas that part its thousands in this unit; Bad where it may be two."""
    if COMMAS.fullmatch(text) is None or unit not in (*IN_THOUSANDS, *OPEN_TO_BOTH):
        return text
    whole = text.replace(",", "")
    if unit in OPEN_TO_BOTH and text.count(",") == 1:
        part = text.replace(",", ".")
        raise Bad(word.text, f"this can be {whole} or {part}", f"write {whole} or {part}", word)
    return whole


def exact(text: str) -> Exact | Wrong:
    """The number that is typed as `text`: plain with either decimal sign, or an exact expression."""
    if PLAIN.fullmatch(text) is None:
        return amount(text)
    text = text.replace(",", ".").lstrip("+")
    sign, size = ("-", text[1:]) if text.startswith("-") else ("", text)
    size = re.sub(r"\.(?=[eE]|$)", "", "0" + size if size.startswith(".") else size)
    whole = re.sub(r"^0+(?=\d)", "", size)
    if whole.isdigit():
        return amount(int(sign + whole))
    return amount(Decimals(sign + whole))


def from_fraction(number: Fraction) -> Exact:
    """A rational number, as a decimal where it is a short one."""
    decimal = f"{float(number):.6f}".rstrip("0").rstrip(".")
    if number.denominator != 1 and Fraction(decimal) == number:
        read = amount(Decimals(decimal))
        if isinstance(read, Exact):
            return read
    return Exact.of(number)


def plus(one: Exact, other: Exact, word: Word, sign: int = 1) -> Exact:
    """The sum of two numbers, or with `sign` -1 their difference, exact where they are; Bad."""
    if one.fraction is not None and other.fraction is not None:
        return from_fraction(one.fraction + sign * other.fraction)
    if one.fraction == 0 and sign > 0:
        return other
    if other.fraction == 0:
        return one
    return worked_out(f"{one.text}{'-' if sign < 0 else '+'}({other.text})", word)


def worked_out(text: str, word: Word) -> Exact:
    """The number of an expression, as a short decimal where it is one; Bad at this word."""
    read = amount(text)
    if isinstance(read, Wrong):
        raise Bad(word.text, "the place that this gives cannot be written", "type x and y", word)
    return read if read.fraction is None else from_fraction(read.fraction)


def pair_in(word: Word) -> tuple[Word, Word] | None:
    """The two numbers of a place written in one word, like 4,0."""
    found = PAIR.fullmatch(word.text)
    if found is None:
        return None
    comma = word.start + len(found["x"])
    return Word(found["x"], word.start, comma), Word(found["y"], comma + 1, word.end)

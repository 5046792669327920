"""Which letter stands for a length or a load, and how large: a = 4.8 m, span L = 15 m, P = 12 kN?"""

from __future__ import annotations

import re
from fractions import Fraction
from typing import NamedTuple

from tutor.notation.elements.lexicon import says
from tutor.notation.elements.tree import Binary, Node, Number, Unit
from tutor.notation.elements.units import METRES, NEWTONS
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.evaluate import Frame, constant
from tutor.notation.lines.line import Side
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import FREE_LETTERS, LETTERS
from tutor.notation.sides.formula import sides_of

_DEFINES = re.compile(
    rf" *(?:(?P<lead>[{LETTERS}]{{2,8}}) +)?(?:(?P<thing>[{LETTERS}]{{3,9}}) +)?(?P<letter>[A-Za-z]) *= *(?=[^ =])"
)


_LAST_WORD = re.compile(rf"[{LETTERS}]{{2,8}} *$")
_GIVEN = re.compile(rf"(?<![{LETTERS}_'}}])([a-z]) *:?= *(?:[0-9.(]|a?(?:sin|cos|tan)\b)")
_QUANTITY = re.compile(rf" *(?:the )?(?P<thing>[{LETTERS}]{{3,12}}) *= *")


class NamedLength(NamedTuple):
    """A length or a load by its letter: the tree in its place, and its size in the problem's unit."""

    name: str
    node: Node
    size: float


def named_length(text: str, start: int, end: int, names: Names) -> NamedLength | None:
    """The length or load that `text` gives a letter for between two columns; None where it gives none.

    A letter that is a joint in another case needs its unit, b = 4 m where there is a joint B, or stands
    elsewhere in the text as a factor, as in 6b, or is a ratio that a word or another letter beside it
    brings in: s = 3/5, c = 4/5. No load is zero: H = 0 is a heading.
    """
    found = _DEFINES.match(text, start, end)
    if found is None or not _leads(found["lead"], found["thing"]):
        return None
    letter = found["letter"]
    load = names.for_load(letter)
    spoken = letter in FREE_LETTERS and _brought_in(letter, found["lead"], text, start)
    if not (load or names.free(letter) or spoken):
        return None
    frame = Frame(names.force, names.length)
    try:
        value = " " * found.end() + text[found.end() : end]
        sides, _ = sides_of(value, names, frame, length=not load)
    except Broken:
        return None
    last, units = sides[-1], NEWTONS if load else METRES
    unsure = not names.free(letter) and not load
    unsure = unsure or (
        names.joint(letter) is not None and not _is_factor(letter, text[:start] + text[end:])
    )
    if not last.numeric or not (last.unit in units or last.unit is None):
        return None
    size = constant(last.node, frame).value
    if last.unit is None and unsure and not (spoken and 0.0 < abs(size) <= 1.0):
        return None
    return None if load and not size else NamedLength(letter, _bare(last, frame, load), size)


def _is_factor(letter: str, text: str) -> bool:
    """Whether a letter stands alone behind a number or a bracket: 6a, 9(2a)."""
    return re.search(rf"[0-9)] ?{letter}(?![{LETTERS}0-9_'])", text) is not None


def _brought_in(letter: str, lead: str | None, text: str, start: int) -> bool:
    """Whether a word stands before a letter, let or with, or another one is given a number beside it."""
    before = _LAST_WORD.search(text[:start])
    if lead or (before is not None and says(before[0].strip(), "where")):
        return True
    return any(other != letter for other in _GIVEN.findall(text))


def is_quantity(text: str, start: int, end: int, names: Names) -> bool:
    """Whether a piece only gives a quantity by its word: angle = atan(2/3) = 33.7."""
    found = _QUANTITY.match(text, start, end)
    if found is None or not says(found["thing"], "quantity"):
        return False
    frame = Frame(names.force, names.length)
    try:
        value = " " * found.end() + re.sub("°|deg", " ", text[found.end() : end])
        sides, _ = sides_of(value, names, frame, length=True)
    except Broken:
        return False
    return all(side.numeric for side in sides)


def _leads(lead: str | None, thing: str | None) -> bool:
    return all(word is None or says(word, "where", "quantity", "lead") for word in (lead, thing))


def _bare(side: Side, frame: Frame, load: bool) -> Node:
    """The tree in the problem's own unit, without a unit in it, so that it goes with bare numbers."""
    node = side.node
    if side.unit is None:
        return node
    if (
        isinstance(node, Binary)
        and isinstance(node.right, Unit)
        and node.right.unit == (frame.force if load else frame.length)
    ):
        return node.left
    part = constant(node, frame)
    value, radius = (Fraction(str(number)) for number in (part.value, part.radius))
    return Number(value, radius, side.span)

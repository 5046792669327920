"""How large does a line say that an angle is: θ = 33.69°, where tan α = 3/4?"""

from __future__ import annotations

import re
from fractions import Fraction
from typing import NamedTuple

from tutor.notation.elements.lexicon import says
from tutor.notation.elements.tree import Binary, Call, Node, Number, Span, Unit
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.evaluate import Frame, constant
from tutor.notation.lines.layout import DEFINES
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.sides.ending import tail
from tutor.notation.sides.formula import sides_of

IN_BRACKETS = re.compile(
    r"[(\[](?P<inner>[^()\[\]=]{0,20}=(?:[^()\[\]=]|\([^()]*\)|\([^()]*\([^()]*\)[^()]*\))*)[)\]]"
)
"""What may say in brackets how large an angle is: (θ = 33.69°)."""
_WHERE = re.compile(rf" *([{LETTERS}]{{2,8}}) ")


class NamedAngle(NamedTuple):
    """An angle by its letter: the tree to put in its place, and its size in degrees."""

    name: str
    node: Node
    degrees: float


def named_angle(text: str, start: int, end: int, names: Names) -> NamedAngle | None:
    """The angle that `text` gives the size of between two columns; None where it gives none."""
    word = _WHERE.match(text, start, end)
    start = word.end() if word and says(word[1], "where") else start
    found = DEFINES.match(text, start, end)
    if found is None or not text[found.end() : end].strip():
        return None
    node = _size(" " * found.end() + text[found.end() : end], names)
    if node is None:
        return None
    if found["function"]:
        inverse = {"s": "asin", "c": "acos", "t": "atan"}[found["function"][0].lower()]
        node = Call(inverse, node, node.span)
    degrees = constant(node, Frame(names.force, names.length)).value
    return NamedAngle(found["angle"], in_degrees(node), degrees)


def _size(value: str, names: Names) -> Node | None:
    """The tree of an angle's size, without its sign for degrees; None where it holds a force."""
    frame = Frame(names.force, names.length)
    cut = tail(value, len(value) - len(value.lstrip()), len(value), names)
    value = value if cut is None else value[:cut].ljust(len(value))
    try:
        sides, _ = sides_of(value.split("=")[-1].rjust(len(value)), names, frame)
    except Broken as broken:
        if broken.key != "angle":
            raise
        bare = re.sub("°|deg(?:rees?)?", lambda unit: " " * len(unit[0]), value)
        sides, _ = sides_of(bare, names, frame)
    return sides[0].node if sides[0].numeric else None


def in_degrees(node: Node) -> Node:
    """The tree as an angle in degrees, whatever bare angles are in."""
    return Binary("*", node, Unit("deg", node.span), node.span)


def number_said(size: float) -> Number:
    """A size that was said before, as the number it was typed as: its last place may be rounded."""
    decimals = str(size).partition(".")[2].rstrip("0")
    radius = Fraction(1, 2 * 10 ** len(decimals)) if decimals.isdigit() else Fraction(0)
    return Number(Fraction(str(size)), radius, Span(0, 1))

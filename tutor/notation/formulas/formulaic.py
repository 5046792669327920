"""What tree is a plain formula, read straight through?

Most lines are sums of products of numbers, names spelled as one word, and sines and cosines. Their
symbols need no look at what stands around them and no table. Everything else is None here, what
cannot be read too: the scanner and the grammar, which know all of it, then say what it is. Where
there is a tree, it is theirs (`tests/notation/test_notation_formulaic.py` holds the two together).
"""

from __future__ import annotations

import re
from typing import Any

from tutor.notation.elements.digits import spelled
from tutor.notation.elements.tree import (
    Binary,
    Call,
    Name,
    Negative,
    Node,
    Number,
    Span,
    Unit,
    with_span,
)
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.words import dashed, front_piece
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS

MOST_CHARACTERS = 128
"""Of no more can there be too many symbols."""
DEEPEST = 4
"""Brackets and functions inside each other; far from being too many."""
_TOKEN = re.compile(
    rf"""
  \ *(?:
    ([0-9]{{1,12}}(?:\.[0-9]{{1,12}})?(?![0-9.,eE'_]))
  | ((?![xX])[A-Za-z][A-Za-z0-9_]*+(?:(?<=_)\{{[A-Za-z0-9-]*\}})?+(?![{LETTERS}'{{]))
  | ([-+*/=()°])
  | ([^ ])
  )
    """,
    re.VERBOSE,
)
_NUMBER, _WORD, _SIGN = 1, 2, 3
_MEASURABLE = frozenset("0)°")
_OPERANDS = frozenset("0af(")
_LONE = frozenset("0a")
_PLAIN_FUNCTIONS = frozenset({"sin", "cos", "tan", "sqrt"})


class _Other(Exception):  # noqa: N818 - never leaves this module
    """It is not a plain formula, or none at all."""


_Token = tuple[Any, Any, int, int]
"""Kind, what it makes, start and end.

The kind is the sign itself, "0" for a number, "a" for a name, "f" for a function, "" at the end;
what it makes is the tree of a number or a name, and what a function is called.
"""
_END: _Token = ("", None, 0, 0)


def formulaic(text: str, names: Names) -> tuple[Node, ...] | None:
    """The sides of a plain formula, as `parse_sides` gives them; None for any other text."""
    if len(text) > MOST_CHARACTERS:
        return None
    try:
        return _Formula(_tokens(text, names)).sides()
    except (_Other, Broken):
        return None


def _tokens(text: str, names: Names) -> list[_Token]:
    found: list[_Token] = []
    made: Node | str | None
    kind, past = "", 0
    for match in _TOKEN.finditer(text):
        group = match.lastindex or 0
        start, end = match.span(group)
        if start < past:
            if match.end() > past:
                raise _Other
            continue
        word = match[group]
        if group == _SIGN:
            kind, made = word, None
        elif group == _NUMBER and kind != "0":
            value, radius = spelled(word)
            kind, made = "0", Number(value, radius, Span(start, end))
        elif group == _WORD:
            kind, made, end = _word(word, start, text, names, kind in _MEASURABLE)
            past = end
        else:
            raise _Other
        found.append((kind, made, start, end))
    found += _END, _END
    return found


def _word(
    word: str, start: int, text: str, names: Names, measured: bool
) -> tuple[str, Node | str, int]:
    """The kind of a word, what it makes and where it ends."""
    end = start + len(word)
    if text[end : end + 1] == "-" and (member := dashed(word, start, text, names)) is not None:
        name, end = member
        return "a", Name(name, Span(start, end)), end
    piece = front_piece(word, names, measured)
    if piece is None or piece.length != len(word) or piece.share is not None:
        raise _Other
    if piece.kind == "NAME":
        return "a", Name(piece.value, Span(start, end)), end
    if piece.kind == "FUNCTION" and piece.value in _PLAIN_FUNCTIONS:
        return "f", piece.value, end
    raise _Other


class _Formula:
    """The tokens, and how far they are read; each method reads what it is called."""

    __slots__ = ("_at", "_depth", "_tokens")

    def __init__(self, tokens: list[_Token]) -> None:
        self._tokens, self._at, self._depth = tokens, 0, 0

    def sides(self) -> tuple[Node, ...]:
        sides = [self._sum()]
        while self._tokens[self._at][0] == "=":
            self._at += 1
            sides.append(self._sum())
        if self._tokens[self._at][0]:
            raise _Other
        return tuple(sides)

    def _sum(self) -> Node:
        tokens = self._tokens
        sign, _, start, _ = tokens[self._at]
        if sign == "-" or sign == "+":
            self._at += 1
        left = self._product()
        if sign == "-":
            left = Negative(left, Span(start, left.span.end))
        while (sign := tokens[self._at][0]) == "+" or sign == "-":
            self._at += 1
            right = self._product()
            left = Binary(sign, left, right, Span(left.span.start, right.span.end))
        return left

    def _product(self) -> Node:
        tokens = self._tokens
        left = self._factor()
        while True:
            kind, made, _, _ = tokens[self._at]
            if kind == "*" or kind == "/":
                self._at += 1
                right, sign = self._factor(), kind
            elif kind in _LONE:
                self._at += 1
                right, sign = made, "*"
            elif kind in _OPERANDS:
                right, sign = self._factor(), "*"
            else:
                return left
            left = Binary(sign, left, right, Span(left.span.start, right.span.end))

    def _factor(self) -> Node:
        kind, made, start, _ = self._tokens[self._at]
        self._at += 1
        if kind == "0" or kind == "a":
            return made  # type: ignore[no-any-return]
        if kind == "(":
            return self._bracket(start)
        if kind == "f":
            return self._call(made, start)
        raise _Other

    def _bracket(self, start: int, angle: bool = False) -> Node:
        """What stands behind an opening bracket, and the closing one; an angle if one may be."""
        self._depth += 1
        if self._depth > DEEPEST:
            raise _Other
        inner = (self._angle() if angle else None) or self._sum()
        kind, _, _, end = self._tokens[self._at]
        if kind != ")":
            raise _Other
        self._at += 1
        self._depth -= 1
        return with_span(inner, Span(start, end))

    def _call(self, name: str, start: int) -> Node:
        kind, made, opened, _ = self._tokens[self._at]
        if kind == "(":
            self._at += 1
            argument = self._bracket(opened, name != "sqrt")
        elif kind == "0":
            argument = (self._angle() if name != "sqrt" else None) or made
            self._at += argument is made
        else:
            raise _Other
        return Call(name, argument, Span(start, argument.span.end))

    def _angle(self) -> Node | None:
        """A number with its degrees, if that comes next."""
        (kind, made, start, _), (sign, _, at, end) = self._tokens[self._at : self._at + 2]
        if kind != "0" or sign != "°":
            return None
        self._at += 2
        return Binary("*", made, Unit("deg", Span(at, end)), Span(start, end))

"""What does a typed equation say, term by term?"""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Literal

from tutor.notation.angles import check_angles, check_pi
from tutor.notation.characters import attached, described, hidden, plain
from tutor.notation.dimension import check_equation
from tutor.notation.evaluate import Frame, Term, parts
from tutor.notation.label import Label, split_label
from tutor.notation.linear import exact_linear
from tutor.notation.names import Names
from tutor.notation.parser import parse_equation
from tutor.notation.scanner import Scanner
from tutor.notation.symbols import Symbol
from tutor.notation.tree import Node
from tutor.notation.unreadable import Broken, Unreadable

MOST_CHARACTERS = 500


@dataclass(frozen=True)
class Reading:
    """A typed equation: the sum of its `terms` is zero. `label` is the equation it is said to be."""

    text: str
    terms: tuple[Term, ...]
    label: Label | None
    left: Node = field(repr=False)
    right: Node = field(repr=False)
    frame: Frame = field(repr=False)

    @cached_property
    def names(self) -> tuple[str, ...]:
        """The unknowns in it, each once, in the order typed."""
        return tuple(dict.fromkeys(term.name for term in self.terms if term.name is not None))

    def coefficient(self, name: str | None) -> tuple[float, float]:
        """Value and radius of everything that multiplies `name`; the number part for None."""
        found = [term for term in self.terms if term.name == name]
        return sum(term.value for term in found), sum(term.radius for term in found)

    def exact_form(self) -> dict[str | None, Any]:
        """The same linear form in exact sympy numbers (slow); the number part under None."""
        return exact_linear(self.left, self.right, self.frame)


def read_equation(
    text: str, names: Names, *, angles: Literal["degrees", "radians"] = "degrees"
) -> Reading | Unreadable:
    """The reading of a typed equation; anything that cannot be read comes back as `Unreadable`.

    With `angles="radians"` bare angles are taken as radians, as a calculator left in that mode
    would, and inverse functions return radians.
    """
    frame = Frame(names.force, names.length, angles == "degrees")
    try:
        return _equation(text, names, frame)
    except Broken as broken:
        return broken.about(text)


def _equation(text: str, names: Names, frame: Frame) -> Reading:
    typed = checked(text, "empty")
    label, start = split_label(typed, names)
    scanner = Scanner(typed, names, start)
    symbols = scanner.scan()
    check_equals(symbols, typed)
    scanner.check_closed()
    left, right = parse_equation(symbols, typed)
    if scanner.has_angles:
        check_angles(left)
        check_angles(right)
    if scanner.has_pi and frame.degrees:
        check_pi(left, typed)
        check_pi(right, typed)
    if scanner.has_units:
        check_equation(left, right, frame)
    terms = [*parts(left, frame), *map(_moved, parts(right, frame))]
    return Reading(text, tuple(terms), label, left, right, frame)


def _moved(term: Term) -> Term:
    """A term of the right side, moved to the left."""
    return Term(term.name, 0.0 - term.value, term.radius, term.span, term.units)


def checked(text: str, empty: str) -> str:
    """`text` in plain characters; raises Broken if it is too long, empty or not all to be seen."""
    if len(text) > MOST_CHARACTERS:
        raise Broken("too-long", MOST_CHARACTERS, len(text), count=len(text))
    typed = plain(text)
    if not (typed.isascii() and typed.isprintable()):
        _check_seen(typed)
    if not typed.strip():
        raise Broken(empty, len(text), len(text))
    return typed


def _check_seen(typed: str) -> None:
    """Raises Broken for a character that shows nothing, or only marks the one before it."""
    for column, char in enumerate(typed):
        if " " <= char <= "~":
            continue
        if hidden(char):
            key = "control" if char < " " or "\x7f" <= char <= "\x9f" else "invisible"
            raise Broken(key, column, column + 1, found=described(char))
        if attached(char):
            raise Broken("character/mark", column, column + 1, found=described(char))


def check_equals(symbols: list[Symbol], typed: str) -> None:
    """Raises Broken unless there is exactly one = sign."""
    equals = [symbol for symbol in symbols if symbol.type == "EQUAL"]
    if not symbols:
        raise Broken("empty", len(typed), len(typed))
    if not equals:
        end = len(typed.rstrip())
        raise Broken("no-equals", end, end)
    if len(equals) > 1:
        raise Broken("two-equals", equals[1].start, equals[1].end)

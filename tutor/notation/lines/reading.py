"""What does a typed equation say, term by term?"""

from __future__ import annotations

from dataclasses import field
from typing import Any, Protocol

from tutor.notation.elements.characters import ON_A_KEY, UNSEEN, attached, described, hidden, plain
from tutor.notation.elements.fact import fact, kept
from tutor.notation.elements.label import Label
from tutor.notation.elements.tree import Node
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.evaluate import Frame, Term
from tutor.notation.formulas.linear import exact_linear
from tutor.notation.lines.struck import STROKE

MOST_CHARACTERS = 500


@fact
class Reading:
    """A typed equation: the sum of its `terms` is zero. `label` is the equation it is said to be."""

    text: str
    terms: tuple[Term, ...]
    label: Label | None
    left: Node = field(repr=False)
    right: Node = field(repr=False)
    frame: Frame = field(repr=False)

    @kept
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


class Summed(Protocol):
    """A side of an equation: its tree and the terms that it adds up to."""

    @property
    def node(self) -> Node: ...

    @property
    def terms(self) -> tuple[Term, ...]: ...


def link(text: str, one: Summed, other: Summed, label: Label | None, frame: Frame) -> Reading:
    """Two sides as one equation, the terms of the second moved to the left."""
    terms = (*one.terms, *map(_moved, other.terms))
    return Reading(text, terms, label, one.node, other.node, frame)


def _moved(term: Term) -> Term:
    """A term of the right side, moved to the left."""
    return Term(term.name, 0.0 - term.value, term.radius, term.span, term.units)


def checked(text: str, empty: str) -> str:
    """`text` in plain characters, column for column; raises Broken if it is too long, empty or not
    all to be seen."""
    if len(text) > MOST_CHARACTERS:
        raise Broken("too-long", MOST_CHARACTERS, len(text), count=len(text))
    typed = plain(text)
    seen = typed
    if not (typed.isprintable() and typed.replace("°", "").isascii()):
        seen = UNSEEN.sub(" ", ON_A_KEY.sub(lambda found: " " * len(found[0]), typed))
        _check_seen(seen)
    if not seen.strip():
        raise Broken(empty, len(text), len(text))
    return typed


def _check_seen(typed: str) -> None:
    """Raises Broken for a character that shows nothing, or only marks the one before it."""
    for column, char in enumerate(typed):
        if " " <= char <= "~":
            continue
        if hidden(char):
            key = "control" if char < " " or "\x7f" <= char <= "\x9f" else "invisible"
            key = "invisible/hyphen" if char == "\u00ad" else key
            raise Broken(key, column, column + 1, found=described(char))
        if attached(char) and not (char == STROKE and column):
            raise Broken("character/mark", column, column + 1, found=described(char))

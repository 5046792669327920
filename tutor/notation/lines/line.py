"""What is a typed line, read: its heading, its steps, what each says and what was passed over?"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import field
from typing import Literal

from tutor.notation.elements.fact import fact, kept
from tutor.notation.elements.label import Label
from tutor.notation.elements.tree import Name, Node, Span
from tutor.notation.formulas.evaluate import Frame, Term
from tutor.notation.lines.found import Taken
from tutor.notation.lines.reading import Reading, link

Letter = Literal["T", "C"]
Slanting = Literal["up and left", "up and right", "down and left", "down and right"]
Sense = Literal["left", "right", "up", "down", "against"] | Slanting

_CLOSING = re.compile(r"(?: *\})+")


@fact
class Side:
    """One side of a chain, or a value alone.

    `terms` add up to it, in the problem's units. `figures` is how many significant figures a plain
    number shows, None for an expression; `unit` the unit typed behind a plain number or in it.
    `letter` and `sense` are what stands behind it: (T), C, tension, strut; an arrow, "to the left".
    """

    node: Node = field(repr=False)
    terms: tuple[Term, ...]
    span: Span
    figures: int | None = None
    unit: str | None = None
    letter: Letter | None = None
    sense: Sense | None = None

    @property
    def name(self) -> str | None:
        """The unknown that the side consists of, if it is one alone and not a component of it."""
        node = self.node
        return node.name if isinstance(node, Name) and node.share is None else None

    @kept
    def numeric(self) -> bool:
        """Whether no unknown stands in it."""
        return all(term.name is None for term in self.terms)


@fact
class Step:
    """One statement: `sides` that are equal, from left to right; one side alone is a bare value.

    `follows` says that it is said to follow from the step before it (∴, ⇒, so), and is not only
    written beside it.
    """

    text: str = field(repr=False)
    sides: tuple[Side, ...]
    label: Label | None
    follows: bool
    span: Span
    frame: Frame = field(repr=False)

    def as_typed(self, side: Side) -> str:
        """One of the sides as it was typed, and what closes the brackets of a page that it is set in."""
        typed = self.text[side.span.start : side.span.end]
        opened = typed.count("{") - typed.count("}")
        closing = _CLOSING.match(self.text, side.span.end) if opened > 0 else None
        return typed if closing is None else typed + closing[0].replace(" ", "")[:opened]

    @kept
    def links(self) -> tuple[Reading, ...]:
        """Each two neighbouring sides as an equation, its terms moved to the left."""
        return tuple(
            link(self.text, one, other, self.label, self.frame)
            for one, other in zip(self.sides, self.sides[1:], strict=False)
        )


@fact
class Line:
    """A typed line. All spans are columns of `text`, which is as it was typed.

    `label` is what its heading names; `letters` are the angles and lengths that it gives a letter
    itself, in degrees and in the problem's unit; `passed` are the words and line numbers that were passed over, `unread` those of
    them that may have said something. `referred` are the numbered
    lines that it says to follow from, as "(3)". `taken` is what was taken in the less usual of two ways. `alternatives` are other readings that are as good, usually none.
    """

    text: str
    label: Label | None
    steps: tuple[Step, ...]
    letters: Mapping[str, float] = field(default_factory=dict)
    passed: tuple[Span, ...] = ()
    alternatives: tuple[Line, ...] = field(default=(), repr=False)
    referred: tuple[str, ...] = ()
    unread: tuple[Span, ...] = ()
    taken: tuple[Taken, ...] = ()

    @property
    def result(self) -> Step:
        """The last step."""
        return self.steps[-1]

    @property
    def behind_heading(self) -> str:
        """The text from its first side on; all of it where nothing stands before that."""
        return self.text[self.steps[0].span.start :]

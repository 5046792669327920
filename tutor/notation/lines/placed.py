"""Where does what was read stand in the text as it was typed?"""

from __future__ import annotations

from dataclasses import replace

from tutor.notation.elements.label import Label
from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import moved
from tutor.notation.lines.line import Side, Step


def placed(step: Step, source: Source) -> Step:
    """A statement with every span put where it was typed."""
    sides = tuple(_side(side, source) for side in step.sides)
    label = None if step.label is None else label_placed(step.label, source)
    return replace(step, sides=sides, label=label, span=source.place(step.span))


def label_placed(label: Label, source: Source) -> Label:
    """A heading with its span where it was typed."""
    return replace(label, span=source.place(label.span))


def _side(side: Side, source: Source) -> Side:
    terms = tuple(term._replace(span=source.place(term.span)) for term in side.terms)
    return replace(
        side, node=moved(side.node, source.place), terms=terms, span=source.place(side.span)
    )

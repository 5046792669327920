"""Which statements of a line only work out a number beside its equations: "where 24 = 4/5 × 30"?

Such a statement holds by itself or it does not. One that holds says nothing of the truss.
"""

from __future__ import annotations

import re
from itertools import pairwise

from tutor.notation.elements.lexicon import says
from tutor.notation.elements.same import are_same
from tutor.notation.elements.tree import Name, Span
from tutor.notation.lines.line import Side, Step
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import NAME

"""How far, as a share, the sides of a sum worked out beside an equation may lie apart."""
_PREMISES = frozenset(("being", "as", "and", "remembering", "recalling", "noting"))


def without_side_sums(text: str, steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """The statements without those of numbers alone that hold and are said as a reason.

    A reason stands behind a word such as where, with, since, and beside an equation with forces.
    """
    if len(steps) < 2 or all(_numeric(step) for step in steps):
        return steps
    kept: list[Step] = []
    end, reasons = 0, False
    for step in steps:
        lead = text[end : step.span.start]
        reasons = (
            _numeric(step)
            and step.label is None
            and (_reasons(lead) or (reasons and "and" in lead))
        )
        if not (reasons and _holds(step)):
            kept.append(step)
        end = step.span.end
    return tuple(kept)


def without_ways_of_parts(steps: tuple[Step, ...]) -> tuple[tuple[Step, ...], tuple[Span, ...]]:
    """The statements without those that say which way a component of a member points, and their places.

    At which end it points so is not said: BD_y = 18 downwards holds at one joint of BD only.
    """
    said = [step for step in steps if _points(step)]
    if not said or len(said) == len(steps):
        return steps, ()
    return tuple(step for step in steps if step not in said), tuple(step.span for step in said)


def names_alone(text: str, words: list[str], names: Names) -> bool:
    """Whether a piece only names forces, of which it says nothing: D_y = 18, F_DB and F_DE."""
    if _LISTED.fullmatch(text) is None:
        return False
    named = [bool(names.meanings(word)) for word in words]
    return sum(named) > 1 and all(
        name or says(word, "and") for name, word in zip(named, words, strict=True)
    )


_LISTED = re.compile(r"[\w ,{}']*")


def _points(step: Step) -> bool:
    parts = [side.node for side in step.sides if isinstance(side.node, Name) and side.node.share]
    return step.sides[-1].sense is not None and any("_" not in part.name for part in parts)


def _numeric(step: Step) -> bool:
    return len(step.sides) > 1 and all(side.numeric for side in step.sides)


def _reasons(lead: str) -> bool:
    words = NAME.findall(lead)
    return any(says(word, "because") or word in _PREMISES or word == "where" for word in words[-2:])


def _holds(step: Step) -> bool:
    """Whether all sides are the same number."""
    return all(are_same(_sum(one), _sum(other)) for one, other in pairwise(step.sides))


def _sum(side: Side) -> float:
    return sum(term.value for term in side.terms)

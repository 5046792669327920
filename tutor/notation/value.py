"""What does a line say as one equation, or as one result?

For callers that take a line as a whole: a line with several statements or links is more than they
can use, and is told so.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tutor.notation.dimension import check_value
from tutor.notation.evaluate import Frame, constant
from tutor.notation.line import Letter, Sense, Side, Step
from tutor.notation.names import Names
from tutor.notation.read import line_of
from tutor.notation.reading import Reading
from tutor.notation.tree import Name, Node, Span, children
from tutor.notation.unreadable import Broken, Unreadable


@dataclass(frozen=True, slots=True)
class ValueReading:
    """A result as typed, in the problem's units; nothing is judged.

    `value` has the sign that was typed, `radius` is the half width of its rounding interval.
    `letter` is "T" or "C", `sense` a direction, `name` the unknown in front of an = sign, `unit`
    the unit typed; each None where there is none. `span` is the text of the number with its unit,
    `figures` how many significant figures it shows, None for an expression.
    """

    text: str
    value: float
    radius: float
    letter: Letter | None
    sense: Sense | None
    name: str | None
    unit: str | None
    span: Span
    figures: int | None

    @property
    def exact(self) -> bool:
        return self.radius == 0.0


def read_equation(
    text: str, names: Names, *, angles: Literal["degrees", "radians"] = "degrees"
) -> Reading | Unreadable:
    """The reading of a line that is one equation; anything else comes back as `Unreadable`."""
    frame = Frame(names.force, names.length, angles == "degrees")
    try:
        line = line_of(text, names, frame)
        first, last = line.steps[0], line.steps[-1]
        if len(first.sides) == 1:
            raise Broken("no-equals", len(text.rstrip()), len(text.rstrip()))
        if first is not last or len(first.sides) > 2:
            span = last.sides[-1].span
            raise Broken("two-equals/chain", span.start, span.end)
    except Broken as broken:
        return broken.about(text)
    reading = first.links[0]
    return Reading(text, reading.terms, line.label, reading.left, reading.right, frame)


def read_value(text: str, names: Names, unknown: str | None) -> ValueReading | Unreadable:
    """The result in `text`: "12", "-12 kN", "12 C", "F_AB = 12 kN (T)", "D_y = 126/12 = 10.5".

    `unknown` is the canonical name that is asked for, None if it is open; it decides only which
    example a complaint gives.
    """
    frame = Frame(names.force, names.length)
    try:
        return _value(text, names, frame)
    except Broken as broken:
        if broken.key == "empty":
            broken.key = "empty/value"
        reaction = unknown is not None and "_" in unknown
        broken.words.setdefault("example", "12 or 12 left" if reaction else "12 or 12 C")
        return broken.about(text)


def read_name(text: str, names: Names) -> str | None:
    """The one unknown that `text` writes and nothing else, None for any other text."""
    try:
        line = line_of(f"{text} = 0", names, Frame(names.force, names.length))
    except Broken:
        return None
    sides = line.result.sides
    if len(line.steps) > 1 or len(sides) != 2 or line.label or line.passed or line.alternatives:
        return None
    return sides[0].name


def _value(text: str, names: Names, frame: Frame) -> ValueReading:
    return value_in(text, line_of(text, names, frame).result)


def value_in(text: str, step: Step) -> ValueReading:
    """The result that one statement of `text` gives; raises Broken where it gives none."""
    sides, frame = step.sides, step.frame
    number: Side | None = None
    name = None
    for side in sides:
        if side.numeric:
            number = side
        elif side.name is not None and name is None:
            name = side.name
        else:
            raise _unknown(side, len(sides) == 1)
    if number is None:
        raise Broken("value", sides[0].span.start, sides[0].span.end)
    check_value(number.node, frame)
    part = constant(number.node, frame)
    return ValueReading(
        text,
        part.value,
        part.radius,
        number.letter,
        number.sense,
        name,
        number.unit,
        number.span,
        number.figures,
    )


def _unknown(side: Side, alone: bool) -> Broken:
    """The complaint about an unknown where a number is meant."""
    span = _first_name(side.node)
    product = len(side.terms) == 1 and span.start == side.span.start
    return Broken("value/no-equals" if alone and product else "value", span.start, span.end)


def _first_name(node: Node) -> Span:
    """The place of the first unknown in a tree that has one."""
    found = [node]
    while not isinstance(found[0], Name):
        inner = found.pop(0)
        found[:0] = children(inner)
    return found[0].span

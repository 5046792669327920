"""What does a line say as one equation, or as one result?

For callers that take a line as a whole: a line with several statements or links is more than they
can use, and is told so.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from tutor.notation.elements.tree import Name, Node, Span, children
from tutor.notation.elements.unreadable import Broken, Unreadable
from tutor.notation.formulas.dimension import check_value
from tutor.notation.formulas.evaluate import constant
from tutor.notation.lines.line import Letter, Line, Sense, Side, Step
from tutor.notation.lines.reading import Reading


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


def no_equation(line: Line) -> Unreadable:
    """What is said of a line that sets nothing equal: with no = sign, or with nothing before it."""
    typed = line.text.rstrip()
    start = len(typed) - len(typed.lstrip())
    if typed[start : start + 1] == "=":
        return Broken("empty-side", start, start + 1, side="left of").about(line.text)
    return Broken("no-equals", len(typed), len(typed)).about(line.text)


def one_equation(line: Line | Unreadable) -> Reading | Unreadable:
    """The equation that a line is, under its heading; `Unreadable` where it is none, or several."""
    if isinstance(line, Unreadable):
        return line
    first, last = line.steps[0], line.steps[-1]
    if len(first.sides) == 1:
        return no_equation(line)
    if first is not last or len(first.sides) > 2:
        span = last.sides[-1].span
        return Broken("two-equals/chain", span.start, span.end).about(line.text)
    return replace(first.links[0], label=line.label)


def value_of(line: Line | Unreadable, reaction: bool = False) -> ValueReading | Unreadable:
    """The result that a line ends in: "12", "-12 kN", "F_AB = 12 kN (T)", "D_y = 126/12 = 10.5".

    `reaction` decides only which example a complaint gives.
    """
    if isinstance(line, Unreadable):
        if line.code != "empty":
            return line
        end = len(line.text)
        example = "12 or 12 left" if reaction else "12 or 12 C"
        return Broken("empty/value", end, end, example=example).about(line.text)
    try:
        return value_in(line.text, line.result)
    except Broken as broken:
        return broken.about(line.text)


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

"""Which terms does a tree add up to, and within which interval does each number lie?

Numbers come out as floats in the problem's own units. A radius is the half width of the interval in
which a number lies if every decimal and long integer in it was rounded to its last place; the
radii of parts add up, so the interval is never too narrow to first order.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any, NamedTuple

from tutor.notation.elements.digits import LARGEST
from tutor.notation.elements.fact import fact
from tutor.notation.elements.functions import IN_DEGREES, IN_RADIANS
from tutor.notation.elements.tree import Binary, Call, Name, Negative, Node, Number, Pi, Span, Unit
from tutor.notation.elements.units import unit_meaning
from tutor.notation.elements.unreadable import Broken

_NOTHING = 1e-13


class Term(NamedTuple):
    """One term of a sum; of an equation, as if everything stood on the left side.

    `value` multiplies the unknown `name`, or is a number where `name` is None; it is in the
    problem's units. `radius` is the half width of the interval that its rounded digits leave,
    and `exact` says that it is 0. `span` is the term's text without the sign before it; inside
    multiplied brackets it is the inner term's text alone. `units` is what units were typed in it.
    """

    name: str | None
    value: float
    radius: float
    span: Span
    units: str | None = None

    @property
    def exact(self) -> bool:
        return self.radius == 0.0


_made: Callable[..., Term] = tuple.__new__
"""`_made(Term, fields)` is a term made as a plain tuple is: every number of a line becomes one."""


@fact
class Frame:
    """What bare numbers mean: the problem's units, and whether bare angles are in degrees.

    With `mixed`, forces may stand beside moments, as they do where an arm was forgotten.
    """

    force: str
    length: str
    degrees: bool = True
    mixed: bool = False


def parts(node: Node, frame: Frame) -> list[Term]:
    """The terms of a tree. Raises Broken where it is not linear, has no value or is too large."""
    if type(node) is Binary:
        return _OPERATORS[node.operator](node, frame)
    return _RULES[type(node)](node, frame)


def constant(node: Node, frame: Frame) -> Term:
    """The one number that a tree without names comes to; raises Broken as `parts`."""
    return _merged(parts(node, frame), node)


def _merged(found: list[Term], node: Node) -> Term:
    if len(found) == 1:
        return found[0]
    value = math.fsum(part.value for part in found)
    if abs(value) <= _NOTHING * math.fsum(abs(part.value) for part in found):
        value = 0.0
    radius = math.fsum(part.radius for part in found)
    units = next((part.units for part in found if part.units), None)
    return _made(Term, (None, _bounded(value, node), radius, node.span, units))


def _named(found: list[Term]) -> bool:
    return found[0].name is not None or any(part.name is not None for part in found[1:])


def _bounded(value: float, node: Node) -> float:
    if not -LARGEST <= value <= LARGEST:
        raise Broken("too-big", node.span.start, node.span.end)
    return value


def _number(node: Number, frame: Frame) -> list[Term]:
    top, bottom = node.value.as_integer_ratio()
    half, whole = node.radius.as_integer_ratio()
    return [_made(Term, (None, top / bottom, half / whole, node.span, None))]


def _name(node: Name, frame: Frame) -> list[Term]:
    factor = 1.0 if node.share is None else node.share.factor
    return [_made(Term, (node.name, factor, 0.0, node.span, None))]


def _pi(node: Pi, frame: Frame) -> list[Term]:
    return [_made(Term, (None, math.pi, 0.0, node.span, None))]


def _unit(node: Unit, frame: Frame) -> list[Term]:
    unit = node.unit
    if unit == "deg":
        return [_made(Term, (None, 1.0 if frame.degrees else math.pi / 180, 0.0, node.span, None))]
    if unit == "rad":
        return [_made(Term, (None, 180 / math.pi if frame.degrees else 1.0, 0.0, node.span, None))]
    value = unit_meaning(unit, frame.force, frame.length).value
    return [_made(Term, (None, value, 0.0, node.span, unit))]


def _negative(node: Negative, frame: Frame) -> list[Term]:
    return _turned(parts(node.inner, frame))


def _sum(node: Binary, frame: Frame) -> list[Term]:
    return parts(node.left, frame) + parts(node.right, frame)


def _difference(node: Binary, frame: Frame) -> list[Term]:
    right = _turned(parts(node.right, frame))
    return parts(node.left, frame) + right


def _turned(found: list[Term]) -> list[Term]:
    """The same terms with the other sign."""
    return [
        _made(Term, (name, -value, radius, span, units))
        for name, value, radius, span, units in found
    ]


def _product(node: Binary, frame: Frame) -> list[Term]:
    left, right = parts(node.left, frame), parts(node.right, frame)
    if len(left) == len(right) == 1 and right[0].name is None:
        return [_times(left[0], right[0], node, node.span)]
    if _named(right):
        if _named(left):
            raise Broken("nonlinear", node.span.start, node.span.end)
        left, right = right, [_merged(left, node.left)]
    elif len(right) > 1:
        right = [_merged(right, node.right)]
    if len(left) > 1 and not _named(left):
        left = [_merged(left, node.left)]
    factor = right[0]
    return [_times(part, factor, node, part.span if len(left) > 1 else node.span) for part in left]


def _times(part: Term, factor: Term, node: Node, span: Span) -> Term:
    name, value, radius, _, units = part
    _, size, spread, _, more = factor
    if radius or spread:
        radius = radius * (abs(size) + spread) + abs(value) * spread
    units = units if more is None else _joined(part, "*", factor)
    return _made(Term, (name, _bounded(value * size, node), radius, span, units))


def _quotient(node: Binary, frame: Frame) -> list[Term]:
    left, right = parts(node.left, frame), parts(node.right, frame)
    if _named(right):
        raise Broken("nonlinear/divide", node.span.start, node.span.end)
    divisor = _merged(right, node.right)
    if divisor.value == 0:
        raise Broken("divide-by-zero", node.span.start, node.span.end)
    if len(left) > 1 and not _named(left):
        left = [_merged(left, node.left)]
    return [_over(part, divisor, node, part.span if len(left) > 1 else node.span) for part in left]


def _over(part: Term, divisor: Term, node: Node, span: Span) -> Term:
    value, size = part.value / divisor.value, abs(divisor.value)
    radius = 0.0
    if part.radius or divisor.radius:
        nearest = size - divisor.radius
        radius = (part.radius + abs(value) * divisor.radius) / (
            nearest if 2 * nearest > size else size
        )
    units = part.units if divisor.units is None else _joined(part, "/", divisor)
    return _made(Term, (part.name, _bounded(value, node), radius, span, units))


def _joined(one: Term, sign: str, other: Term) -> str | None:
    return f"{one.units}{sign}{other.units}" if one.units else other.units


def _power(node: Binary, frame: Frame) -> list[Term]:
    found = parts(node.left, frame)
    assert isinstance(node.right, Number)
    exponent = float(node.right.value)
    if _named(found):
        if exponent == 1:
            return found
        raise Broken("nonlinear/power", node.span.start, node.span.end)
    base = _merged(found, node.left)
    if base.value == 0 and exponent < 0:
        raise Broken("divide-by-zero", node.span.start, node.span.end)
    if base.value < 0 and exponent % 1:
        raise Broken("undefined", node.span.start, node.span.end)
    return [_through(lambda x: float(x**exponent), base, node, positive=bool(exponent % 1))]


def _through(
    function: Callable[[float], float], inner: Term, node: Node, positive: bool = False
) -> Term:
    """The function of a number, with the largest change that its interval allows."""
    try:
        value = function(inner.value)
    except OverflowError:
        raise Broken("too-big", node.span.start, node.span.end) from None
    radius = 0.0
    if inner.radius:
        radius = max(
            _change(function, value, inner.value + step, positive)
            for step in (-inner.radius, inner.radius)
        )
    return _made(Term, (None, _bounded(value, node), radius, node.span, inner.units))


def _change(function: Callable[[float], float], value: float, at: float, positive: bool) -> float:
    """How far the function moves from `value`, 0 where it is not defined so far out."""
    try:
        changed = function(max(at, 0.0) if positive else at)
    except (ValueError, ZeroDivisionError, OverflowError):
        return 0.0
    return min(abs(changed - value), float(LARGEST))


def _call(node: Call, frame: Frame) -> list[Term]:
    found = parts(node.argument, frame)
    if _named(found):
        raise Broken("nonlinear/function", node.span.start, node.span.end)
    inner = _merged(found, node.argument)
    function = (IN_DEGREES if frame.degrees else IN_RADIANS)[node.name]
    try:
        return [_through(function, inner, node, positive=node.name == "sqrt")]
    except (ValueError, ZeroDivisionError):
        raise Broken("undefined", node.span.start, node.span.end) from None


_OPERATORS: dict[str, Callable[[Binary, Frame], list[Term]]] = {
    "+": _sum,
    "-": _difference,
    "*": _product,
    "/": _quotient,
    "^": _power,
}
_RULES: dict[type, Callable[[Any, Frame], list[Term]]] = {
    Number: _number,
    Name: _name,
    Pi: _pi,
    Unit: _unit,
    Negative: _negative,
    Call: _call,
}

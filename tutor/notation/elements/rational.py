"""Which rational number is a constant expression exactly, if it is one?"""

from __future__ import annotations

import math
from fractions import Fraction

from tutor.notation.elements.tree import Binary, Call, Negative, Node, Number, Unit

_HALF = Fraction(1, 2)
_SINES = {
    Fraction(0): Fraction(0),
    Fraction(30): _HALF,
    Fraction(90): Fraction(1),
    Fraction(150): _HALF,
    Fraction(180): Fraction(0),
    Fraction(210): -_HALF,
    Fraction(270): Fraction(-1),
    Fraction(330): -_HALF,
}
"""The rational sines of rational degrees (Niven's theorem: there are no others)."""
_TANGENTS = {Fraction(0): Fraction(0), Fraction(45): Fraction(1), Fraction(135): Fraction(-1)}


def rational(node: Node) -> Fraction | None:
    """The exact value of a constant tree, None where it is irrational, has a name or no value.

    Bare angles are in degrees. A value that is rational in a way not looked for here, such as
    sqrt(2)*sqrt(8), is None too.
    """
    match node:
        case Number(value):
            return value
        case Unit("deg"):
            return Fraction(1)
        case Negative(inner):
            value_or_none = rational(inner)
            return None if value_or_none is None else -value_or_none
        case Binary(operator, left, right):
            one, other = rational(left), rational(right)
            return None if one is None or other is None else _combined(operator, one, other)
        case Call(name, argument):
            return _called(name, argument)
        case _:
            return None


def _combined(operator: str, one: Fraction, other: Fraction) -> Fraction | None:
    if operator == "+":
        return one + other
    if operator == "-":
        return one - other
    if operator == "*":
        return one * other
    if operator == "/":
        return one / other if other else None
    if one == 0 and other < 0:
        return None
    whole = math.floor(other)
    if whole == other:
        return Fraction(one**whole)
    root = square_root(one)
    return None if root is None or (root == 0 and whole < 0) else Fraction(root ** int(2 * other))


def square_root(number: Fraction) -> Fraction | None:
    """The rational square root of `number`, None if there is none."""
    if number < 0:
        return None
    top, bottom = math.isqrt(number.numerator), math.isqrt(number.denominator)
    root = Fraction(top, bottom)
    return root if root * root == number else None


def _called(name: str, argument: Node) -> Fraction | None:
    if name == "sqrt":
        inner = rational(argument)
        return None if inner is None else square_root(inner)
    if name not in ("sin", "cos", "tan"):
        return None
    direction = _direction(argument)
    if direction is not None:
        cosine, sine = direction
        if name == "tan":
            return sine / cosine if cosine else None
        return sine if name == "sin" else cosine
    angle = rational(argument)
    if angle is None:
        return None
    if name == "tan":
        return _TANGENTS.get(angle % 180)
    return _SINES.get((angle if name == "sin" else angle + 90) % 360)


def _direction(node: Node) -> tuple[Fraction, Fraction] | None:
    """Cosine and sine of an inverse function, where both are rational."""
    if not isinstance(node, Call) or node.name not in ("asin", "acos", "atan"):
        return None
    ratio = rational(node.argument)
    if ratio is None or (node.name != "atan" and abs(ratio) > 1):
        return None
    other = square_root(1 + ratio * ratio if node.name == "atan" else 1 - ratio * ratio)
    if other is None:
        return None
    if node.name == "atan":
        return 1 / other, ratio / other
    return (other, ratio) if node.name == "asin" else (ratio, other)

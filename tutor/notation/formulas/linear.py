"""What is the linear form of an equation exactly? The slow way, in sympy numbers."""

from __future__ import annotations

from typing import Any

from tutor.notation.elements.tree import Binary, Name, Negative, Node, Share, to_sympy
from tutor.notation.elements.units import unit_meaning
from tutor.notation.formulas.evaluate import Frame

Form = dict[str | None, Any]


def exact_linear(left: Node, right: Node, frame: Frame) -> Form:
    """Coefficients by unknown of left side less right side, the number part under None.

    Both trees must be linear, as those of a `Reading` are.
    """
    from sympy import Integer  # slow to import, and most lines are judged without it

    return {None: Integer(0), **_sum(_form(left, frame), _form(right, frame), -1)}


def _form(node: Node, frame: Frame) -> Form:
    from sympy import Integer  # slow to import, and most lines are judged without it

    match node:
        case Name(name, _, None):
            return {name: Integer(1)}
        case Name(name, _, Share() as share):
            return {name: _exactly(share)}
        case Negative(inner):
            return _scaled(_form(inner, frame), -1)
        case Binary("+", left, right):
            return _sum(_form(left, frame), _form(right, frame), 1)
        case Binary("-", left, right):
            return _sum(_form(left, frame), _form(right, frame), -1)
        case Binary("*", left, right):
            one, other = _form(left, frame), _form(right, frame)
            return _scaled(one, other[None]) if set(other) == {None} else _scaled(other, one[None])
        case Binary("/", left, right):
            return _scaled(_form(left, frame), 1 / _form(right, frame)[None])
        case Binary("^", left, right) if set(form := _form(left, frame)) != {None}:
            return form
        case _:
            return {None: to_sympy(node, lambda unit: _size(unit, frame), frame.degrees)}


def _exactly(share: Share) -> Any:
    """The factor of a component: a root where its square is rational, else the float."""
    from sympy import Rational, sqrt  # slow to import, and most lines are judged without it

    if share.square is None:
        return Rational(share.factor)
    root = sqrt(Rational(share.square.numerator, share.square.denominator))
    return -root if share.factor < 0 else root


def _size(unit: str, frame: Frame) -> Any:
    return unit_meaning(unit, frame.force, frame.length).size


def _scaled(form: Form, factor: Any) -> Form:
    return {name: value * factor for name, value in form.items()}


def _sum(one: Form, other: Form, sign: int) -> Form:
    total = dict(one)
    for name, value in other.items():
        total[name] = total.get(name, 0) + sign * value
    return total

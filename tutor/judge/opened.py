"""Which terms does a sum of numbers in brackets add up: C_y = (560*300 + 240*900)/600?

Taken as one number it says less of what is wrong than term by term.
"""

from __future__ import annotations

from typing import Literal

from tutor.judge.remade import remade
from tutor.notation import Line
from tutor.notation.elements.tree import Binary, Name, Negative, Node, has


def opened(line: Line) -> Line | None:
    """A line with its sums of numbers multiplied out; None where it has none."""
    return remade(line, lambda node, _: multiplied_out(node))


def multiplied_out(node: Node) -> Node:
    """A tree with what its sums of numbers are multiplied or divided by in each of their terms."""
    match node:
        case Binary("+" | "-" as sign, left, right):
            return Binary(sign, multiplied_out(left), multiplied_out(right), node.span)
        case Negative(inner):
            return Negative(multiplied_out(inner), node.span)
        case Binary("*" | "/" as sign, left, right) if _is_sum(left := multiplied_out(left)):
            return _each(left, sign, right)
        case Binary("*", left, right) if _is_sum(right):
            return _each(right, "*", left)
        case _:
            return node


def _each(node: Node, sign: Literal["*", "/"], factor: Node) -> Node:
    match node:
        case Binary("+" | "-" as between, left, right):
            return Binary(between, _each(left, sign, factor), _each(right, sign, factor), node.span)
        case Negative(inner):
            return Negative(_each(inner, sign, factor), node.span)
        case _:
            return Binary(sign, node, factor, node.span)


def _is_sum(node: Node) -> bool:
    """Whether numbers alone are added up in a tree."""
    while isinstance(node, Negative):
        node = node.inner
    return isinstance(node, Binary) and node.operator in "+-" and not has(node, Name)

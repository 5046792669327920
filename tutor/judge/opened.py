"""Which terms does a sum of numbers in brackets add up: C_y = (560*300 + 240*900)/600?

Taken as one number it says less of what is wrong than term by term.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from tutor.notation import Line, Side, Step
from tutor.notation.evaluate import Frame, parts
from tutor.notation.tree import Binary, Name, Negative, Node, children
from tutor.notation.unreadable import Broken


def opened(line: Line) -> Line | None:
    """A line with its sums of numbers multiplied out; None where it has none."""
    try:
        steps = tuple(map(_step, line.steps))
    except Broken:
        return None
    return None if steps == line.steps else replace(line, steps=steps, alternatives=())


def _step(step: Step) -> Step:
    return replace(step, sides=tuple(_side(side, step.frame) for side in step.sides))


def _side(side: Side, frame: Frame) -> Side:
    node = _out(side.node)
    return side if node == side.node else replace(side, node=node, terms=tuple(parts(node, frame)))


def _out(node: Node) -> Node:
    """A tree with what its sums of numbers are multiplied or divided by in each of their terms."""
    match node:
        case Binary("+" | "-" as sign, left, right):
            return Binary(sign, _out(left), _out(right), node.span)
        case Negative(inner):
            return Negative(_out(inner), node.span)
        case Binary("*" | "/" as sign, left, right) if _is_sum(left := _out(left)):
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
    return isinstance(node, Binary) and node.operator in "+-" and not _has_name(node)


def _has_name(node: Node) -> bool:
    return isinstance(node, Name) or any(map(_has_name, children(node)))

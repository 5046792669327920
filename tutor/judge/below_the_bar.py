"""Is what stands right behind a divisor divided by as well: R = 2840/1120sin60, without brackets?"""

from __future__ import annotations

from dataclasses import replace

from tutor.notation import Line, Side, Step
from tutor.notation.evaluate import Frame, parts
from tutor.notation.tree import Binary, Name, Negative, Node, children
from tutor.notation.unreadable import Broken

BRACKETS = (
    "What stands right behind the divisor is read as divided by too; bracket it, since a line is read "
    "from left to right."
)
CLEAR = " ()[]{}"


def all_below(line: Line) -> Line | None:
    """A line with numbers side by side behind a divisor all below it; None where there are none."""
    try:
        steps = tuple(_step(step) for step in line.steps)
    except Broken:
        return None
    return None if steps == line.steps else replace(line, steps=steps, alternatives=())


def _step(step: Step) -> Step:
    return replace(step, sides=tuple(_side(side, step.text, step.frame) for side in step.sides))


def _side(side: Side, text: str, frame: Frame) -> Side:
    node = _below(side.node, text)
    return side if node == side.node else replace(side, node=node, terms=tuple(parts(node, frame)))


def _below(node: Node, text: str) -> Node:
    match node:
        case Negative(inner):
            return Negative(_below(inner, text), node.span)
        case Binary("*", left, right):
            left = _below(left, text)
            if isinstance(left, Binary) and left.operator == "/" and _beside(left, right, text):
                below = Binary("*", left.right, right, right.span)
                return Binary("/", left.left, below, node.span)
            return replace(node, left=left)
        case Binary(_, left, right):
            return replace(node, left=_below(left, text), right=_below(right, text))
        case _:
            return node


def _beside(left: Binary, right: Node, text: str) -> bool:
    """Whether two numbers stand side by side, with no sign between them."""
    between = text[left.right.span.end : right.span.start]
    return not between.strip(CLEAR) and not (_has_name(left.right) or _has_name(right))


def _has_name(node: Node) -> bool:
    return isinstance(node, Name) or any(map(_has_name, children(node)))

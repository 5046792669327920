"""Is what stands right behind a divisor divided by as well: R = 2840/1120sin60, without brackets?"""

from __future__ import annotations

from dataclasses import replace
from typing import TypeGuard

from tutor.judge.remade import remade
from tutor.notation import Line
from tutor.notation.elements.tree import Binary, Call, Name, Negative, Node, has

BRACKETS = (
    "What stands right behind the divisor is read as divided by too; bracket it, since a line is read "
    "from left to right."
)
CLEAR = " ()[]{}"


def all_below(line: Line) -> Line | None:
    """A line with numbers side by side behind a divisor all below it; None where there are none.

    In a sum a plain number in brackets is a factor, as of a moment: 9/2(1.5) + 3 R.
    """
    return remade(line, _below)


def _below(node: Node, text: str, in_sum: bool = False) -> Node:
    match node:
        case Negative(inner):
            return Negative(_below(inner, text, in_sum), node.span)
        case Binary("*", left, right):
            left = _below(left, text, in_sum)
            plain = in_sum and not has(right, Call)
            if _is_fraction(left) and not plain and _beside(left, right, text):
                below = Binary("*", left.right, right, right.span)
                return Binary("/", left.left, below, node.span)
            return replace(node, left=left)
        case Binary(sign, left, right):
            in_sum = in_sum or sign in "+-"
            return replace(node, left=_below(left, text, in_sum), right=_below(right, text, in_sum))
        case _:
            return node


def _is_fraction(node: Node) -> TypeGuard[Binary]:
    return isinstance(node, Binary) and node.operator == "/"


def _beside(left: Binary, right: Node, text: str) -> bool:
    """Whether two numbers stand side by side, with no sign between them."""
    between = text[left.right.span.end : right.span.start]
    return not between.strip(CLEAR) and not has(right, Name)

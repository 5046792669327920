"""Does a number begin with what the one before it comes to, and work on: 6 + 4 = 10/2 = 5?

Both sides of that first equals sign are not equal, but what is worked out is right and plain to see.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TypeGuard

from tutor.judge.same import NEAR, SAME
from tutor.judge.worked import side_value
from tutor.notation import Line, Side, Step
from tutor.notation.elements.tree import Binary, Negative, Node, Unit
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.evaluate import parts

RUN_ON = "{one} is not {other}: end the line at its result, and go on in a new one."


def goes_on(step: Step, one: Side, other: Side) -> bool:
    """Whether the second of two numbers that are not equal goes on from the first, which was worked out."""
    if not (one.numeric and other.numeric and _is_worked_out(_unsigned(one.node))):
        return False
    node = _unsigned(other.node)
    if not _is_worked_out(node):
        return False
    while _is_worked_out(node):
        node = _unsigned(node.left)
    try:
        first = parts(node, step.frame)
    except Broken:
        return False
    size = abs(side_value(one))
    off = abs(abs(sum(each.value for each in first)) - size)
    return size > 0.0 and off <= max(SAME * size, sum(each.radius for each in first))


def _unsigned(node: Node) -> Node:
    while isinstance(node, Negative):
        node = node.inner
    return node


def _is_worked_out(node: Node) -> TypeGuard[Binary]:
    """Whether it is two things put together, and no number in its unit."""
    return isinstance(node, Binary) and not isinstance(node.right, Unit)


def run_on(line: Line) -> str | None:
    """What is said of an equals sign between two such numbers; None where a line has none."""
    for step in line.steps:
        for one, other in pairwise(step.sides):
            unequal = abs(side_value(one) - side_value(other)) > NEAR * abs(side_value(one))
            if one.numeric and other.numeric and unequal and goes_on(step, one, other):
                return RUN_ON.format(one=step.as_typed(one), other=step.as_typed(other))
    return None

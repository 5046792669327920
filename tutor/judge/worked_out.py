"""How was a value worked out, as far as it was typed: AB = (12*4 + 24*4)/8?"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple, TypeGuard

from tutor.judge.opened import multiplied_out
from tutor.notation import Side, Step
from tutor.notation.elements.tree import Binary, Node, Number, children
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.evaluate import parts


class WorkedOut(NamedTuple):
    """Whether a value was worked out by a division, from which numbers added up, whether at all.

    `quotients` are those of one number by another that stand in it, 26·20/15 as 20/15 and 26/15.
    """

    divided: bool = False
    numbers: tuple[float, ...] = ()
    shown: bool = False
    quotients: tuple[float, ...] = ()


UNSHOWN = WorkedOut()


def worked_out(step: Step) -> WorkedOut:
    """How the value of a statement was worked out in it."""
    sides = [side for side in step.sides if side.numeric]
    sums = (_added_up(step, side) for side in sides)
    numbers = next((each for each in sums if len(each) > 1), ())
    quotients = tuple(each for side in sides for each in _quotients(side.node))
    divided = any(_divided(side.node) for side in sides)
    return WorkedOut(divided, numbers, len(sides) > 1, quotients)


def _added_up(step: Step, side: Side) -> tuple[float, ...]:
    """The numbers that a side adds up, each with what all of them are divided by."""
    try:
        return tuple(term.value for term in parts(multiplied_out(side.node), step.frame))
    except Broken:
        return ()


def _quotients(node: Node) -> Iterator[float]:
    if isinstance(node, Binary) and node.operator == "/" and isinstance(node.right, Number):
        above = node.left
        factors = (above.left, above.right) if _multiplies(above) else (above,)
        for factor in factors:
            if isinstance(factor, Number) and factor.value and node.right.value:
                yield float(factor.value / node.right.value)
    for inner in children(node):
        yield from _quotients(inner)


def _multiplies(node: Node) -> TypeGuard[Binary]:
    return isinstance(node, Binary) and node.operator == "*"


def _divided(node: Node) -> bool:
    if isinstance(node, Binary) and node.operator == "/":
        return True
    return any(map(_divided, children(node)))

"""How was a value worked out, as far as it was typed: AB = (12*4 + 24*4)/8?"""

from __future__ import annotations

from typing import NamedTuple

from tutor.judge.opened import multiplied_out
from tutor.notation import Side, Step
from tutor.notation.elements.tree import Binary, Node, children
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.evaluate import parts


class WorkedOut(NamedTuple):
    """Whether a value was worked out by a division, from which numbers added up, whether at all."""

    divided: bool = False
    numbers: tuple[float, ...] = ()
    shown: bool = False


UNSHOWN = WorkedOut()


def worked_out(step: Step) -> WorkedOut:
    """How the value of a statement was worked out in it."""
    sides = [side for side in step.sides if side.numeric]
    sums = (_added_up(step, side) for side in sides)
    numbers = next((each for each in sums if len(each) > 1), ())
    return WorkedOut(any(_divided(side.node) for side in sides), numbers, len(sides) > 1)


def _added_up(step: Step, side: Side) -> tuple[float, ...]:
    """The numbers that a side adds up, each with what all of them are divided by."""
    try:
        return tuple(term.value for term in parts(multiplied_out(side.node), step.frame))
    except Broken:
        return ()


def _divided(node: Node) -> bool:
    if isinstance(node, Binary) and node.operator == "/":
        return True
    return any(map(_divided, children(node)))

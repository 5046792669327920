"""Does a value come out too large or too small because the distances of its line are in two units?"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from tutor.judge.typed import TypedEquation
from tutor.model import Problem
from tutor.notation.elements.tree import Unit, within
from tutor.notation.elements.units import METRES


def length_mixed_in(
    problem: Problem, lines: Sequence[TypedEquation], value: float, near: Callable[[float], bool]
) -> str | None:
    """The unit of length typed in a line, not the problem's, by which the value is off; or None.

    `near` tells whether a number is a right value.
    """
    own = problem.length
    sides = (side for line in lines for side in (line.reading.left, line.reading.right))
    typed = {node.unit for side in sides for node in within(side) if isinstance(node, Unit)}
    for unit in sorted(typed & METRES.keys() - {own}):
        times = float(METRES[unit] / METRES[own])
        if any(near(sign * value * by) for sign in (1, -1) for by in (times, 1 / times)):
            return unit
    return None

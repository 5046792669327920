"""A line with other trees than were read: where what was typed may mean another order of its numbers."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from tutor.notation import Line, Side, Step
from tutor.notation.elements.tree import Node
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.evaluate import parts

Change = Callable[[Node, str], Node]
"""Makes another tree of one, and of the text that its spans are places in."""


def remade(line: Line, change: Change) -> Line | None:
    """The line with every tree changed; None where nothing changes, or what it makes cannot be read."""
    try:
        steps = tuple(_step(step, change) for step in line.steps)
    except Broken:
        return None
    return None if steps == line.steps else replace(line, steps=steps, alternatives=())


def _step(step: Step, change: Change) -> Step:
    return replace(step, sides=tuple(_side(side, step, change) for side in step.sides))


def _side(side: Side, step: Step, change: Change) -> Side:
    node = change(side.node, step.text)
    if node == side.node:
        return side
    return replace(side, node=node, terms=tuple(parts(node, step.frame)))

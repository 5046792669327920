"""In which unit are the numbers of a chain that gives one only behind its result: CD = 16000*17/8 = 34000 N?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge.same import are_same
from tutor.judge.worked import side_value
from tutor.notation import Line, Side, Step
from tutor.notation.elements.tree import Binary, Unit, has
from tutor.notation.elements.units import NEWTONS, unit_meaning
from tutor.notation.formulas.evaluate import parts


def with_units_behind(line: Line) -> Line | None:
    """A line with its numbers in the unit of force that the same number behind them has; None where none has."""
    steps = tuple(map(_with_unit, line.steps))
    return None if steps == line.steps else replace(line, steps=steps, alternatives=())


def _with_unit(step: Step) -> Step:
    sides = list(step.sides)
    for at in range(len(sides) - 2, -1, -1):
        one, other = sides[at : at + 2]
        if _is_meant_in(one, other, step):
            sides[at] = _in_unit(one, other.unit or "", step)
    return replace(step, sides=tuple(sides))


def _is_meant_in(one: Side, other: Side, step: Step) -> bool:
    if not (one.numeric and other.numeric) or other.unit not in NEWTONS or has(one.node, Unit):
        return False
    unit = unit_meaning(other.unit, step.frame.force, step.frame.length).value
    return unit != 1.0 and are_same(side_value(one), side_value(other) / unit)


def _in_unit(side: Side, unit: str, step: Step) -> Side:
    node = Binary("*", side.node, Unit(unit, side.span), side.span)
    return replace(side, node=node, terms=tuple(parts(node, step.frame)), unit=unit)

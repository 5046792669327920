"""In which unit is a whole line that names one only once: "0.3 R = 170·0.08 + 340·0.15 [N·m]", in a problem in mm?

Every number without a unit is in that one then. It counts only where the line is right so, and one of
moments only where its arms are then those that act.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from tutor.judge.about import Asked, M, Value
from tutor.judge.chain import readings_of
from tutor.judge.desk import Desk
from tutor.judge.fit import fit
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import typed_equation
from tutor.notation import Line, Side, Step
from tutor.notation.elements.tree import Binary, Name, Negative, Node, Unit, has, within
from tutor.notation.elements.units import METRES, NEWTONS, unit_meaning
from tutor.notation.formulas.evaluate import parts

NEARLY = 0.02
"""So far from 1 may a line of moments lie beside the true one, by the rounding of its arms."""


def in_unit_of_all(desk: Desk, about: Asked, line: Line) -> Line | None:
    """The line with all its numbers in the only unit that it names; None where that changes nothing.

    One of forces is that of the last number: what is said of an earlier one is said of that.
    """
    if isinstance(about, Value):
        return None
    named = [side for step in line.steps for side in step.sides if has(side.node, Unit)]
    units = {unit for side in named for unit in _units(side.node)}
    if isinstance(about, M):
        units = set(filter(_is_moment, units))
    elif named != [line.result.sides[-1]] or not units <= NEWTONS.keys():
        return None
    if len(units) != 1:
        return None
    unit = units.pop()
    if unit_meaning(unit, desk.problem.force, desk.problem.length).value == 1.0:
        return None
    if isinstance(about, M):
        return _of_moments(desk, about, line, unit)
    return _converted(line, Unit(unit, line.steps[0].span), None)


def _units(node: Node) -> Iterator[str]:
    return (each.unit for each in within(node) if isinstance(each, Unit))


def _is_moment(unit: str) -> bool:
    words = unit.split("*")
    return len(words) == 2 and bool(set(words) & set(NEWTONS)) and bool(set(words) & set(METRES))


def _of_moments(desk: Desk, about: M, line: Line, unit: str) -> Line | None:
    """A line of moments in that unit, where one of its steps that names it is then the true sum."""
    length = next(word for word in unit.split("*") if word in METRES)
    span = line.steps[0].span
    made = _converted(line, Unit(unit, span), Unit(length, span))
    if made is None:
        return None
    true = TrueEquation(desk.problem, about, desk.own)
    named = [each for each in made.steps if any(side.unit == unit for side in each.sides)]
    for step in named:
        for reading in readings_of(desk, made, step):
            found = fit(typed_equation(reading), true, desk.problem.tolerance)
            if found is not None and math.isclose(abs(found.scale), 1.0, rel_tol=NEARLY):
                return made
    return None


def _converted(line: Line, constant: Unit, force: Unit | None) -> Line | None:
    """The line with each constant in one unit and each force times another; None where terms are mixed."""
    steps = []
    for step in line.steps:
        sides = [_side(side, step, constant, force) for side in step.sides]
        whole = tuple(side for side in sides if side is not None)
        if len(whole) < len(sides):
            return None
        steps.append(replace(step, sides=whole))
    return replace(line, steps=tuple(steps), alternatives=())


def _side(side: Side, step: Step, constant: Unit, force: Unit | None) -> Side | None:
    if _is_zero_or_result(side):
        return side
    made: list[Node] = []
    for node in _addends(side.node):
        named, numbered = has(node, Name), not has(node, Unit)
        unit = force if named else constant
        if named and len({term.name is None for term in parts(node, step.frame)}) > 1:
            return None
        made.append(node if unit is None or not numbered else Binary("*", node, unit, side.span))
    whole = made[0]
    for node in made[1:]:
        whole = Binary("+", whole, node, side.span)
    return replace(side, node=whole, terms=tuple(parts(whole, step.frame)), unit=constant.unit)


def _is_zero_or_result(side: Side) -> bool:
    return all(not term.value for term in side.terms) or side.name is not None


def _addends(node: Node) -> Iterator[Node]:
    """The terms of a sum, each with its sign."""
    if isinstance(node, Binary) and node.operator in "+-":
        yield from _addends(node.left)
        for each in _addends(node.right):
            yield each if node.operator == "+" else Negative(each, each.span)
    elif isinstance(node, Negative):
        yield from (Negative(each, each.span) for each in _addends(node.inner))
    else:
        yield node

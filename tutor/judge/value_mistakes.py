"""Which mistake does a wrong value show?"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial

from tutor.judge.about import M, Value, equation_of
from tutor.judge.digits import are_exchanged, is_rounded_hard
from tutor.judge.kind import Case
from tutor.judge.known_values import KnownValues
from tutor.judge.mistakes import KINDS
from tutor.judge.mistakes.unit import FACTORS
from tutor.judge.mixed_lengths import length_mixed_in
from tutor.judge.moved_numbers import FOLLOWS, left_out, one_turned
from tutor.judge.same import are_same
from tutor.judge.typed import TypedEquation
from tutor.judge.value_words import LENGTHS_MIXED, words_of_value
from tutor.judge.verdict import Mistake
from tutor.judge.worked_out import UNSHOWN, WorkedOut
from tutor.model import Problem
from tutor.notation import ValueReading
from tutor.notation.elements.units import NEWTONS, unit_meaning
from tutor.statics.body import member_force

Near = Callable[[float], bool]
ONE = 0.999


@dataclass(frozen=True)
class WrongValue:
    """A typed value in the positive sense, and what is right: `near` tells whether a number is.

    `worked` is what was typed on the way to it.
    """

    problem: Problem
    unknown: str
    reading: ValueReading
    own: KnownValues
    value: float
    right: Sequence[float]
    near: Near
    lines: Sequence[TypedEquation] = ()
    radians: Callable[[], Sequence[TypedEquation]] = tuple
    worked: WorkedOut = UNSHOWN


def value_mistake(
    problem: Problem,
    unknown: str,
    reading: ValueReading,
    own: KnownValues,
    value: float,
    right: Sequence[float],
    near: Near,
    lines: Sequence[TypedEquation] = (),
    radians: Callable[[], Sequence[TypedEquation]] = tuple,
    worked: WorkedOut = UNSHOWN,
) -> Mistake:
    """The most plausible mistake; `arithmetic` where nothing else explains the value."""
    wrong = WrongValue(problem, unknown, reading, own, value, right, near, lines, radians, worked)
    code = next((code for code, shows in SIGNS if shows(wrong)), "arithmetic")
    kind = KINDS[code]
    case = Case(problem, Value(unknown), unknown)
    words = words_of_value(
        code,
        way=reading.sense is not None and code in ("sign", "sense"),
        moved=code == "sign" and not _turned(wrong),
        unit=code == "unit" and reading.unit is not None,
        point=code in ("arithmetic", "unit") and _point_moved(wrong),
    )
    other = length_mixed_in(problem, lines, value, near) if code == "unit" else None
    words = words if other is None else LENGTHS_MIXED
    if words is None:
        return Mistake(
            code, unknown, kind.look(case).text, kind.reason(case), kind.place(case).text
        )
    look, reason, place = (
        said.format(thing=case.thing, subject=case.subject, own=problem.length, other=other)
        for said in words
    )
    return Mistake(code, unknown, look, reason, place)


def _turned(wrong: WrongValue) -> bool:
    return wrong.value != 0.0 and wrong.near(-wrong.value)


def _swapped(wrong: WrongValue) -> bool:
    """Whether T and C are swapped; the letter of a minus that was worked out goes with it."""
    reading = wrong.reading
    shown = wrong.worked.shown or any(wrong.unknown in line.names for line in wrong.lines)
    follows = shown and reading.value < 0.0 and wrong.own.sign(wrong.unknown) > 0
    return _turned(wrong) and reading.letter is not None and not follows


def _against_arrow(wrong: WrongValue) -> bool:
    return _turned(wrong) and wrong.own.sign(wrong.unknown) < 0


def _other_unit(wrong: WrongValue) -> bool:
    """Whether the figures are a right value's, in the unit typed or in another than the problem's."""
    if wrong.reading.unit in NEWTONS:
        problem = wrong.problem
        scale = unit_meaning(wrong.reading.unit, problem.force, problem.length).value
        if scale != 1.0 and (wrong.near(wrong.value / scale) or _point_moved(wrong)):
            return True
    return any(
        _close(abs(wrong.value * factor), abs(true)) for factor in FACTORS for true in wrong.right
    )


def _point_moved(wrong: WrongValue) -> bool:
    """Whether only the decimal point of a value is not where it belongs, by a place or two."""
    return any(wrong.near(wrong.value * factor) for factor in (0.01, 0.1, 10.0, 100.0))


def _rounded_hard(wrong: WrongValue) -> bool:
    """An expression of exact numbers shows no figures."""
    reading = wrong.reading
    if reading.figures is None and not reading.radius:
        return False
    return any(is_rounded_hard(wrong.value, reading.radius, true) for true in wrong.right)


def _half_the_load(wrong: WrongValue) -> bool:
    """Whether a reaction is given as half of all the loads in its direction, and no line gives it."""
    reaction = wrong.problem.reaction.get(wrong.unknown)
    if reaction is None or len(wrong.problem.supports) != 2 or any(_rows(wrong, wrong.lines)):
        return False
    along = reaction.direction
    total = math.fsum(
        load.vector[0] * along.x + load.vector[1] * along.y for load in wrong.problem.loads
    )
    return _close(abs(wrong.value), abs(total) / 2)


def _anothers(wrong: WrongValue) -> bool:
    """Whether it is the value found for another unknown."""
    return any(
        _close(abs(wrong.value), abs(value.value))
        for name, value in wrong.own.known.items()
        if name != wrong.unknown
    )


def _stands_with_a_factor(wrong: WrongValue) -> bool:
    """Whether a line has this unknown with a factor or an arm; taken for granted where none has it."""
    beside = [
        abs(line.unknowns[wrong.unknown].value)
        for line in wrong.lines
        if wrong.unknown in line.names
    ]
    return not beside or any(not are_same(factor, 1.0) for factor in beside)


def _moment_left(wrong: WrongValue) -> bool:
    """Whether a reaction was not divided by its arm in a sum of moments about some joint."""
    problem = wrong.problem
    if wrong.unknown not in problem.reaction or wrong.worked.divided:
        return False
    if rows := list(_rows(wrong, wrong.lines)):
        return any(
            not are_same(abs(beside), 1.0) and _comes_to(wrong, math.fsum(numbers))
            for beside, numbers in rows
        )
    arms = {
        abs(equation_of(problem, M(joint.name)).linear.get(wrong.unknown, 0.0))
        for joint in problem.joints
    } - {0.0, 1.0}
    return any(wrong.near(s * wrong.value / arm) for arm in arms for s in (1.0, -1.0))


def _multiplied(wrong: WrongValue) -> bool:
    """Whether a line gives this value where it is not divided by the factor of the force, but otherwise."""
    return any(
        _comes_to(wrong, math.fsum(numbers) * factor)
        for beside, numbers in _rows(wrong, wrong.lines)
        if abs(beside) < ONE
        for factor in _wrongly_divided(abs(beside))
    )


def _component_left(wrong: WrongValue) -> bool:
    """Whether a component of the force is given for the force, or sine and cosine were swapped."""
    x, y = map(abs, _direction(wrong))
    if any(_rows(wrong, wrong.lines)) or min(x, y) < 1e-9 or not _stands_with_a_factor(wrong):
        return False
    factors = (1 / x, 1 / y, x / y, y / x, 1 / (x * x), 1 / (y * y), 1 / (x * y))
    return any(wrong.near(s * wrong.value * f) for f in factors for s in (1.0, -1.0))


def _wrongly_divided(beside: float) -> tuple[float, ...]:
    """By what numbers are multiplied where they should be divided by `beside`, a component's factor.

    By itself, by the other component, twice, by their product.
    """
    across = math.sqrt(1.0 - beside * beside)
    return beside, across, 1 / across, 1 / beside**2, across / beside, 1 / (beside * across)


def _direction(wrong: WrongValue) -> tuple[float, float]:
    """The direction of the force concerned, as a unit vector."""
    problem, unknown = wrong.problem, wrong.unknown
    if unknown in problem.member:
        force = member_force(problem, unknown, problem.member[unknown].start)
        return force.x, force.y
    direction = problem.reaction[unknown].direction
    return direction.x, direction.y


def _rows(wrong: WrongValue, lines: Sequence[TypedEquation]) -> Iterator[tuple[float, list[float]]]:
    """Of each line that leaves this unknown alone open: what stands beside it, and the numbers."""
    known = wrong.own.known
    for line in lines:
        others = [name for name in line.names if name != wrong.unknown]
        if wrong.unknown in line.names and all(name in known for name in others):
            numbers = [term.value for term in line.constants]
            numbers += [line.unknowns[name].value * known[name].value for name in others]
            yield line.unknowns[wrong.unknown].value, numbers


def _comes_to(wrong: WrongValue, number: float) -> bool:
    """Whether the typed value is this number under the student's own sense, to the figures typed."""
    return number != 0.0 and math.isclose(abs(_own(wrong)), abs(number), rel_tol=FOLLOWS)


def _own(wrong: WrongValue) -> float:
    return wrong.own.sign(wrong.unknown) * wrong.value


def _not_divided(wrong: WrongValue) -> bool:
    """Whether what stands on the other side of a line was given, a component for the force."""
    return wrong.unknown in wrong.problem.member and any(
        abs(beside) < ONE and _comes_to(wrong, math.fsum(numbers))
        for beside, numbers in _rows(wrong, wrong.lines)
    )


def _in_radians(wrong: WrongValue) -> bool:
    """Whether a line gives this value once its angles are taken as radians."""
    if not wrong.lines:
        return False
    plain = [beside for beside, _ in _rows(wrong, wrong.lines)]
    turned = list(_rows(wrong, wrong.radians()))
    return any(
        beside != 0.0 and beside not in plain and _comes_to(wrong, math.fsum(numbers) / beside)
        for beside, numbers in turned
    )


def _number_dropped(wrong: WrongValue, sign: bool = False) -> bool:
    """Whether a line gives this value without one of its numbers, also in its `sign`."""
    return left_out(_rows(wrong, wrong.lines), _own(wrong), wrong.worked.numbers, sign)


def _number_turned(wrong: WrongValue, sign: bool = False) -> bool:
    """Whether a line gives this value with one of its numbers turned round, also in its `sign`."""
    return one_turned(_rows(wrong, wrong.lines), _own(wrong), sign)


def _digits_exchanged(wrong: WrongValue) -> bool:
    if wrong.reading.figures is None:
        return False
    return any(are_exchanged(wrong.value, wrong.reading.radius, true) for true in wrong.right)


def _quotient_turned(wrong: WrongValue) -> bool:
    """Whether the value is right with one quotient of its working the other way up."""
    turned = [wrong.value / each**2 for each in wrong.worked.quotients if each != 1.0]
    return any(math.isclose(one, true, rel_tol=FOLLOWS) for one in turned for true in wrong.right)


def _close(one: float, other: float) -> bool:
    return are_same(one, other) and one != 0.0


SIGNS: tuple[tuple[str, Callable[[WrongValue], bool]], ...] = (
    ("tension-compression", _swapped),
    ("sense", _against_arrow),
    ("sign", _turned),
    ("unit", _other_unit),
    ("symmetry", _half_the_load),
    ("rounding", _rounded_hard),
    ("no-arm", _moment_left),
    ("component", _not_divided),
    ("angle-mode", _in_radians),
    ("missing", partial(_number_dropped, sign=True)),
    ("sign", partial(_number_turned, sign=True)),
    ("missing", _number_dropped),
    ("sign", _number_turned),
    ("component", _multiplied),
    ("carried", _anothers),
    ("digits-exchanged", _digits_exchanged),
    ("component", _component_left),
    ("upside-down", _quotient_turned),
)

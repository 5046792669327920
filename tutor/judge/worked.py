"""Where does a line give a value with its working: AB = 17 - 3.96 = 13.04 T, or => 13.04 T at its end?"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import replace

from tutor.judge.same import one_way
from tutor.notation import Line, Reading, Side, Step, Unreadable, one_equation
from tutor.notation.elements.same import are_same
from tutor.notation.elements.tree import Name, Negative, Span
from tutor.notation.formulas.evaluate import Term

SAME_NUMBER = 1e-9


def value_given(step: Step) -> str | None:
    """The unknown that stands alone in a statement whose other sides are all numbers, or None."""
    named = [side for side in step.sides if not side.numeric]
    if len(named) != 1 or len(step.sides) == 1:
        return None
    return _lone(named[0])


def _lone(side: Side) -> str | None:
    """The unknown that a side consists of, with a minus or without."""
    node = side.node.inner if isinstance(side.node, Negative) else side.node
    return node.name if isinstance(node, Name) and node.share is None else None


def value_ended(step: Step, known: Collection[str] = ()) -> str | None:
    """The unknown whose value a statement ends in, whatever stands between: BC = CD = 18 T; or None.

    It is the one that the chain begins with, else the only one without a value that stands alone.
    """
    first, last = step.sides[0], step.sides[-1]
    if (given := value_given(step)) is not None or not last.numeric:
        return given
    alone = {side.name for side in step.sides if side.name is not None}
    begins, open_ones = _lone(first), list(alone.difference(known))
    found = begins is not None and (begins not in known or not open_ones)
    left = [begins] if begins is not None and found else open_ones
    return left[0] if len(left) == 1 else None


def value_alone(step: Step, known: Collection[str] = ()) -> Step:
    """A statement without the sides of other unknowns than the one whose value it ends in.

    A number without T, C or arrow that is said of minus the unknown is turned: -BC = 18 as BC = -18.
    """
    name = value_ended(step, known)
    if name is None:
        return step
    sides = tuple(side for side in step.sides if side.numeric or _lone(side) == name)
    minus = next((side for side in sides if not side.numeric and side.name is None), None)
    if minus is not None:
        signed = not (sides[-1].letter or sides[-1].sense)
        sides = tuple(with_other_sign(side) if signed or side is minus else side for side in sides)
    return replace(step, sides=sides)


def with_other_sign(side: Side) -> Side:
    """A side with the other sign."""
    node = side.node.inner if isinstance(side.node, Negative) else Negative(side.node, side.span)
    terms = tuple(term._replace(value=-term.value) for term in side.terms)
    return replace(side, node=node, terms=terms)


def member_lettered(step: Step, members: Collection[str], known: Collection[str]) -> str | None:
    """The member that a T or C behind a statement speaks of, or None where that is not clear.

    The only one on the side that it begins with, else the only one in it that has no value yet.
    """
    if not step.sides[-1].numeric or step.sides[-1].letter is None:
        return None
    begins = next((side for side in step.sides if not side.numeric), step.sides[0])
    first = {term.name for term in begins.terms if term.name is not None}
    if len(first) == 1 and (name := first.pop()) in members:
        return name
    here = [name for name in dict.fromkeys(_names(step)) if name in members]
    left = [name for name in here if name not in known] or here
    return left[0] if len(left) == 1 else None


def value_at_end(line: Line, known: Collection[str] = ()) -> str | None:
    """The unknown whose value ends a line that shows more than that number alone, or None."""
    worked = len(line.steps) > 1 or len(line.result.sides) > 2
    return value_ended(line.result, known) if worked else None


def is_result_behind(line: Line, step: Step, known: Collection[str] = ()) -> bool:
    """Whether a statement is the value that something before it comes to."""
    return value_ended(step, known) is not None and (
        len(step.sides) > 2 or step is not line.steps[0]
    )


def ends_in_moment(line: Line) -> str | None:
    """The force whose value behind an equation is given in the unit of a moment, which no force has."""
    of_moments = (
        value_given(step)
        for step in line.steps[1:]
        if any("*" in (side.unit or "") for side in step.sides)
    )
    return next(filter(None, of_moments), None)


def named(line: Line, known: Collection[str]) -> Line:
    """A line with its numbers behind an equation named: each is the value of the one open unknown before.

    `known` are the unknowns with a value. A number stays alone where several unknowns are open, or
    where it only says again what the statement before it came to.
    """
    if len(line.steps) < 2:
        return line
    first, *others = _reason_first(line.steps, known)
    steps = [first]
    for step in others:
        name = _open_name(steps[-1], known)
        alone = step.follows or len(step.sides) == 1
        alone = alone and all(side.numeric for side in step.sides)
        if alone and name is not None and not _says_again(steps[-1], step, known):
            step = replace(step, sides=(side_of(name, step.span), *step.sides))
        steps.append(step)
    return replace(line, steps=tuple(steps))


def _reason_first(steps: tuple[Step, ...], known: Collection[str]) -> tuple[Step, ...]:
    """A value behind the equation it is found from, where it was typed before it: AB = 12 since 0.5 AB = 6."""
    value, *others = steps
    name = value_given(value)
    alone = len(others) == 1 and not others[0].follows and value_given(others[0]) is None
    if name is None or not alone or set(_names(others[0])) - {*known, name}:
        return steps
    return (others[0], value) if name in set(_names(others[0])) else steps


def sized(line: Line) -> Line | None:
    """A line whose last number says its way, read as sizes all through: CD = 17.25/.6 = 28.75 C.

    None where no number before the last one goes with it.
    """
    last = line.result.sides[-1]
    name = value_given(line.result)
    if name is None or not last.numeric or not (last.letter or last.sense):
        return None
    steps = tuple(
        replace(step, sides=tuple(with_the_way_of(side, last) for side in step.sides))
        if value_given(step) == name
        else step
        for step in line.steps
    )
    return None if steps == line.steps else replace(line, steps=steps, alternatives=())


def only_works_out(line: Line, step: Step) -> bool:
    """Whether a statement only works out a number that an equation beside it has: 0.866 × 20 = 17.3 so ..."""
    return holds_alone(step) and _beside_force(line)


def works_out_wrongly(line: Line, step: Step) -> bool:
    """Whether a statement gives a number that it does not come to, beside an equation: 14 = 26/2."""
    numbers = all(side.numeric for side in step.sides)
    plain = any(side.figures is not None for side in step.sides)
    return numbers and plain and len(step.sides) > 1 and _beside_force(line)


def _beside_force(line: Line) -> bool:
    return any(list(_names(other)) for other in line.steps)


def says_something(step: Step) -> bool:
    """Whether a statement is more than an unknown with nothing set equal to it."""
    return len(step.sides) > 1 or step.sides[0].numeric


def holds_alone(step: Step) -> bool:
    """Whether a statement of numbers alone is so, and comes to something."""
    if len(step.sides) < 2 or not all(side.numeric for side in step.sides):
        return False
    first, *others = map(side_value, step.sides)
    return first != 0.0 and all(are_same(size, first) for size in others)


def of_forces(step: Step) -> bool:
    """Whether a chain sets a force equal to another one: CE = DE = 22.1."""
    return sum(side.name is not None for side in step.sides) > 1


def side_value(side: Side) -> float:
    """What a side of numbers comes to."""
    return sum(term.value for term in side.terms)


def open_names(step: Step, known: Collection[str]) -> tuple[str, ...]:
    """The unknowns of a statement that have no value yet."""
    names = dict.fromkeys(_names(step))
    return tuple(names) if len(names) == 1 else tuple(name for name in names if name not in known)


def _names(step: Step) -> Iterator[str]:
    return (term.name for side in step.sides for term in side.terms if term.name is not None)


def _open_name(step: Step, known: Collection[str]) -> str | None:
    names = open_names(step, known)
    return names[0] if len(names) == 1 else None


def _says_again(before: Step, step: Step, known: Collection[str]) -> bool:
    """Whether a number is only what a side of the equation before it comes to: 6 R = 80 + 10 => 90."""
    if value_ended(before, known) is not None:
        return False
    first = abs(side_value(step.sides[0]))
    sizes = [abs(side_value(side)) for side in before.sides if side.numeric]
    return any(abs(first - size) <= SAME_NUMBER * max(1.0, size) for size in sizes)


def side_of(name: str, place: Span) -> Side:
    """A side that is one force."""
    return Side(Name(name, place), (Term(name, 1.0, 0.0, place),), place)


def with_the_way_of(side: Side, last: Side) -> Side:
    """A number of the same sign as the last one, with its letter or way."""
    if side is last or not side.numeric or side.letter or side.sense:
        return side
    if not one_way(side_value(side), side_value(last)):
        return side
    return replace(side, letter=last.letter, sense=last.sense)


def equation_before_value(line: Line | Unreadable) -> Reading | Unreadable:
    """The equation that a line begins with, whatever it comes to behind it: "0.6 AD = 12, AD = 20"."""
    whole = one_equation(line)
    if isinstance(line, Unreadable) or not isinstance(whole, Unreadable):
        return whole
    first, *_ = _reason_first(line.steps, tuple(_names(line.result)))
    if len(first.sides) < 2 or (first.sides[0].numeric and first.sides[1].numeric):
        return whole
    return replace(first.links[0], label=line.label)

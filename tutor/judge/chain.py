"""What do the links of a chain say: which equations, in which signs, and where is one number the last only rounded?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from tutor.judge.blocks import rounded_by
from tutor.judge.desk import Desk
from tutor.judge.going_on import goes_on
from tutor.judge.known_values import is_link, positive_sense
from tutor.judge.same import NEAR, SAME, are_same
from tutor.judge.typed import typed_equation
from tutor.judge.worked import member_lettered, side_value, value_ended
from tutor.notation import Line, Reading, Side, Step
from tutor.notation.elements.tree import Negative
from tutor.notation.lines.reading import link


def readings_of(desk: Desk, line: Line, step: Step) -> Iterator[Reading]:
    """The links of a chain that hold an unknown, each as an equation; letters and arrows as signs.

    Where none does, the first two sides are one, with all values put in. What a chain comes to that
    begins with a force is the value of that force, and no equation of those it was worked out from.
    A link that only says the same in two ways, = 24 + 12 - C_y = 36 - C_y, is none beside others.
    A sum with the values put into it, A_y + 0.6 F_AB = 9 - 9 = 0, is the sum, and the sum of its values;
    A_y + B_y = 33/2 + 27/2 = 30 says what they are together.
    """
    label = step.label or line.label
    step = without_values_put_in(desk, without_remainder(step))
    if put_into(step):
        for side in step.sides[:-1]:
            yield link(line.text, side, step.sides[-1], label, step.frame)
        return
    links = []
    for index, (one, other) in enumerate(pairwise(step.sides)):
        if comes_to(desk, step, one, other):
            continue
        if not (one.numeric and other.numeric) or (index == 0 and all_numbers(step)):
            first, second = with_way(desk, one, other), with_way(desk, other, one)
            links.append(link(line.text, first, second, label, step.frame))
    if len(links) > 1:
        links = [each for each in links if not typed_equation(each).same_on_both_sides] or links
    yield from links


def put_into(step: Step) -> bool:
    """Whether a chain is a sum of forces, the same with numbers put in, and zero."""
    if len(step.sides) < 3:
        return False
    first, *middle, last = step.sides
    if first.numeric or len(first.terms) < 2 or not last.numeric:
        return False
    values = all(side.numeric and len(side.terms) > 1 for side in middle)
    return values and len(last.terms) <= 1 and side_value(last) == 0.0


def without_values_put_in(desk: Desk, step: Step) -> Step:
    """A chain that begins with a sum of known forces without the same sum in their values."""
    first, *others = step.sides
    if len(others) < 2 or len(first.terms) < 2 or not all(side.numeric for side in others):
        return step
    known = desk.own.known
    if any(term.name is not None and term.name not in known for term in first.terms):
        return step
    values = sorted(
        term.value * (known[term.name].value if term.name is not None else 1.0)
        for term in first.terms
    )
    typed = sorted(term.value for term in others[0].terms)
    put_in = len(typed) == len(values) and all(map(are_same, typed, values))
    return replace(step, sides=(first, *others[1:])) if put_in else step


def comes_to(desk: Desk, step: Step, one: Side, other: Side) -> bool:
    """Whether two sides of a chain say what other forces than its own come to as a number."""
    if one is step.sides[0] or not other.numeric:
        return False
    own = value_ended(step, desk.own.known) or member_lettered(
        step, desk.problem.member, desk.own.known
    )
    return own is not None and any(term.name not in (own, None) for term in one.terms)


def without_remainder(step: Step) -> Step:
    """A closing sum without what its rounded numbers leave over, or come to on the way: 6.8 - 12 + 5.196 = -0.004, about 0."""
    if len(step.sides) < 2 or not all_numbers(step):
        return step
    about = step if side_value(step.sides[-1]) else replace(step, sides=step.sides[:-1])
    if _is_left_over(about, SAME):
        return _closed(about)
    if len(step.sides) != 3:
        return step
    first, left, last = step.sides
    added = sum(abs(term.value) for term in first.terms)
    nothing = side_value(last) == 0.0 and abs(side_value(left)) <= SAME * added
    nothing = nothing and (side_value(left) != 0.0 or len(left.terms) > 1)
    return replace(step, sides=(first, last)) if nothing and are_equal(first, left) else step


def closed(line: Line) -> Line | None:
    """A sum of numbers that says what it comes to, 9 + 2.12 - 12 = -0.88, as the sum that is zero; else None."""
    step = line.result
    if len(line.steps) > 1 or not all_numbers(step) or not _is_left_over(step, 1.0):
        return None
    return replace(line, steps=(_closed(step),), alternatives=())


def _closed(step: Step) -> Step:
    """The first side of a chain set equal to zero in the place of what it comes to."""
    first, *_, last = step.sides
    zero = tuple(term._replace(value=0.0) for term in last.terms)
    return replace(step, sides=(first, replace(last, terms=zero)))


def _is_left_over(step: Step, share: float) -> bool:
    """Whether a chain of numbers ends in at most a `share` of what it adds up, to which its first side does come."""
    if len(step.sides) < 2:
        return False
    first, *middle, last = step.sides
    if len(last.terms) != 1 or len(first.terms) < 2 or side_value(last) == 0.0:
        return False
    added = sum(abs(term.value) for term in first.terms)
    slack = last.terms[0].radius + SAME * abs(side_value(last)) + 1e-9
    comes = abs(side_value(first) - side_value(last)) <= slack
    small = abs(side_value(last)) <= share * added
    return small and comes and all(are_equal(first, side) for side in middle)


def all_numbers(step: Step) -> bool:
    return all(side.numeric for side in step.sides)


def with_way(desk: Desk, side: Side, other: Side) -> Side:
    """A number with its T, C or arrow as a sign under the student's own sense of the force beside it."""
    if side.letter is None and side.sense is None:
        return side
    name = other.name
    if name is None or not side.numeric:
        return side
    value = sum(term.value for term in side.terms)
    sign = desk.own.sign(name)
    if side.letter is not None:
        if name not in desk.problem.member and not is_link(desk.problem, name):
            return side
        way = sign if side.letter == "T" else -sign
    elif name in desk.problem.reaction and side.sense is not None:
        way = sign * positive_sense(desk.problem, name, side.sense, sign)
    else:
        return side
    if (value < 0) == (way < 0):
        return side
    terms = tuple(term._replace(value=-term.value) for term in side.terms)
    return replace(side, node=Negative(side.node, side.span), terms=terms)


def rounded_hard(step: Step) -> bool:
    """Whether a number of a chain is the one before it only as far as rounding goes.

    The first two sides of numbers alone are the equation, which is measured against what it adds up.
    """
    pairs = list(pairwise(step.sides))
    return any(
        one.numeric
        and other.numeric
        and not _off(one, other) <= SAME * abs(side_value(one)) + 1e-9
        and not goes_on(step, one, other)
        for one, other in pairs[all_numbers(step) :]
    )


def _off(one: Side, other: Side) -> float:
    """How far two numbers are apart; a letter or an arrow is a sign."""
    first, second = side_value(one), side_value(other)
    if one.letter or other.letter or one.sense or other.sense:
        first, second = abs(first), abs(second)
    return abs(first - second)


def are_equal(one: Side, other: Side) -> bool:
    """Whether the second number is the first, exactly or rounded.

    What is added up may have been rounded in each of its terms; a factor may hide two percent.
    """
    off, size = _off(one, other), abs(side_value(one))
    radius = sum(rounded_by(term.value, term.radius) for term in other.terms)
    own = sum(term.radius for term in one.terms)
    added = sum(abs(term.value) for term in one.terms)
    most = max(SAME * size, min(max(radius, own), NEAR * size), min(own, SAME * added))
    return off <= most + 1e-9

"""What do the links of a chain say: which equations, and does each number follow from the last?"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from tutor.judge.about import Value
from tutor.judge.blocks import rounded_by
from tutor.judge.desk import Desk
from tutor.judge.going_on import goes_on
from tutor.judge.kind import Case
from tutor.judge.known_values import KnownValue, is_link, positive_sense
from tutor.judge.mistakes import KINDS
from tutor.judge.same import NEAR, SAME, are_near
from tutor.judge.typed import typed_equation
from tutor.judge.verdict import Mistake, Verdict
from tutor.judge.worked import letter_of, size_of, value_ended, with_the_way_of
from tutor.notation import Line as Typewritten
from tutor.notation import Reading, Side, Step
from tutor.notation.evaluate import parts
from tutor.notation.reading import link
from tutor.notation.tree import Negative, Unit, within
from tutor.notation.units import NEWTONS, measure
from tutor.notation.unreadable import Broken
from tutor.text import listed

_CLOSING = re.compile(r"(?: *\})+")
MINUS = ("-", "−", "–")
SO_FAR = "The first part is right, but "
NOT_EQUAL = "{other} is not {one}."
AS_RADIANS = ", which is what comes out with the angle taken as radians."
IN_UNIT = "{one} comes out in {unit}, not in the unit of {other}."
IS_NOT = "{one} is {value}, not {other}."
WITH_OWN = "{other} is not {one}, with {given}."


def readings_of(desk: Desk, line: Typewritten, step: Step) -> Iterator[Reading]:
    """The links of a chain that hold an unknown, each as an equation; letters and arrows as signs.

    Where none does, the first two sides are one, with all values put in. What a chain comes to that
    begins with a force is the value of that force, and no equation of those it was worked out from.
    A link that only says the same in two ways, = 24 + 12 - C_y = 36 - C_y, is none beside others.
    A sum with the values put into it, A_y + 0.6 F_AB = 9 - 9 = 0, is the sum, and the sum of its values.
    """
    label, step = step.label or line.label, without_remainder(step)
    if put_into(step):
        for side in step.sides[:-1]:
            yield link(line.text, side, step.sides[-1], label, step.frame)
        return
    links = []
    for index, (one, other) in enumerate(pairwise(step.sides)):
        if _comes_to(desk, step, one, other):
            continue
        if not (one.numeric and other.numeric) or (index == 0 and _all_numbers(step)):
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
    return values and len(last.terms) <= 1 and size_of(last) == 0.0


def _comes_to(desk: Desk, step: Step, one: Side, other: Side) -> bool:
    """Whether two sides of a chain say what other forces than its own come to as a number."""
    if one is step.sides[0] or not other.numeric:
        return False
    own = value_ended(step, desk.own.known) or letter_of(step, desk.problem.member, desk.own.known)
    return own is not None and any(term.name not in (own, None) for term in one.terms)


def without_remainder(step: Step) -> Step:
    """A closing sum without what its rounded numbers leave over, or come to on the way: 6.8 - 12 + 5.196 = -0.004, about 0."""
    if len(step.sides) != 3 or not _all_numbers(step):
        return step
    first, left, last = step.sides
    added = sum(abs(term.value) for term in first.terms)
    nothing = size_of(last) == 0.0 and abs(size_of(left)) <= SAME * added
    nothing = nothing and (size_of(left) != 0.0 or len(left.terms) > 1)
    return replace(step, sides=(first, last)) if nothing and _equal(first, left) else step


def _all_numbers(step: Step) -> bool:
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


def broken_link(desk: Desk, step: Step, of_value: bool = False) -> Verdict | None:
    """The verdict on the first two numbers of a chain that are not equal; None where all are.

    Of numbers alone the first two are the equation, where it is not the working `of_value`.
    """
    step = without_remainder(step)
    numeric = [(one, other) for one, other in pairwise(step.sides) if one.numeric and other.numeric]
    if _all_numbers(step) and not (of_value and all(map(size_of, step.sides))):
        numeric = numeric[1:]
    worked = [
        (one, other) for one, other in pairwise(step.sides) if _comes_to(desk, step, one, other)
    ]
    for one, other in (*worked, *numeric):
        text = _not_what_it_is(desk, step, one, other)
        if text is not None and not goes_on(step, one, other):
            unit = one.numeric and _only_unit(desk, one, other)
            kind = KINDS["unit" if unit else "arithmetic"]
            case = Case(desk.problem, Value(""))
            if one.numeric and _in_radians(step, one, other):
                kind, text = KINDS["angle-mode"], f"{text[:-1]}{AS_RADIANS}"
            force = None if one.numeric else _minus_lost(desk, one, other)
            kind = kind if force is None else KINDS["minus"]
            text = f"{SO_FAR}{text}"
            mistake = Mistake(kind.code, force, text, kind.reason(case), "", other.span)
            return Verdict("wrong", text, (mistake,))
    return None


def before_the_break(step: Step, broken: Verdict) -> Step | None:
    """A chain up to the number that the next one does not follow from, as a value; None where it is none."""
    at = broken.mistakes[0].span
    before = [side for side in step.sides if at is not None and side.span.end <= at.start]
    if not before or not before[-1].numeric:
        return None
    return replace(step, sides=(*before[:-1], with_the_way_of(before[-1], step.sides[-1])))


def broken_alone(broken: Verdict) -> Verdict:
    """That a number does not follow, and nothing said of what stands before it."""
    said = broken.text.removeprefix(SO_FAR)
    told = tuple(replace(mistake, text=said) for mistake in broken.mistakes)
    return replace(broken, text=said, mistakes=told)


def _minus_lost(desk: Desk, one: Side, other: Side) -> str | None:
    """The force whose negative result was put in without its minus on the way to the second side; or None."""
    known = {name: own.value for name, own in desk.own.known.items()}
    values = [term.value * known.get(term.name or "", 1.0) for term in one.terms]
    for term, value in zip(one.terms, values, strict=True):
        turned = sum(values) - 2 * value
        if known.get(term.name or "", 0.0) < 0.0 and are_near(turned, size_of(other)):
            return term.name
    return None


def _in_radians(step: Step, one: Side, other: Side) -> bool:
    """Whether the second number is the first with its angles taken as radians."""
    if not step.frame.degrees:
        return False
    try:
        terms = tuple(parts(one.node, replace(step.frame, degrees=False)))
    except Broken:
        return False
    again = replace(one, terms=terms)
    return size_of(again) != size_of(one) and _equal(again, other)


def _not_what_it_is(desk: Desk, step: Step, one: Side, other: Side) -> str | None:
    """What is said of two sides that are not equal, with the student's own values; None where they are."""
    shown, typed = _shown(step.text, one), _shown(step.text, other)
    if one.numeric:
        if _equal(one, other):
            return None
        unit = desk.problem.force
        said = IN_UNIT if _only_unit(desk, one, other) else NOT_EQUAL
        return said.format(one=shown, other=typed, unit=unit)
    known = desk.own.known
    names = dict.fromkeys(term.name for term in one.terms if term.name is not None)
    if any(name not in known for name in names):
        return None
    held = [KnownValue(1.0, 0.0) if t.name is None else known[t.name] for t in one.terms]
    true = sum(term.value * own.value for term, own in zip(one.terms, held, strict=True))
    radius = sum(abs(term.value) * own.radius for term, own in zip(one.terms, held, strict=True))
    size, number = abs(true), size_of(other)
    off = abs(size - abs(number)) if other.letter or other.sense else abs(true - number)
    if off <= max(NEAR * size, radius + min(other.terms[0].radius, NEAR * size)) + 1e-9:
        return None
    if [abs(term.value) for term in one.terms] == [1.0]:
        return IS_NOT.format(one=one.name or shown, value=number_in_words(true), other=typed)
    given = listed([f"{name} = {number_in_words(known[name].value)}" for name in names])
    return WITH_OWN.format(one=shown, given=given, other=typed)


def _only_unit(desk: Desk, one: Side, other: Side) -> bool:
    """Whether a number would follow from the one before it in the problem's own unit of force."""
    if not other.unit or other.unit not in NEWTONS:
        return False
    typed = {
        unit for node in within(one.node) if isinstance(node, Unit) for unit in node.unit.split("*")
    }
    if typed & NEWTONS.keys() - {desk.problem.force}:
        return False
    scale = measure(other.unit, desk.problem.force, desk.problem.length).value
    return abs(abs(size_of(one)) - abs(size_of(other)) / scale) <= SAME * abs(size_of(one))


def number_in_words(value: float) -> str:
    """A number of the student's as it is told again."""
    return f"{value:.4g}"


def rounded_hard(step: Step) -> bool:
    """Whether a number of a chain is the one before it only as far as rounding goes.

    The first two sides of numbers alone are the equation, which is measured against what it adds up.
    """
    pairs = list(pairwise(step.sides))
    return any(
        one.numeric
        and other.numeric
        and not _off(one, other) <= SAME * abs(size_of(one)) + 1e-9
        and not goes_on(step, one, other)
        for one, other in pairs[_all_numbers(step) :]
    )


def _shown(text: str, side: Side) -> str:
    """A side as typed, with the sign in front of it."""
    before = text[: side.span.start].rstrip()
    signed = before[-1:] in MINUS and before[:-1].rstrip()[-1:] in ("", *"=:>→⇒")
    start = len(before) - 1 if signed and before else side.span.start
    shown = text[start : side.span.end]
    open_groups = shown.count("{") - shown.count("}")
    behind = _CLOSING.match(text, side.span.end) if open_groups > 0 else None
    return shown if behind is None else shown + behind[0].replace(" ", "")[:open_groups]


def _off(one: Side, other: Side) -> float:
    """How far two numbers are apart; a letter or an arrow is a sign."""
    first, second = size_of(one), size_of(other)
    if one.letter or other.letter or one.sense or other.sense:
        first, second = abs(first), abs(second)
    return abs(first - second)


def _equal(one: Side, other: Side) -> bool:
    """Whether the second number is the first, exactly or rounded.

    What is added up may have been rounded in each of its terms; a factor may hide two percent.
    """
    off, size = _off(one, other), abs(size_of(one))
    radius = sum(rounded_by(term.value, term.radius) for term in other.terms)
    own = sum(term.radius for term in one.terms)
    added = sum(abs(term.value) for term in one.terms)
    most = max(SAME * size, min(max(radius, own), NEAR * size), min(own, SAME * added))
    return off <= most + 1e-9

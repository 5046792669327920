"""Which number of a chain does not follow from the one before it, and by which slip?"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from itertools import pairwise

from tutor.judge.about import Value
from tutor.judge.chain import all_numbers, are_equal, comes_to, without_remainder
from tutor.judge.desk import Desk
from tutor.judge.factors import factors_of
from tutor.judge.going_on import goes_on
from tutor.judge.kind import Case
from tutor.judge.known_values import KnownValue
from tutor.judge.mistakes import KINDS
from tutor.judge.same import NEAR, SAME, are_near
from tutor.judge.verdict import Mistake, Verdict
from tutor.judge.worked import side_value, with_the_way_of
from tutor.notation import Side, Step, Term
from tutor.notation.elements.tree import Span, Unit, within
from tutor.notation.elements.units import NEWTONS, unit_meaning
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.evaluate import parts
from tutor.notation.lines.reading import link
from tutor.text import listed

SO_FAR = "The first part is right, but "
NOT_EQUAL = "{other} is not {one}."
AS_RADIANS = ", which is what comes out with the angle taken as radians."
TENTH_POWERS = 0.001
"""So near to a whole power of ten, no figure is another one."""
IN_UNIT = "{one} comes out in {unit}, not in the unit of {other}."
IS_NOT = "{one} is {value}, not {other}."
WITH_OWN = "{other} is not {one}, with {given}."


@dataclass(frozen=True)
class BrokenLink:
    """A number that does not follow: what is said of it, by which mistake of which force, and where it stands."""

    said: str
    code: str
    force: str | None
    reason: str
    place: Span

    @property
    def verdict(self) -> Verdict:
        """The verdict on a line of which all before that number is right."""
        return self._told(f"{SO_FAR}{self.said}")

    @property
    def alone(self) -> Verdict:
        """That the number does not follow, and nothing said of what stands before it."""
        return self._told(self.said)

    def _told(self, text: str) -> Verdict:
        mistake = Mistake(self.code, self.force, text, self.reason, "", self.place)
        return Verdict("wrong", text, (mistake,))

    def before(self, step: Step) -> list[Side]:
        """The sides of its chain that stand before it."""
        return [side for side in step.sides if side.span.end <= self.place.start]


def broken_link(desk: Desk, step: Step, of_value: bool = False) -> BrokenLink | None:
    """The first two numbers of a chain that are not equal; None where all are.

    Of numbers alone the first two are the equation, where it is not the working `of_value`.
    """
    step = without_remainder(step)
    pairs = list(pairwise(step.sides))
    numeric = [(one, other) for one, other in pairs if one.numeric and other.numeric]
    if all_numbers(step) and not (of_value and all(map(side_value, step.sides))):
        numeric = numeric[1:]
    worked = [(one, other) for one, other in pairs if comes_to(desk, step, one, other)]
    for one, other in (*worked, *numeric):
        said = _not_what_it_is(desk, step, one, other)
        if said is not None and not goes_on(step, one, other):
            code, force = _slip_of(desk, step, one, other)
            said = f"{said[:-1]}{AS_RADIANS}" if code == "angle-mode" else said
            reason = KINDS[code].reason(Case(desk.problem, Value("")))
            return BrokenLink(said, code, force, reason, other.span)
    return None


def as_far_as_right(step: Step, broken: BrokenLink) -> str:
    """What was typed of a chain before the first number that does not follow."""
    ended = broken.before(step)
    return step.text[: ended[-1].span.end] if len(ended) > 1 else ""


def before_the_break(step: Step, broken: BrokenLink) -> Step | None:
    """A chain up to the number that the next one does not follow from, as a value; None where it is none."""
    before = broken.before(step)
    if not before or not before[-1].numeric:
        return None
    return replace(step, sides=(*before[:-1], with_the_way_of(before[-1], step.sides[-1])))


def _slip_of(desk: Desk, step: Step, one: Side, other: Side) -> tuple[str, str | None]:
    """The mistake by which the second side is not the first, and the force that it is made with."""
    if not one.numeric and (lost := _minus_lost(desk, one, other)):
        return "minus", lost
    if one.numeric and _in_radians(step, one, other):
        return "angle-mode", None
    if not one.numeric and (mistaken := _another_put_in(desk, step, one, other)):
        return "carried", mistaken
    unit = _only_unit(desk, one, other) or _converted_wrongly(one, other)
    return ("unit", step.sides[0].name) if unit else ("arithmetic", None)


def _converted_wrongly(one: Side, other: Side) -> bool:
    """Whether a number is only given in another unit, and is off by a power of ten: 1500 N = 15 kN."""
    if not (one.unit in NEWTONS and other.unit in NEWTONS) or one.unit == other.unit:
        return False
    sizes = [abs(side_value(side)) for side in (one, other)]
    plain = one.figures is not None and other.figures is not None and min(sizes) > 0.0
    if not plain:
        return False
    powers = math.log10(sizes[0] / sizes[1])
    return abs(powers - round(powers)) < TENTH_POWERS


def _minus_lost(desk: Desk, one: Side, other: Side) -> str | None:
    """The force whose negative result was put in without its minus on the way to the second side; or None."""
    known = {name: own.value for name, own in desk.own.known.items()}
    values = [term.value * known.get(term.name or "", 1.0) for term in one.terms]
    for term, value in zip(one.terms, values, strict=True):
        turned = sum(values) - 2 * value
        if known.get(term.name or "", 0.0) < 0.0 and are_near(turned, side_value(other)):
            return term.name
    return None


def _another_put_in(desk: Desk, step: Step, one: Side, other: Side) -> str | None:
    """The one force that has another number than its value put in, beside its own factor; or None."""
    reading = link(step.text, one, other, None, step.frame)
    shown = factors_of(reading)[len(one.terms) :]
    if not len(one.terms) == len(other.terms) == len(shown):
        return None
    known = desk.own.known
    apart = [
        (term, factors)
        for term, typed, factors in zip(one.terms, other.terms, shown, strict=True)
        if not are_near(term.value * (known[term.name].value if term.name else 1.0), typed.value)
    ]
    match apart:
        case [(Term(name=str(name), value=factor), factors)]:
            put_in = factors.count > 1 and factors.holds(factor)
            return name if put_in and not factors.holds(known[name].value) else None
    return None


def _in_radians(step: Step, one: Side, other: Side) -> bool:
    """Whether the second number is the first with its angles taken as radians."""
    try:
        terms = tuple(parts(one.node, replace(step.frame, degrees=False)))
    except Broken:
        return False
    again = replace(one, terms=terms)
    return side_value(again) != side_value(one) and are_equal(again, other)


def _not_what_it_is(desk: Desk, step: Step, one: Side, other: Side) -> str | None:
    """What is said of two sides that are not equal, with the student's own values; None where they are."""
    shown, typed = step.as_typed(one), step.as_typed(other)
    unit = desk.problem.force
    if one.numeric:
        if are_equal(one, other):
            return None
        said = IN_UNIT if _only_unit(desk, one, other) else NOT_EQUAL
        return said.format(one=shown, other=typed, unit=unit)
    known = desk.own.known
    names = dict.fromkeys(term.name for term in one.terms if term.name is not None)
    if any(name not in known for name in names):
        return None
    held = [KnownValue(1.0, 0.0) if t.name is None else known[t.name] for t in one.terms]
    true = sum(term.value * own.value for term, own in zip(one.terms, held, strict=True))
    radius = sum(abs(term.value) * own.radius for term, own in zip(one.terms, held, strict=True))
    size, number = abs(true), side_value(other)
    off = abs(size - abs(number)) if other.letter or other.sense else abs(true - number)
    if off <= max(NEAR * size, radius + min(other.terms[0].radius, NEAR * size)) + 1e-9:
        return None
    if _only_unit(desk, one, other):
        return IN_UNIT.format(one=shown, other=typed, unit=unit)
    if [abs(term.value) for term in one.terms] == [1.0]:
        return IS_NOT.format(one=one.name or shown, value=number_in_words(true), other=typed)
    given = listed([f"{name} = {number_in_words(known[name].value)}" for name in names])
    return WITH_OWN.format(one=shown, given=given, other=typed)


def _only_unit(desk: Desk, one: Side, other: Side) -> bool:
    """Whether a number would follow from the one before it in the problem's own unit of force."""
    if other.unit not in NEWTONS or other.unit == desk.problem.force:
        return False
    typed = {
        unit for node in within(one.node) if isinstance(node, Unit) for unit in node.unit.split("*")
    }
    if typed & NEWTONS.keys() - {desk.problem.force}:
        return False
    scale = unit_meaning(other.unit, desk.problem.force, desk.problem.length).value
    known = desk.own.known
    values = [term.value * (known[term.name].value if term.name else 1.0) for term in one.terms]
    size = abs(sum(values))
    return abs(size - abs(side_value(other)) / scale) <= SAME * size


def number_in_words(value: float) -> str:
    """A number of the student's as it is told again."""
    return f"{value:.4g}"

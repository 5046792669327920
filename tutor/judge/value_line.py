"""Is what was typed for a value right, with all that was written before it?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tutor.judge.about import Value
from tutor.judge.beginning import before
from tutor.judge.broken_link import BrokenLink, as_far_as_right, before_the_break, broken_link
from tutor.judge.chain import readings_of
from tutor.judge.desk import Desk
from tutor.judge.kind import Case
from tutor.judge.mistakes import KINDS
from tutor.judge.other_equation import holds_at_solution
from tutor.judge.other_support import of_other_support
from tutor.judge.ratios import ratio_of_components
from tutor.judge.same import are_same
from tutor.judge.sum_before import does_not_hold, told_by_its_slip
from tutor.judge.typed import TypedEquation, typed_equation
from tutor.judge.values import NEGLIGIBLE, judge_value, largest_load
from tutor.judge.verdict import Mistake, Remark, Verdict
from tutor.judge.worked import (
    divided_in,
    holds_alone,
    is_result_behind,
    letter_of,
    size_of,
    value_alone,
    value_ended,
    value_given,
)
from tutor.judge.working import shows_working, slip_in_working
from tutor.notation import Line as Typewritten
from tutor.notation import Step, ValueReading
from tutor.notation.tree import Name
from tutor.notation.unreadable import Broken
from tutor.notation.value import value_in
from tutor.text import lowered

COMPONENT = "Right: this is a component of {name}; the force itself is still to come."
WAY_ONLY = "The letter behind it says the opposite of what the force does to the member."
EQUATION_RIGHT = "The equation is right. {text}"
EQUATION_STANDS = "The equation is right and stands; the value is not: {text}"
BY_ITS_NUMBER = ("arithmetic", "carried", "component", "no-arm", "symmetry")
"""Mistakes that are told by what the number comes to, whatever was worked out."""
NO_FORCE = "dimension/value"
IN_PART = "In {part}: {text}"


def judge_value_line(desk: Desk, about: Value, line: Typewritten) -> Verdict:
    """The verdict on a line where a value is asked for: the last that names it is the result."""
    result = _result(about, line)
    lines = list(desk.lines)
    for step in line.steps:
        if (broken := broken_link(desk, step, of_value=step is result)) is not None:
            found = broken_off(desk, about, line, step, broken, lines) or broken.verdict
            return replace(found, about=about)
        given = value_ended(step) == value_given(step) if step is result else holds_alone(step)
        if given:
            continue
        for reading in readings_of(desk, line, step):
            each = typed_equation(reading)
            if (ratio := ratio_of_components(desk, each)) is not None:
                if not ratio.right:
                    return replace(ratio, about=about)
                continue
            if not _stands(desk, each) and not holds_at_solution(
                each, desk.problem, desk.own, desk.values(), desk.problem.tolerance
            ):
                return _not_so(desk, about, line, step, each, lines)
            lines.append(each)
    if (component := _component(desk, about, result, line, lines)) is not None:
        return component
    try:
        value = value_in(line.text, value_alone(result, desk.own.known))
    except Broken as broken:
        reaction = "_" in about.unknown
        broken.words.setdefault("example", "12 or 12 left" if reaction else "12 or 12 C")
        unreadable = broken.about(line.text)
        return Verdict("unreadable", unreadable.message, about=about, unreadable=unreadable)
    verdict = _judge_ended(desk, about, value, lines, result)
    verdict = _by_its_working(desk, about, verdict, lines, result)
    return of_other_support(desk, about, verdict, lines)


def broken_off(
    desk: Desk,
    about: Value | None,
    line: Typewritten,
    step: Step,
    broken: BrokenLink,
    lines: Sequence[TypedEquation],
) -> Verdict | None:
    """The verdict on what is wrong of a chain before a number that does not follow; None where nothing is."""
    part = before_the_break(step, broken)
    if part is None:
        return None
    said = as_value(desk, line, part, lines)
    if said is None and about is not None:
        said = _ended_in(desk, about, line, part, lines)
    if said is not None and about is not None:
        said = _by_its_working(desk, about, said, lines, part)
    if said is None or said.kind != "wrong":
        return None
    if said.mistakes[0].code == "arithmetic":
        return broken.alone
    text = IN_PART.format(part=part.as_typed(part.sides[-1]), text=lowered(said.text))
    return replace(said, text=text, mistakes=(replace(said.mistakes[0], text=text),), value=None)


def broken_behind(
    desk: Desk, line: Typewritten, step: Step, lines: Sequence[TypedEquation], broken: BrokenLink
) -> Verdict:
    """The verdict on a statement in which a number does not follow, in a right equation or behind it."""
    found = broken_off(desk, None, line, step, broken, lines)
    if found is None:
        return replace(broken.verdict, stands=as_far_as_right(step, broken))
    return value_told(found, before(line, step))


def value_told(value: Verdict, stands: str) -> Verdict:
    """The verdict on a line whose equation is right, as far as `stands`, and whose value is not."""
    said = EQUATION_STANDS if value.kind == "wrong" and stands else EQUATION_RIGHT
    text = said.format(text=lowered(value.text) if said is EQUATION_STANDS else value.text)
    return replace(value, text=text, value=None, stands=stands)


def _no_force(desk: Desk, about: Value, broken: Broken, line: Typewritten) -> Verdict:
    """That a value stands in the unit of a moment, or of a length."""
    text, kind = broken.about(line.text).message, KINDS["unit"]
    case = Case(desk.problem, about, about.unknown)
    mistake = Mistake(kind.code, about.unknown, text, kind.reason(case), kind.place(case))
    return Verdict("wrong", text, (mistake,), about=about)


def _stands(desk: Desk, line: TypedEquation) -> bool:
    """Whether a statement is one of the lines that stand, which were judged as the sums they are."""
    return any(
        line.total == other.total
        and line.names == other.names
        and all(line.unknowns[name].value == other.unknowns[name].value for name in line.names)
        for other in desk.lines
    )


def as_value(
    desk: Desk, line: Typewritten, step: Step, lines: Sequence[TypedEquation]
) -> Verdict | None:
    """The verdict on a statement behind the equation that is the value of one force; else None."""
    name = value_ended(step, desk.own.known)
    if name is None:
        return None
    return _ended_in(desk, Value(name), line, value_alone(step, desk.own.known), lines, step)


def value_said(
    desk: Desk, line: Typewritten, step: Step, lines: Sequence[TypedEquation]
) -> Verdict | None:
    """The verdict on the value that a statement ends in, or on the T or C behind it; else None."""
    if is_result_behind(line, step, desk.own.known):
        return as_value(desk, line, step, lines)
    name = letter_of(step, desk.problem.member, desk.own.known)
    if name is None:
        return None
    true, said = desk.values()[name], step.sides[-1].letter
    if abs(true) <= NEGLIGIBLE * largest_load(desk.problem) or (true > 0) == (said == "T"):
        return None
    kind, case = KINDS["tension-compression"], Case(desk.problem, Value(name), name)
    mistake = Mistake(kind.code, name, WAY_ONLY, kind.reason(case), kind.place(case))
    return Verdict("wrong", WAY_ONLY, (mistake,))


def _ended_in(
    desk: Desk,
    about: Value,
    line: Typewritten,
    step: Step,
    lines: Sequence[TypedEquation],
    whole: Step | None = None,
) -> Verdict | None:
    """The verdict on the number of a statement, as part of a `whole` one; None where there is none."""
    try:
        value = value_in(line.text, step)
    except Broken as broken:
        return _no_force(desk, about, broken, line) if broken.key == NO_FORCE else None
    return _judge_ended(desk, about, value, lines, whole or step)


def _judge_ended(
    desk: Desk, about: Value, reading: ValueReading, lines: Sequence[TypedEquation], step: Step
) -> Verdict:
    """The verdict on the value that a statement ends in; a minus that its working shows is meant."""
    verdict = _judge_value(desk, about, reading, lines, divided_in(step))
    if verdict.kind != "undecided" or reading.letter != "T" or len(step.sides) < 3:
        return verdict
    unlettered = replace(reading, letter=None)
    if reading.value > 0 or not _judge_value(desk, about, unlettered, lines).right:
        return verdict
    kind, case = KINDS["tension-compression"], Case(desk.problem, about, about.unknown)
    mistake = Mistake(kind.code, about.unknown, WAY_ONLY, kind.reason(case), kind.place(case))
    return Verdict("wrong", WAY_ONLY, (mistake,), about=about, reading=reading)


def _by_its_working(
    desk: Desk, about: Value, verdict: Verdict, lines: Sequence[TypedEquation], step: Step
) -> Verdict:
    """A verdict on a wrong value asked for, told by the slip in its working where that says more."""
    if verdict.kind != "wrong" or not _may_be_otherwise(desk, about, verdict, lines, step):
        return verdict
    slip = slip_in_working(desk, about, step, lines)
    return verdict if slip is None else replace(verdict, text=slip.text, mistakes=(slip,))


def _may_be_otherwise(
    desk: Desk, about: Value, verdict: Verdict, lines: Sequence[TypedEquation], step: Step
) -> bool:
    """Whether the working of a value may say better what is wrong than its number does.

    Its own line that stands says more. A number alone that is another result is that, with its sign.
    """
    code, value = verdict.mistakes[0].code, verdict.value
    if value is None or any(about.unknown in line.names for line in lines):
        return False
    if code == "arithmetic" or shows_working(step):
        return code in BY_ITS_NUMBER
    known = desk.own.known.values()
    return code == "carried" and not any(are_same(value, own.value) for own in known)


def _judge_value(
    desk: Desk,
    about: Value,
    reading: ValueReading,
    lines: Sequence[TypedEquation],
    divided: bool = False,
) -> Verdict:
    true = desk.values()[about.unknown]
    return judge_value(desk.problem, about, reading, desk.own, true, lines, desk.radians, divided)


def _result(about: Value, line: Typewritten) -> Step:
    """The statement that gives the value asked for: the last that names it, else the last."""
    naming = [
        step
        for step in line.steps
        if any(side.name == about.unknown for side in step.sides)
        and any(side.numeric for side in step.sides)
    ]
    return naming[-1] if naming else line.result


def _not_so(
    desk: Desk,
    about: Value,
    line: Typewritten,
    step: Step,
    typed: TypedEquation,
    lines: Sequence[TypedEquation],
) -> Verdict:
    """That a statement does not hold; which slip it shows as a sum, or the value that it is itself."""
    value = as_value(desk, line, step, desk.lines) if step is _result(about, line) else None
    value = value if value is not None and value.kind == "wrong" else None
    by_number = value is not None and value.mistakes[0].code in BY_ITS_NUMBER
    told = None
    if value is None or (by_number and len(typed.names) > 1):
        told = told_by_its_slip(desk, about, step.label or line.label, typed, lines)
    if told is None and value is not None:
        told = _by_its_working(desk, about, value, desk.lines, step)
    return replace(told or does_not_hold(about, step), about=about)


def _component(
    desk: Desk, about: Value, result: Step, line: Typewritten, lines: Sequence[TypedEquation]
) -> Verdict | None:
    """The verdict on a result for a component of the force, such as AE_y = 9; None for any other."""
    named = [side.node for side in result.sides if isinstance(side.node, Name) and side.node.share]
    numbers = [side for side in result.sides if side.numeric]
    if not named or not numbers or named[0].name != about.unknown:
        return None
    share, number = named[0].share, numbers[-1]
    assert share is not None
    if not share.factor:
        return None
    radius = sum(term.radius for term in number.terms) / abs(share.factor)
    whole = ValueReading(
        line.text, size_of(number) / share.factor, radius, number.letter, number.sense,
        about.unknown, number.unit, number.span, None,
    )  # fmt: skip
    verdict = _judge_value(desk, about, whole, lines)
    if not verdict.right:
        return verdict
    said = COMPONENT.format(name=about.unknown)
    remark = Remark("component", said)
    return replace(verdict, text=said, value=None, remarks=(remark, *verdict.remarks))

"""Is what was typed for a value right, with all that was written before it?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tutor.judge.about import Value
from tutor.judge.anothers import told_as_anothers
from tutor.judge.beginning import before
from tutor.judge.broken_link import BrokenLink, as_far_as_right, before_the_break, broken_link
from tutor.judge.chain import readings_of
from tutor.judge.desk import Desk
from tutor.judge.other_equation import holds_at_solution
from tutor.judge.ratios import ratio_of_components
from tutor.judge.sum_before import does_not_hold, told_by_its_slip
from tutor.judge.typed import TypedEquation, typed_equation
from tutor.judge.value_at_end import (
    BY_ITS_NUMBER,
    as_value,
    by_its_working,
    ended_in,
    judge_ended,
    judge_value_of,
)
from tutor.judge.verdict import OPENING, Remark, Verdict
from tutor.judge.worked import (
    holds_alone,
    side_value,
    value_alone,
    value_ended,
    value_given,
)
from tutor.notation import Line, Step, ValueReading
from tutor.notation.elements.tree import Name
from tutor.notation.elements.unreadable import Broken
from tutor.notation.lines.value import value_in
from tutor.text import lowered

COMPONENT = OPENING + "this is a component of {name}; the force itself is still to come."
EQUATION_RIGHT = "The equation is right. {text}"
EQUATION_STANDS = "The equation is right and stands; the value is not: {text}"
IN_PART = "In {part}: {text}"


def judge_value_line(desk: Desk, about: Value, line: Line) -> Verdict:
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
        if (unclear := _against_itself(desk, line, step)) is not None:
            last = as_value(desk, line, result, lines)
            return replace(last if last and last.kind == "wrong" else unclear, about=about)
        for reading in readings_of(desk, line, step):
            each = typed_equation(reading)
            if (ratio := ratio_of_components(desk, each)) is not None:
                if not ratio.right:
                    return replace(ratio, about=about)
                continue
            if not _holds(desk, each):
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
    verdict = judge_ended(desk, about, value, lines, result)
    verdict = by_its_working(desk, about, verdict, lines, result)
    return told_as_anothers(desk, about, verdict, lines)


def broken_off(
    desk: Desk,
    about: Value | None,
    line: Line,
    step: Step,
    broken: BrokenLink,
    lines: Sequence[TypedEquation],
) -> Verdict | None:
    """The verdict on what is wrong of a chain before a number that does not follow; None where nothing is."""
    part = before_the_break(step, broken)
    if part is None:
        return None if about is None else _sums_before(desk, about, line, step, broken, lines)
    said = as_value(desk, line, part, lines)
    if said is None and about is not None:
        said = ended_in(desk, about, line, part, lines)
    if said is not None and about is not None:
        said = by_its_working(desk, about, said, lines, part)
    if said is None or said.kind != "wrong":
        return None
    if said.mistakes[0].code == "arithmetic":
        return broken.alone
    text = IN_PART.format(part=part.as_typed(part.sides[-1]), text=lowered(said.text))
    return replace(said, text=text, mistakes=(replace(said.mistakes[0], text=text),), value=None)


def _sums_before(
    desk: Desk,
    about: Value,
    line: Line,
    step: Step,
    broken: BrokenLink,
    lines: Sequence[TypedEquation],
) -> Verdict | None:
    """The verdict on what forces are set equal to before a number that does not follow; None where it holds."""
    before = replace(step, sides=tuple(broken.before(step)))
    if len(before.sides) < 2:
        return None
    for reading in readings_of(desk, line, before):
        each = typed_equation(reading)
        if not _holds(desk, each):
            return (
                told_by_its_slip(desk, about, step.label or line.label, each, lines) or broken.alone
            )
    return None


def _against_itself(desk: Desk, line: Line, step: Step) -> Verdict | None:
    """What has to be asked about a value whose minus goes against the T or the way behind it; else None."""
    last = step.sides[-1]
    if side_value(last) >= 0.0 or not (last.letter or last.sense):
        return None
    value = as_value(desk, line, step, desk.lines)
    return value if value is not None and value.kind == "undecided" else None


def _holds(desk: Desk, line: TypedEquation) -> bool:
    """Whether a statement stands, or holds in the finished truss."""
    given = (desk.problem, desk.own, desk.values(), desk.problem.tolerance)
    return _stands(desk, line) or holds_at_solution(line, *given)


def broken_behind(
    desk: Desk, line: Line, step: Step, lines: Sequence[TypedEquation], broken: BrokenLink
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


def _stands(desk: Desk, line: TypedEquation) -> bool:
    """Whether a statement is one of the lines that stand, which were judged as the sums they are."""
    return any(
        line.total == other.total
        and line.names == other.names
        and all(line.unknowns[name].value == other.unknowns[name].value for name in line.names)
        for other in desk.lines
    )


def _result(about: Value, line: Line) -> Step:
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
    line: Line,
    step: Step,
    typed: TypedEquation,
    lines: Sequence[TypedEquation],
) -> Verdict:
    """That a statement does not hold; which slip it shows as a sum, or the value that it is itself."""
    itself = step is _result(about, line) or value_given(step) == about.unknown
    value = as_value(desk, line, step, desk.lines) if itself else None
    value = value if value is not None and value.kind == "wrong" else None
    by_number = value is not None and value.mistakes[0].code in BY_ITS_NUMBER
    told = None
    if value is None or (by_number and len(typed.names) > 1):
        told = told_by_its_slip(desk, about, step.label or line.label, typed, lines)
    if by_number and told is not None and len(told.mistakes) > 1:
        told = None
    if told is None and value is not None:
        told = by_its_working(desk, about, value, desk.lines, step)
    return replace(told or does_not_hold(about, step), about=about)


def _component(
    desk: Desk, about: Value, result: Step, line: Line, lines: Sequence[TypedEquation]
) -> Verdict | None:
    """The verdict on a result for a component of the force, such as AE_y = 9; None for any other."""
    named = [side.node for side in result.sides if isinstance(side.node, Name) and side.node.share]
    numbers = [side for side in result.sides if side.numeric]
    if not named or not numbers or named[0].name != about.unknown:
        return None
    share, number = named[0].share, numbers[-1]
    assert share is not None
    radius = sum(term.radius for term in number.terms) / abs(share.factor)
    whole = ValueReading(
        line.text, side_value(number) / share.factor, radius, number.letter, number.sense,
        about.unknown, number.unit, number.span, None,
    )  # fmt: skip
    verdict = judge_value_of(desk, about, whole, lines)
    if not verdict.right:
        return verdict
    said = COMPONENT.format(name=about.unknown)
    remark = Remark("component", said)
    remarks = (remark, *verdict.remarks)
    return replace(verdict, text=said, value=None, remarks=remarks, opening=OPENING)

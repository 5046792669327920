"""Which value does a statement end in, and what is wrong with it?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tutor.judge.about import Equation, Value
from tutor.judge.desk import Desk
from tutor.judge.kind import Case
from tutor.judge.mistakes import KINDS
from tutor.judge.same import are_same
from tutor.judge.typed import TypedEquation
from tutor.judge.values import is_nothing, judge_value
from tutor.judge.verdict import Mistake, Verdict
from tutor.judge.worked import (
    is_result_behind,
    member_lettered,
    value_alone,
    value_ended,
)
from tutor.judge.worked_out import UNSHOWN, WorkedOut, worked_out
from tutor.judge.working import left_out_of_zero, shows_working, slip_in_sum, slip_in_working
from tutor.notation import Line, Step, ValueReading
from tutor.notation.elements.unreadable import Broken
from tutor.notation.lines.value import value_in

WAY_ONLY = "The letter behind it says the opposite of what the force does to the member."
BY_ITS_NUMBER = ("arithmetic", "carried", "component", "no-arm", "symmetry")
"""Mistakes that are told by what the number comes to, whatever was worked out."""
NO_FORCE = "dimension/value"


def as_value(desk: Desk, line: Line, step: Step, lines: Sequence[TypedEquation]) -> Verdict | None:
    """The verdict on a statement behind the equation that is the value of one force; else None."""
    name = value_ended(step, desk.own.known)
    if name is None:
        return None
    return ended_in(desk, Value(name), line, value_alone(step, desk.own.known), lines, step)


def value_said(
    desk: Desk, line: Line, step: Step, lines: Sequence[TypedEquation]
) -> Verdict | None:
    """The verdict on the value that a statement ends in, or on the T or C behind it; else None."""
    if is_result_behind(line, step, desk.own.known):
        return as_value(desk, line, step, lines)
    name = member_lettered(step, desk.problem.member, desk.own.known)
    if name is None:
        return None
    true, said = desk.values()[name], step.sides[-1].letter
    if is_nothing(desk.problem, true) or (true > 0) == (said == "T"):
        return None
    kind, case = KINDS["tension-compression"], Case(desk.problem, Value(name), name)
    mistake = Mistake(kind.code, name, WAY_ONLY, kind.reason(case), kind.place(case).text)
    return Verdict("wrong", WAY_ONLY, (mistake,))


def ended_in(
    desk: Desk,
    about: Value,
    line: Line,
    step: Step,
    lines: Sequence[TypedEquation],
    whole: Step | None = None,
) -> Verdict | None:
    """The verdict on the number of a statement, as part of a `whole` one; None where there is none."""
    try:
        value = value_in(line.text, step)
    except Broken as broken:
        return _no_force(desk, about, broken, line) if broken.key == NO_FORCE else None
    return judge_ended(desk, about, value, lines, whole or step)


def judge_ended(
    desk: Desk, about: Value, reading: ValueReading, lines: Sequence[TypedEquation], step: Step
) -> Verdict:
    """The verdict on the value that a statement ends in; a minus that its working shows is meant."""
    verdict = judge_value_of(desk, about, reading, lines, worked_out(step))
    if verdict.kind != "undecided" or reading.letter != "T" or len(step.sides) < 3:
        return verdict
    unlettered = replace(reading, letter=None)
    if reading.value > 0 or not judge_value_of(desk, about, unlettered, lines).right:
        return verdict
    kind, case = KINDS["tension-compression"], Case(desk.problem, about, about.unknown)
    mistake = Mistake(kind.code, about.unknown, WAY_ONLY, kind.reason(case), kind.place(case).text)
    return Verdict("wrong", WAY_ONLY, (mistake,), about=about, reading=reading)


def judge_value_of(
    desk: Desk,
    about: Value,
    reading: ValueReading,
    lines: Sequence[TypedEquation],
    worked: WorkedOut = UNSHOWN,
) -> Verdict:
    true = desk.values()[about.unknown]
    return judge_value(desk.problem, about, reading, desk.own, true, lines, desk.radians, worked)


def by_its_working(
    desk: Desk, about: Value, verdict: Verdict, lines: Sequence[TypedEquation], step: Step
) -> Verdict:
    """A verdict on a wrong value asked for, told by the slip in its working where that says more."""
    if verdict.kind != "wrong" or not _may_be_otherwise(desk, about, verdict, lines, step):
        return verdict
    unexplained = verdict.mistakes[0].code == "arithmetic"
    slip = slip_in_working(desk, about, step, lines, unexplained)
    told: tuple[Mistake, ...] = () if slip is None else (slip,)
    if not told and unexplained and verdict.value == 0.0 and not shows_working(step):
        told = left_out_of_zero(desk, about, step, lines)
    return replace(verdict, text=told[0].text, mistakes=told) if told else verdict


def by_its_sum(
    desk: Desk, about: Equation, verdict: Verdict, lines: Sequence[TypedEquation], step: Step
) -> Verdict:
    """A verdict on a wrong value behind a right sum, told by the slip with which its numbers went into that sum.

    The equation stands: what is beside the force itself was only divided by wrongly.
    """
    name = verdict.mistakes[0].force if verdict.mistakes else None
    unexplained = verdict.kind == "wrong" and verdict.mistakes[0].code == "arithmetic"
    if not unexplained or name is None:
        return verdict
    slip = slip_in_sum(desk, about, name, step, lines)
    return (
        verdict
        if slip is None or slip.force == name
        else replace(verdict, text=slip.text, mistakes=(slip,))
    )


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


def _no_force(desk: Desk, about: Value, broken: Broken, line: Line) -> Verdict:
    """That a value stands in the unit of a moment, or of a length."""
    text, kind = broken.about(line.text).message, KINDS["unit"]
    case = Case(desk.problem, about, about.unknown)
    mistake = Mistake(kind.code, about.unknown, text, kind.reason(case), kind.place(case).text)
    return Verdict("wrong", text, (mistake,), about=about)

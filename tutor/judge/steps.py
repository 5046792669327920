"""Is a whole line right: each statement of it, each link of a chain, and the one that was asked for?

A line on paper may say several things: `3/5 F_AE = 9 ∴ F_AE = 15 kN (T)`. Each is judged in its order
with what stands before it; the one that fails is named.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from operator import itemgetter

from tutor.judge.about import Asked, Equation, Value
from tutor.judge.beginning import before, up_to_value, without_end
from tutor.judge.below_the_bar import BRACKETS, all_below
from tutor.judge.broken_link import broken_link
from tutor.judge.by_symmetry import by_symmetry
from tutor.judge.chain import closed, put_into, readings_of, rounded_hard
from tutor.judge.components import component_verdict
from tutor.judge.declared import (
    as_declared,
    assumed_otherwise,
    contradicted,
    drawn_otherwise,
    draws_first,
    in_own_sense,
    told,
)
from tutor.judge.desk import Desk
from tutor.judge.in_size import in_size, of_sizes
from tutor.judge.line import judge_line
from tutor.judge.line_judged import ROUNDED_HARD, LineJudged
from tutor.judge.opened import opened
from tutor.judge.other_equation import holds_at_solution
from tutor.judge.passed_over import listed, remarks_on
from tutor.judge.proportion import proportion_verdict
from tutor.judge.put_together import put_together
from tutor.judge.ratios import ratio_of_components
from tutor.judge.told_last import asked_of, asks_whose
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import TypedEquation, typed_equation
from tutor.judge.unit_behind import with_units_behind
from tutor.judge.unit_of_all import in_unit_of_all
from tutor.judge.unrecorded import with_unrecorded
from tutor.judge.untrue import untrue_as
from tutor.judge.value_at_end import as_value, by_its_sum, value_said
from tutor.judge.value_line import broken_behind, judge_value_line, value_told
from tutor.judge.verdict import Remark, Verdict, faults
from tutor.judge.way_said import only_the_way
from tutor.judge.way_unread import against_what_is_unread
from tutor.judge.worked import (
    named,
    only_works_out,
    says_something,
    sized,
    value_given,
)
from tutor.notation import Line, Step, ValueReading, readings_beside
from tutor.notation.lines.value import no_equation

TRUE, COMPONENT, WORKING = range(3)
"""What a statement beside the equation may be, in the order in which it is told where there is none."""


def judge_typewritten(desk: Desk, about: Equation | Value, line: Line) -> Verdict:
    """The verdict on a line: of several readings as good as each other, the first that is right.

    Where none is, a reading of the same text that leaves fewer mistakes goes before the usual one, and
    one that takes the terms of a sum of numbers each by itself before one that adds them up.
    """
    line = named(line, desk.own.known)
    verdict = _judged(desk, about, line)
    if verdict.right:
        return _as_it_says(desk, about, line, verdict)
    for other in readings_beside(line, desk.names):
        if not all(map(says_something, other.steps)):
            continue
        again = _judged(desk, about, named(other, desk.own.known))
        if again.right:
            return listed(about, other) or _as_it_says(desk, about, other, again)
        if faults(again) < faults(verdict) and not (again.stands and not verdict.stands):
            line, verdict = other, again
    whose = asks_whose(line, verdict)
    for again, settled in _read_otherwise(desk, about, line):
        if again.right or (not whose and (settled or faults(again) < faults(verdict))):
            verdict = again
    if verdict.kind == "wrong" and not verdict.stands and not isinstance(about, Value):
        verdict = only_the_way(desk, about, line, lambda o: _judged(desk, about, o)) or verdict
    if not verdict.right and (by_terms := opened(line)) is not None:
        again = _judged(desk, about, by_terms)
        fewer = faults(again) - faults(verdict)
        verdict = again if fewer < 0 or (fewer == 0 and not isinstance(about, Value)) else verdict
    return verdict


def _read_otherwise(desk: Desk, about: Asked, line: Line) -> Iterator[tuple[Verdict, bool]]:
    """Verdicts on a line as sizes, and as drawn by its own words; whether one settles it though not right."""
    if (as_sizes := sized(line)) is not None:
        yield _judged(desk, about, as_sizes), False
    values = [each.value for each in desk.own.known.values()]
    if values and (in_one := put_together(line, values)) is not None:
        yield _judged(desk, about, in_one), False
    if (in_unit := with_units_behind(line)) is not None:
        yield _judged(desk, about, in_unit), False
    in_one_unit = in_unit_of_all(desk, about, line)
    if in_one_unit is not None and (again := _judged(desk, about, in_one_unit)).right:
        yield again, False
    if (below := all_below(line)) is not None and (again := _judged(desk, about, below)).right:
        yield replace(again, remarks=(*again.remarks, Remark("brackets", BRACKETS))), False
    if (at_zero := closed(line)) is not None and not (again := _judged(desk, about, at_zero)).right:
        yield again, False
    if (sizes := in_size(desk, about, line, _judged)) is not None:
        yield sizes, not of_sizes(line)
    if senses := drawn_otherwise(line, desk.names, desk.problem.member, desk.own):
        own = as_declared(desk.own, senses)
        verdict = _judged(replace(desk, own=own), about, line)
        if isinstance(about, Value) and about.unknown in senses:
            verdict = in_own_sense(verdict)
        if verdict.right or not verdict.stands:
            unsaid = verdict.right and not _lettered(about, verdict, senses)
            yield (
                told(verdict, senses) if unsaid else verdict,
                draws_first(line, senses, desk.names),
            )


def _lettered(about: Asked, verdict: Verdict, senses: Mapping[str, str]) -> bool:
    """Whether a value of which alone a sense is said has its letter behind it."""
    lettered = isinstance(verdict.reading, ValueReading) and verdict.reading.letter is not None
    return lettered and isinstance(about, Value) and set(senses) == {about.unknown}


def _as_it_says(desk: Desk, about: Equation | Value, line: Line, verdict: Verdict) -> Verdict:
    """A right verdict, save where the line says first of a member what its own signs deny."""
    if isinstance(about, Value) or all(value_given(step) for step in line.steps):
        return verdict
    senses = assumed_otherwise(line, desk.names, desk.problem.member, desk.own)
    if not senses:
        return verdict
    again = _judged(replace(desk, own=as_declared(desk.own, senses)), about, line)
    return verdict if again.right else contradicted(verdict, senses)


def _judged(desk: Desk, about: Equation | Value, line: Line) -> Verdict:
    if isinstance(about, Value):
        verdict = by_symmetry(desk, about, line, judge_value_line(desk, about, line))
    else:
        verdict = _proportion(desk, about, line) or _equation(desk, about, line)
    if not verdict.right:
        return asked_of(about, line, verdict, lambda each: _judged(desk, about, each)) or verdict
    if (opposed := against_what_is_unread(desk, about, line)) is not None:
        return opposed
    said = remarks_on(desk, about, line)
    return replace(verdict, remarks=(*verdict.remarks, *said)) if said else verdict


def _proportion(desk: Desk, about: Equation, line: Line) -> Verdict | None:
    """The verdict on a line that begins with a proportion of forces and goes on with values; else None."""
    first, *others = line.steps
    verdict = proportion_verdict(desk, first)
    if verdict is None or not verdict.right:
        return verdict and replace(verdict, about=about)
    for step in others:
        value = as_value(desk, line, step, desk.lines)
        if value is None:
            return None
        if not value.right:
            return replace(value_told(value, before(line, step)), about=about)
    return replace(verdict, about=about)


def _equation(desk: Desk, about: Equation, line: Line) -> Verdict:
    """The verdict on a line where an equation is asked for: one statement has to be it, all true."""
    lines = list(desk.lines)
    main: Verdict | None = None
    beside: list[tuple[int, Verdict]] = []
    for step in line.steps:
        if (component := _component(desk, about, step)) is not None:
            if not component.right:
                return component
            beside.append((COMPONENT, component))
            continue
        for reading in readings_of(desk, line, step):
            own = typed_equation(reading)
            if (ratio := ratio_of_components(desk, own)) is not None:
                main = main if main and ratio.right else replace(ratio, about=about)
                continue
            verdict = _answer(desk, about, own, lines)
            if verdict.right:
                main = _better(main, verdict)
                lines.append(own)
            elif main is not None and (value := as_value(desk, line, step, lines)) is not None:
                if not value.right:
                    value = by_its_sum(desk, about, value, lines, step)
                    chain = without_end(step) if len(step.sides) > 2 else ""
                    return replace(value_told(value, before(line, step) or chain), about=about)
            elif (works_out := only_works_out(line, step) or _checks(desk, about, own, main)) or (
                not put_into(step) and _is_true(desk, verdict, own, lines)
            ):
                beside.append((WORKING if works_out else TRUE, verdict))
            else:
                untrue = untrue_as(desk, line, step, own, lines, main, verdict)
                return replace(untrue, about=about) if untrue is not None else verdict
        main = _to_its_end(desk, line, step, lines, main)
        if main is not None and not main.right:
            return replace(main, about=about)
    if main is not None:
        return main
    return min(beside, key=itemgetter(0))[1] if beside else _no_equation(about, line)


def _answer(
    desk: Desk, about: Equation, own: TypedEquation, lines: Sequence[TypedEquation]
) -> Verdict:
    given = (desk.problem, about, own, desk.names, desk.own, desk.standing, lines, desk.values)
    return judge_line(LineJudged(*given))


def _checks(desk: Desk, about: Equation, own: TypedEquation, main: Verdict | None) -> bool:
    """Whether numbers alone are, each by itself, the true parts of the forces of the equation before them."""
    if main is None or own.names:
        return False
    values = desk.values()
    used = with_unrecorded(own, TrueEquation(desk.problem, about, desk.own), values)
    return used is not None and used.term_by_term


def _component(desk: Desk, about: Equation, step: Step) -> Verdict | None:
    """The verdict on a statement of a component of a force that has its value; None for any other."""
    verdict = component_verdict(desk, about.joint, step)
    if verdict is None:
        return None
    broken = broken_link(desk, step)
    return replace(broken.verdict if broken else verdict, about=about)


def _to_its_end(
    desk: Desk,
    line: Line,
    step: Step,
    lines: Sequence[TypedEquation],
    main: Verdict | None,
) -> Verdict | None:
    """The verdict so far, or that on the first number or value of a statement that is not right."""
    if step is line.steps[0] and _is_plain(step):
        return main
    if (broken := broken_link(desk, step)) is not None:
        return broken_behind(desk, line, step, lines, broken) if main else broken.verdict
    if main is None:
        return None
    ended = value_said(desk, line, step, lines)
    if ended is not None and not ended.right:
        return value_told(ended, up_to_value(line, step))
    rounded = rounded_hard(step) or (ended is not None and bool(ended.remarks))
    return _rounded(main) if rounded else main


def _is_plain(step: Step) -> bool:
    """Whether a statement is one equation with an unknown, and no T or C behind it."""
    sides = step.sides
    return len(sides) == 2 and not (sides[0].numeric and sides[1].numeric) and not sides[1].letter


def _rounded(main: Verdict) -> Verdict:
    if any(remark.code == "rounding" for remark in main.remarks):
        return main
    return replace(main, remarks=(*main.remarks, Remark("rounding", ROUNDED_HARD)))


def _better(main: Verdict | None, verdict: Verdict) -> Verdict:
    """Of two right statements the one that shows the equation, the first where both do."""
    if main is None:
        return verdict
    result = any(remark.code in ("result", "dependent") for remark in main.remarks)
    return verdict if result and not verdict.remarks else main


def _is_true(
    desk: Desk, verdict: Verdict, line: TypedEquation, lines: Sequence[TypedEquation]
) -> bool:
    """Whether a statement that is not the equation asked for is true all the same."""
    if verdict.kind == "undecided" or verdict.true_of is not None:
        return True
    if {each.code for each in verdict.mistakes} & {"other-equation", "other-point"}:
        return True
    alone = len(line.names) == 1 and len(line.constants) <= 1
    return (
        alone
        and bool(lines)
        and holds_at_solution(line, desk.problem, desk.own, desk.values(), desk.problem.tolerance)
    )


def _no_equation(about: Equation, line: Line) -> Verdict:
    """A line without any equation: a number alone, say."""
    unreadable = no_equation(line)
    return Verdict("unreadable", unreadable.message, about=about, unreadable=unreadable)

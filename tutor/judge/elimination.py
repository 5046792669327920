"""Does each statement of a line follow from the lines that stand, and from what the line said before?

From (3) AC - BC = 750 and from (4) AC + BC = -1670; adding, 2 AC = -920. Such a line is no sum of forces of its
own: each statement has to be put together from equations of the same body and from values already found.
"""

from __future__ import annotations

from collections.abc import Sequence

from tutor.judge.about import Equation, Value
from tutor.judge.broken_link import broken_link
from tutor.judge.chain import readings_of
from tutor.judge.desk import Desk
from tutor.judge.independent import same_body
from tutor.judge.kind import Case
from tutor.judge.known_values import KnownValues
from tutor.judge.mistakes import KINDS
from tutor.judge.other_equation import holds_at_solution
from tutor.judge.restated import Row, is_sum_of, true_row, typed_row
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import TypedEquation, typed_equation
from tutor.judge.value_at_end import value_said
from tutor.judge.verdict import OPENING, Mistake, Remark, Verdict
from tutor.judge.worked import named
from tutor.notation import Line, Step
from tutor.text import listed

FOLLOWS = OPENING + "it follows from {what}."
DOES_NOT_FOLLOW = "“{text}” does not follow from {what}."
YOUR_LINES = "the lines that stand"


def by_elimination(
    desk: Desk, about: Equation | Value, line: Line, claimed: bool = True
) -> Verdict | None:
    """The verdict on a line without a heading of its own, by what follows from the lines that stand.

    None where it has a heading, where nothing stands, or where a statement that does not follow is true all
    the same. Without `claimed`, only a line that follows altogether has a verdict.
    """
    if isinstance(about, Value) or line.label or any(step.label for step in line.steps):
        return None
    line = named(line, desk.own.known)
    standing = [each for each in desk.standing if same_body(each, about)]
    if not standing or not (claimed or all(map(_is_sum, line.steps))):
        return None
    what = listed(list(line.referred)) if line.referred else YOUR_LINES
    rows = _given(desk, standing)
    for step in line.steps:
        failed = _failing(desk, line, step, rows)
        if failed is None:
            continue
        if isinstance(failed, Verdict):
            return failed if claimed else None
        return _not_following(desk, about, line, step, what) if claimed else None
    said = Remark("dependent", FOLLOWS.format(what=what))
    reading = _typed(desk, line, line.steps[0])[0].reading
    return Verdict("right", "Right.", (), (said,), about=about, reading=reading, restates=True)


def _given(desk: Desk, standing: Sequence[Equation]) -> list[Row]:
    """The equations that stand, and the values found, as rows over the unknowns by name."""
    by_name = KnownValues(desk.own.senses, {})
    rows = [true_row(TrueEquation(desk.problem, each, by_name)) for each in standing]
    return rows + [{name: 1.0, None: -own.value} for name, own in desk.own.known.items()]


def _typed(desk: Desk, line: Line, step: Step) -> list[TypedEquation]:
    return [typed_equation(reading) for reading in readings_of(desk, line, step)]


def _failing(desk: Desk, line: Line, step: Step, rows: list[Row]) -> TypedEquation | Verdict | None:
    """What of a statement does not follow from `rows`, to which it is added where all of it does."""
    if (broken := broken_link(desk, step)) is not None:
        return broken.verdict
    by_name = KnownValues(desk.own.senses, {})
    typed = _typed(desk, line, step)
    for each in typed:
        row = typed_row(each, by_name)
        if each.says_nothing or not is_sum_of(row, rows, each) or not _holds(desk, each):
            return each
        rows.append(row)
    said = value_said(desk, line, step, desk.lines)
    return said if said is not None and said.kind == "wrong" else None


def _is_sum(step: Step) -> bool:
    """Whether a statement is one equation between two forces or more, and no value."""
    names = {term.name for side in step.sides for term in side.terms} - {None}
    return len(step.sides) == 2 and len(names) > 1 and not any(s.letter for s in step.sides)


def _holds(desk: Desk, line: TypedEquation) -> bool:
    return holds_at_solution(line, desk.problem, desk.own, desk.values(), desk.problem.tolerance)


def _not_following(
    desk: Desk, about: Equation, line: Line, step: Step, what: str
) -> Verdict | None:
    """That a statement does not follow, with its place; None where it is true all the same or says nothing."""
    typed = _typed(desk, line, step)
    if any(each.says_nothing for each in typed) or all(_holds(desk, each) for each in typed):
        return None
    text = DOES_NOT_FOLLOW.format(text=line.text[step.span.start : step.span.end], what=what)
    kind, case = KINDS["arithmetic"], Case(desk.problem, Value(""))
    mistake = Mistake(kind.code, None, text, kind.reason(case), "", step.span)
    return Verdict("wrong", text, (mistake,), about=about, reading=typed[0].reading)

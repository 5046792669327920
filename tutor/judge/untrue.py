"""What is said of a statement beside others that is not so, better than what it lacks as an equation?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tutor.judge.beginning import before
from tutor.judge.broken_link import broken_link
from tutor.judge.desk import Desk
from tutor.judge.ratios import not_following
from tutor.judge.results import is_bare
from tutor.judge.typed import TypedEquation
from tutor.judge.value_at_end import as_value
from tutor.judge.verdict import Verdict
from tutor.judge.worked import of_forces, works_out_wrongly
from tutor.notation import Line, Step


def untrue_as(
    desk: Desk,
    line: Line,
    step: Step,
    own: TypedEquation,
    lines: Sequence[TypedEquation],
    main: Verdict | None,
    verdict: Verdict,
) -> Verdict | None:
    """What is said of a statement that is not so, better than as an equation; None where that is best."""
    if works_out_wrongly(line, step) and (broken := broken_link(desk, step, of_value=True)):
        return broken.verdict if main else broken.alone
    untrue = not_following(desk, main, step, own, before(line, step), verdict)
    return untrue or _wrong_result(desk, line, step, lines, verdict)


def _wrong_result(
    desk: Desk, line: Line, step: Step, lines: Sequence[TypedEquation], verdict: Verdict
) -> Verdict | None:
    """The verdict on a wrong result in the place of an equation, where it shows no single slip of one.

    Of a result with its working that is so where a factor was multiplied by instead of divided by.
    """
    named = verdict.mistakes and all(m.code != "not-equilibrium" for m in verdict.mistakes)
    if verdict.kind != "wrong" or (named and (len(verdict.mistakes) == 1 or of_forces(step))):
        return None
    value = as_value(desk, line, step, lines)
    if value is None or value.kind != "wrong" or value.mistakes[0].code == "arithmetic":
        return None
    if not is_bare(verdict.reading) and value.mistakes[0].code != "component":
        return None
    return replace(value, about=verdict.about, reading=verdict.reading)

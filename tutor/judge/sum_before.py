"""Which slip does the sum show that a value is found from, and that does not hold: F_DE cos 60° = 12 ⇒ F_DE = 24?

The sum is the one that the heading names; where it leaves open which, the one that the line is clearly nearest to.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import combinations

from tutor.judge.about import Along, Equation, Fx, Fy, M, Value
from tutor.judge.desk import Desk
from tutor.judge.headings import equation_named
from tutor.judge.line import judge_line
from tutor.judge.line_judged import LineJudged
from tutor.judge.nearest import clearly_nearest
from tutor.judge.parts import part_on
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import TypedEquation
from tutor.judge.verdict import UNNAMED, Mistake, Verdict
from tutor.model import Problem
from tutor.notation import Label, Step
from tutor.notation.elements.label import PartSaid
from tutor.statics import Section, section_through

MOST_POINTS = 12
MOST_CUT = 3
MOST_JOINTS = 30
MOST_SUMS = 24
DOES_NOT_HOLD = "“{text}” does not hold, so nothing can follow from it."
ANEW = "Write “{text}” anew, force by force, before you solve it."
_OF_NO_FORCE = frozenset((UNNAMED, "arithmetic", "other-equation", "other-point", "dependent"))


def told_by_its_slip(
    desk: Desk,
    about: Value,
    label: Label | None,
    typed: TypedEquation,
    lines: Sequence[TypedEquation],
) -> Verdict | None:
    """The verdict on a sum that does not hold, where it is clear which sum it is and how it went wrong; else None."""
    headed = label is not None and (label.kind is not None or label.point is not None)
    meant = _nearest(desk, typed, _headed(desk.problem, about.unknown, label, typed), headed)
    unsaid = not headed and (label is None or label.part is None)
    if meant is None and unsaid and about.unknown in desk.problem.member:
        meant = _nearest(desk, typed, list(_of_parts(desk.problem, label, typed)), False)
    if meant is None:
        return None
    mistakes = judge_line(
        LineJudged(
            desk.problem, meant, typed, desk.names, desk.own, desk.standing, lines, desk.values
        )
    ).mistakes
    if not mistakes or any(mistake.code in _OF_NO_FORCE for mistake in mistakes):
        return None
    text = " ".join(dict.fromkeys(mistake.text for mistake in mistakes))
    return Verdict("wrong", text, tuple(replace(mistake, span=None) for mistake in mistakes))


def _nearest(
    desk: Desk, typed: TypedEquation, among: Sequence[Equation], headed: bool
) -> Equation | None:
    """The one of several sums that an equation is, but for its slips; None where it is not clear which."""
    acting = [
        each for each in among if typed.names <= TrueEquation(desk.problem, each, desk.own).acting
    ]
    if len(acting) == 1 and headed:
        return acting[0]
    if not acting or len(acting) > MOST_SUMS:
        return None
    given = (typed, desk.problem, desk.own, desk.values(), acting, headed)
    return clearly_nearest(*given, solved=True)


def does_not_hold(about: Value, step: Step) -> Verdict:
    """That a statement does not hold, and no more."""
    shown = step.text[step.span.start : step.span.end]
    text, place = DOES_NOT_HOLD.format(text=shown), ANEW.format(text=shown)
    mistake = Mistake("arithmetic", about.unknown, text, "", place, step.span)
    return Verdict("wrong", text, (mistake,))


def sums_of(problem: Problem, unknown: str) -> Iterator[Equation]:
    """The sums in which a force is looked for."""
    member = problem.member.get(unknown)
    if member is not None:
        for end in (member.start, member.end):
            yield from (Fx(end), Fy(end))
        return
    yield from (Fx(), Fy())
    yield from (M(joint.name) for joint in problem.joints[:MOST_POINTS])


def _headed(
    problem: Problem, unknown: str, label: Label | None, typed: TypedEquation
) -> list[Equation]:
    """The sums that a heading leaves open for the equation that a force is found from."""
    if label is None:
        return list(sums_of(problem, unknown))
    if unknown in problem.member and (label.part is not None or label.kind == "moment"):
        return list(_of_parts(problem, label, typed))
    here = label.point if isinstance(label.point, str) and label.kind != "moment" else None
    joints = [here] if here else _ends(problem, unknown)
    if label.kind is None:
        found: list[Equation] = [sum_(joint) for joint in joints for sum_ in (Fx, Fy)]
        return found if here else list(sums_of(problem, unknown))
    named = [equation_named(problem, label, joint) for joint in joints]
    return [about for about in named if about is not None]


def _ends(problem: Problem, unknown: str) -> list[str | None]:
    """The joints at which a member acts; for a reaction the whole truss comes first."""
    member = problem.member.get(unknown)
    if member is not None:
        return [member.start, member.end]
    return [None, problem.reaction[unknown].joint]


def _of_parts(problem: Problem, label: Label | None, typed: TypedEquation) -> Iterator[Equation]:
    """The sum that a heading names, of each part that it may speak of: its cut goes through what is typed.

    Both sums of forces where it names none.
    """
    named = None if label is None or label.kind is None else equation_named(problem, label, None)
    abouts: list[Equation] = [Fx(), Fy()] if named is None else [named]
    if isinstance(named, Along) or len(problem.joints) > MOST_JOINTS:
        return
    said = None if label is None else label.part
    side = None if said is None else said.side
    for found in _cuts(problem, said, typed):
        parts = found.parts if side is None else (part_on(problem, found, side),)
        kept = [part for part in parts if part is not None]
        yield from (replace(about, joint=None, part=part) for part in kept for about in abouts)


def _cuts(problem: Problem, said: PartSaid | None, typed: TypedEquation) -> Iterator[Section]:
    """The sections that a heading names, else those through the members typed and few others."""
    if said is not None and said.cut:
        through = section_through(problem, said.cut)
        yield from [through] if through.divides else []
        return
    named = {name for name in typed.names if name in problem.member}
    others = [member.name for member in problem.members if member.name not in named]
    for more in range(MOST_CUT - len(named) + 1):
        for extra in combinations(others, more):
            through = section_through(problem, named.union(extra))
            if through.divides and min(map(len, through.parts)) > 1:
                yield through

"""Which sum is a value with its working, solved for its force: BE = 18 - 3/5*7.5 = 13.5 T?

One in which that force alone is open: its terms are then those of the working, divided by its factor.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from tutor.judge import Along, Equation, Fx, Fy, Judge, M
from tutor.judge.about import equation_of
from tutor.judge.headings import slants
from tutor.judge.independent import adds_something, same_body
from tutor.judge.known_values import KnownValue, KnownValues
from tutor.judge.nearest import nearest, plainly, right_for, term_by_term
from tutor.judge.results import is_bare
from tutor.judge.same import SAME
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import TypedEquation, typed_equation
from tutor.judge.worked import equation_before_value
from tutor.lesson.solvable import lines_giving, open_in
from tutor.lesson.state import State
from tutor.lesson.steps.headings import is_sum, value_named
from tutor.notation import Line, Unreadable

NOT_ITS_TERMS = frozenset({"result", "unrecorded", "dependent"})


def solved_for(
    state: State, line: Line | Unreadable, text: str, desk: Judge, offers: Iterable[Equation]
) -> Equation | None:
    """The sum that a line is, solved for the one force open in it; None where it is not clear.

    A number alone may be a sum of forces, A_x = 0, and no sum of moments, whose arm it would have lost.
    Of a line that is right for none, the equation that it begins with decides, whatever it comes to
    behind it. Where that is right for none either, it is still that of the only sum which leaves the
    force open; of several, that of the nearest one, a sum of forces first.
    """
    unknown = value_named(line, state.result)
    if isinstance(line, Unreadable) or unknown is None or unknown in state.result:
        return None
    worked = len(line.result.sides) > 2 or is_sum(line) or _worked_before(line)
    if lines_giving(state, unknown):
        return None
    alone = _leaving_open(state, unknown, offers, moments=worked)
    said = typed_equation(line.steps[0].links[0])
    may_be = [*alone, *(_across(state, unknown, said) if worked else ())]
    right = [about for about in may_be if _is_its_line(state, text, desk, about)]
    if not right and worked and not said.says_nothing:
        right = list(right_for(said, state.problem, state.own, may_be))
    if not worked and state.joint is None:
        right = term_by_term(said, state.problem, state.own, right)
    if len(right) > 1:
        right = plainly(said, state.problem, state.own, right) or right
    if not worked:
        alone = _whole_in(state, unknown, text, desk, alone)
    elif not right:
        alone = _clearly_across(state, desk, said, alone, may_be)
    found = right or alone
    if len(found) > 1 and not right:
        if state.about is None:
            first, *others = sorted(found, key=lambda about: isinstance(about, M))
            return nearest(said, state.problem, state.own, desk.values(), first, others)
        return nearest_of(state, line, desk, found)
    return found[0] if len(found) == 1 else None


def _leaving_open(
    state: State, unknown: str, offers: Iterable[Equation], moments: bool
) -> list[Equation]:
    """Those of `offers` that leave one force open and add something."""
    return [
        about
        for about in dict.fromkeys(offers)
        if open_in(state, about) == (unknown,)
        and (moments or not isinstance(about, M))
        and adds_something(state.problem, about, state.standing)
    ]


def _clearly_across(
    state: State, desk: Judge, said: TypedEquation, alone: list[Equation], may_be: list[Equation]
) -> list[Equation]:
    """The sum across a force that a wrong line is, or else the sum along an axis that it is clearly nearer to.

    A size that is typed may be that of a force not recorded yet, such as one equal by symmetry.
    """
    if state.joint is None or len(may_be) == len(alone):
        return alone
    given = state.problem, _with_values_typed(state, desk, said), desk.values()
    axis = nearest(said, *given, Fx(state.joint), [Fy(state.joint)])
    near = nearest(said, *given, axis, may_be)
    return [near] if near in may_be or not alone else alone


def _with_values_typed(state: State, desk: Judge, said: TypedEquation) -> KnownValues:
    """The student's own values, and those not recorded whose size is typed in a line."""
    own = state.own
    taken = {
        name: KnownValue(own.sign(name) * value, SAME * abs(value))
        for name, value in desk.values().items()
        if name not in own.known and any(factors.holds(value) for factors in said.factors)
    }
    return KnownValues(own.senses, {**own.known, **taken})


def _across(state: State, unknown: str, said: TypedEquation) -> list[Equation]:
    """The sums at the open joint, along a slope there, that leave one force open: a triangle of forces.

    Each number typed has to show one of the forces that count in it, by its size.
    """
    if state.joint is None:
        return []
    if any(open_in(state, axis) == (unknown,) for axis in (Fx(state.joint), Fy(state.joint))):
        return []
    found: list[Equation] = []
    for degrees in slants(state.problem, state.joint):
        about = Along(degrees, state.joint)
        if open_in(state, about) != (unknown,):
            continue
        true = TrueEquation(state.problem, about, state.own)
        sizes = [spot.scale for spot in true.numbers(said.names) if spot.true != 0.0]
        shown = all(any(map(factors.holds, sizes)) for factors in said.factors)
        if shown and adds_something(state.problem, about, state.standing):
            found.append(about)
    return found


def _worked_before(line: Line) -> bool:
    """Whether a value has its working in the statement that it follows from."""
    first = line.steps[0]
    return len(line.steps) > 1 and bool(first.links) and not is_bare(first.links[0])


def _whole_in(
    state: State, unknown: str, text: str, desk: Judge, among: Sequence[Equation]
) -> list[Equation]:
    """The only sum at the open joint that leaves a force open, where the force stands whole in it.

    Its right value alone would be taken for that sum; so is a wrong one. An inclined force may have
    been taken whole.
    """
    if state.joint is None or len(among) != 1:
        return []
    coefficient = equation_of(state.problem, among[0]).linear.get(unknown, 0.0)
    if abs(abs(coefficient) - 1.0) <= 1e-9:
        return list(among)
    codes = [mistake.code for mistake in desk.judge(among[0], text, state.own).mistakes]
    return list(among) if codes == ["whole-force"] else []


def nearest_of(
    state: State, line: Line | Unreadable, desk: Judge, among: Iterable[Equation]
) -> Equation | None:
    """The equation of the proposed one's body that a line which is right for none is nearest to."""
    reading = equation_before_value(line)
    if state.about is None or isinstance(reading, Unreadable):
        return state.about
    said = typed_equation(reading)
    if said.says_nothing:
        return state.about
    others = [
        about
        for about in among
        if same_body(about, state.about) and adds_something(state.problem, about, state.standing)
    ]
    return nearest(said, state.problem, state.own, desk.values(), state.about, others)


def _is_its_line(state: State, text: str, desk: Judge, about: Equation) -> bool:
    verdict = desk.judge(about, text, state.own)
    return verdict.right and not NOT_ITS_TERMS & {remark.code for remark in verdict.remarks}

"""Is a typed line the equation it is meant to be, and if not, which mistake does it show?"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from tutor.judge.about import Along, Equation, Fx, Fy, M
from tutor.judge.alike import apart
from tutor.judge.explain import slips_of
from tutor.judge.explanation import Slip
from tutor.judge.factors import Factors
from tutor.judge.fit import Fit, fit, nearly_as_written
from tutor.judge.headings import equation_in_words
from tutor.judge.independent import same_body
from tutor.judge.kind import Case
from tutor.judge.line_judged import LineJudged
from tutor.judge.mistakes import KINDS
from tutor.judge.one_each import shows_sizes
from tutor.judge.other_equation import along_some_slope, true_of, true_of_part
from tutor.judge.restated import in_figures, restated
from tutor.judge.results import is_bare, is_result, said_of_result
from tutor.judge.same import NEAR
from tutor.judge.telling import with_what_fits
from tutor.judge.ties import told_with
from tutor.judge.true_equation import TrueEquation
from tutor.judge.unrecorded import (
    Unrecorded,
    joint_sum_with_unrecorded,
    not_recorded,
    one_with_unrecorded,
    with_unrecorded,
)
from tutor.judge.verdict import Mistake, Remark, Verdict, faults
from tutor.judge.whole_line import off_by
from tutor.model import Tolerance
from tutor.text import listed

NOTHING = 1e-9
EXACTLY = Tolerance(silent=0.0005, remark=NEAR)
NOT_BY_ITSELF = (
    "The figures fit, but for {names} no value is known yet, and no term of its own stands here: write "
    "each force with its own term, or name the direction that the line adds the forces along."
)
SAYS_AGAIN = "Right; it says {what} again and adds nothing new."


def judge_line(line: LineJudged) -> Verdict:
    """The verdict on a line: right, right of something else, a result, or which mistake it shows."""
    verdict = _as_typed(line)
    parted = None if verdict.right else apart(line.typed, line.true, line.lines, line.values())
    if parted is None:
        return verdict
    again = _as_typed(replace(line, typed=parted.line))
    if again.right:
        return replace(again, remarks=(*again.remarks, Remark("alike", parted.said)))
    return again if faults(again) <= faults(verdict) else verdict


def _as_typed(line: LineJudged) -> Verdict:
    found = fit(line.typed, line.true, line.tolerance)
    if found is None and line.typed.says_nothing:
        return line.wrong(line.mistake(Slip("not-equilibrium", None, None)))
    if is_result(line.typed, line.reading, found, in_sum=not isinstance(line.about, M)) and (
        found or line.holds
    ):
        other = _plainly_other(line)
        return _result(line) if other is None else _again_or_elsewhere(line, other)
    if found is not None:
        return _fits(line, found)
    told = _follows(line) or _again_in_figures(line) or _of_something_else(line) or _mistaken(line)
    return told if told.right else _again_in_figures(line, though_asked=True) or told


def _fits(line: LineJudged, found: Fit) -> Verdict:
    """A line that is a multiple of the true one, as far as each term goes."""
    alone = len(line.typed.names) == 1 and line.typed.constants
    other = _plainly_other(line) if alone and not found.plain else None
    if other is not None and not _is_by_its_products(line, other, found.scale):
        return _again_or_elsewhere(line, other)
    most = max(line.tolerance.remark, NOTHING)
    if off_by(line.typed, line.true, found.scale, line.values()) > most:
        return line.wrong(line.mistake(Slip("rounding", None, None)))
    return line.right(rounded=found.level == "remark")


def _again_or_elsewhere(line: LineJudged, other: Equation) -> Verdict:
    """A line that is plainly another equation: said again where that stands, and is no bare result."""
    stands = other in line.standing and not is_bare(line.reading)
    return (_follows(line) if stands else None) or _true_elsewhere(line, other)


def _is_by_its_products(line: LineJudged, other: Equation, scale: float) -> bool:
    """Whether the products of a line show the forces of the equation asked for, not of another."""

    def shown(true: TrueEquation, *scales: float) -> bool:
        numbers = true.numbers(line.typed.names)
        given = (line.typed, numbers), (line.tolerance, Factors.has_factor)
        return any(shows_sizes(*given[0], scale, *given[1]) for scale in scales)

    elsewhere = TrueEquation(line.problem, other, line.own)
    return shown(line.true, scale) and not shown(elsewhere, 1.0, -1.0)


def _plainly_other(line: LineJudged) -> Equation | None:
    """The equation that stands here term by term, where the one asked for is only a multiple.

    Once a single force is open, every equation of the body gives it, each in its own terms.
    """
    for about in (other for other in line.standing_or_axes if other != line.about):
        found = fit(line.typed, TrueEquation(line.problem, about, line.own), line.tolerance)
        if found is not None and found.plain and found.level == "silent":
            return about
    return None


def _result(line: LineJudged) -> Verdict:
    """A value where an equation is wanted: right where lines that stand give it."""
    given_by, remark = said_of_result(line.typed, line.true, line.standing, line.lines)
    if given_by:
        return line.right(remark)
    return Verdict(
        "undecided", remark.text, remarks=(remark,), about=line.about, reading=line.reading
    )


def _follows(line: LineJudged) -> Verdict | None:
    """Right, where a line says again what stands or puts it together."""
    again = restated(line.typed, line.true, line.standing, line.lines)
    if again is None:
        return None
    if again.adds:
        return line.right()
    what = equation_in_words(line.problem, again.about) if again.about else "what your lines say"
    said = Remark("dependent", SAYS_AGAIN.format(what=what))
    return replace(line.right(said), restates=True)


def _again_in_figures(line: LineJudged, though_asked: bool = False) -> Verdict | None:
    """Right, where a line says again what stands, with numbers for its forces or without idle ones."""
    found = in_figures(line.typed, line.true, line.standing, line.values, though_asked)
    if found is None:
        return None
    about, used = found
    what, other = equation_in_words(line.problem, about), about != line.about
    said = [Remark("dependent", SAYS_AGAIN.format(what=what))] if other else []
    said += [Remark("unrecorded", not_recorded(used, line.values()))] if used else []
    return replace(line.right(*said), restates=other)


def _of_something_else(line: LineJudged) -> Verdict | None:
    """True of another point, joint, direction or part; or right with values not recorded yet."""
    values, true, own = line.values(), line.true, line.typed
    used = with_unrecorded(own, true, values) if line.holds or not own.names else None
    fits_unsaid = None
    if used is not None and not line.holds and not (used.only_idle and used.term_by_term):
        said = used.term_by_term and len(line.typed.constants) > 2
        fits_unsaid, used = used if said else None, None
    plainly_used = used is not None and (used.term_by_term or used.only_idle)
    if not plainly_used and (axis := _other_axis_with_unrecorded(line)) is not None:
        return _true_elsewhere(line, axis)
    strictly = plainly_used or not own.names
    other = true_of(own, true, line.tolerance, strictly, lambda: line.holds_to(EXACTLY))
    if other is None and line.holds and not plainly_used:
        part, number_by_itself = true_of_part(own, true, line.tolerance)
        joint = None if number_by_itself else joint_sum_with_unrecorded(own, true, values)
        other = joint or part
    if isinstance(other, Along) and used is not None:
        other = (
            None  # nobody writes a sum along a slope without saying so; numbers meet one by chance
        )
    if other is not None and not (used is not None and used.only_idle):
        return _true_elsewhere(line, other)
    if used is None:
        return None if fits_unsaid is None else _not_by_itself(line, fits_unsaid)
    if not (plainly_used or used.shown):
        return _not_by_itself(line, used)
    right = line.right(Remark("unrecorded", not_recorded(used, values)))
    return replace(right, without=used.names)


def _not_by_itself(line: LineJudged, used: Unrecorded) -> Verdict:
    text = NOT_BY_ITSELF.format(names=listed(used.names))
    return Verdict("undecided", text, about=line.about, reading=line.reading)


def _other_axis_with_unrecorded(line: LineJudged) -> Equation | None:
    """The other sum at the same joint that the line is, with values put in that are not recorded yet.

    It goes before any other body that the numbers of the line happen to fit.
    """
    joint = line.about.joint
    if joint is None or not line.holds:
        return None
    return one_with_unrecorded(line.typed, line.true, line.values(), (Fx(joint), Fy(joint)))


def _mistaken(line: LineJudged) -> Verdict:
    """A wrong line: the mistakes that explain it best."""
    values, true, reading = line.values(), line.true, line.reading
    slips, others = slips_of(true, line.typed, reading, line.names, line.tolerance, values)
    unclear = any(slip.code == "not-equilibrium" for slip in slips)
    exactly = line.holds and line.holds_to(EXACTLY)
    of_another = exactly and not nearly_as_written(line.typed, true)
    by_chance = _of_acting_forces(slips, values) and not _plainly_one(slips)
    if of_another and (unclear or by_chance):
        return _true_elsewhere(line, along_some_slope(line.typed, true, line.tolerance))
    mistakes = tuple(line.mistake(slip, slips) for slip in slips)
    if unclear and len(mistakes) == 1 and mistakes[0].force is None:
        mistakes = (with_what_fits(mistakes[0], true, line.typed),)
    accounts = [tuple(line.mistake(slip, account) for slip in account) for account in others]
    candidates = tuple(mistake for account in accounts for mistake in account)
    if not unclear:
        mistakes = told_with(mistakes, accounts)
    return line.wrong(*mistakes, candidates=candidates)


def _of_acting_forces(slips: Sequence[Slip], values: Mapping[str, float]) -> bool:
    """Whether none of the slips is about an unknown that happens to be zero."""
    return all(values.get(slip.force or "", 1.0) != 0.0 for slip in slips)


def _plainly_one(slips: Sequence[Slip]) -> bool:
    """Whether one slip of a factor was made at several forces, so that it is chance what it comes to."""
    codes = {slip.code for slip in slips}
    return len(codes) == 1 < len(slips) and KINDS[codes.pop()].touches == "factor"


def _true_elsewhere(line: LineJudged, other: Equation | None) -> Verdict:
    """A line that is true, but not the equation asked for; of what, where it can be told."""
    about = line.about
    same = other is not None and same_body(other, about)
    both_moments = isinstance(about, M) and isinstance(other, M) and same
    kind = KINDS["other-point" if both_moments else "other-equation"]
    case = Case(line.problem, about, true_of=other, work=line.work)
    told = Mistake(kind.code, None, kind.look(case).text, kind.reason(case), kind.place(case).text)
    return line.wrong(told, true_of=other)

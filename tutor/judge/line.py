"""Is a typed line the equation it is meant to be, and if not, which mistake does it show?"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from tutor.judge.about import LineAbout, M, in_words
from tutor.judge.compare import Typed, fit, number_by_number, typed
from tutor.judge.diagnose import diagnose
from tutor.judge.elsewhere import holds_at_solution, true_of, true_of_part
from tutor.judge.fitting import fitting
from tutor.judge.given import Given
from tutor.judge.independent import adds_something, same_body
from tutor.judge.kind import Case, force_in_words
from tutor.judge.mistakes import KINDS
from tutor.judge.mistakes.unit import FACTORS
from tutor.judge.otherwise import told_with
from tutor.judge.slips import Account, Slip
from tutor.judge.truth import TrueLine
from tutor.judge.twins import LEFT_OUT, TOO_MANY, alike, place_of
from tutor.judge.unrecorded import joint_sum_with_unrecorded, not_recorded, with_unrecorded
from tutor.judge.verdict import Mistake, Remark, Verdict
from tutor.model import Problem, Tolerance
from tutor.notation import Names, Reading, Unreadable, read_equation
from tutor.statics.words import listed

MOST_FORCES = 2
EXACTLY = Tolerance(silent=0.0005, remark=0.02)
READ_IN_RADIANS = 0.5
BARE_ANGLE = re.compile(r"(?:sin|cos|tan)[ (]*(\d+(?:[.,]\d+)?)", re.IGNORECASE)


def judge_line(
    problem: Problem,
    about: LineAbout,
    reading: Reading,
    names: Names,
    given: Given,
    standing: Sequence[LineAbout],
    values: Callable[[], dict[str, float]],
) -> Verdict:
    """The verdict on a line that could be read; `values` gives the solved truss when needed."""
    tolerance = problem.tolerance
    true = TrueLine(problem, about, given)
    line = typed(reading)
    found = fit(line, true, tolerance)
    if found is not None:
        remarks = _remarks(problem, about, reading, found.level == "remark", standing)
        return Verdict("right", "Right.", remarks=remarks, about=about, reading=reading)
    holds = holds_at_solution(line, problem, given, values(), tolerance)
    used = with_unrecorded(line, true, values()) if holds or not line.names else None
    if used is not None and not holds and not (used.only_idle and used.term_by_term):
        used = None
    plainly_used = used is not None and (used.term_by_term or used.only_idle)
    other = true_of(line, true, tolerance, strictly=plainly_used or not line.names)
    if other is None and holds and not plainly_used:
        part, number_by_itself = true_of_part(line, true, tolerance)
        joint = None if number_by_itself else joint_sum_with_unrecorded(line, true, values())
        other = joint or part
    if other is not None and not (used is not None and used.only_idle):
        return _true_elsewhere(problem, about, reading, other)
    if used:
        said = Remark("unrecorded", not_recorded(used.names, values()))
        remarks = (said, *_remarks(problem, about, reading, False, standing))
        return Verdict("right", "Right.", remarks=remarks, about=about, reading=reading)
    idle = frozenset(name for name in true.unknowns if values()[name] == 0.0)
    slips, others = _slips(true, line, reading, names, tolerance, idle)
    unclear = any(slip.code == "not-equilibrium" for slip in slips)
    exactly = holds and holds_at_solution(line, problem, given, values(), EXACTLY)
    if exactly and (unclear or _of_acting_forces(slips, values())):
        return _true_elsewhere(problem, about, reading, None)
    mistakes = tuple(_mistake(true, slip, reading, slips) for slip in slips)
    if unclear and len(mistakes) == 1 and mistakes[0].force is None:
        mistakes = (_with_what_fits(mistakes[0], true, line),)
    accounts = [
        tuple(_mistake(true, slip, reading, account) for slip in account) for account in others
    ]
    candidates = tuple(mistake for account in accounts for mistake in account)
    if not unclear:
        mistakes = told_with(mistakes, accounts)
    text = " ".join(dict.fromkeys(m.text for m in mistakes))
    return Verdict("wrong", text, mistakes, about=about, reading=reading, candidates=candidates)


def _of_acting_forces(slips: Sequence[Slip], values: Mapping[str, float]) -> bool:
    """Whether none of the slips is about an unknown that happens to be zero."""
    return all(values.get(slip.force or "", 1.0) != 0.0 for slip in slips)


def _remarks(
    problem: Problem,
    about: LineAbout,
    reading: Reading,
    rounded: bool,
    standing: Sequence[LineAbout],
) -> tuple[Remark, ...]:
    remarks = []
    if headed := headed_otherwise(about, reading):
        remarks.append(Remark("heading", headed))
    if rounded:
        remarks.append(
            Remark(
                "rounding",
                "Right, though a number is rounded hard; a fraction or one more figure is safer.",
            )
        )
    if not adds_something(problem, about, standing):
        case = Case(problem, about)
        kind = KINDS["dependent"]
        remarks.append(Remark("dependent", f"{kind.look(case)} {kind.reason(case)}"))
    return tuple(remarks)


def _true_elsewhere(
    problem: Problem, about: LineAbout, reading: Reading, other: LineAbout | None
) -> Verdict:
    same = other is not None and same_body(other, about)
    both_moments = isinstance(about, M) and isinstance(other, M) and same
    kind = KINDS["other-point" if both_moments else "other-equation"]
    case = Case(problem, about, true_of=other)
    mistake = Mistake(kind.code, None, kind.look(case), kind.reason(case), kind.place(case))
    return Verdict("wrong", mistake.text, (mistake,), true_of=other, about=about, reading=reading)


def _slips(
    true: TrueLine,
    line: Typed,
    reading: Reading,
    names: Names,
    tolerance: Tolerance,
    idle: frozenset[str],
) -> tuple[tuple[Slip, ...], tuple[tuple[Slip, ...], ...]]:
    """The slips of the best account, and those of each account that is about as good."""
    nothing = (Slip("not-equilibrium", None, None),)
    if not line.names and not line.constants:
        return nothing, ()
    account, others = diagnose(line, true, reading, tolerance, idle)
    overall = _overall(true, line, reading, names, tolerance)
    if overall is not None and overall[0] < account.cost:
        alone = len(account.slips) == 1 and account.slips[0].code != "not-equilibrium"
        return (overall[1],), (account.slips,) if alone else ()
    if not _can_be_named(account) or (not line.names and not _mostly_right(account, line)):
        return nothing, (account.slips,)
    named = [other for other in others if all(s.code != "not-equilibrium" for s in other.slips)]
    return account.slips, tuple(other.slips for other in named)


def _can_be_named(account: Account) -> bool:
    """Whether an account is short enough to be believed: two forces, or one kind of slip only."""
    forces, codes = {s.force for s in account.slips}, {s.code for s in account.slips}
    return len(forces) <= MOST_FORCES or (len(codes) == 1 and codes != {"not-equilibrium"})


def _mostly_right(account: Account, line: Typed) -> bool:
    """Whether a line of numbers alone has more right terms than wrong ones: chance explains others."""
    touched = sum(1 for slip in account.slips if slip.code not in LEFT_OUT)
    return 2 * touched <= len(line.constants)


def _with_what_fits(mistake: Mistake, true: TrueLine, line: Typed) -> Mistake:
    """A mistake that cannot be named, with the terms that do fit."""
    names = fitting(line, true, true.problem.tolerance)
    if not names:
        return mistake
    named = listed([force_in_words(true.problem, name) for name in names], most=20)
    return replace(mistake, place=f"What you wrote for {named} fits; write the other terms again.")


def _overall(
    true: TrueLine, line: Typed, reading: Reading, names: Names, tolerance: Tolerance
) -> tuple[float, Slip] | None:
    """A mistake that runs through the whole line: members reversed, or degrees as radians."""
    members = [n for n, s in true.unknowns.items() if s.force.kind == "member" and s.true != 0.0]
    standing = [s for n, s in true.unknowns.items() if n not in members and s.true != 0.0] + [
        s for s in true.loads if s.true != 0.0
    ]
    known = true.given.known
    pulling = [n for n in members if n in line.names or (n in known and known[n].value != 0.0)]
    if len(pulling) >= 2 and standing:
        turned = {n: "T" if true.given.sign(n) < 0 else "C" for n in members}
        given = Given({**true.given.senses, **turned}, true.given.known)
        found = fit(line, replace(true, given=given), tolerance)
        if found is not None and (found.scale > 0 or len(standing) > 1):
            return KINDS["pull-push"].cost, Slip("pull-push", None, None)
    if _in_other_unit(true, line, tolerance):
        return KINDS["unit"].cost, Slip("unit", None, None)
    radians = read_equation(reading.text, names, angles="radians")
    if not isinstance(radians, Unreadable) and _may_be_radians(reading.text):
        again = typed(radians)
        if again != line and fit(again, true, tolerance) is not None:
            return READ_IN_RADIANS, Slip("angle-mode", None, None)
    return None


def _may_be_radians(text: str) -> bool:
    """Whether every bare angle in the text is small enough to be one in radians."""
    angles = [float(angle.replace(",", ".")) for angle in BARE_ANGLE.findall(text)]
    return bool(angles) and max(angles) <= 2 * math.pi


def _in_other_unit(true: TrueLine, line: Typed, tolerance: Tolerance) -> bool:
    """Whether all numbers without unknown are off by the same factor of units."""
    if len(line.constants) < 2 or not line.unknowns:
        return False
    for factor in FACTORS:
        numbers = tuple(
            t._replace(value=t.value * factor, radius=t.radius * factor) for t in line.constants
        )
        turned = replace(line, constants=numbers)
        found = fit(turned, true, tolerance)
        if (
            found is not None
            and abs(found.scale) == 1.0
            and number_by_number(turned, true.numbers(line.names), found.scale)
        ):
            return True
    return False


def _mistake(true: TrueLine, slip: Slip, reading: Reading, slips: Sequence[Slip] = ()) -> Mistake:
    """A slip as it is told, with the other forces named that it may be about as well.

    `slips` are all the slips of the line; without them it is taken to be about its own force.
    """
    typed = next((t.value for t in reading.terms if t.span == slip.span), None)
    names = {term.name for term in reading.terms if term.name is not None}
    same = alike(true, slip, names, slips, typed) if slips else (slip,)
    acting = sum(1 for s in (*true.unknowns.values(), *true.loads) if s.true != 0.0)
    others = tuple(other.force for other in same[1:] if other.force is not None)
    case = Case(true.problem, true.about, same[0].force, same[0].spot, acting, None, others)
    mixed = len(same) > 1 and same[0].code in TOO_MANY
    kind, told = KINDS[same[0].code], KINDS["extra" if mixed else same[0].code]
    span = slip.span
    if span is None and slip.force is not None:
        span = next((t.span for t in reading.terms if t.name == slip.force), None)
    return Mistake(
        kind.code,
        case.force,
        told.look(case),
        told.reason(case),
        place_of(case, same),
        span,
        others,
    )


def headed_otherwise(about: LineAbout, reading: Reading) -> str | None:
    """A sentence where the line's own heading names another equation than the one asked for."""
    label = reading.label
    if label is None:
        return None
    kind = {"Fx": "x", "Fy": "y", "M": "moment", "Along": "along"}[type(about).__name__]
    other_point = isinstance(about, M) and label.point is not None and label.point != about.at
    if label.kind != kind or other_point:
        return f"What you wrote is {in_words(about)}, though its heading says otherwise."
    return None

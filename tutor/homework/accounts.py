"""Which mistake of the catalogue explains what is left over at one body?

A wrong line that was solved holds with the student's own numbers, while the true one does not. So a
slip that turns one coefficient of the true equation into another explains the body if the change
makes up exactly for what is left over. No line need be known for this.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from tutor.homework.sheet import WHOLE, Part, Sheet, Vector, middle_and_size
from tutor.homework.work import Entry
from tutor.judge import Fx, Fy, LineAbout, M, Mistake, Value
from tutor.judge.kind import Case
from tutor.judge.mistakes import KINDS
from tutor.judge.mistakes.unit import FACTORS
from tutor.judge.options import options
from tutor.judge.truth import Given, Spot, TrueLine
from tutor.model import Problem

UNEXPLAINED = 4.0
MISFIT = 0.3
MOST_MISFIT = 3.0
BESIDE = 0.5
WHOLE_FORCE_IN_BOTH = 0.5
A_MOMENT = 0.1
OTHER_POINT = 0.4
ARITHMETIC = KINDS["arithmetic"].cost + 0.4
COPIED = KINDS["magnitude"].cost
MOST_POINTS = 12


@dataclass(frozen=True)
class Account:
    """A mistake that explains what is left over at `place`; `about` is the line it was made in.

    `about` is None where it runs through both lines of a joint, and a value where the line was
    right but its result was not. Lower `cost` is more plausible; our own judgement, no source.
    """

    place: str
    mistake: Mistake
    about: LineAbout | Value | None
    cost: float = field(repr=False)


@dataclass(frozen=True)
class Change:
    """What one slip at one force changes in an equation, and how far that may be off."""

    code: str
    force: str | None
    spot: Spot | None
    change: float
    radius: float
    cost: float
    by: float = 0.0


def accounts(
    problem: Problem, sheet: Sheet, unknown: Iterable[str], entries: dict[str, Entry]
) -> list[Account]:
    """Every account of a body that does not close, best first; `unknown` are the values found there."""
    solved = tuple(unknown)
    if sheet.missing:
        return []
    found = list(_of_one_line(problem, sheet, solved, entries))
    found += _of_one_force(problem, sheet, solved, entries)
    if sheet.name != WHOLE:
        found += _of_both_lines(problem, sheet)
    best: dict[tuple[str, str | None], Account] = {}
    for account in sorted(found, key=lambda a: a.cost):
        best.setdefault((account.mistake.code, account.mistake.force), account)
    return list(best.values())


def _of_one_line(
    problem: Problem, sheet: Sheet, solved: tuple[str, ...], entries: dict[str, Entry]
) -> Iterator[Account]:
    """One slip in one line, the others of the body being right."""
    lines = _lines(problem, sheet)
    holding = [n for _, n, _ in lines if sheet.holds(n)]
    for about, n, penalty in lines:
        left, slack = sheet.left(n), sheet.slack(n)
        if abs(left) <= slack:
            continue
        beside = 0.0
        if not _enough(holding, sheet.size - 1):
            if len(solved) > _rank(holding) + 1:
                continue
            beside = BESIDE
        true = TrueLine(problem, about, Given({}, {}))
        factor = _factor(sheet, true, n)
        for change in _changes(problem, sheet, true, entries):
            off = abs(left + factor * change.change)
            if off > slack + abs(factor) * change.radius:
                continue
            if _solvable(sheet, solved, holding, n, change, factor):
                cost = (
                    change.cost + penalty + beside + _misfit(sheet, solved, n, off, change, factor)
                )
                yield _account(problem, sheet, about, change, cost)


def _lines(problem: Problem, sheet: Sheet) -> list[tuple[LineAbout, Vector, float]]:
    """The lines that students write at this body, each as a direction, with a penalty."""
    if sheet.name != WHOLE:
        joint = sheet.name
        return [(Fx(joint), sheet.axes[0], 0.0), (Fy(joint), sheet.axes[1], 0.0)]
    found: list[tuple[LineAbout, Vector, float]] = [
        (Fx(), sheet.axes[0], 0.0),
        (Fy(), sheet.axes[1], 0.0),
    ]
    middle, size = middle_and_size(problem)
    supports = dict.fromkeys(s.joint for s in problem.supports)
    others = [j.name for j in problem.joints if j.name not in supports]
    for joint in (*supports, *others[:MOST_POINTS]):
        x, y = problem.joint[joint].at
        n = ((y - middle[1]) / size, -(x - middle[0]) / size, 1.0)
        found.append((M(joint), n, A_MOMENT if joint in supports else OTHER_POINT))
    return found


def _factor(sheet: Sheet, true: TrueLine, n: Vector) -> float:
    """What one unit of the line's own measure is in the measure of the sheet."""
    if not true.is_moment:
        return 1.0
    for part in sheet.parts:
        share = part.share(n)
        for term in true.equation.terms:
            per_unit = term.coefficient / (term.force.size or 1.0)
            if term.force == part.force and abs(per_unit) > 1e-9 and abs(share) > 1e-9:
                return share / per_unit
    return 1.0


def _misfit(
    sheet: Sheet, solved: tuple[str, ...], n: Vector, off: float, change: Change, factor: float
) -> float:
    """A penalty where more is left over than the rounding of the values found here explains."""
    tight = 1e-9 * sheet.added(n)
    for name in solved:
        part = sheet.part[name]
        share = part.share(n)
        if name == change.force:
            share += factor * change.by
        tight += abs(share) * part.radius
    return MISFIT * min(max(off / tight - 1.0, 0.0), MOST_MISFIT)


def _solvable(
    sheet: Sheet,
    solved: tuple[str, ...],
    holding: list[Vector],
    n: Vector,
    change: Change,
    factor: float,
) -> bool:
    """Whether the lines with the slip in them could have given the values found here at all."""
    row = tuple(
        sheet.part[name].share(n) + (factor * change.by if name == change.force else 0.0)
        for name in solved
    )
    if all(abs(a) < 1e-6 for a in row):
        return False
    rows = [tuple(sheet.part[name].share(m) for name in solved) for m in holding]
    return _rank([r for r in (*rows, row) if any(abs(a) > 1e-9 for a in r)]) == len(solved)


def _enough(holding: list[Vector], count: int) -> bool:
    return _rank(holding) >= count


def _rank(vectors: list[Vector]) -> int:
    basis: list[Vector] = []
    for vector in vectors:
        n = vector
        for against in basis:
            along = math.fsum(a * b for a, b in zip(n, against, strict=True))
            n = tuple(a - along * b for a, b in zip(n, against, strict=True))
        length = math.hypot(*n)
        if length > 1e-6 * math.hypot(*vector):
            basis.append(tuple(a / length for a in n))
    return len(basis)


def _changes(
    problem: Problem, sheet: Sheet, true: TrueLine, entries: dict[str, Entry]
) -> Iterator[Change]:
    """What each slip of the catalogue changes in one line, in the line's own measure."""
    for name, spot in true.unknowns.items():
        part = sheet.part[name]
        value = part.value or 0.0
        for option in options(spot):
            by = option.value - spot.true
            yield Change(
                option.codes[0], name, spot, by * value, abs(by) * part.radius, option.cost, by
            )
        if spot.true != 0.0:
            for copied in _miscopied(entries[name]) if name in entries else ():
                yield Change("magnitude", name, spot, spot.true * (copied - value), 0.0, COPIED)
    for spot in true.loads:
        for option in options(spot):
            yield Change(
                option.codes[0], spot.name, spot, option.value - spot.true, 0.0, option.cost
            )
    yield from _loads_from_elsewhere(problem, sheet, true)


def _loads_from_elsewhere(problem: Problem, sheet: Sheet, true: TrueLine) -> Iterator[Change]:
    """The load of another joint, written at this one."""
    if sheet.name == WHOLE or true.is_moment:
        return
    for load in problem.loads:
        if load.joint == sheet.name:
            continue
        part = load.vector[0] if isinstance(true.about, Fx) else load.vector[1]
        if part != 0.0:
            cost = KINDS["extra"].cost + 0.5
            yield Change("extra", f"load {load.joint}", None, part, 0.0, cost)


def _miscopied(entry: Entry) -> Iterator[float]:
    """What a value becomes when two figures change places or the point moves."""
    number = "".join(c for c in entry.text if c.isdigit() or c == ".")
    try:
        size = float(number)
    except ValueError:
        return
    if not math.isclose(size, abs(entry.value), rel_tol=1e-9):
        return
    sign = math.copysign(1.0, entry.value)
    for i in range(len(number) - 1):
        if number[i] != "." and number[i + 1] != "." and number[i] != number[i + 1]:
            yield sign * float(number[:i] + number[i + 1] + number[i] + number[i + 2 :])
    yield entry.value * 10.0
    yield entry.value / 10.0


def _of_one_force(
    problem: Problem, sheet: Sheet, solved: tuple[str, ...], entries: dict[str, Entry]
) -> Iterator[Account]:
    """One force that goes wrong in every line alike: what is left over lies along it."""
    for part in sheet.parts:
        size = math.hypot(*part.vector)
        along = math.fsum(r * a for r, a in zip(sheet.lefts, part.vector, strict=True)) / size**2
        across = [
            abs(r - along * a) > t
            for r, a, t in zip(sheet.lefts, part.vector, sheet.slacks, strict=True)
        ]
        if any(across):
            continue
        slack = sheet.slack(part.vector) / size**2
        straight = sum(1 for a in part.vector if abs(a) > 1e-9) == 1
        yield from _along(problem, sheet, part, along, slack, solved, entries, straight)


def _along(
    problem: Problem,
    sheet: Sheet,
    part: Part,
    along: float,
    slack: float,
    solved: tuple[str, ...],
    entries: dict[str, Entry],
    straight: bool,
) -> Iterator[Account]:
    """Accounts of a force that is too large by `along` in every line of the body."""
    value = part.value or 0.0
    found: list[tuple[str, float, float]] = []
    code = "tension-compression" if part.force.kind == "member" else "sign"
    found.append((code, -value, KINDS[code].cost + 0.1))
    found.append(("missing", 0.0, KINDS["missing"].cost + WHOLE_FORCE_IN_BOTH))
    if value:
        found += [("unit", value * f, KINDS["unit"].cost + WHOLE_FORCE_IN_BOTH) for f in FACTORS]
    if part.name in entries:
        found += [("magnitude", other, COPIED + 0.3) for other in _miscopied(entries[part.name])]
    for code, other, cost in found:
        allowed = slack + abs(1.0 - (other / value if value else 1.0)) * part.radius
        off = abs(along - (value - other))
        if off <= allowed and abs(along) > slack:
            change = Change(code, part.name, None, 0.0, 0.0, 0.0)
            about = Value(part.name) if not part.is_load else None
            yield _account(
                problem,
                sheet,
                about,
                change,
                cost + MISFIT * (off / allowed) ** 2 if allowed else cost,
            )
    if part.name in solved and abs(along) > slack:
        change = Change("arithmetic", part.name, None, 0.0, 0.0, 0.0)
        yield _account(
            problem, sheet, Value(part.name), change, ARITHMETIC + (1.0 if straight else 0.0)
        )


def _of_both_lines(problem: Problem, sheet: Sheet) -> Iterator[Account]:
    """Slips that run through both lines of a joint: components exchanged, members reversed."""
    (rx, ry), (tx, ty) = sheet.lefts, sheet.slacks
    if abs(rx) <= tx or abs(ry) <= ty:
        return
    for part in sheet.parts:
        ux, uy = part.vector
        if ux == 0.0 or uy == 0.0:
            continue
        value = part.value or 0.0
        by = abs(uy) - abs(ux)
        dx, dy = math.copysign(by, ux) * value, math.copysign(-by, uy) * value
        slack = abs(by) * part.radius
        if abs(rx + dx) <= tx + slack and abs(ry + dy) <= ty + slack:
            change = Change("component", part.name, None, 0.0, 0.0, 0.0)
            yield _account(problem, sheet, Fx(sheet.name), change, KINDS["component"].cost + 0.2)
    members = [p for p in sheet.parts if p.force.kind == "member"]
    if len(members) < 2 or len(members) == len(sheet.parts):
        return
    dx = -2 * math.fsum(p.vector[0] * (p.value or 0.0) for p in members)
    dy = -2 * math.fsum(p.vector[1] * (p.value or 0.0) for p in members)
    if abs(rx + dx) <= tx and abs(ry + dy) <= ty:
        change = Change("pull-push", None, None, 0.0, 0.0, 0.0)
        yield _account(problem, sheet, None, change, KINDS["pull-push"].cost)


def _account(
    problem: Problem,
    sheet: Sheet,
    about: LineAbout | Value | None,
    change: Change,
    cost: float,
) -> Account:
    joint = None if sheet.name == WHOLE else sheet.name
    return Account(
        sheet.name,
        mistake_of(
            problem,
            about if about is not None else Fx(joint),
            change.code,
            change.force,
            change.spot,
        ),
        about,
        cost,
    )


def mistake_of(
    problem: Problem,
    about: LineAbout | Value,
    code: str,
    force: str | None,
    spot: Spot | None = None,
) -> Mistake:
    """The mistake with its hints, in the words of the catalogue."""
    acting = 0
    if not isinstance(about, Value):
        true = TrueLine(problem, about, Given({}, {}))
        acting = sum(1 for s in (*true.unknowns.values(), *true.loads) if s.true != 0.0)
    kind = KINDS[code]
    case = Case(problem, about, force, spot, acting)
    return Mistake(code, force, kind.look(case), kind.reason(case), kind.place(case))

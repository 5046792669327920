"""Which slip in one line of a body makes up for what is left over there?"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from tutor.homework.account import AccountDraft
from tutor.homework.changes import Change, Gap, changes
from tutor.homework.sheet import WHOLE, Sheet, middle_and_size
from tutor.homework.slips import Slips
from tutor.homework.vectors import PARALLEL, Vector, orthogonal
from tutor.homework.work import Entry
from tutor.judge import Equation, Fx, Fy, M
from tutor.model import Problem
from tutor.notation.elements.fact import kept

MISFIT, MOST_MISFIT = 0.3, 3.0
ONE_LINE_USED = 0.5
A_MOMENT, OTHER_POINT = 0.1, 0.4
MOST_POINTS = 12


@dataclass(frozen=True)
class Usual:
    """A line that one writes at a body: its direction in the body's space, and the space's measure.

    `factor` is one unit of the line's own measure in that of the body; `penalty` says how unusual
    the line is.
    """

    problem: Problem
    about: Equation
    n: Vector
    factor: float = 1.0
    penalty: float = 0.0

    @kept
    def true(self) -> Slips:
        """The true line, with what each slip makes of each force in it."""
        return Slips.of(self.problem, self.about)


@dataclass(frozen=True)
class Match:
    """A slip in one line that makes up for what is left over, up to `off`.

    `holding` are the other usual lines of the body that hold with the student's numbers.
    """

    line: Usual
    change: Change
    off: float
    holding: tuple[Usual, ...]


def matches(
    usual: Sequence[Usual], sheet: Sheet, entries: Mapping[str, Entry]
) -> tuple[Match, ...]:
    """Every slip in any one of the usual lines of a body that does not close, which makes up for it."""
    holding = tuple(line for line in usual if sheet.holds(line.n))
    found: list[Match] = []
    for line in usual:
        left, slack = sheet.left(line.n), sheet.slack(line.n)
        if abs(left) <= slack or (line.penalty >= OTHER_POINT and found):
            continue
        gap = Gap(left, slack, line.factor)
        for change in changes(line.problem, sheet, line.true, entries, gap):
            off = abs(left + line.factor * change.change)
            found.append(Match(line, change, off, holding))
    return tuple(found)


def usual_lines(problem: Problem, sheet: Sheet) -> list[Usual]:
    """The lines that students write at this body."""
    if sheet.name != WHOLE:
        return [
            Usual(problem, Fx(sheet.name), sheet.axes[0]),
            Usual(problem, Fy(sheet.name), sheet.axes[1]),
        ]
    found = [Usual(problem, Fx(), sheet.axes[0]), Usual(problem, Fy(), sheet.axes[1])]
    middle, size = middle_and_size(problem)
    supports = dict.fromkeys(s.joint for s in problem.supports)
    others = [j.name for j in problem.joints if j.name not in supports]
    for joint in (*supports, *others[:MOST_POINTS]):
        x, y = problem.joint[joint].at
        n = ((y - middle[1]) / size, -(x - middle[0]) / size, 1.0)
        found.append(
            Usual(problem, M(joint), n, 1 / size, A_MOMENT if joint in supports else OTHER_POINT)
        )
    return found


def of_one_line(
    sheet: Sheet, solved: Sequence[str], matched: Sequence[Match]
) -> Iterator[AccountDraft]:
    """The slips that could have given the values `solved` here, the other lines being right."""
    for match in matched:
        rank = _rank(match.holding)
        if rank < sheet.size - 1 and len(solved) > rank + 1:
            continue
        if _solvable(sheet, solved, match):
            cost = match.change.cost + match.line.penalty + _misfit(sheet, solved, match)
            cost += _beside(sheet, match.holding)
            yield AccountDraft(
                match.change.code, match.change.force, cost, match.line.about, match.change.spot
            )


def _beside(sheet: Sheet, holding: Sequence[Usual]) -> float:
    """What it costs that the other lines of the body are not all written, or not all at a support."""
    if _rank(holding) < sheet.size - 1:
        return ONE_LINE_USED
    at_supports = [line for line in holding if line.penalty < OTHER_POINT]
    return 0.0 if _rank(at_supports) >= sheet.size - 1 else OTHER_POINT


def _rank(lines: Sequence[Usual]) -> int:
    return len(orthogonal([line.n for line in lines]))


def _row(sheet: Sheet, solved: Sequence[str], match: Match) -> Vector:
    """What stands beside the values found here in the line with the slip."""
    change, line = match.change, match.line
    return tuple(
        sheet.part[name].share(line.n) + (line.factor * change.by if name == change.force else 0.0)
        for name in solved
    )


def _solvable(sheet: Sheet, solved: Sequence[str], match: Match) -> bool:
    """Whether the lines with the slip in them could have given the values found here at all."""
    row = _row(sheet, solved, match)
    if math.hypot(*row) <= PARALLEL:
        return False
    rows = [tuple(sheet.part[name].share(line.n) for name in solved) for line in match.holding]
    return len(orthogonal((*rows, row))) == len(solved)


def _misfit(sheet: Sheet, solved: Sequence[str], match: Match) -> float:
    """A penalty where more is left over than the rounding of the values found here explains."""
    tight = 1e-9 * sheet.added(match.line.n)
    for name, beside in zip(solved, _row(sheet, solved, match), strict=True):
        tight += abs(beside) * sheet.part[name].radius
    return MISFIT * min(max(match.off / tight - 1.0, 0.0), MOST_MISFIT)

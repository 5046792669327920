"""What can one slip change in one line, and by how much?"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from tutor.homework.sheet import WHOLE, Sheet
from tutor.homework.slips import Slips, TrueTerm, cost_of
from tutor.homework.work import Entry
from tutor.judge import Fx
from tutor.model import Problem
from tutor.statics.body import load_name

COPIED = cost_of("magnitude")
FROM_ELSEWHERE = cost_of("extra") + 0.5


@dataclass(frozen=True)
class Change:
    """What one slip at one force changes in an equation."""

    code: str
    force: str | None
    spot: TrueTerm | None
    change: float
    cost: float
    by: float = 0.0


@dataclass(frozen=True)
class Gap:
    """What a line of a body leaves over, and how far that may be off, in the body's measure.

    `factor` is one unit of the line's own measure in that of the body.
    """

    left: float
    slack: float
    factor: float = 1.0

    def closed_by(self, change: float) -> bool:
        """Whether a change in the line makes up for what is left."""
        return abs(self.left + self.factor * change) <= self.slack


def changes(
    problem: Problem, sheet: Sheet, true: Slips, entries: Mapping[str, Entry], gap: Gap
) -> Iterator[Change]:
    """What each slip of the catalogue that closes the gap changes in one line, in its own measure."""
    left, slack, factor = gap.left, gap.slack, gap.factor
    for name, (spot, slips) in true.unknowns.items():
        part = sheet.part[name]
        value, radius = factor * part.number, abs(factor) * part.radius
        true_share = spot.true
        for code, wrong, cost in slips:
            by = wrong - true_share
            most = slack + abs(by) * radius
            if -most <= left + by * value <= most:
                change = by * part.number
                yield Change(code, name, spot, change, cost, by)
        if spot.true != 0.0 and name in entries:
            for copied in miscopied(entries[name]):
                change = spot.true * (copied - part.number)
                if gap.closed_by(change):
                    yield Change("magnitude", name, spot, change, COPIED)
    for spot, slips in true.loads:
        for code, wrong, cost in slips:
            if gap.closed_by(wrong - spot.true):
                yield Change(code, spot.name, spot, wrong - spot.true, cost)
    for load, change in _loads_from_elsewhere(problem, sheet, true):
        if gap.closed_by(change):
            yield Change("stray-load", load_name(load), None, change, FROM_ELSEWHERE)


def _loads_from_elsewhere(
    problem: Problem, sheet: Sheet, true: Slips
) -> Iterator[tuple[str, float]]:
    """The loads of other joints, each with what it adds to a line of this one."""
    if sheet.name == WHOLE or true.is_moment:
        return
    for load in problem.loads:
        if load.joint == sheet.name:
            continue
        part = load.vector[0] if isinstance(true.about, Fx) else load.vector[1]
        if part != 0.0:
            yield load.joint, part


def miscopied(entry: Entry) -> Iterator[float]:
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

"""Does a line only say again, or put together, equations of the same body that already stand?"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from tutor.judge.about import LineAbout
from tutor.judge.fit import fit
from tutor.judge.given import Given
from tutor.judge.independent import same_body
from tutor.judge.truth import TrueLine
from tutor.judge.typed import Typed

SAME = 0.005
NOTHING = 1e-9

Row = Mapping[str | None, float]


@dataclass(frozen=True)
class Restated:
    """A line that follows from those that stand.

    `about` is the one it says again, None where it puts several together; `adds` is whether the
    equation that was asked for had to be among them.
    """

    about: LineAbout | None
    adds: bool


def restated(
    line: Typed, true: TrueLine, standing: Sequence[LineAbout], lines: Sequence[Typed]
) -> Restated | None:
    """What of the standing equations a line says again, or None.

    `lines` are the student's own lines as typed. Lines that stand and leave one force open give its
    value, and everything follows from that: only such as hold two open forces can be put together.
    """
    if not line.unknowns:
        return None
    problem, tolerance = true.problem, true.problem.tolerance
    stand = [about for about in standing if same_body(about, true.about) and about != true.about]
    for about in stand:
        found = fit(line, TrueLine(problem, about, true.given), tolerance)
        if found is not None and found.level == "silent":
            return Restated(about, adds=False)
    given = _without_typed(true.given, line)
    true = replace(true, given=given)
    names = true.unknowns.keys()
    rows = [_true_row(TrueLine(problem, about, given)) for about in stand]
    rows += [_typed_row(each, given) for each in lines if each.names <= names]
    asked, typed = _true_row(true), _typed_row(line, given)
    open_names = {name for row in (*rows, asked) for name in row if name is not None}
    if not rows or len(open_names) < 2 or not set(typed) - {None} <= open_names:
        return None
    if _follows(typed, rows, line):
        return Restated(None, adds=False)
    return Restated(None, adds=True) if _follows(typed, [*rows, asked], line) else None


def _without_typed(given: Given, line: Typed) -> Given:
    """What is given without the values of those unknowns that the line has by name."""
    known = {name: own for name, own in given.known.items() if name not in line.names}
    return Given(given.senses, known)


def _true_row(true: TrueLine) -> Row:
    row: dict[str | None, float] = {None: math.fsum(load.true for load in true.loads)}
    for name, spot in true.unknowns.items():
        _add(row, name, spot.true, true.given)
    return row


def _typed_row(line: Typed, given: Given) -> Row:
    row: dict[str | None, float] = {None: line.total}
    for name, coefficient in line.unknowns.items():
        _add(row, name, coefficient.value, given)
    return row


def _add(row: dict[str | None, float], name: str, coefficient: float, given: Given) -> None:
    """A term of an unknown, as a number where the student has a value of it."""
    if name in given.known:
        row[None] = row.get(None, 0.0) + coefficient * given.known[name].value
    elif coefficient != 0.0:
        row[name] = row.get(name, 0.0) + coefficient


def _follows(typed: Row, rows: Sequence[Row], line: Typed) -> bool:
    """Whether `typed` is a sum of multiples of `rows`, by taking their directions out one by one."""
    names = list(dict.fromkeys(n for row in (*rows, typed) for n in row if n is not None))
    basis: list[list[float]] = []
    for row in rows:
        vector = _without([row.get(name, 0.0) for name in (*names, None)], basis)
        size = math.hypot(*vector[:-1])
        if size > NOTHING * (1.0 + max(map(abs, vector))):
            basis.append([part / size for part in vector])
    own = [typed.get(name, 0.0) for name in (*names, None)]
    size = math.hypot(*own[:-1])
    if size <= NOTHING:
        return False
    *left, number = _without(own, basis)
    largest = max((abs(own[-1]), *(abs(term.value) for term in line.constants)), default=0.0)
    return math.hypot(*left) <= SAME * size and abs(number) <= SAME * largest + NOTHING


def _without(vector: Sequence[float], basis: Sequence[Sequence[float]]) -> list[float]:
    """What is left of a vector, its last part carried along, without the directions of `basis`."""
    rest = list(vector)
    for unit in basis:
        along = math.fsum(a * b for a, b in zip(rest[:-1], unit[:-1], strict=True))
        rest = [a - along * b for a, b in zip(rest, unit, strict=True)]
    return rest

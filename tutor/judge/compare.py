"""Does a typed line say the same as a true equation, up to scale and honest rounding?

All coefficients are taken with everything moved to the left side. Tolerances are measured against
the parts that were added up, not against what is left after they cancel.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from tutor.judge.pairing import TINY, about_equal, adds_up, carried, one_by_one, split
from tutor.judge.truth import Spot, TrueLine
from tutor.model import Tolerance
from tutor.notation import Reading, Term

Level = Literal["silent", "remark"]
MOST_TO_SPLIT = 8
NEGLIGIBLE = 0.0005
AS_WRITTEN = 0.004


@dataclass(frozen=True)
class Coefficient:
    """What is typed beside one unknown: the sum, its half-width, the sizes added, the terms."""

    value: float
    radius: float
    parts: float
    terms: tuple[float, ...]


@dataclass(frozen=True)
class Typed:
    """The numbers of a typed line: a coefficient by unknown, and the terms without unknown."""

    unknowns: Mapping[str, Coefficient]
    constants: tuple[Term, ...]

    @cached_property
    def names(self) -> frozenset[str]:
        return frozenset(self.unknowns)

    @cached_property
    def total(self) -> float:
        """The sum of the terms without unknown."""
        return math.fsum(term.value for term in self.constants)

    @cached_property
    def radius(self) -> float:
        """The half-width of `total`."""
        return math.fsum(term.radius for term in self.constants)


def typed(reading: Reading) -> Typed:
    """The numbers of `reading`; an unknown whose terms cancel counts as not there."""
    sums: dict[str, list[Term]] = {}
    constants = []
    for term in reading.terms:
        if term.name is None:
            if term.value != 0.0:
                constants.append(term)
        else:
            sums.setdefault(term.name, []).append(term)
    unknowns = {}
    for name, terms in sums.items():
        if len(terms) == 1:
            if (value := terms[0].value) != 0.0:
                unknowns[name] = Coefficient(value, terms[0].radius, abs(value), (value,))
            continue
        value = math.fsum(term.value for term in terms)
        if abs(value) > 1e-12 * max(abs(term.value) for term in terms):
            radius = math.fsum(term.radius for term in terms)
            unknowns[name] = Coefficient(
                value, radius, math.fsum(abs(t.value) for t in terms), tuple(t.value for t in terms)
            )
    return Typed(unknowns, tuple(constants))


@dataclass(frozen=True)
class Fit:
    """A typed line equals `scale` times the true one, to the precision `level` says."""

    scale: float
    level: Level


def fit(line: Typed, true: TrueLine, tolerance: Tolerance) -> Fit | None:
    """The best fit of a typed line to a true one, or None where it says something else."""
    spots = true.unknowns
    for name in line.names:
        if name not in spots:
            return None
    for name, spot in spots.items():
        if spot.true != 0.0 and name not in line.names and name not in true.given.known:
            return None
    numbers = tuple(s for s in true.numbers(line.names) if s.true != 0.0 or s.radius)
    remarked: Fit | None = None
    for scale in _likely_scales(line, spots, numbers):
        level = fit_at(line, spots, numbers, scale, tolerance)
        if level == "silent":
            return Fit(scale, level)
        if level == "remark" and remarked is None and _right_way_round(line, numbers, scale):
            remarked = Fit(scale, level)
    return remarked


def _likely_scales(
    line: Typed, spots: Mapping[str, Spot], numbers: Sequence[Spot]
) -> Iterator[float]:
    """The scales at which all numbers pair, if there are any, else all worth trying."""
    sure = False
    for scale in _scales_of_numbers(line, numbers):
        if all_pairs(line, numbers, scale):
            sure = True
            yield scale
    if not sure:
        yield from _scales(line, spots, numbers)


def _scales_of_numbers(line: Typed, numbers: Sequence[Spot]) -> Iterator[float]:
    """Scales at which the typed numbers may be the true ones."""
    yield 1.0
    yield -1.0
    if len(line.constants) > 1 and len(numbers) <= MOST_TO_SPLIT:
        for spot in numbers:
            if spot.true != 0.0:
                yield line.constants[0].value / spot.true


def all_pairs(line: Typed, numbers: Sequence[Spot], scale: float) -> bool:
    """Whether the numbers alone fix the scale: there are unknowns, and every number has its pair."""
    return bool(line.unknowns) and number_by_number(line, numbers, scale)


def number_by_number(line: Typed, numbers: Sequence[Spot], scale: float) -> bool:
    """Whether every typed number is a true one, and every true one is typed."""
    if not line.constants:
        return False
    terms, left = one_by_one(line.constants, numbers, scale)
    return not terms and all(spot.true == 0.0 for spot in left)


def _right_way_round(line: Typed, numbers: Sequence[Spot], scale: float) -> bool:
    """Whether a line of numbers alone would not fit better with all signs turned round."""
    if line.unknowns:
        return True
    here, turned = (len(one_by_one(line.constants, numbers, s)[0]) for s in (scale, -scale))
    return here <= turned


def _scales(line: Typed, spots: Mapping[str, Spot], numbers: Sequence[Spot]) -> Iterator[float]:
    """Scales worth trying: as written, turned round, and anchored at each coefficient."""
    yield 1.0
    yield -1.0
    for name, coefficient in line.unknowns.items():
        if spots[name].true != 0.0:
            scale = coefficient.value / spots[name].true
            if abs(abs(scale) - 1.0) > AS_WRITTEN:
                yield scale
    if not line.unknowns and line.constants:
        for spot in numbers:
            if spot.true != 0.0:
                yield line.constants[0].value / spot.true


def fit_at(
    line: Typed,
    spots: Mapping[str, Spot],
    numbers: Sequence[Spot],
    scale: float,
    tolerance: Tolerance,
) -> Level | None:
    """How well the line fits `scale` times the truth, or None."""
    if scale == 0.0 or not math.isfinite(scale):
        return None
    level: Level = "silent"
    for name, coefficient in line.unknowns.items():
        spot = spots[name]
        off = abs(coefficient.value - scale * spot.true)
        if off <= slack_of(coefficient, spot, scale, tolerance.silent):
            continue
        if off > slack_of(coefficient, spot, scale, tolerance.remark):
            return None
        level = "remark"
    constants = constants_fit(line, numbers, scale, tolerance)
    return None if constants is None else ("remark" if constants == "remark" else level)


def slack_of(typed: Coefficient, spot: Spot, scale: float, share: float) -> float:
    """How far a coefficient may be off: by its own size, or by the parts it was added up from."""
    spread = abs(scale) * spot.spread
    own = max(abs(scale * spot.true), min(typed.parts, spread))
    return share * own + min(typed.radius, share * spread) + TINY * abs(scale)


def constants_fit(
    line: Typed, numbers: Sequence[Spot], scale: float, tolerance: Tolerance
) -> Level | None:
    """How well the terms without unknown fit the loads and own values, or None.

    Numbers that stand for each other one by one drop out first, so that a small wrong term is told
    from the rounding of large ones beside it.
    """
    terms, left = one_by_one(line.constants, numbers, scale)
    if not terms:
        parts = abs(scale) * math.fsum(s.spread for s in numbers)
        slack = carried(left, scale) + NEGLIGIBLE * parts + TINY * abs(scale)
        sizes = [s.true if line.unknowns else abs(s.true) for s in left]
        return "silent" if abs(scale * math.fsum(sizes)) <= slack else None
    if not line.unknowns:
        left = [spot for spot in left if spot.true != 0.0]
    if not left:
        return None
    acting = sum(1 for spot in numbers if spot.true != 0.0)
    pairs_only = not line.unknowns and len(line.constants) == acting
    if not line.unknowns and abs(scale) != 1.0 and not pairs_only:
        return None
    levels: tuple[tuple[Level, float], ...] = (
        ("silent", tolerance.silent),
        ("remark", tolerance.remark),
    )
    for level, share in levels if line.unknowns or pairs_only else levels[:1]:
        if line.unknowns and adds_up(terms, left, scale, share):
            return level
        if pairs_only and len(terms) != len(left):
            continue
        if not about_equal(terms, left, scale, share):
            continue
        if max(len(terms), len(left)) > MOST_TO_SPLIT:
            return level if line.unknowns else None
        most = 1 if pairs_only else max(len(terms) if line.unknowns else 0, len(left))
        if split(terms, left, scale, share, most):
            return level
    return None

"""Does a typed line say the same as a true equation, up to scale and honest rounding?

All coefficients are taken with everything moved to the left side. Tolerances are measured against
the parts that were added up, not against what is left after they cancel.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations
from typing import Literal

from tutor.judge.truth import Spot, TrueLine
from tutor.model import Tolerance
from tutor.notation import Reading, Term

Level = Literal["silent", "remark"]
TINY = 1e-9
MOST_TO_SPLIT = 8


@dataclass(frozen=True)
class Typed:
    """The numbers of a typed line: (value, radius) by unknown, and the terms without unknown."""

    unknowns: Mapping[str, tuple[float, float]]
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
        value = math.fsum(term.value for term in terms)
        if abs(value) > 1e-12 * max(abs(term.value) for term in terms):
            unknowns[name] = (value, math.fsum(term.radius for term in terms))
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
    for scale in _scales(line, spots, numbers):
        level = fit_at(line, spots, numbers, scale, tolerance)
        if level == "silent":
            return Fit(scale, level)
        if level == "remark" and remarked is None:
            remarked = Fit(scale, level)
    return remarked


def _scales(line: Typed, spots: Mapping[str, Spot], numbers: Sequence[Spot]) -> Iterator[float]:
    """Scales worth trying: as written, turned round, and anchored at each coefficient."""
    yield 1.0
    yield -1.0
    for name, (value, _) in line.unknowns.items():
        if spots[name].true != 0.0:
            yield value / spots[name].true
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
    for name, (value, _) in line.unknowns.items():
        spot = spots[name]
        off = abs(value - scale * spot.true)
        measure = abs(scale) * spot.spread
        if off <= tolerance.silent * measure + TINY * abs(scale):
            continue
        if off > tolerance.remark * measure + TINY * abs(scale):
            return None
        level = "remark"
    constants = constants_fit(line, numbers, scale, tolerance)
    return None if constants is None else ("remark" if constants == "remark" else level)


def constants_fit(
    line: Typed, numbers: Sequence[Spot], scale: float, tolerance: Tolerance
) -> Level | None:
    """How well the terms without unknown fit the loads and own values, or None."""
    if not line.unknowns and not line.constants:
        return None if any(s.true != 0.0 for s in numbers) else "silent"
    target = scale * math.fsum(s.true for s in numbers)
    carried = abs(scale) * math.fsum(abs(s.per_unit) * s.radius for s in numbers)
    parts = abs(scale) * math.fsum(s.spread for s in numbers)
    off = abs(line.total - target)
    levels: tuple[tuple[Level, float], ...] = (
        ("silent", tolerance.silent),
        ("remark", tolerance.remark),
    )
    for level, share in levels:
        tight = (
            carried
            + min(line.radius, share * parts)
            + share * abs(target)
            + TINY * (parts + abs(scale))
        )
        if line.unknowns and off <= tight:
            return level
        if off <= carried + share * parts + TINY * (parts + abs(scale)) and blocks_fit(
            line.constants, numbers, scale, share
        ):
            return level
    return None


def blocks_fit(terms: Sequence[Term], numbers: Sequence[Spot], scale: float, share: float) -> bool:
    """Whether each typed number stands for one or more true ones, or several for one of them.

    This is how a small wrong term is told from rounding of large ones beside it.
    """
    if not terms or not numbers:
        return not terms and not numbers
    if max(len(terms), len(numbers)) > MOST_TO_SPLIT:
        return True
    return _split([(t.value, t.radius) for t in terms], list(numbers), scale, share)


def _split(
    terms: list[tuple[float, float]], numbers: list[Spot], scale: float, share: float
) -> bool:
    if not terms or not numbers:
        left = math.fsum(abs(scale * s.true) for s in numbers)
        slack = abs(scale) * math.fsum(
            abs(s.per_unit) * s.radius + share * s.spread for s in numbers
        )
        return not terms and left <= slack + TINY
    first, rest = terms[0], terms[1:]
    for count in range(1, len(numbers) + 1):
        for chosen in combinations(range(len(numbers)), count):
            block = [numbers[i] for i in chosen]
            if _block([first], block, scale, share):
                others = [s for i, s in enumerate(numbers) if i not in chosen]
                if _split(rest, others, scale, share):
                    return True
    for count in range(1, len(rest) + 1):
        for more in combinations(range(len(rest)), count):
            group = [first, *(rest[i] for i in more)]
            others_typed = [t for i, t in enumerate(rest) if i not in more]
            for i, spot in enumerate(numbers):
                if _block(group, [spot], scale, share):
                    others = numbers[:i] + numbers[i + 1 :]
                    if _split(others_typed, others, scale, share):
                        return True
    return False


def _block(
    terms: Sequence[tuple[float, float]], numbers: Sequence[Spot], scale: float, share: float
) -> bool:
    target = scale * math.fsum(s.true for s in numbers)
    parts = abs(scale) * math.fsum(s.spread for s in numbers)
    carried = abs(scale) * math.fsum(abs(s.per_unit) * s.radius for s in numbers)
    off = abs(math.fsum(value for value, _ in terms) - target)
    return off <= carried + share * parts + TINY * (parts + abs(scale))

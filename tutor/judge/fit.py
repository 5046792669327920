"""Is a typed line a multiple of the true one, and how precisely?

Every coefficient is held against the true one at one scale of the whole line, and every typed number
against the loads and own values that it may stand for. A silent fit is within the tolerance a
problem states; a remarked one within the rounding of the figures typed, and the second tolerance.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence

from tutor.judge.blocks import (
    MOST_TO_SPLIT,
    TINY,
    Level,
    divided,
    left_unpaired,
    nothing_missing,
    rounded_by,
    stands_for,
)
from tutor.judge.copied import any_copied_wrongly, any_shown_otherwise
from tutor.judge.one_each import shows_sizes
from tutor.judge.true_equation import TrueEquation, TrueTerm
from tutor.judge.typed import Coefficient, TypedEquation
from tutor.model import Tolerance
from tutor.notation import Term
from tutor.notation.elements.fact import fact
from tutor.statics.body import load_sizes

MOST_SCALES = 12
NEARLY_AS_WRITTEN = 0.03
"""Hardly anybody multiplies a line by so little: what is off by that in every term is off in every
term (as arms are), unless all terms of a sum of forces show one multiple precisely."""
PRECISELY = Tolerance(silent=0.0002, remark=0.0002)


@fact
class Fit:
    """A typed line equals `scale` times the true one, to the precision `level` says.

    `paired` is whether every number stands for one true one, and none was added up before.
    """

    scale: float
    level: Level
    paired: bool

    @property
    def plain(self) -> bool:
        """Whether the line stands as it follows from the free body, term by term."""
        return self.paired and abs(self.scale) == 1.0


def fit(line: TypedEquation, true: TrueEquation, tolerance: Tolerance) -> Fit | None:
    """The best fit of a typed line to a true one, or None where it says something else."""
    found = _fit(line, true, tolerance)
    if found is None and _may_be_coarse(line, true):
        return _fit(line.coarse, true, tolerance)
    return found


def _may_be_coarse(line: TypedEquation, true: TrueEquation) -> bool:
    """Whether only the rounding of integers can stand between a line and the true one."""
    same = line.names <= true.unknowns.keys() and bool(line.unknowns)
    return same and line.may_be_coarse


def _fit(line: TypedEquation, true: TrueEquation, tolerance: Tolerance) -> Fit | None:
    if not line.names <= true.acting:
        return None
    if any(name not in true.own.known for name in true.acting - line.names):
        return None
    spots, numbers = true.unknowns, true.numbers_acting(line.names)
    if not line.unknowns:
        return None if _another(line, numbers, true) else _of_numbers(line, numbers, tolerance)
    remarked: Fit | None = None
    for level, scale in _scales(line, spots, numbers, tolerance):
        found = numbers_fit(line, numbers, scale, tolerance)
        if found is None:
            continue
        how, paired = found
        if level == how == "silent":
            return Fit(scale, "silent", paired)
        remarked = remarked or Fit(scale, "remark", paired)
    if remarked is not None or true.is_moment:
        return remarked
    return _multiplied_a_little(line, spots, numbers)


def _multiplied_a_little(
    line: TypedEquation, spots: Mapping[str, TrueTerm], numbers: Sequence[TrueTerm]
) -> Fit | None:
    """The fit of a sum of forces that is nearly as written, where all terms show one multiple."""
    low, high = _agreeing(line, spots, "silent", PRECISELY)
    scale = (low + high) / 2
    if low > high or _is_multiple(scale):
        return None
    found = numbers_fit(line, numbers, scale, PRECISELY)
    terms = len(line.unknowns) + len(line.constants)
    return None if found is None or terms < 2 else Fit(scale, "silent", found[1])


def _of_numbers(
    line: TypedEquation, numbers: Sequence[TrueTerm], tolerance: Tolerance
) -> Fit | None:
    """The fit of a line without unknowns: as it is written or turned round.

    Nothing else fixes a scale, and any two equal numbers are a multiple of any others: a line that
    was multiplied counts only where each number shows the size of the force it stands for.
    """
    acting = [spot for spot in numbers if spot.true != 0.0]
    if not line.constants:
        return Fit(1.0, "silent", True) if not acting else None
    for scale in (1.0, -1.0):
        found = numbers_fit(line, numbers, scale, tolerance)
        if found is not None and not _minus_elsewhere(line, acting, scale, tolerance):
            return Fit(scale, *found)
    whole = sum(abs(spot.true) for spot in acting) or math.nan
    size = sum(abs(term.value) for term in line.constants) / whole
    for scale in (size, -size):
        if _is_multiple(scale) and shows_sizes(line, acting, scale, tolerance):
            return Fit(scale, "silent", True)
    return None


def _another(line: TypedEquation, numbers: Sequence[TrueTerm], true: TrueEquation) -> bool:
    """Whether a product in a sum of forces shows the size of a force that is not in it.

    In a sum of moments a factor may be an arm, or several loads together.
    """
    every = (*load_sizes(true.problem), *(known.value for known in true.own.known.values()))
    own = [spot.scale for spot in numbers]
    return not true.is_moment and any(f.shows_another(own, every) for f in line.factors)


def _minus_elsewhere(
    line: TypedEquation, acting: Sequence[TrueTerm], scale: float, tolerance: Tolerance
) -> bool:
    """Whether a number that shows an earlier result with its minus does not come to that result's."""
    for term, factors in zip(line.constants, line.factors, strict=True):
        own = [spot for spot in acting if spot.lost_minus and factors.has_minus(spot.scale)]
        if own and all(stands_for(term, spot, scale, tolerance) is None for spot in own):
            return True
    return False


def _scales(
    line: TypedEquation,
    spots: Mapping[str, TrueTerm],
    numbers: Sequence[TrueTerm],
    tolerance: Tolerance,
) -> Iterator[tuple[Level, float]]:
    """The scales at which all coefficients agree, and how well; as written and turned round first."""
    for level in ("silent", "remark"):
        low, high = _agreeing(line, spots, level, tolerance)
        if low > high:
            continue
        for one in (1.0, -1.0):
            if low <= one <= high:
                yield level, one
        tried = 0
        for scale in _within(line, spots, numbers):
            if low <= scale <= high and _is_multiple(scale) and tried < MOST_SCALES:
                tried += 1
                yield level, scale
        if tried == 0 and _is_multiple((low + high) / 2):
            yield level, (low + high) / 2
        if level == "silent":
            remarked = _agreeing(line, spots, "remark", tolerance)
            if remarked == (low, high):
                return


def _is_multiple(scale: float) -> bool:
    """Whether a line may have been multiplied by this on purpose."""
    return math.isfinite(scale) and abs(abs(scale) - 1.0) > NEARLY_AS_WRITTEN and scale != 0.0


def nearly_as_written(line: TypedEquation, true: TrueEquation) -> bool:
    """Whether every coefficient is off by about the same little, as if all were rounded alike."""
    scales = [
        coefficient.value / spot.true
        for name, coefficient in line.unknowns.items()
        if (spot := true.unknowns.get(name)) is not None and spot.true != 0.0
    ]
    return bool(scales) and not any(map(_is_multiple, scales))


def _agreeing(
    line: TypedEquation, spots: Mapping[str, TrueTerm], level: Level, tolerance: Tolerance
) -> tuple[float, float]:
    """The lowest and the highest scale at which every coefficient is right; crossed where none is."""
    low, high = -math.inf, math.inf
    for name, coefficient in line.unknowns.items():
        spot = spots[name]
        scale = coefficient.value / spot.true
        half = slack_of(coefficient, spot, scale, tolerance, level) / abs(spot.true)
        low, high = max(low, scale - half), min(high, scale + half)
    return low, high


def slack_of(
    typed: Coefficient, spot: TrueTerm, scale: float, tolerance: Tolerance, level: Level
) -> float:
    """How far a coefficient may be off, by its own size or by the parts it was added up from.

    With a remark, it is the true one rounded to the figures typed.
    """
    own = max(abs(typed.value), min(typed.parts, abs(scale) * spot.spread))
    silent = tolerance.silent * own + TINY * abs(scale)
    if level == "silent":
        return silent
    return max(silent, min(rounded_by(typed.value, typed.radius), tolerance.remark * own))


def _within(
    line: TypedEquation, spots: Mapping[str, TrueTerm], numbers: Sequence[TrueTerm]
) -> Iterator[float]:
    """Scales that a term of the line sets, the exact ones first."""
    anchors = sorted(
        (c.radius / abs(c.value), c.value / spots[name].true) for name, c in line.unknowns.items()
    )
    yield from (scale for _, scale in anchors)
    for spot in numbers[:MOST_TO_SPLIT]:
        for term in line.constants[:MOST_TO_SPLIT]:
            if spot.true != 0.0:
                yield term.value / spot.true


def numbers_fit(
    line: TypedEquation, numbers: Sequence[TrueTerm], scale: float, tolerance: Tolerance
) -> tuple[Level, bool] | None:
    """How well the terms without unknown are the loads and own values, and whether one by one.

    In a line without unknowns at least half of the numbers have to be true ones by themselves. A
    number that is a true one as typed is no rounded sum.
    """
    if not line.constants and not numbers:
        return "silent", True
    acting = [spot for spot in numbers if spot.true != 0.0]
    terms, left = left_unpaired(line.constants, numbers, scale, tolerance)
    if terms:
        terms = _without_opposed(terms, left, scale, tolerance)
    open_ones = [spot for spot in left if spot.true != 0.0]
    if line.unknowns and not terms and nothing_missing(left, numbers, scale):
        return "silent", not open_ones
    if not terms and not open_ones:
        return "silent", True
    if not line.unknowns and _components(line.constants, numbers, scale, tolerance):
        return "silent", False
    if not line.unknowns and 2 * len(terms) > len(line.constants):
        return ("silent", False) if _components(terms, left, scale, tolerance) else None
    wrongly = (any_copied_wrongly, any_shown_otherwise) if abs(scale) == 1.0 else ()
    if any(each(line, terms, open_ones, scale, tolerance) for each in wrongly):
        return None
    level = divided(terms, open_ones, scale, tolerance)
    if (
        line.unknowns
        and level is None
        and not line.widened
        and len(terms) < len(line.constants) <= MOST_TO_SPLIT >= len(acting)
    ):
        level = divided(line.constants, acting, scale, tolerance)
    return None if level is None else (level, len(line.constants) == len(acting))


def _without_opposed(
    terms: Sequence[Term], left: Sequence[TrueTerm], scale: float, tolerance: Tolerance
) -> list[Term]:
    """The numbers but for both components of each inclined force that acts through the point.

    The moments of these components are opposed: together they are nothing, each stands for something.
    """
    rest = list(terms)
    for spot in left:
        if spot.true == 0.0 and spot.parts:
            over, missing = left_unpaired(rest, spot.parts, scale, tolerance)
            rest = rest if missing else over
    return rest


def _components(
    terms: Sequence[Term], left: Sequence[TrueTerm], scale: float, tolerance: Tolerance
) -> bool:
    """Whether the numbers are the moments of the components of inclined forces, one by one."""
    parts = [part for spot in left for part in spot.parts or (spot,)]
    over, open_ones = left_unpaired(terms, parts, scale, tolerance)
    return not over and all(spot.true == 0.0 for spot in open_ones)

"""Which of the typed numbers stand for which of the true ones?

A typed number is a term without unknown; a true one is a load or an own earlier value. `scale` is
what the true line is multiplied by. One typed number may stand for several true ones that were
added up, and several typed ones for one true number; every typed number has to stand for something.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import combinations
from typing import Literal, TypeVar

from tutor.judge.same import SAME, opposed
from tutor.judge.true_equation import TrueTerm
from tutor.model import Tolerance
from tutor.notation import Term

Level = Literal["silent", "remark"]
Item = TypeVar("Item")
TINY = 1e-9
OF_SUMS = 0.001
"""Three-figure factors leave about a thousandth of what is added up in a sum."""
OPPOSED = 1.001
"""Only the components of an inclined force may be typed in numbers that oppose each other."""
LEFT_OVER = 0.0005
"""So small a share of all numbers may be missing: it is what rounding leaves of nothing."""
MOST_TO_SPLIT = 8


def rounded_by(value: float, radius: float) -> float:
    """How far a number may have been rounded: an integer of few figures by half, though exact."""
    return radius or (0.5 if value == round(value) else 0.0)


def carried(numbers: Sequence[TrueTerm], scale: float) -> float:
    """What the rounding of own earlier values may add up to."""
    return abs(scale) * math.fsum(abs(s.per_unit) * s.radius for s in numbers)


def stand_for(
    terms: Sequence[Term], numbers: Sequence[TrueTerm], scale: float, tolerance: Tolerance
) -> Level | None:
    """How well these typed numbers together are these true ones together, or None.

    The measure is what is left when the true ones are added up, not what was added: a number never
    stands for a sum that cancels.
    """
    if len(numbers) == 1:
        if len(terms) == 1:
            return stands_for(terms[0], numbers[0], scale, tolerance)
        if len(terms) == 2 and numbers[0].parts:
            return _components(terms, numbers[0].parts, scale, tolerance)
    target = scale * math.fsum(s.true for s in numbers)
    spread = abs(scale) * math.fsum(s.spread for s in numbers)
    own, slack = abs(target), carried(numbers, scale) + TINY * (spread + abs(scale))
    if len(numbers) > 1 and own <= max(SAME * spread, slack):
        return None
    if len(terms) > 1:
        own = max(own, min(spread, math.fsum(abs(t.value) for t in terms)))
    elif spread > own:
        slack += OF_SUMS * spread
    off = abs(math.fsum(t.value for t in terms) - target) - slack
    rounded = math.fsum(rounded_by(t.value, t.radius) for t in terms)
    silent = off <= tolerance.silent * own
    if not silent and off > min(rounded, tolerance.remark * own):
        return None
    if len(terms) > 1 and _stand_for_less(terms, numbers, scale, tolerance):
        return None
    return "silent" if silent else "remark"


def _stand_for_less(
    terms: Sequence[Term], numbers: Sequence[TrueTerm], scale: float, tolerance: Tolerance
) -> bool:
    """Whether some of several typed numbers oppose or cancel each other, beside what stands for these."""
    target = scale * math.fsum(s.true for s in numbers)
    spread = abs(scale) * math.fsum(s.spread for s in numbers)
    if spread <= abs(target) * OPPOSED and any(opposed(t.value, target) for t in terms):
        return True
    return len(numbers) == 1 and _more_than_enough(terms, target, tolerance)


def _more_than_enough(terms: Sequence[Term], target: float, tolerance: Tolerance) -> bool:
    """Whether some of the typed numbers are the true one already, so that the others stand for nothing."""
    enough = tolerance.silent * abs(target)
    return len(terms) <= MOST_TO_SPLIT and any(
        abs(math.fsum(t.value for t in some) - target) <= enough
        for count in range(1, len(terms))
        for some in combinations(terms, count)
    )


def stands_for(term: Term, spot: TrueTerm, scale: float, tolerance: Tolerance) -> Level | None:
    """How well one typed number is one true one, or None."""
    size, true = abs(scale), scale * spot.true
    own, spread = abs(true), size * spot.spread
    slack = size * (abs(spot.per_unit) * spot.radius) + TINY * (spread + size)
    if spread > own:
        slack += OF_SUMS * spread
    off = abs(term.value - true) - slack
    if off <= tolerance.silent * own:
        return "silent"
    rounded = rounded_by(term.value, term.radius)
    return "remark" if off <= min(rounded, tolerance.remark * own) else None


def _components(
    terms: Sequence[Term], parts: Sequence[TrueTerm], scale: float, tolerance: Tolerance
) -> Level | None:
    """How well two numbers are the moments of the two components of one force, each by itself."""
    found: Level | None = None
    for one, other in (parts, parts[::-1]):
        levels = [
            stands_for(term, part, scale, tolerance)
            for term, part in zip(terms, (one, other), strict=True)
        ]
        if None not in levels:
            found = "remark" if found != "silent" and "remark" in levels else "silent"
    return found


def left_unpaired(
    terms: Sequence[Term], numbers: Sequence[TrueTerm], scale: float, tolerance: Tolerance
) -> tuple[list[Term], list[TrueTerm]]:
    """The typed and the true numbers that are left when those that are plainly each other are out."""
    left, rest = list(numbers), []
    for term in terms:
        pairs = [
            (abs(term.value - scale * spot.true), i)
            for i, spot in enumerate(left)
            if (spot.true != 0.0 or spot.radius)
            and stands_for(term, spot, scale, tolerance) == "silent"
        ]
        if pairs:
            left.pop(min(pairs)[1])
        else:
            rest.append(term)
    return rest, left


def nothing_missing(left: Sequence[TrueTerm], numbers: Sequence[TrueTerm], scale: float) -> bool:
    """Whether the true numbers that no typed one stands for cancel, so that none had to be typed."""
    parts = abs(scale) * math.fsum(s.spread for s in numbers)
    off = abs(scale * math.fsum(s.true for s in left))
    return off <= carried(left, scale) + LEFT_OVER * parts + TINY * abs(scale)


def divided(
    terms: Sequence[Term], numbers: Sequence[TrueTerm], scale: float, tolerance: Tolerance
) -> Level | None:
    """How well the typed numbers can be divided into such as stand for true ones, or None.

    Where there are too many to try all divisions, the sums are compared.
    """
    if not terms or not numbers:
        return "silent" if not terms and not numbers else None
    if max(len(terms), len(numbers)) > MOST_TO_SPLIT:
        return stand_for(terms, numbers, scale, tolerance)
    if len(terms) == 1:
        return stand_for(terms, numbers, scale, tolerance)
    if _off_in_all(terms, numbers, scale, tolerance):
        return None
    best: Level | None = None
    for chosen, others_typed, meant, others in _first_blocks(terms, numbers):
        level = stand_for(chosen, meant, scale, tolerance)
        if level is None:
            continue
        rest = divided(others_typed, others, scale, tolerance)
        if rest == "silent" and level == "silent":
            return "silent"
        if rest is not None:
            best = "remark"
    return best


def _off_in_all(
    terms: Sequence[Term], numbers: Sequence[TrueTerm], scale: float, tolerance: Tolerance
) -> bool:
    """Whether typed and true numbers are further apart in sum than all their blocks may be together."""
    most = max(tolerance.silent, tolerance.remark) + OF_SUMS + TINY
    size = abs(scale) * math.fsum(max(s.spread, abs(s.true)) for s in numbers)
    off = abs(math.fsum(t.value for t in terms) - scale * math.fsum(s.true for s in numbers))
    return off > most * size + carried(numbers, scale) + TINY * abs(scale) * len(numbers)


Blocks = tuple[Sequence[Term], Sequence[Term], Sequence[TrueTerm], Sequence[TrueTerm]]


def _first_blocks(terms: Sequence[Term], numbers: Sequence[TrueTerm]) -> Iterator[Blocks]:
    """Every way to take the first typed number out: with the true ones it may stand for.

    (it and others with it, the other typed ones, the true ones, the other true ones).
    """
    first, rest = terms[0], terms[1:]
    for count in range(1, len(numbers) + (not rest)):
        for chosen in combinations(range(len(numbers)), count):
            yield (first,), rest, *_parted(numbers, chosen)
    for count in range(1, len(rest) + 1):
        for more in combinations(range(len(rest)), count):
            with_it, others = _parted(rest, more)
            for i in range(len(numbers)):
                yield (first, *with_it), others, *_parted(numbers, (i,))


def _parted(row: Sequence[Item], places: Sequence[int]) -> tuple[Sequence[Item], Sequence[Item]]:
    """Those at `places`, and the others."""
    inside = [row[i] for i in places]
    return inside, [one for i, one in enumerate(row) if i not in places]

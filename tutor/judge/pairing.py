"""Which of the typed numbers stand for which of the true ones, to a share of what was added?

A typed number is a term without unknown; a true one is a load or an own earlier value. `scale` is
what the true line is multiplied by.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import combinations

from tutor.judge.truth import Spot
from tutor.notation import Term

TINY = 1e-9
SHARE_OF_SUMS = 0.005
CANCELLED, SHARE_WHERE_CANCELLED = 0.02, 0.002


def one_by_one(
    terms: Sequence[Term], numbers: Sequence[Spot], scale: float
) -> tuple[list[Term], list[Spot]]:
    """The typed and the true numbers that are left when precise pairs have dropped out."""
    left, rest = list(numbers), []
    for term in terms:
        pairs = [
            (off, i)
            for i, spot in enumerate(left)
            for off in (abs(term.value - scale * spot.true),)
            if off
            <= min(term.radius, 0.005 * abs(scale) * spot.spread)
            + carried((spot,), scale)
            + 1e-6 * abs(scale) * spot.spread
        ]
        if pairs:
            left.pop(min(pairs)[1])
        else:
            rest.append(term)
    return rest, left


def carried(numbers: Sequence[Spot], scale: float) -> float:
    """What the rounding of own earlier values may add up to."""
    return abs(scale) * math.fsum(abs(s.per_unit) * s.radius for s in numbers)


def adds_up(terms: Sequence[Term], numbers: Sequence[Spot], scale: float, share: float) -> bool:
    """Whether the sums agree within the intervals of the numbers that were typed."""
    off = abs(math.fsum(t.value for t in terms) - scale * math.fsum(s.true for s in numbers))
    parts = abs(scale) * math.fsum(s.spread for s in numbers)
    radius = math.fsum(t.radius for t in terms)
    return off <= carried(numbers, scale) + min(radius, share * parts) + TINY * (parts + abs(scale))


def about_equal(terms: Sequence[Term], numbers: Sequence[Spot], scale: float, share: float) -> bool:
    """Whether the sums agree to a share of what was added: without it no splitting can succeed."""
    off = abs(math.fsum(t.value for t in terms) - scale * math.fsum(s.true for s in numbers))
    parts = abs(scale) * math.fsum(s.spread for s in numbers)
    return off <= carried(numbers, scale) + share * parts + TINY * len(numbers) * (
        parts + abs(scale)
    )


def split(terms: list[Term], numbers: list[Spot], scale: float, share: float, most: int) -> bool:
    """Whether each typed number stands for one or more true ones, or several for one of them.

    At most `most` stand for one; with 1, typed and true numbers are pairs.
    """
    if not terms or not numbers:
        left = math.fsum(abs(scale * s.true) for s in numbers)
        return not terms and left <= carried(numbers, scale) + TINY * abs(scale)
    first, rest = terms[0], terms[1:]
    for count in range(1, min(most, len(numbers)) + 1):
        for chosen in combinations(range(len(numbers)), count):
            if _block([first], [numbers[i] for i in chosen], scale, share):
                others = [s for i, s in enumerate(numbers) if i not in chosen]
                if split(rest, others, scale, share, most):
                    return True
    for count in range(1, min(most, len(rest) + 1)):
        for more in combinations(range(len(rest)), count):
            group = [first, *(rest[i] for i in more)]
            others_typed = [t for i, t in enumerate(rest) if i not in more]
            for i, spot in enumerate(numbers):
                if _block(group, [spot], scale, share):
                    others = numbers[:i] + numbers[i + 1 :]
                    if split(others_typed, others, scale, share, most):
                        return True
    return False


def _block(terms: Sequence[Term], numbers: Sequence[Spot], scale: float, share: float) -> bool:
    """Whether these typed numbers add up to these true ones, to a share of what was added."""
    target = scale * math.fsum(s.true for s in numbers)
    parts = abs(scale) * math.fsum(abs(s.true) for s in numbers)
    if len(terms) > 1:
        parts = max(
            parts, min(math.fsum(abs(t.value) for t in terms), numbers[0].spread * abs(scale))
        )
    if len(numbers) > 1 or len(terms) > 1:
        share = min(share, SHARE_OF_SUMS)
    if len(numbers) > 1 and abs(target) <= CANCELLED * parts:
        share = min(share, SHARE_WHERE_CANCELLED)
    off = abs(math.fsum(t.value for t in terms) - target)
    return off <= carried(numbers, scale) + share * parts + TINY * (parts + abs(scale))

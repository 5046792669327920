"""What does a slanting force give in a moment when its two components are written as two terms?"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import permutations
from typing import NamedTuple

from tutor.judge.options import Option, options
from tutor.judge.slips import Slip
from tutor.judge.truth import Spot
from tutor.judge.typed import Coefficient

SAME = 0.005
MOST_TERMS = 6
SEEN = 0.6


class OfParts(NamedTuple):
    """What is wrong with a force typed in several terms, and at which of its components."""

    option: Option
    spot: Spot


def split(numbers: Sequence[Spot]) -> tuple[Spot, ...]:
    """The same forces, each slanting one as its two components."""
    return tuple(one for spot in numbers for one in spot.parts or (spot,))


def joined(slips: Sequence[Slip], numbers: Sequence[Spot]) -> tuple[Slip, ...]:
    """Slips at both components of a force as one at the whole; arms that were exchanged as one."""
    found: list[Slip] = []
    for slip in slips:
        twin = next((s for s in found if _are_twins(s, slip)), None)
        if twin is None:
            found.append(slip)
            continue
        whole = next(s for s in numbers if s.name == slip.force and _one_source(s, slip.spot))
        alike = slip.code == twin.code and slip.code != "arm"
        code = slip.code if alike else "component-in-moment"
        found[found.index(twin)] = Slip(code, slip.force, whole, twin.span)
    return tuple(found)


def _one_source(spot: Spot, other: Spot | None) -> bool:
    return other is not None and spot.force.source is other.force.source


def _are_twins(one: Slip, other: Slip) -> bool:
    """Whether two slips are at the two components of one force."""
    return (
        one.spot is not None
        and other.spot is not None
        and one.force == other.force
        and {one.spot.part, other.spot.part} == {"x", "y"}
        and _one_source(one.spot, other.spot)
    )


def of_several_terms(coefficient: Coefficient, spot: Spot, scale: float) -> OfParts | None:
    """What is wrong with an unknown typed in several terms of which some are right; or None."""
    terms, true = coefficient.terms, scale * spot.true
    if not 1 < len(terms) <= MOST_TERMS:
        return None
    if math.isclose(coefficient.value, 2 * true, rel_tol=SAME):
        return OfParts(Option(coefficient.value, ("double",), SEEN), spot)
    parts = spot.parts
    if len(terms) == 2:
        for typed, rest in permutations(terms):
            for one, other in permutations(parts, 2):
                if _is(typed, scale * one.true):
                    return _at_the_other(coefficient.value, rest / scale, other, spot)
    rights = [scale * part.true for part in (spot, *parts)]
    if parts and any(_is(term, right) for term in terms for right in rights):
        return OfParts(Option(coefficient.value, ("component-in-moment",), SEEN), spot)
    return None


def _at_the_other(value: float, typed: float, other: Spot, whole: Spot) -> OfParts:
    """What the term of one component is where that of the other is right."""
    for option in options(other):
        if len(option.codes) == 1 and _is(typed, option.value):
            return OfParts(Option(value, option.codes, option.cost), other)
    return OfParts(Option(value, ("component-in-moment",), SEEN), whole)


def _is(number: float, wanted: float) -> bool:
    return wanted != 0.0 and math.isclose(number, wanted, rel_tol=SAME)

"""What does a slanting force give in a moment when its two components are written as two terms?"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from itertools import permutations
from typing import Literal, NamedTuple

from tutor.judge.compare import Coefficient
from tutor.judge.options import Option, options
from tutor.judge.slips import Slip
from tutor.judge.truth import Spot
from tutor.statics.body import Term

SAME = 0.005
MOST_TERMS = 6
SEEN = 0.6


class OfParts(NamedTuple):
    """What is wrong with a force typed in several terms, and at which of its components."""

    option: Option
    spot: Spot


def parts_of(spot: Spot) -> tuple[Spot, ...]:
    """The level and the upright component of a slanting force in a moment; none otherwise."""
    force = spot.force
    if not spot.is_moment or min(abs(force.x), abs(force.y)) < 1e-9:
        return ()
    total, found = spot.equation.sum, []
    ways: tuple[tuple[float, float, float, Literal["x", "y"]], ...] = (
        (force.x, 1.0, 0.0, "x"),
        (force.y, 0.0, 1.0, "y"),
    )
    for share, x, y, part in ways:
        sign, size = math.copysign(1.0, share), abs(share)
        own = None if force.size is None else force.size * size
        one = replace(force, x=x * sign, y=y * sign, size=own)
        weight = 1.0 if own is None else own
        term = Term(one, total.of(one) * weight, total.spread(one) * weight)
        found.append(
            replace(spot, term=term, scale=spot.scale * size, radius=spot.radius * size, part=part)
        )
    return tuple(found)


def split(numbers: Sequence[Spot]) -> tuple[Spot, ...]:
    """The same forces, each slanting one as its two components."""
    return tuple(one for spot in numbers for one in parts_of(spot) or (spot,))


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
    parts = parts_of(spot)
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

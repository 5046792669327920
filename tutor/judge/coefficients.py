"""Which mistakes explain what is typed beside the unknowns?"""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping, Sequence
from itertools import permutations
from typing import NamedTuple

from tutor.judge.blocks import TINY
from tutor.judge.costs import ONCE_MORE, OTHER_ARM, SEEN_TWICE, UNSEEN
from tutor.judge.edits import (
    Edit,
    TypedNumber,
    closest,
    edits,
    named_at,
    other_factor_cost,
    rounded_harder,
    turning_code,
)
from tutor.judge.explanation import Explanation, Slip, saved
from tutor.judge.factors import Factors
from tutor.judge.fit import slack_of
from tutor.judge.mistakes import KINDS
from tutor.judge.same import are_same, one_way
from tutor.judge.strays import unknown_from_elsewhere
from tutor.judge.true_equation import TrueEquation, TrueTerm
from tutor.judge.typed import Coefficient, TypedEquation
from tutor.model import Tolerance

MOST_TERMS = 6
BEYOND = 1.0 + 1e-9
"""What is off by more than this times the widest tolerance is wrong, however floats are rounded."""
LEAST = ONCE_MORE * min(kind.cost for kind in KINDS.values() if kind.variants)
"""What a wrong coefficient costs at least: a mistake that runs through the line, once more."""


Terms = Sequence[tuple[float, Factors]]


class Beside(NamedTuple):
    """What is wrong beside an unknown, and at which of its components."""

    edit: Edit
    spot: TrueTerm


def explain_coefficients(
    line: TypedEquation,
    true: TrueEquation,
    factors: Mapping[str, Factors],
    scale: float,
    tolerance: Tolerance,
    idle: Collection[str],
    most: float = math.inf,
) -> Explanation | None:
    """The cheapest account of the unknowns at `scale`: each is right, wrong, astray or left out.

    None where it costs `most` or more, with what it saves that a slip runs through.
    """
    first, wrong = _as_they_stand(line, true, scale, tolerance)
    found = _left_out(line, true, idle, scale)
    slips, cost = list(first.slips), first.cost + found.cost
    for place, name in enumerate(wrong):
        if cost - saved((*slips, *found.slips)) + (len(wrong) - place) * LEAST >= most:
            return None
        coefficient, spot = line.unknowns[name], true.unknowns[name]
        number = TypedNumber(coefficient.value, coefficient.radius, factors[name], scale)
        hard = None
        if not number.factors.whole:
            hard = rounded_harder(number, scale * spot.true, tolerance, line.briefly)
        terms = line.terms_beside(name) if len(coefficient.terms) > 1 else ()
        beside = _beside(coefficient, terms, spot, number, hard, tolerance)
        slips += [Slip(code, name, beside.spot) for code in beside.edit.codes]
        cost += beside.edit.cost
    slips += found.slips
    return Explanation(cost, tuple(slips), scale) if cost - saved(slips) < most else None


def _as_they_stand(
    line: TypedEquation, true: TrueEquation, scale: float, tolerance: Tolerance
) -> tuple[Explanation, list[str]]:
    """What the unknowns cost that are right or act elsewhere, and the names of those that are wrong."""
    slips: list[Slip] = []
    cost = 0.0
    wrong: list[str] = []
    spots = true.unknowns
    widest = max(tolerance.silent, tolerance.remark) * BEYOND
    tiny = TINY * abs(scale) * BEYOND
    for name, coefficient in line.unknowns.items():
        if name not in spots:
            code, more = unknown_from_elsewhere(name, coefficient.value / scale, true)
            slips.append(Slip(code, name, None))
            cost += more
            continue
        spot = spots[name]
        off = abs(coefficient.value - scale * spot.true)
        plainly = off > widest * coefficient.parts + tiny
        if plainly or off > slack_of(coefficient, spot, scale, tolerance, "remark"):
            wrong.append(name)
    return Explanation(cost, tuple(slips), scale), wrong


def _left_out(
    line: TypedEquation, true: TrueEquation, idle: Collection[str], scale: float
) -> Explanation:
    """What is wrong about the unknowns that the line does not have."""
    slips: list[Slip] = []
    cost = 0.0
    for name, spot in true.unknowns.items():
        if spot.true == 0.0 or name in line.names:
            continue
        if name in line.cancelled and spot.parts:
            slips.append(Slip("component-in-moment", name, spot))
            cost += KINDS["component-in-moment"].cost
        elif name not in idle and (name in line.cancelled or name not in true.own.known):
            slips.append(Slip(named_at("missing", spot, ()), name, spot))
            cost += KINDS["missing"].cost
    return Explanation(cost, tuple(slips), scale)


def _beside(
    coefficient: Coefficient,
    terms: Terms,
    spot: TrueTerm,
    number: TypedNumber,
    hard: float | None,
    tolerance: Tolerance,
) -> Beside:
    """What is wrong with the coefficient of an unknown on the body.

    `hard` is what it costs that it is only rounded too hard, None where it is not.
    """
    scale = number.scale
    value = coefficient.value
    if (several := _of_several_terms(terms, value, spot, scale)) is not None:
        return several
    choices = edits(spot)
    apt = choices if len(coefficient.terms) == 1 else choices.in_parts
    found = closest(number, apt, spot, tolerance)
    if hard is not None:
        rounding = Edit(spot.true, ("rounding",), KINDS["rounding"].cost + hard)
        both = (rounding, found) if found else (_no_rule(number, spot), rounding)
        found = min(both, key=lambda edit: edit.cost)
    return Beside(found or _no_rule(number, spot), spot)


def _no_rule(number: TypedNumber, spot: TrueTerm) -> Edit:
    """A coefficient that no rule makes: in a moment some distance, else not to be named."""
    value = number.value
    if spot.true == 0.0:
        return Edit(value, ("extra",), KINDS["extra"].cost)
    if spot.is_moment:
        cost = KINDS["arm"].cost + OTHER_ARM
        if one_way(number.unscaled, spot.true):
            return Edit(value, ("arm",), cost)
        turned = turning_code(spot)
        return Edit(value, ("arm", turned), cost + KINDS[turned].cost)
    return Edit(value, ("not-equilibrium",), other_factor_cost(number.unscaled, spot))


def _of_several_terms(terms: Terms, value: float, spot: TrueTerm, scale: float) -> Beside | None:
    """What is wrong with an unknown typed in several terms of which some are right; or None."""
    if not 1 < len(terms) <= MOST_TERMS:
        return None
    if are_same(value, 2 * scale * spot.true):
        return Beside(Edit(value, ("double",), SEEN_TWICE), spot)
    if len(terms) == 2:
        found = [
            _at_the_other(value, rest / scale, factors, other, spot)
            for (typed, _), (rest, factors) in permutations(terms)
            for one, other in permutations(spot.parts, 2)
            if _is(typed, scale * one.true)
        ]
        if found:
            return min(found, key=lambda beside: beside.edit.cost)
    rights = [scale * part.true for part in (spot, *spot.parts)]
    if any(_is(term, right) for term, _ in terms for right in rights):
        code = "component-in-moment" if spot.parts else "double"
        return Beside(Edit(value, (code,), SEEN_TWICE), spot)
    return None


def _at_the_other(
    value: float, typed: float, factors: Factors, other: TrueTerm, whole: TrueTerm
) -> Beside:
    """What the term of one component is where that of the other is right.

    A term that shows the share of the one component hardly stands for the other.
    """
    astray = 0.0 if factors.holds(other.share) else UNSEEN
    for edit in edits(other).every:
        if len(edit.codes) == 1 and _is(typed, edit.value):
            return Beside(Edit(value, edit.codes, edit.cost + astray), other)
    in_moment = KINDS["component-in-moment"]
    return Beside(Edit(value, (in_moment.code,), in_moment.cost + astray), whole)


def _is(number: float, wanted: float) -> bool:
    return wanted != 0.0 and are_same(number, wanted)

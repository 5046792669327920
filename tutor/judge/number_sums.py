"""Which slips explain numbers that were added up before they were typed?"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from tutor.judge.blocks import TINY
from tutor.judge.mistakes import KINDS
from tutor.judge.options import Choices, Option, options
from tutor.judge.slips import Account, Slip, found_option
from tutor.judge.term_text import TermText
from tutor.judge.truth import Spot
from tutor.model import Tolerance
from tutor.notation import Term

BY_SUM = 0.1
MOST_TO_CHANGE = 12
LUMPED, PRODUCT = 2.3, 0.5
SAME = 0.005
PLAIN_SLIPS = frozenset({"sign", "turning", "sense", "minus", "missing", "double"})


def by_sum(
    rest: Sequence[tuple[Term, TermText]],
    left: Sequence[int],
    numbers: Sequence[Spot],
    choices: Choices,
    scale: float,
    tolerance: Tolerance,
) -> Account | None:
    """Where more was added up than stands in the line: slips that change the sum into the typed one.

    A single number never shows more than one slip.
    """
    if not len(rest) < len(left) or not rest:
        return None
    spots = [numbers[i] for i in left]
    target = scale * math.fsum(s.true for s in spots)
    total = math.fsum(term.value for term, _ in rest)
    carried = abs(scale) * math.fsum(abs(s.per_unit) * s.radius for s in spots)
    parts = abs(scale) * math.fsum(s.spread for s in spots)
    radius = math.fsum(term.radius for term, _ in rest)
    share = tolerance.silent * max(abs(total), abs(target))
    slack = carried + min(radius, tolerance.silent * parts) + share + TINY * (parts + 1.0)
    need = total - target
    alone = len(rest) == 1
    changes = sorted(
        (
            Change(scale * (option.value - numbers[i].true), option.cost, i, option)
            for i in left
            for option in (choices[i] if len(left) <= MOST_TO_CHANGE else choices.plainest(i))
            if len(option.codes) == 1 and (not alone or option.codes[0] in PLAIN_SLIPS)
        ),
        key=lambda change: change.delta,
    )
    one: tuple[float, tuple[Change, ...]] | None = min(
        ((c.cost, (c,)) for c in changes if abs(need - c.delta) <= slack),
        key=lambda found: found[0],
        default=None,
    )
    best = _two_changes(changes, need, slack) if one is None and not alone else one
    together = _lumped(rest[0], spots, scale, tolerance) if alone else None
    if together is not None and (best is None or together.cost < best[0] + BY_SUM):
        return together
    if best is None:
        if not alone:
            return None
        product = PRODUCT if len(rest[0][1].numbers) > 1 else 0.0
        return Account(LUMPED + product, (Slip("arithmetic", None, None),), scale)
    cost, chosen = best
    slips = tuple(
        Slip(code_of(code, numbers[c.place], numbers), numbers[c.place].name, numbers[c.place])
        for c in chosen
        for code in c.option.codes
    )
    return Account(cost + BY_SUM, slips, scale)


def _lumped(
    typed: tuple[Term, TermText], spots: Sequence[Spot], scale: float, tolerance: Tolerance
) -> Account | None:
    """A mistake made once for several forces side by side that were taken together."""
    term, text = typed
    first = spots[0]
    size = math.fsum(s.scale for s in spots)
    if size == 0.0:
        return None
    if first.is_moment:
        across = [abs(s.force.x - first.force.x) + abs(s.force.y - first.force.y) for s in spots]
        return None if max(across) > SAME else _at_one_arm(term, text, spots, size, scale)
    if any(abs(s.per_unit - first.per_unit) > SAME for s in spots):
        return None
    whole = replace(first, scale=size, radius=math.fsum(s.radius for s in spots))
    option = found_option(term.value, term.radius, scale, options(whole), whole, text, tolerance)
    if option is None or len(option.codes) > 1:
        return None
    slips = tuple(Slip(option.codes[0], s.name, s, term.span) for s in spots)
    return Account(option.cost + BY_SUM, slips, scale)


def _at_one_arm(
    term: Term, text: TermText, spots: Sequence[Spot], size: float, scale: float
) -> Account | None:
    """All the force at one distance, though each has an arm of its own."""
    arm = term.value / (scale * size)
    own = [s for s in spots if math.isclose(arm, s.per_unit, rel_tol=SAME)]
    if not own and not text.holds(size):
        return None
    slips = tuple(Slip("arm-from", s.name, s, term.span) for s in spots if s not in own)
    return Account(KINDS["arm-from"].cost + BY_SUM, slips, scale)


class Change(NamedTuple):
    """What one wrong number would change in the sum."""

    delta: float
    cost: float
    place: int
    option: Option


def _two_changes(
    changes: Sequence[Change], need: float, slack: float
) -> tuple[float, tuple[Change, ...]] | None:
    """The cheapest two changes at different places that make up `need`; `changes` are in order."""
    best: tuple[float, tuple[Change, ...]] | None = None
    for i, one in enumerate(changes):
        low = bisect_left(changes, need - one.delta - slack, i + 1, key=lambda c: c.delta)
        for other in changes[low:]:
            if other.delta > need - one.delta + slack:
                break
            cost = one.cost + other.cost
            if other.place != one.place and (best is None or cost < best[0]):
                best = (cost, (one, other))
    return best


def code_of(code: str, spot: Spot, numbers: Sequence[Spot]) -> str:
    """The code of a slip; leaving out one of two loads at a joint has its own."""
    if code != "missing" or spot.force.kind != "load":
        return code
    beside = [
        other
        for other in numbers
        if other is not spot
        and other.force.kind == "load"
        and other.force.joint == spot.force.joint
        and other.force.source is not spot.force.source
        and other.true != 0.0
    ]
    return "lost-load" if beside else "missing"

"""Which slips explain numbers that were added up before they were typed?"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import combinations
from typing import NamedTuple

from tutor.judge.blocks import TINY
from tutor.judge.costs import IS_ITSELF, LUMPED, PRODUCT
from tutor.judge.edits import Edit, Edits, TypedNumber, closest, edits, named_at, turning_code
from tutor.judge.explanation import Explanation, Slip, saved
from tutor.judge.factors import Factors
from tutor.judge.mistakes import KINDS
from tutor.judge.same import SAME, are_same
from tutor.judge.true_equation import TrueTerm
from tutor.model import Tolerance
from tutor.notation import Term

MOST_TO_CHANGE = 12
MOST_FOR_ANY_SLIP = 3
PRECISELY = 3e-4

Choices = Callable[[int], Edits]


class WrongNumber(NamedTuple):
    """What one wrong number would change in the sum."""

    delta: float
    cost: float
    place: int
    edit: Edit


def by_sum(
    rest: Sequence[tuple[Term, Factors]],
    left: Sequence[int],
    numbers: Sequence[TrueTerm],
    choices: Choices,
    scale: float,
    tolerance: Tolerance,
) -> Explanation | None:
    """Where more was added up than stands in the line: slips that change the sum into the typed one.

    A single number never shows more than one slip.
    """
    if not len(rest) < len(left) or not rest:
        return None
    spots = [numbers[i] for i in left]
    alone = len(rest) == 1
    target = scale * math.fsum(s.true for s in spots)
    need = math.fsum(term.value for term, _ in rest) - target
    slack = _slack(rest, spots, target, scale, tolerance)
    made = _changes(left, numbers, choices, scale, alone)
    if alone:
        made = [change for change in made if abs(need - change.delta) <= slack]
    changes = _weighed(made, rest, left, numbers, scale)
    near = (change for change in changes if abs(need - change.delta) <= slack)
    fitting = (change for change in near if _all_seen(change, need, left, numbers, scale))
    first = min(fitting, key=lambda change: (change.cost, _off(change, need)), default=None)
    best: tuple[float, tuple[WrongNumber, ...]] | None
    best = None if first is None else (first.cost, (first,))
    if not alone:
        best = best or _two_changes(changes, need, slack)
        return None if best is None else _told(best, numbers, scale)
    together = _lumped(*rest[0], spots, scale, tolerance)
    if together is not None and (best is None or together.cost < best[0]):
        return together
    if best is not None:
        return _told(best, numbers, scale)
    cost = LUMPED + (PRODUCT if rest[0][1].count > 1 else 0.0)
    return Explanation(cost, (Slip("arithmetic", None, None),), scale)


def _off(change: WrongNumber, need: float) -> float:
    """How far a change is from making up `need`, apart from what adding up leaves."""
    return round(abs(need - change.delta) / abs(need), 9) if need else 0.0


def _weighed(
    changes: Sequence[WrongNumber],
    rest: Sequence[tuple[Term, Factors]],
    left: Sequence[int],
    numbers: Sequence[TrueTerm],
    scale: float,
) -> list[WrongNumber]:
    """The changes with what the typed numbers say against each, by what they change."""
    spots, alone = [numbers[i] for i in left], len(rest) == 1
    product = rest[0][1] if alone and rest[0][1].count > 1 else None
    more = 0.0 if alone else _no_sums(rest, spots)
    if alone and any(_is_itself(rest[0][0].value, spot, scale) for spot in spots):
        more = IS_ITSELF
    weighed = changes
    if more or product is not None:
        weighed = [
            c._replace(cost=c.cost + more + _no_sum(c, product, left, numbers)) for c in changes
        ]
    return sorted(weighed, key=lambda change: change.delta)


def _told(
    found: tuple[float, tuple[WrongNumber, ...]], numbers: Sequence[TrueTerm], scale: float
) -> Explanation:
    """The changes as slips at the forces concerned."""
    cost, chosen = found
    slips = tuple(
        Slip(named_at(code, numbers[c.place], numbers), numbers[c.place].name, numbers[c.place])
        for c in chosen
        for code in c.edit.codes
    )
    return Explanation(cost, slips, scale)


def _is_itself(number: float, spot: TrueTerm, scale: float) -> bool:
    """Whether a lone number is what one force adds, or its whole size."""
    whole = spot.scale / spot.share
    return _is(number, scale * spot.true) or _is(abs(number), abs(whole))


def _is(number: float, wanted: float) -> bool:
    return wanted != 0.0 and are_same(number, wanted)


def _all_seen(
    change: WrongNumber, need: float, left: Sequence[int], numbers: Sequence[TrueTerm], scale: float
) -> bool:
    """Whether the sum comes nearer with each of the other numbers than without it.

    Beside a number a thousand times too large the others are lost, and nothing shows that they were
    added.
    """
    off = need - change.delta
    others = (scale * numbers[i].true for i in left if i != change.place)
    return all(abs(off + other) >= abs(off) for other in others)


def _no_sum(
    change: WrongNumber, product: Factors | None, left: Sequence[int], numbers: Sequence[TrueTerm]
) -> float:
    """What it costs that a typed product is taken for a sum.

    Nothing where it shows what was added; more where it shows one force alone.
    """
    if product is None:
        return 0.0
    added = [numbers[i].scale for i in left if i != change.place or change.edit.value != 0.0]
    if change.edit.value == 0.0 and product.holds(math.fsum(added)):
        return 0.0
    others = math.fsum(numbers[i].true for i in left if i != change.place)
    if not numbers[change.place].is_moment and product.has_factor(others + change.edit.value):
        return 0.0
    one = len(left) > 1 and any(_shows(product, numbers[i]) for i in left)
    return PRODUCT * (2 if one else 1)


def _shows(product: Factors, spot: TrueTerm) -> bool:
    """Whether a product shows one force: its size, or its arm."""
    arm = spot.is_moment and product.has_factor(spot.per_unit)
    return arm or product.holds(spot.scale / spot.share)


def _no_sums(rest: Sequence[tuple[Term, Factors]], spots: Sequence[TrueTerm]) -> float:
    """What it costs that one of several typed products is taken for a sum that it does not show."""
    if any(f.count < 2 or _shows_sum(f, spots) for _, f in rest):
        return 0.0
    return sum(PRODUCT * (2 if any(_shows(f, spot) for spot in spots) else 1) for _, f in rest)


def _shows_sum(factors: Factors, spots: Sequence[TrueTerm]) -> bool:
    """Whether the sizes of two forces, or of all, were added up and stand there as one factor."""
    sizes = [abs(spot.scale) for spot in spots]
    sums = [math.fsum(some) for count in (2, len(sizes)) for some in combinations(sizes, count)]
    return any(
        math.isclose(number, size, rel_tol=PRECISELY) for size in sums for number in factors.numbers
    )


def _slack(
    rest: Sequence[tuple[Term, Factors]],
    spots: Sequence[TrueTerm],
    target: float,
    scale: float,
    tolerance: Tolerance,
) -> float:
    """How far a sum may be off by what was rounded before it was added up, and by its own figures."""
    total = math.fsum(term.value for term, _ in rest)
    carried = abs(scale) * math.fsum(abs(s.per_unit) * s.radius for s in spots)
    parts = abs(scale) * math.fsum(s.spread for s in spots)
    radius = math.fsum(term.radius for term, _ in rest)
    share = tolerance.silent * max(abs(total), abs(target))
    return carried + min(radius, tolerance.silent * parts) + share + TINY * (parts + 1.0)


def _changes(
    left: Sequence[int], numbers: Sequence[TrueTerm], choices: Choices, scale: float, alone: bool
) -> list[WrongNumber]:
    """What each slip at each number would change; of a lone number in a long sum only plain ones."""
    few = len(left) <= MOST_FOR_ANY_SLIP
    found = []
    for i in left:
        own = choices(i).every if len(left) <= MOST_TO_CHANGE else plainest(numbers[i])
        for edit in own:
            plain = KINDS[edit.codes[0]].in_sum
            if len(edit.codes) > 1 or (alone and not plain and not few):
                continue
            found.append(WrongNumber(scale * (edit.value - numbers[i].true), edit.cost, i, edit))
    return found


def plainest(spot: TrueTerm) -> tuple[Edit, ...]:
    """Only leaving the force out and turning it round, for bodies with very many forces."""
    turned = turning_code(spot)
    return (
        Edit(0.0, ("missing",), KINDS["missing"].cost),
        Edit(-spot.true, (turned,), KINDS[turned].cost),
    )


def _lumped(
    term: Term, factors: Factors, spots: Sequence[TrueTerm], scale: float, tolerance: Tolerance
) -> Explanation | None:
    """A mistake made once for several forces side by side that were taken together."""
    first = spots[0]
    size = math.fsum(s.scale for s in spots)
    if first.is_moment and size != 0.0:
        across = [abs(s.force.x - first.force.x) + abs(s.force.y - first.force.y) for s in spots]
        return None if max(across) > SAME else _at_one_arm(term, factors, spots, size, scale)
    if all(abs(s.per_unit - first.per_unit) <= SAME for s in spots):
        whole = replace(first, scale=size, radius=math.fsum(s.radius for s in spots))
    elif all(_is(s.true, first.true) for s in spots):
        count = len(spots)
        whole = replace(first, scale=first.scale * count, radius=first.radius * count)
    else:
        return None
    number = TypedNumber(term.value, term.radius, factors, scale)
    edit = closest(number, edits(whole), whole, tolerance)
    if edit is None or len(edit.codes) > 1:
        return None
    slips = tuple(Slip(edit.codes[0], s.name, s, term.span) for s in spots)
    return Explanation(edit.cost + _made_once(slips, factors.holds(size), scale), slips, scale)


def _at_one_arm(
    term: Term, factors: Factors, spots: Sequence[TrueTerm], size: float, scale: float
) -> Explanation | None:
    """All the force at one distance, though each has an arm of its own."""
    arm = term.value / (scale * size)
    own = [s for s in spots if are_same(arm, s.per_unit)]
    if not own and not factors.holds(size):
        return None
    wrong = [s for s in spots if s not in own]
    code = "no-arm" if are_same(abs(arm), 1.0) else "arm" if _is_an_arm(arm, wrong) else "arm-from"
    slips = tuple(Slip(code, s.name, s, term.span) for s in wrong)
    cost = KINDS[code].cost + _made_once(slips, factors.holds(size), scale)
    return Explanation(cost, slips, scale) if slips else None


def _made_once(slips: Sequence[Slip], shown: bool, scale: float) -> float:
    """What it costs more that one mistake was made at several forces taken together.

    It is paid for once, and less where the sum of their sizes is `shown` in a line that is not multiplied.
    """
    return 0.0 if shown and abs(scale) == 1.0 else saved(slips)


def _is_an_arm(arm: float, spots: Sequence[TrueTerm]) -> bool:
    """Whether a distance is what is taken for the arm at each of these forces."""
    taken = KINDS["arm"].variants
    return taken is not None and all(
        any(are_same(abs(arm), abs(each)) for each in taken(spot)) for spot in spots
    )


def _two_changes(
    changes: Sequence[WrongNumber], need: float, slack: float
) -> tuple[float, tuple[WrongNumber, ...]] | None:
    """The cheapest two changes at different places that make up `need`; `changes` are in order.

    Of those that cost the same, one mistake made twice comes first.
    """
    best: tuple[float, bool, tuple[WrongNumber, ...]] | None = None
    for i, one in enumerate(changes):
        low = bisect_left(changes, need - one.delta - slack, i + 1, key=lambda c: c.delta)
        for other in changes[low:]:
            if other.delta > need - one.delta + slack:
                break
            found = (one.cost + other.cost, one.edit.codes != other.edit.codes)
            if other.place != one.place and (best is None or found < best[:2]):
                best = (*found, (one, other))
    return None if best is None else (best[0], best[2])

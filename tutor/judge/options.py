"""Which wrong coefficients could stand for one force, and which mistake makes each?"""

from __future__ import annotations

import math
from dataclasses import dataclass

from tutor.judge.mistakes import KINDS
from tutor.judge.truth import Spot

ALONE = frozenset({"sign", "sense", "missing"})


@dataclass(frozen=True)
class Option:
    """A wrong contribution and the mistakes, most telling first, that make it."""

    value: float
    codes: tuple[str, ...]
    cost: float


def options(spot: Spot) -> tuple[Option, ...]:
    """Every wrong contribution the catalogue makes at `spot`, cheapest first, each value once.

    Besides each single mistake, a mistake that changes the size may come with a wrong sign.
    """
    found: list[Option] = []
    turned = "sense" if spot.sense < 0 and spot.force.kind != "load" else "sign"
    for kind in KINDS.values():
        if kind.variants is None:
            continue
        for per_unit in kind.variants(spot):
            value = per_unit * spot.scale
            found.append(Option(value, (kind.code,), kind.cost))
            if kind.code not in ALONE and kind.code != "extra" and value != 0.0:
                cost = kind.cost + KINDS[turned].cost
                found.append(Option(-value, (kind.code, turned), cost))
    found.sort(key=lambda option: option.cost)
    kept: list[Option] = []
    for option in found:
        if _same(option.value, spot.true) or any(_same(option.value, o.value) for o in kept):
            continue
        kept.append(option)
    return tuple(kept)


def _same(one: float, other: float) -> bool:
    return math.isclose(one, other, rel_tol=1e-6, abs_tol=1e-12)

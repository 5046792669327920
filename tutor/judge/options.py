"""Which wrong coefficients could stand for one force, and which mistake makes each?"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import overload

from tutor.judge.mistakes import KINDS
from tutor.judge.truth import Spot

OF_THE_SIZE = frozenset({"unit", "magnitude", "carried"})
SEEN_IN_THE_TEXT = frozenset({"tangent", "angle-mode", "ratio", "no-arm", "component"})
ALONE = frozenset({"sign", "turning", "minus", "sense", "missing", "extra", "angle-mode", "ratio"})


@dataclass(frozen=True)
class Option:
    """A wrong contribution and the mistakes, most telling first, that make it."""

    value: float
    codes: tuple[str, ...]
    cost: float


def options(spot: Spot) -> tuple[Option, ...]:
    """Every wrong contribution the catalogue makes at `spot`, cheapest first.

    Besides each single mistake, a mistake that changes the size may come with a wrong sign. Of
    several mistakes that make the same number the cheapest is kept, and those that only the way it
    is typed tells apart.
    """
    found: list[Option] = []
    turned = turning_code(spot)
    for kind in KINDS.values():
        if kind.variants is None:
            continue
        for per_unit in kind.variants(spot):
            value = per_unit * spot.scale
            found.append(Option(value, (kind.code,), kind.cost))
            if kind.code not in ALONE and value != 0.0:
                cost = kind.cost + KINDS[turned].cost
                found.append(Option(-value, (kind.code, turned), cost))
    found.sort(key=lambda option: option.cost)
    kept: dict[tuple[str, float], Option] = {}
    for option in found:
        if not _same(option.value, spot.true):
            kept.setdefault((sort_of(option.codes[0]), float(f"{option.value:.6g}")), option)
    return tuple(kept.values())


class Choices(Sequence[tuple[Option, ...]]):
    """The options of each of many spots, made when first asked for."""

    def __init__(self, spots: Sequence[Spot]) -> None:
        self._spots = spots
        self._made: dict[int, tuple[Option, ...]] = {}

    def __len__(self) -> int:
        return len(self._spots)

    @overload
    def __getitem__(self, place: int) -> tuple[Option, ...]: ...

    @overload
    def __getitem__(self, place: slice) -> Sequence[tuple[Option, ...]]: ...

    def __getitem__(self, place: int | slice) -> tuple[Option, ...] | Sequence[tuple[Option, ...]]:
        if isinstance(place, slice):
            return Choices(self._spots[place])
        if place not in self._made:
            self._made[place] = options(self._spots[place])
        return self._made[place]

    def plainest(self, place: int) -> tuple[Option, ...]:
        """Only leaving the force out and turning it round, for bodies with very many forces."""
        spot = self._spots[place]
        turned = turning_code(spot)
        return (
            Option(0.0, ("missing",), KINDS["missing"].cost),
            Option(-spot.true, (turned,), KINDS[turned].cost),
        )


def sort_of(code: str) -> str:
    """What the text of a term may tell: the size or the factor is wrong, or which function it is."""
    return code if code in SEEN_IN_THE_TEXT else "size" if code in OF_THE_SIZE else "factor"


def turning_code(spot: Spot) -> str:
    """What a wrong sign at this spot is called."""
    if spot.lost_minus:
        return "minus"
    if spot.sense < 0 and not spot.numeric:
        return "sense"
    return "turning" if spot.is_moment else "sign"


def _same(one: float, other: float) -> bool:
    return math.isclose(one, other, rel_tol=1e-6, abs_tol=1e-12)

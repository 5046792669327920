"""Which typed number stands for which true one, at the least cost over all of them?"""

from __future__ import annotations

import math
from collections.abc import Sequence

from tutor.judge.edits import Edit


def cheapest(
    pairs: Sequence[Sequence[Edit]], alone: Sequence[float], free: Sequence[float]
) -> tuple[int | None, ...]:
    """For each typed number its place, or None, at the least cost over all; a search with bounds.

    `free` is what it costs to leave each place without a number.
    """
    best_cost = math.inf
    best: tuple[int | None, ...] = ()
    least = [
        min((*(edit.cost for edit in row), one)) for row, one in zip(pairs, alone, strict=True)
    ]
    ahead = [math.fsum(least[row:]) for row in range(len(pairs) + 1)]

    def go(row: int, chosen: tuple[int | None, ...], cost: float) -> None:
        nonlocal best_cost, best
        if cost + ahead[row] >= best_cost:
            return
        if row == len(pairs):
            total = cost + math.fsum(f for i, f in enumerate(free) if i not in chosen)
            if total < best_cost:
                best_cost, best = total, chosen
            return
        for i, edit in sorted(enumerate(pairs[row]), key=lambda pair: pair[1].cost):
            if i not in chosen:
                go(row + 1, (*chosen, i), cost + edit.cost)
        go(row + 1, (*chosen, None), cost + alone[row])

    go(0, (), 0.0)
    return best

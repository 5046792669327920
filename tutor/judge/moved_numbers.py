"""Does a wrong value solve its line without one of the numbers in it, or with one of them turned round?"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from tutor.judge.same import one_way

FOLLOWS = 0.003
"""How far a value may be off what it is worked out from."""

Row = tuple[float, list[float]]
"""Of a line with one force open: what stands beside the force, and the numbers."""


def left_out(rows: Iterable[Row], value: float, typed: Sequence[float], sign: bool) -> bool:
    """Whether `value` solves a line without one of its numbers; its size, or also its `sign`.

    What stands in the working that was `typed` was not left out.
    """
    return any(
        _solves(value, beside, math.fsum(numbers) - number, sign)
        for beside, numbers in _sums(rows)
        for number in _not_typed(numbers, beside, typed)
    )


def one_turned(rows: Iterable[Row], value: float, sign: bool) -> bool:
    """Whether `value` solves a line with one of its numbers turned round; its size, or also its `sign`."""
    return any(
        _solves(value, beside, math.fsum(numbers) - 2 * number, sign)
        for beside, numbers in _sums(rows)
        for number in numbers
    )


def _sums(rows: Iterable[Row]) -> Iterator[Row]:
    return (row for row in rows if len(row[1]) > 1)


def _not_typed(numbers: Sequence[float], beside: float, typed: Sequence[float]) -> list[float]:
    """Those of the numbers of a line that no working has, each divided by what is beside the force."""
    left, missing = list(typed), []
    for number in numbers:
        size = abs(number / beside)
        here = next((n for n in left if math.isclose(abs(n), size, rel_tol=FOLLOWS)), None)
        if here is None:
            missing.append(number)
        else:
            left.remove(here)
    return missing


def _solves(value: float, beside: float, total: float, sign: bool) -> bool:
    solved = -total / beside
    close = math.isclose(abs(value), abs(solved), rel_tol=FOLLOWS)
    return solved != 0.0 and close and (not sign or one_way(value, solved))

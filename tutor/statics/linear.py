"""How are a few linear equations taken apart without a library of matrices?

For the handful of equations of one body, in plain floats, where numpy would cost more to load than
it saves. Vectors are sequences of floats of one length.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

Vector = Sequence[float]


def directions(vectors: Iterable[Vector], least: float, carried: int = 0) -> list[list[float]]:
    """Perpendicular unit vectors that span `vectors`; what is shorter than `least` adds none.

    The last `carried` parts of each vector take no part in its length and go along with the rest,
    as the right side of an equation does.
    """
    basis: list[list[float]] = []
    for vector in vectors:
        rest = without(vector, basis, carried)
        size = math.hypot(*rest[: len(rest) - carried])
        if size > least * max(1.0, max(map(abs, vector), default=0.0)):
            basis.append([part / size for part in rest])
    return basis


def without(vector: Vector, basis: Iterable[Vector], carried: int = 0) -> list[float]:
    """What is left of a vector once the directions of `basis` are taken out of it."""
    rest = list(vector)
    used = len(rest) - carried
    for unit in basis:
        along = math.fsum(a * b for a, b in zip(rest[:used], unit[:used], strict=True))
        rest = [a - along * b for a, b in zip(rest, unit, strict=True)]
    return rest


def inverse(matrix: Sequence[Vector], least: float) -> list[list[float]] | None:
    """The inverse of a square matrix by its rows; None where a pivot is not above `least`."""
    count = len(matrix)
    rows = [[*row, *(float(i == k) for k in range(count))] for i, row in enumerate(matrix)]
    for k in range(count):
        best = max(range(k, count), key=lambda i: abs(rows[i][k]))
        rows[k], rows[best] = rows[best], rows[k]
        pivot = rows[k][k]
        if abs(pivot) <= least:
            return None
        rows[k] = [part / pivot for part in rows[k]]
        for i, row in enumerate(rows):
            if i != k:
                rows[i] = [a - row[k] * b for a, b in zip(row, rows[k], strict=True)]
    return [row[count:] for row in rows]

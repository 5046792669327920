"""What is done with vectors of a body's space, which has two axes at a joint and three for the whole truss?"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from operator import mul

Vector = tuple[float, ...]
PARALLEL = 1e-6
"""A part so small of a vector, or a vector so short, is none."""


def dot(one: Sequence[float], other: Sequence[float]) -> float:
    """The product of two vectors of one space."""
    return math.fsum(map(mul, one, other))


def unit(vector: Vector) -> Vector:
    length = math.hypot(*vector)
    return tuple([a / length for a in vector])


def beside(vector: Vector, basis: Iterable[Vector]) -> Vector:
    """What is left of a vector once its parts along an orthonormal basis are taken out."""
    n = vector
    for against in basis:
        along = dot(n, against)
        n = tuple([a - along * b for a, b in zip(n, against, strict=True)])
    return n


def orthogonal(vectors: Iterable[Vector]) -> list[Vector]:
    """An orthonormal basis of what the vectors span."""
    basis: list[Vector] = []
    for vector in vectors:
        n = beside(vector, basis)
        if math.hypot(*n) > PARALLEL:
            basis.append(unit(n))
    return basis


def along(vector: Vector, lefts: Vector, slacks: Iterable[float]) -> tuple[float, float] | None:
    """How many of a vector what is left over may be, at least and at most; None where it lies elsewhere.

    Along each axis what is left over may be off by a slack of its own.
    """
    low, high = -math.inf, math.inf
    for part, left, slack in zip(vector, lefts, slacks, strict=True):
        if abs(part) > PARALLEL:
            ends = sorted(((left - slack) / part, (left + slack) / part))
            low, high = max(low, ends[0]), min(high, ends[1])
        elif abs(left) > slack:
            return None
    return (low, high) if low <= high else None

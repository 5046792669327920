"""What do the student's numbers leave over at each free body?

A body's equations are taken in one piece: the sum of forces (x, y) at a joint, and (x, y, moment
about the middle of the truss over its size) for the whole truss. A projection on a direction n of
that space is any one equation of the body. Tolerances come from the figures that were written.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from tutor.homework.work import Entry
from tutor.model import Problem
from tutor.statics import Force, FreeBody, joint_body, whole

Vector = tuple[float, ...]
WHOLE = "whole"
SLOPE = 0.0005
NEGLIGIBLE = 1e-9
PARALLEL = 1e-6


def place_in_words(place: str) -> str:
    """ "joint C" or "the whole truss"."""
    return "the whole truss" if place == WHOLE else f"joint {place}"


@dataclass(frozen=True)
class Part:
    """One force on a body: its direction in the body's space, its number and how far that may be off.

    `value` is None where the student has none; `slope` is what the rounding of sines and cosines
    to three decimals may add, or to as many figures as the value itself has.
    """

    force: Force
    vector: Vector
    value: float | None
    radius: float

    @property
    def name(self) -> str:
        return self.force.name

    @property
    def is_load(self) -> bool:
        return self.force.size is not None

    @cached_property
    def slope(self) -> float:
        straight = self.force.x in (0.0, 1.0, -1.0)
        if straight or self.value is None:
            return 0.0
        rounded = SLOPE * abs(self.value)
        return rounded if self.is_load else min(rounded, self.radius)

    def share(self, n: Vector) -> float:
        return math.fsum(a * b for a, b in zip(self.vector, n, strict=True))


@dataclass(frozen=True)
class Sheet:
    """One body with the numbers of the homework on it.

    `lines` keeps what `equations` found, since that does not depend on the numbers.
    """

    name: str
    parts: tuple[Part, ...]
    lines: dict[tuple[str, ...], tuple[Vector, ...]] = field(
        default_factory=dict, repr=False, compare=False
    )

    @cached_property
    def part(self) -> Mapping[str, Part]:
        """The unknown forces by name."""
        return {part.name: part for part in self.parts if not part.is_load}

    @cached_property
    def missing(self) -> tuple[str, ...]:
        """The unknowns without number."""
        return tuple(part.name for part in self.parts if part.value is None)

    @cached_property
    def size(self) -> int:
        return 3 if self.name == WHOLE else 2

    @cached_property
    def axes(self) -> tuple[Vector, ...]:
        return tuple(tuple(float(i == k) for i in range(self.size)) for k in range(self.size))

    def left(self, n: Vector) -> float:
        """What is left over in the equation `n` (force unit)."""
        return math.fsum(part.share(n) * (part.value or 0.0) for part in self.parts)

    def slack(self, n: Vector) -> float:
        """How much may be left over by the rounding of the figures written (force unit)."""
        total = 0.0
        for part in self.parts:
            share = abs(part.share(n))
            value = abs(part.value or 0.0)
            total += share * (part.radius + NEGLIGIBLE * value)
            if part.slope and share > PARALLEL:
                total += part.slope
        return total + 1e-12

    def added(self, n: Vector) -> float:
        """The sum of the sizes that were added up in the equation `n` (force unit)."""
        return math.fsum(abs(part.share(n) * (part.value or 0.0)) for part in self.parts)

    def holds(self, n: Vector) -> bool:
        if n not in self._holding:
            self._holding[n] = abs(self.left(n)) <= self.slack(n)
        return self._holding[n]

    @cached_property
    def _holding(self) -> dict[Vector, bool]:
        return {}

    @cached_property
    def lefts(self) -> tuple[float, ...]:
        return tuple(self.left(n) for n in self.axes)

    @cached_property
    def slacks(self) -> tuple[float, ...]:
        return tuple(self.slack(n) for n in self.axes)

    @cached_property
    def fails(self) -> bool:
        """Whether an equation of this body does not hold; False where a number is missing."""
        if self.missing:
            return False
        return any(abs(r) > t for r, t in zip(self.lefts, self.slacks, strict=True))

    def equations(self, name: str, others: Iterable[str]) -> tuple[Vector, ...]:
        """The equations that give `name` while the `others` are unknown too; any of them will do."""
        key = (name, *(other for other in others if other != name))
        if key not in self.lines:
            self.lines[key] = self._equations(name, key[1:])
        return self.lines[key]

    def _equations(self, name: str, others: tuple[str, ...]) -> tuple[Vector, ...]:
        vector = self.part[name].vector
        if math.hypot(*vector) <= PARALLEL:
            return ()
        beside = [self.part[other].vector for other in others]
        if not beside:
            straight = _unit(vector)
            return straight, *(n for n in self.axes if abs(_dot(n, vector)) > 0.05)
        n = vector
        for against in orthogonal(beside):
            along = _dot(n, against)
            n = tuple(a - along * b for a, b in zip(n, against, strict=True))
        if math.hypot(*n) <= PARALLEL * math.hypot(*vector):
            return ()
        return (_unit(n),)


def _dot(one: Vector, other: Vector) -> float:
    return math.fsum(a * b for a, b in zip(one, other, strict=True))


def _unit(vector: Vector) -> Vector:
    length = math.hypot(*vector)
    return tuple(a / length for a in vector)


def orthogonal(vectors: Iterable[Vector]) -> list[Vector]:
    """An orthonormal basis of what the vectors span."""
    basis: list[Vector] = []
    for vector in vectors:
        n = vector
        for against in basis:
            along = _dot(n, against)
            n = tuple(a - along * b for a, b in zip(n, against, strict=True))
        if math.hypot(*n) > PARALLEL * math.hypot(*vector):
            basis.append(_unit(n))
    return basis


def middle_and_size(problem: Problem) -> tuple[tuple[float, float], float]:
    """The point about which the moments of the whole truss are taken, and the length over them."""
    xs, ys = zip(*(joint.at for joint in problem.joints), strict=True)
    middle = ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
    return middle, max(max(xs) - min(xs), max(ys) - min(ys)) or 1.0


def sheets(problem: Problem, entries: Mapping[str, Entry]) -> dict[str, Sheet]:
    """Every body of the truss, the whole one first, with these numbers on it."""
    middle, size = middle_and_size(problem)
    found = {WHOLE: _sheet(whole(problem), entries, middle, size)}
    for joint in problem.joints:
        found[joint.name] = _sheet(joint_body(problem, joint.name), entries)
    return found


def renumbered(bodies: Mapping[str, Sheet], entries: Mapping[str, Entry]) -> dict[str, Sheet]:
    """The same bodies with other numbers on them."""
    return {
        name: Sheet(
            name,
            tuple(
                part
                if part.is_load
                else Part(part.force, part.vector, *_number(entries, part.name))
                for part in sheet.parts
            ),
            sheet.lines,
        )
        for name, sheet in bodies.items()
    }


def _number(entries: Mapping[str, Entry], name: str) -> tuple[float | None, float]:
    entry = entries.get(name)
    return (entry.value, entry.radius) if entry is not None else (None, 0.0)


def _sheet(
    body: FreeBody,
    entries: Mapping[str, Entry],
    middle: tuple[float, float] | None = None,
    size: float = 1.0,
) -> Sheet:
    parts = []
    for force in body.forces:
        vector: Vector = (force.x, force.y)
        if middle is not None:
            dx, dy = force.at[0] - middle[0], force.at[1] - middle[1]
            vector = (force.x, force.y, (dx * force.y - dy * force.x) / size)
        if force.size is not None:
            parts.append(Part(force, vector, force.size, 0.0))
        else:
            parts.append(Part(force, vector, *_number(entries, force.name)))
    return Sheet(body.name, tuple(parts))

"""What do the student's numbers leave over at each free body?

A body's equations are taken in one piece: the sum of forces (x, y) at a joint, and (x, y, moment
about the middle of the truss over its size) for the whole truss. A projection on a direction n of
that space is any one equation of the body. Tolerances come from the figures that were written.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import field
from functools import lru_cache
from itertools import combinations
from statistics import fmean
from typing import Any

from tutor.homework.vectors import PARALLEL, Vector, beside, dot, orthogonal, unit
from tutor.homework.work import Entry
from tutor.judge.about import Same
from tutor.model import Problem
from tutor.notation.elements.fact import fact, kept
from tutor.statics import Force, FreeBody, joint_body, whole

WHOLE = "whole"
SLOPE = 0.0005
NEGLIGIBLE = 1e-9


def place_in_words(place: str) -> str:
    """ "joint C" or "the whole truss"."""
    return "the whole truss" if place == WHOLE else f"joint {place}"


Number = tuple[float | None, float]
"""A value, None where there is none, and how far its figures may be off (force unit)."""


@fact
class ForcePart:
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

    @property
    def number(self) -> float:
        """The value, nothing where there is none."""
        return self.value or 0.0

    @property
    def straight(self) -> bool:
        """Whether it lies along an axis, so that no sine or cosine of it is rounded."""
        return 0.0 in (self.force.x, self.force.y)

    @kept
    def slope(self) -> float:
        rounded = 0.0 if self.straight else SLOPE * abs(self.number)
        return rounded if self.is_load else min(rounded, self.radius)

    def share(self, n: Vector) -> float:
        return dot(self.vector, n)


@fact
class Sheet:
    """One body with the numbers of the homework on it.

    `lines` and `given` keep what `equations` and `solved_for` found, since that does not depend on the numbers.
    """

    name: str
    parts: tuple[ForcePart, ...]
    lines: dict[tuple[str, ...], tuple[Vector, ...]] = field(
        default_factory=dict, repr=False, compare=False
    )
    given: dict[tuple[str, ...], Mapping[str, tuple[Vector, ...]]] = field(
        default_factory=dict, repr=False, compare=False
    )

    @kept
    def part(self) -> Mapping[str, ForcePart]:
        """The unknown forces by name."""
        return {part.name: part for part in self.parts if not part.is_load}

    @kept
    def missing(self) -> tuple[str, ...]:
        """The unknowns without number."""
        return tuple(part.name for part in self.parts if part.value is None)

    @kept
    def size(self) -> int:
        return 3 if self.name == WHOLE else 2

    @kept
    def axes(self) -> tuple[Vector, ...]:
        return tuple(tuple(float(i == k) for i in range(self.size)) for k in range(self.size))

    @kept
    def lefts(self) -> Vector:
        """What is left over along each axis (force unit)."""
        return tuple(
            math.fsum(part.vector[k] * part.number for part in self.parts) for k in range(self.size)
        )

    def left(self, n: Vector) -> float:
        """What is left over in the equation `n` (force unit)."""
        return dot(self.lefts, n)

    def slack(self, n: Vector) -> float:
        """How much may be left over by the rounding of the figures written (force unit)."""
        total = 1e-12
        for vector, loose, slope in self._loose:
            share = abs(dot(vector, n))
            total += share * loose
            if share > PARALLEL:
                total += slope
        return total

    @kept
    def _loose(self) -> tuple[tuple[Vector, float, float], ...]:
        """Where each number stands, how far it may be off, and what its rounded slope may add."""
        return tuple(
            (part.vector, part.radius + NEGLIGIBLE * abs(part.number), part.slope)
            for part in self.parts
        )

    def added(self, n: Vector) -> float:
        """The sum of the sizes that were added up in the equation `n` (force unit)."""
        return math.fsum(abs(part.share(n) * part.number) for part in self.parts)

    def holds(self, n: Vector) -> bool:
        held: bool | None = self.memo.get(n)
        if held is None:
            held = self.memo[n] = abs(self.left(n)) <= self.slack(n)
        return held

    @kept
    def memo(self) -> dict[object, Any]:  # by an equation: does it hold? by a name: see `fill.py`
        return {}

    @kept
    def slacks(self) -> tuple[float, ...]:
        return tuple(self.slack(n) for n in self.axes)

    @kept
    def fails(self) -> bool:
        """Whether an equation of this body does not hold; False where a number is missing."""
        if self.missing:
            return False
        return any(abs(r) > t for r, t in zip(self.lefts, self.slacks, strict=True))

    def equations(self, name: str, others: Iterable[str]) -> tuple[Vector, ...]:
        """The equations that give `name` while the `others` are unknown too; any of them will do."""
        key = (name, *[other for other in others if other != name])
        found = self.lines.get(key)
        if found is None:
            found = self.lines[key] = self._equations(name, key[1:])
        return found

    def _equations(self, name: str, others: tuple[str, ...]) -> tuple[Vector, ...]:
        n = beside(self.part[name].vector, orthogonal(self.part[o].vector for o in others))
        if math.hypot(*n) <= PARALLEL:
            return ()
        if others:
            return (unit(n),)
        return unit(n), *(axis for axis in self.axes if abs(dot(axis, n)) > 0.05)

    def may_give(self, name: str) -> bool:
        """Whether an equation that gives `name`, whatever else was unknown with it, may hold.

        Never False where one does.
        """
        if self.name == WHOLE:
            others = [other for other in self.part if other != name]
            return any(
                self.holds(n)
                for count in range(self.size)
                for more in combinations(others, count)
                for n in self.equations(name, more)
            )
        rx, ry = self.lefts
        most = self._most_slack
        if min(abs(rx), abs(ry)) <= most:
            return True
        return any(
            abs(rx * x + ry * y if part.name == name else rx * y - ry * x)
            <= most * (abs(x) + abs(y))
            for part in self.parts
            for x, y in (part.vector,)
            if not part.is_load
        )

    @kept
    def _most_slack(self) -> float:
        """No equation of this body is allowed to leave over more (force unit)."""
        return 1e-12 + sum([math.hypot(*v) * loose + slope for v, loose, slope in self._loose])

    def solved_for(self, names: tuple[str, ...]) -> Mapping[str, tuple[Vector, ...]]:
        """Which of these unknowns the body gives while all of them are unknown, and by which equations."""
        found = self.given.get(names)
        if found is None:
            equations = {name: self.equations(name, names) for name in names}
            found = self.given[names] = {name: them for name, them in equations.items() if them}
        return found


class Bodies(dict[str, Sheet]):
    """All bodies of a truss by name, the whole one first; they are not changed once they are there."""

    @kept
    def at(self) -> Mapping[str, tuple[str, ...]]:
        """The bodies on which each unknown acts."""
        found: dict[str, list[str]] = {}
        for sheet in self.values():
            for name in sheet.part:
                found.setdefault(name, []).append(sheet.name)
        return {name: tuple(bodies) for name, bodies in found.items()}

    @kept
    def numbers(self) -> Mapping[str, Number]:
        """The number of each unknown."""
        return {
            name: (part.value, part.radius)
            for sheet in self.values()
            for name, part in sheet.part.items()
        }


def middle_and_size(problem: Problem) -> tuple[tuple[float, float], float]:
    """The point about which the moments of the whole truss are taken, and the length over them."""
    xs, ys = (
        (min(along), max(along)) for along in zip(*(j.at for j in problem.joints), strict=True)
    )
    return (fmean(xs), fmean(ys)), math.hypot(max(xs) - min(xs), max(ys) - min(ys))


def sheets(problem: Problem, entries: Mapping[str, Entry]) -> Bodies:
    """Every body of the truss, the whole one first, with these numbers on it."""
    return renumbered(_blank(Same(problem)), entries)


@lru_cache(maxsize=64)
def _blank(same: Same) -> Bodies:
    """The bodies of a truss without numbers, with what equations they give as far as was asked."""
    problem = same.problem
    found = Bodies({WHOLE: _sheet(whole(problem), *middle_and_size(problem))})
    for joint in problem.joints:
        found[joint.name] = _sheet(joint_body(problem, joint.name))
    return found


def renumbered(bodies: Bodies, entries: Mapping[str, Entry]) -> Bodies:
    """The same bodies with other numbers on them; a body with the same numbers is the same one."""
    numbers = {name: _number(entries, name) for name in bodies.at}
    changed = [name for name, number in numbers.items() if number != bodies.numbers[name]]
    found = Bodies(bodies)
    for body in {body for name in changed for body in bodies.at[name]}:
        found[body] = with_numbers(bodies[body], entries)
    found.at, found.numbers = bodies.at, numbers
    return found


def with_numbers(sheet: Sheet, entries: Mapping[str, Entry]) -> Sheet:
    """One body with other numbers on it."""
    parts = [
        part if part.is_load else ForcePart(part.force, part.vector, *_number(entries, part.name))
        for part in sheet.parts
    ]
    return Sheet(sheet.name, tuple(parts), sheet.lines, sheet.given)


def _number(entries: Mapping[str, Entry], name: str) -> Number:
    entry = entries.get(name)
    return (entry.value, entry.radius) if entry is not None else (None, 0.0)


def _sheet(body: FreeBody, middle: tuple[float, float] | None = None, size: float = 1.0) -> Sheet:
    parts = []
    for force in body.forces:
        vector: Vector = (force.x, force.y)
        if middle is not None:
            dx, dy = force.at[0] - middle[0], force.at[1] - middle[1]
            vector = (force.x, force.y, (dx * force.y - dy * force.x) / size)
        parts.append(ForcePart(force, vector, force.size, 0.0))
    return Sheet(body.name, tuple(parts))

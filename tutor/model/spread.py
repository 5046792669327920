"""Which loads lie along members, and which loads at the joints follow from them?

A load spread evenly along a member has its resultant in the middle of it: half of it goes to each of
the member's two joints, with the same force and the same moment about any point. What bends the
member between its joints is left out.

Source: statics of parallel forces; that a truss takes such a load as half at each end is common
practice (for example Hibbeler, Engineering Mechanics: Statics, on trusses: the weight of a member is
applied half at each of its ends; from memory).
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any, Literal

from tutor.model.parts import AXES, Joint, Load, Member, PushDirection
from tutor.notation import Exact, Unreadable, read_number

Per = Literal["length", "span"]
LARGEST_FACTOR = 1000
NOTHING = 1e-12
OPPOSITE: Mapping[PushDirection, PushDirection] = {
    "up": "down",
    "down": "up",
    "left": "right",
    "right": "left",
}


@dataclass(frozen=True)
class Spread:
    """A load spread evenly along the members `on`, by their names.

    `pushes` holds (direction, size) as in a `Load`. A size is a force for each unit of length of the
    members, or, `per` "span", of their projection across the push: for "down" the horizontal one. With
    `total` it is the whole force on all the members instead, shared out by the same measure.
    """

    on: tuple[str, ...]
    pushes: tuple[tuple[PushDirection, Exact], ...]
    per: Per = "length"
    total: bool = False


@dataclass
class Sum:
    """An exact sum that is being made: rational multiples of square roots by what is under the root,
    and what is no such number, as text."""

    roots: dict[Fraction, Fraction] = field(default_factory=dict)
    others: list[tuple[str, float]] = field(default_factory=list)

    def add(self, size: Exact, measure: Measure, factor: Fraction) -> None:
        """Add size times measure times factor."""
        if size.fraction is None or measure.square is None:
            text = f"({size.text})*({measure.text})*({factor})"
            self.others.append((text, size.value * measure.value * float(factor)))
            return
        outside, root = _simple_root(measure.square)
        self.roots[root] = self.roots.get(root, Fraction(0)) + size.fraction * factor * outside

    @property
    def value(self) -> float:
        rational = (float(times) * math.sqrt(root) for root, times in self.roots.items())
        return math.fsum((*rational, *(value for _, value in self.others)))

    def size(self) -> Exact:
        """The sum without its sign, as a number that a file could hold."""
        sign = -1 if self.value < 0 else 1
        times = {root: sign * times for root, times in self.roots.items() if times}
        if not self.others and times.keys() <= {Fraction(1)}:
            return Exact.of(times.get(Fraction(1), Fraction(0)))
        texts = [str(t) if root == 1 else f"({t})*sqrt({root})" for root, t in times.items()]
        texts += [f"({sign})*{text}" for text, _ in self.others]
        read = read_number(" + ".join(texts))
        if isinstance(read, Unreadable):
            return Exact.of(Fraction(abs(self.value)).limit_denominator(10**12))
        return read


@dataclass(frozen=True)
class Measure:
    """A length that is not negative: its square where that is rational, else None; and as text."""

    value: float
    square: Fraction | None
    text: str


def measure_along(
    joints: Mapping[str, Joint], member: Member, per: Per, way: PushDirection
) -> Measure:
    """What a size along `way` is multiplied by on this member: its length, or its projection."""
    here, there = joints[member.start], joints[member.end]
    dx, dy = there.x.minus(here.x), there.y.minus(here.y)
    both: tuple[Exact, ...] = (dx, dy)
    if per == "span":
        both = (dx,) if AXES[way][0] == 0 else (dy,)
    value = math.hypot(*(part.value for part in both))
    text = f"sqrt({' + '.join(f'({part.text})^2' for part in both)})"
    return Measure(value, _square(both), text)


def on_member(
    spread: Spread, joints: Mapping[str, Joint], members: Mapping[str, Member], name: str
) -> Iterator[tuple[PushDirection, Exact]]:
    """The resultant on one member of a spread load, as pushes."""
    for way, _ in spread.pushes:
        found = Sum()
        _add(found, spread, joints, members, name, way, Fraction(1))
        yield way, found.size()


def brought_to_joints(
    spreads: Sequence[Spread], joints: Mapping[str, Joint], members: Mapping[str, Member]
) -> tuple[Load, ...]:
    """The loads at the joints that follow, one at each joint that takes any, in the order of the joints.

    Members that are not there are passed over.
    """
    sums: dict[str, dict[PushDirection, Sum]] = {}
    for spread in spreads:
        for name in spread.on:
            member = members.get(name)
            if member is None:
                continue
            for way, _ in spread.pushes:
                for joint in (member.start, member.end):
                    found = sums.setdefault(joint, {}).setdefault(_axis(way), Sum())
                    sign = Fraction(1 if way == _axis(way) else -1, 2)
                    _add(found, spread, joints, members, name, way, sign)
    loads = (_load(name, sums[name]) for name in joints if name in sums)
    return tuple(load for load in loads if load.pushes)


def _axis(way: PushDirection) -> PushDirection:
    """The push that is counted positive along the same line."""
    return way if way in ("down", "right") else OPPOSITE[way]


def _load(joint: str, sums: Mapping[PushDirection, Sum]) -> Load:
    most = max(abs(found.value) for found in sums.values())
    pushes: list[tuple[PushDirection, Exact]] = []
    for way, found in sums.items():
        if abs(found.value) <= NOTHING * most or found.value == 0.0:
            continue
        pushes.append((way if found.value > 0 else OPPOSITE[way], found.size()))
    return Load(joint, tuple(pushes), spread=True)


def _add(
    found: Sum,
    spread: Spread,
    joints: Mapping[str, Joint],
    members: Mapping[str, Member],
    name: str,
    way: PushDirection,
    factor: Fraction,
) -> None:
    """Add `factor` times the resultant along `way` on member `name`."""
    size = dict(spread.pushes)[way]
    here = measure_along(joints, members[name], spread.per, way)
    if not spread.total:
        found.add(size, here, factor)
        return
    all_of = [
        measure_along(joints, members[each], spread.per, way)
        for each in spread.on
        if each in members
    ]
    share = _share(here, all_of)
    if isinstance(share, Fraction):
        found.add(size, ONE, factor * share)
    else:
        found.add(size, share, factor)


def _share(one: Measure, all_of: Sequence[Measure]) -> Fraction | Measure:
    """How much of the whole falls on one of several: exact as a fraction where that is one."""
    whole = math.fsum(each.value for each in all_of)
    if whole <= 0.0:
        return Fraction(0)
    if one.square is not None and all(each.square is not None for each in all_of):
        simple = [_simple_root(each.square) for each in all_of if each.square is not None]
        outside, root = _simple_root(one.square)
        if all(each[1] == root or each[0] == 0 for each in simple):
            return outside / sum(each[0] for each in simple)
    text = f"({one.text})/({' + '.join(each.text for each in all_of)})"
    return Measure(one.value / whole, None, text)


ONE = Measure(1.0, Fraction(1), "1")


def _square(parts: Sequence[Exact]) -> Fraction | None:
    """The sum of the squares where it is rational, which it may be though its parts are not."""
    fractions = [part.fraction for part in parts if part.fraction is not None]
    if len(fractions) == len(parts):
        return sum((each * each for each in fractions), Fraction(0))
    import sympy  # here for start-up time

    found: Any = sympy.expand(sum(part.sympy() ** 2 for part in parts))
    return Fraction(int(found.p), int(found.q)) if found.is_Rational else None


def _simple_root(square: Fraction) -> tuple[Fraction, Fraction]:
    """The root of `square` as (outside, under the root), small square factors taken out."""
    if square == 0:
        return Fraction(0), Fraction(1)
    under = square.numerator * square.denominator
    outside = Fraction(1, square.denominator)
    root = math.isqrt(under)
    if root * root == under:
        return outside * root, Fraction(1)
    for factor in range(2, LARGEST_FACTOR):
        if factor * factor > under:
            break
        while under % (factor * factor) == 0:
            under //= factor * factor
            outside *= factor
    return outside, Fraction(under)

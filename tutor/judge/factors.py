"""Which factors stand in a term as it was typed? They say whose term it is.

A typed product is size times arm, or size times ratio; each typed factor speaks for the force it
belongs to. `24*5` is about the load of 24, whatever it comes to.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from itertools import combinations

from tutor.judge.same import are_near, are_same
from tutor.notation import Reading
from tutor.notation.elements.fact import kept
from tutor.notation.elements.tree import (
    Binary,
    Call,
    Name,
    Negative,
    Node,
    Number,
    Unit,
    children,
    has,
    within,
)
from tutor.notation.formulas.evaluate import Frame, constant

MOST_LEAVES = 7
MOST_EXACT = 9
OF_DEGREES = {"sin": math.sin, "cos": math.cos, "tan": math.tan}
NOTHING = 1e-12
PRECISE = 0.0005
"""A factor within this share is typed as it is."""


@dataclass(frozen=True)
class Factors:
    """The factors of one typed term, each as its size; those below a fraction bar are inverted.

    `functions` are the functions typed in it; `radians` whether an angle says "rad"; `minuses` are the
    factors with a minus of their own in brackets, as an earlier result that is negative has;
    `angles` says of each function of an angle in whole degrees how far the angle may have been
    rounded, as a share of the function; `shares` of each factor how far it may have been, as a share
    of it. `is_fraction` is whether they are one integer over another, and nothing else.
    """

    leaves: tuple[float, ...] = ()
    functions: frozenset[str] = frozenset()
    radians: bool = False
    minuses: tuple[float, ...] = ()
    angles: tuple[float, ...] = ()
    shares: tuple[float, ...] = ()
    is_fraction: bool = False

    @property
    def is_one_number(self) -> bool:
        """Whether one number was typed, if need be as a fraction."""
        return self.count == 1 or self.is_fraction

    @property
    def count(self) -> int:
        """How many numbers were typed."""
        return len(self.leaves)

    @property
    def whole(self) -> bool:
        """Whether a force stands whole beside them, so that no number there could be rounded."""
        return all(leaf == 1.0 for leaf in self.leaves)

    @kept
    def numbers(self) -> tuple[float, ...]:
        """The typed factors, and every product of some of them."""
        found = {1.0} if not self.leaves else set[float]()
        leaves = self.leaves[:MOST_LEAVES]
        for count in range(1, len(leaves) + 1):
            for chosen in combinations(leaves, count):
                found.add(math.prod(chosen))
        found |= {1.0 / leaf for leaf in leaves if leaf}
        return tuple(found)

    def holds(self, number: float, scale: float = 1.0) -> bool:
        """Whether the size of a number, or of `scale` times it, stands there."""
        wanted = {abs(number), abs(scale * number)}
        return any(are_same(n, size) for size in wanted for n in self.numbers)

    def has_factor(self, size: float) -> bool:
        """Whether some of the factors, but not all of them together, come to this size."""
        leaves = self.leaves[:MOST_LEAVES]
        some = (chosen for count in range(1, len(leaves)) for chosen in combinations(leaves, count))
        return any(are_same(math.prod(chosen), abs(size)) for chosen in some)

    def shows_another(self, own: Iterable[float], every: Iterable[float]) -> float | None:
        """The size in `every` that a product shows, where it comes near none of `own`; or None.

        Such a product is about that force, whatever it comes to.
        """
        if self.count < 2 or any(are_near(abs(size), n) for size in own for n in self.numbers):
            return None
        return next((n for n in self.leaves if any(are_same(n, abs(size)) for size in every)), None)

    def one_is_off(self, size: float, radius: float, factor: float) -> bool:
        """Whether size or factor of a force is typed precisely, and the other further off than rounded.

        `radius` is how far the size may have been rounded before.
        """
        off = False
        for own, others, share in self._parted():
            for wanted, rest, slack in ((factor, size, radius), (size, factor, 0.0)):
                if math.isclose(own, abs(wanted), rel_tol=PRECISE):
                    if abs(others - abs(rest)) <= others * share + slack + PRECISE * abs(rest):
                        return False
                    off = True
        return off

    def _parted(self) -> Iterator[tuple[float, float, float]]:
        """Each way to part the factors in two: one product, the other, and its rounding as a share."""
        places = range(min(self.count, MOST_LEAVES))
        for count in range(1, len(places)):
            for chosen in combinations(places, count):
                rest = [place for place in places if place not in chosen]
                shares = math.fsum(self.shares[place] for place in rest)
                yield (
                    math.prod(self.leaves[place] for place in chosen),
                    math.prod(self.leaves[place] for place in rest),
                    shares,
                )

    def with_others(self, other: Factors) -> Factors:
        """The factors of two terms of one force."""
        return Factors(
            leaves=self.leaves + other.leaves,
            functions=self.functions | other.functions,
            radians=self.radians or other.radians,
            minuses=self.minuses + other.minuses,
            angles=self.angles + other.angles,
            shares=self.shares + other.shares,
        )

    @property
    def coarse(self) -> float:
        """How far integers of two figures may have been rounded, as a share of the product."""
        whole = (0.5 / leaf for leaf in self.leaves if 10 <= leaf < 100 and leaf == round(leaf))
        return sum(whole) + sum(self.angles)

    def without(self, scale: float) -> Factors:
        """The factors without that by which the whole line is multiplied, where it stands here."""
        for place, leaf in enumerate(self.leaves):
            if are_same(leaf, abs(scale)):
                rest = (*self.leaves[:place], *self.leaves[place + 1 :])
                shares = (*self.shares[:place], *self.shares[place + 1 :])
                return replace(self, leaves=rest, shares=shares)
        return self

    def has_minus(self, size: float) -> bool:
        """Whether a number of this size stands there with its own minus."""
        return any(are_same(minus, abs(size)) for minus in self.minuses)


def factors_of(reading: Reading) -> tuple[Factors, ...]:
    """The factors of each term of a reading, in the order of its terms."""
    frame = reading.frame
    return tuple(
        Factors(
            tuple(leaves.sizes),
            frozenset(leaves.functions),
            leaves.radians,
            tuple(leaves.minuses),
            tuple(leaves.angles),
            tuple(leaves.shares),
            leaves.is_fraction,
        )
        for side in (reading.left, reading.right)
        for leaves in _terms(side, frame)
    )


@dataclass
class _Leaves:
    sizes: list[float] = field(default_factory=list)
    functions: set[str] = field(default_factory=set)
    radians: bool = False
    minuses: list[float] = field(default_factory=list)
    angles: list[float] = field(default_factory=list)
    shares: list[float] = field(default_factory=list)
    is_fraction: bool = False

    def times(self, other: _Leaves) -> _Leaves:
        return _Leaves(
            self.sizes + other.sizes,
            self.functions | other.functions,
            self.radians or other.radians,
            self.minuses + other.minuses,
            self.angles + other.angles,
            self.shares + other.shares,
        )


def _terms(node: Node, frame: Frame) -> list[_Leaves]:
    """The factors of each term of a sum, as the terms of `parts` stand in order."""
    match node:
        case Binary("+" | "-", left, right):
            return _terms(left, frame) + _terms(right, frame)
        case Negative(inner):
            return _terms(inner, frame)
        case Binary("*" | "/" as sign, left, right) if _is_sum(left) and has(left, Name):
            by = _product(right, frame, sign == "/")
            return [leaves.times(by) for leaves in _terms(left, frame)]
        case Binary("*", left, right) if _is_sum(right) and has(right, Name):
            by = _product(left, frame)
            return [by.times(leaves) for leaves in _terms(right, frame)]
        case _:
            return [_product(node, frame)]


def _product(node: Node, frame: Frame, below: bool = False) -> _Leaves:
    """The factors of one product; `below` a fraction bar they are inverted."""
    match node:
        case Name():
            return _Leaves()
        case Negative(inner):
            found = _product(inner, frame, below)
            if len(found.sizes) == 1:
                found.minuses = list(found.sizes)
            return found
        case Binary("*", inner, Unit()):
            return _leaf(node, frame, below)
        case Binary("*" | "/" as sign, left, right):
            bottom = below != (sign == "/")
            found = _product(left, frame, below).times(_product(right, frame, bottom))
            found.is_fraction = sign == "/" and not below and _are_integers(left, right)
            return found
        case _ if has(node, Name):
            return _Leaves()
        case _:
            return _leaf(node, frame, below)


def _leaf(node: Node, frame: Frame, below: bool) -> _Leaves:
    term = constant(node, frame)
    signed, value = term.value, abs(term.value)
    rounded = term.radius or (0.5 if value > MOST_EXACT and value == round(value) else 0.0)
    share = rounded / value if value > NOTHING else 0.0
    functions = {call.name for call in _calls(node)}
    radians = any(isinstance(each, Unit) and each.unit == "rad" for each in within(node))
    if below:
        value = 1.0 / value if value > NOTHING else math.inf
    minuses = [value] if signed < 0 else []
    angles = _of_whole_degrees(node, value, frame)
    return _Leaves([value], functions, radians, minuses, angles, [share])


def _of_whole_degrees(node: Node, value: float, frame: Frame) -> list[float]:
    """How far the sine, cosine or tangent of whole degrees may be off, if they were rounded to them."""
    if not isinstance(node, Call) or node.name not in OF_DEGREES or value < NOTHING:
        return []
    degrees = abs(constant(node.argument, frame).value)
    if not MOST_EXACT < degrees < 90 or degrees != round(degrees):
        return []
    function = OF_DEGREES[node.name]
    ends = [abs(function(math.radians(degrees + half))) for half in (-0.5, 0.5)]
    return [max(abs(end - value) for end in ends) / value]


def _are_integers(*nodes: Node) -> bool:
    return all(isinstance(node, Number) and node.value.denominator == 1 for node in nodes)


def _is_sum(node: Node) -> bool:
    while isinstance(node, Negative):
        node = node.inner
    if isinstance(node, Binary) and node.operator in "*/":
        return any(_is_sum(child) and has(child, Name) for child in children(node))
    return isinstance(node, Binary) and node.operator in "+-"


def _calls(node: Node) -> Iterator[Call]:
    return (each for each in within(node) if isinstance(each, Call))

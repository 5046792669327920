"""Which numbers does a typed line hold: beside each unknown, and alone?"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import field, replace
from functools import reduce

from tutor.judge.factors import Factors, factors_of
from tutor.notation import Reading, Term
from tutor.notation.elements.fact import fact, kept

CANCELS = 1e-12
ONE_FIGURE = 0.05
"""The half-width of a number of one figure is more than this share of it."""
ONE_TRIANGLE = (0.6, 0.8)


@fact
class Coefficient:
    """What is typed beside one unknown: the sum, its half-width, the sizes added, the terms."""

    value: float
    radius: float
    parts: float
    terms: tuple[float, ...]

    def times(self, factor: float) -> Coefficient:
        """The same typed with every number so many times as large."""
        size = abs(factor)
        terms = tuple(factor * term for term in self.terms)
        return Coefficient(factor * self.value, size * self.radius, size * self.parts, terms)


@fact
class TypedEquation:
    """The numbers of a typed line: a coefficient by unknown, and the terms without unknown.

    `cancelled` are the unknowns whose terms cancel, so that they are not there; `widened` is whether
    integers of two figures are taken as rounded ones.
    """

    unknowns: Mapping[str, Coefficient]
    constants: tuple[Term, ...]
    reading: Reading = field(compare=False, repr=False)
    cancelled: frozenset[str] = frozenset()
    widened: bool = False

    @kept
    def _factors(self) -> tuple[tuple[Term, Factors], ...]:
        return tuple(zip(self.reading.terms, factors_of(self.reading), strict=True))

    @kept
    def factors(self) -> tuple[Factors, ...]:
        """The typed factors of each of `constants`."""
        return tuple(f for term, f in self._factors if term.name is None and term.value != 0.0)

    def factors_beside(self, name: str) -> Factors:
        """The factors typed beside an unknown, in all its terms."""
        found = [factors for term, factors in self._factors if term.name == name]
        return found[0] if len(found) == 1 else reduce(Factors.with_others, found, Factors())

    def terms_beside(self, name: str) -> tuple[tuple[float, Factors], ...]:
        """What stands beside an unknown in each of its terms, with the factors typed there."""
        return tuple((term.value, f) for term, f in self._factors if term.name == name)

    @kept
    def coarse(self) -> TypedEquation:
        """The same line with integers of two figures and whole degrees as rounded, as those of three are."""
        pairs = zip(self.constants, self.factors, strict=True)
        rounded = tuple(t._replace(radius=t.radius + abs(t.value) * f.coarse) for t, f in pairs)
        beside = {
            name: replace(c, radius=c.radius + c.parts * self.factors_beside(name).coarse)
            for name, c in self.unknowns.items()
        }
        return replace(self, unknowns=beside, constants=rounded, widened=True)

    @kept
    def may_be_coarse(self) -> bool:
        """Whether integers of two figures or angles in whole degrees may be rounded ones."""
        angles = any(factors.angles for _, factors in self._factors)
        return angles or any(factors.coarse for factors in self.factors)

    @kept
    def briefly(self) -> bool:
        """Whether all decimals beside the unknowns have one figure, as if each was rounded to one.

        0.6 and 0.8 together are the sides of one triangle instead.
        """
        decimals = [c for c in self.unknowns.values() if c.radius > 0.0]
        sides = all(round(abs(c.value), 1) in ONE_TRIANGLE for c in decimals)
        short = all(c.radius > ONE_FIGURE * abs(c.value) for c in decimals)
        return len(decimals) > 1 and short and not sides

    @kept
    def names(self) -> frozenset[str]:
        return frozenset(self.unknowns)

    @kept
    def total(self) -> float:
        """The sum of the terms without unknown."""
        return math.fsum(term.value for term in self.constants)

    @kept
    def radius(self) -> float:
        """The half-width of `total`."""
        return math.fsum(term.radius for term in self.constants)

    @kept
    def same_on_both_sides(self) -> bool:
        """Whether the line only says the same in two ways: 24 + 12 - C_y = 36 - C_y."""
        size = math.fsum(abs(term.value) for term in self.constants)
        nothing = abs(self.total) <= max(self.radius, CANCELS * size)
        return bool(self.cancelled) and not self.unknowns and nothing

    @kept
    def says_nothing(self) -> bool:
        """Whether nothing is left of the line once what cancels is out."""
        return not self.unknowns and not self.constants


def typed_equation(reading: Reading) -> TypedEquation:
    """The numbers of `reading`; an unknown whose terms cancel counts as not there."""
    sums: dict[str, list[Term]] = {}
    constants = []
    for term in reading.terms:
        if term.name is None:
            if term.value != 0.0:
                constants.append(term)
        else:
            sums.setdefault(term.name, []).append(term)
    unknowns = {}
    for name, terms in sums.items():
        if len(terms) == 1:
            if (value := terms[0].value) != 0.0:
                unknowns[name] = Coefficient(value, terms[0].radius, abs(value), (value,))
            continue
        value = math.fsum(term.value for term in terms)
        parts = math.fsum(abs(term.value) for term in terms)
        if abs(value) > CANCELS * parts:
            radius = math.fsum(term.radius for term in terms)
            unknowns[name] = Coefficient(value, radius, parts, tuple(t.value for t in terms))
    return TypedEquation(
        unknowns, tuple(constants), reading, frozenset(sums.keys() - unknowns.keys())
    )

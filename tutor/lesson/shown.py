"""Does a line of numbers alone show the student's values, one for one, or would any numbers do?"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations, islice
from math import isclose

from tutor.judge import Equation, M
from tutor.judge.about import equation_of
from tutor.judge.factors import Factors, factors_of
from tutor.judge.headings import equation_in_words
from tutor.lesson.state import State
from tutor.model import Problem
from tutor.notation import Line, Reading, Term, Unreadable, one_equation
from tutor.statics.body import load_sizes

NUMBER = re.compile(r"\d+(?:\.\d+)?")
NO_VALUES = (
    "This does not show your values: put each of them into {equation}, with its factor and sign."
)
NOT_HERE = "{number} is no force of {about}: put in the values of the forces that act there."
MOST_TOGETHER = 4
"""So many forces may be added up in one number, like 12 for two loads of 5 and 7."""
MOST_WAYS = 500
NOTHING = 1e-9


@dataclass(frozen=True)
class SumPart:
    """What one force adds to a sum with the student's value; `size` is that of the force."""

    value: float
    radius: float
    size: float
    load: bool = False


def shows_values(state: State, line: Line | Unreadable, about: Equation) -> bool:
    """Whether a line has an unknown in it, or every number stands for a force of the equation."""
    reading = one_equation(line)
    if isinstance(reading, Unreadable) or reading.names:
        return True
    acting = [term for term in equation_of(state.problem, about).terms if term.coefficient != 0.0]
    if any(t.force.size is None and t.force.name not in state.result for t in acting):
        return True
    return accounts_for(state, reading, about)


def accounts_for(state: State, reading: Reading, about: Equation) -> bool:
    """Whether the numbers of a line stand for the forces of an equation, each for its own.

    Every force that adds something is there once, in a term of its own or added up with others of
    its sign, loads with any load; all signs may be turned, and the whole may be multiplied where the
    value of each force is still to be seen in its term. A product that shows the size of one force
    stands for no other. What the numbers leave over may stand on the right alone.
    """
    parts = shares_of(state, about)
    remark, silent = state.problem.tolerance.remark, state.problem.tolerance.silent
    sizes = () if isinstance(about, M) else sizes_of(state)
    factors = factors_of(reading)
    for terms in _sides(reading):
        for scale in _scales(terms, parts):
            fits = _Fits(reading, scale, remark, silent, sizes, factors)
            if _covers(terms, parts, fits):
                return True
    return False


def shares_of(state: State, about: Equation) -> list[SumPart]:
    """What each force adds to an equation with the student's values, zeros left out."""
    parts = []
    for term in equation_of(state.problem, about).terms:
        name, size = term.force.name, term.force.size
        if term.coefficient == 0.0:
            continue
        if size is not None:
            parts.append(SumPart(term.coefficient, 0.0, abs(size), load=True))
        else:
            result, coefficient = state.result[name], term.coefficient
            value = coefficient * state.signed(name)
            parts.append(SumPart(value, abs(coefficient) * result.radius, abs(result.value)))
    return [part for part in parts if part.value != 0.0]


def sizes_of(state: State) -> tuple[float, ...]:
    """The sizes of all loads and of all results."""
    return (*load_sizes(state.problem), *(result.value for result in state.results))


def not_here(state: State, reading: Reading, about: Equation) -> str | None:
    """What is said of a product with the size of a force that is not at the joint, or None."""
    if about.joint is None:
        return None
    own, every = [part.size for part in shares_of(state, about)], sizes_of(state)
    found = (factors.shows_another(own, every) for factors in factors_of(reading))
    stray = next((size for size in found if size is not None), None)
    return (
        None
        if stray is None
        else NOT_HERE.format(number=f"{stray:g}", about=equation_in_words(state.problem, about))
    )


def share_values(state: State, about: Equation) -> list[float]:
    """The numbers of `shares_of`."""
    return [part.value for part in shares_of(state, about)]


def shows_nothing(problem: Problem, about: Equation) -> str:
    """What is said of a line that holds, but shows no values."""
    return NO_VALUES.format(equation=equation_in_words(problem, about))


def _sides(reading: Reading) -> Iterator[Sequence[Term]]:
    """The terms of the whole line; and without its right side, where that is what is left over."""
    yield reading.terms
    right = reading.right.span.start
    left = [term for term in reading.terms if term.span.start < right]
    rest = [term for term in reading.terms if term.span.start >= right]
    size = sum(abs(term.value) for term in left)
    off = sum(term.value for term in reading.terms)
    if len(rest) == 1 and abs(off) <= rest[0].radius + NOTHING * size:
        yield left


def _scales(terms: Sequence[Term], parts: Sequence[SumPart]) -> Iterator[float]:
    yield 1.0
    yield -1.0
    first = next((term for term in terms if abs(term.value) > NOTHING), None)
    if first is not None:
        yield from (first.value / part.value for part in parts)


@dataclass(frozen=True)
class _Fits:
    """Whether a term may stand for some parts, all of them times `scale`.

    `sizes` are those of all forces of the truss that are known; `factors` those of each term.
    """

    reading: Reading
    scale: float
    remark: float
    silent: float
    sizes: tuple[float, ...]
    factors: tuple[Factors, ...]

    def __call__(self, term: Term, group: Sequence[SumPart]) -> bool:
        wanted = self.scale * sum(part.value for part in group)
        spread = abs(self.scale) * sum(abs(part.value) for part in group)
        slack = self.silent * spread + abs(self.scale) * sum(part.radius for part in group)
        slack += min(term.radius, self.remark * spread)
        if abs(term.value - wanted) > slack:
            return False
        if self.is_of_another(term, group):
            return False
        turned = isclose(abs(self.scale), 1.0)
        alike = len({part.value > 0 for part in group}) == 1 or (
            all(part.load for part in group) and abs(term.value) > NOTHING
        )
        return (turned and alike) or self._are_seen(term, group)

    def is_of_another(self, term: Term, group: Sequence[SumPart]) -> bool:
        """Whether a product shows the size of another force than those of the group."""
        factors = self.factors[self.reading.terms.index(term)]
        return factors.shows_another([part.size for part in group], self.sizes) is not None

    def _are_seen(self, term: Term, group: Sequence[SumPart]) -> bool:
        """Whether the size of each force stands among the numbers of a term."""
        numbers = _numbers(self.reading, term)
        return all(
            any(isclose(part.size, n, rel_tol=self.silent) for n in numbers) for part in group
        )


def _covers(terms: Sequence[Term], parts: Sequence[SumPart], fits: _Fits) -> bool:
    """Whether each term takes some of the parts so that none is left; a zero may take none."""
    if not terms:
        return not parts
    term, rest = terms[0], terms[1:]
    for taken in islice(_groups(term, parts, fits), MOST_WAYS):
        left = [part for index, part in enumerate(parts) if index not in taken]
        if _covers(rest, left, fits):
            return True
    return abs(term.value) <= NOTHING and _covers(rest, parts, fits)


def _groups(term: Term, parts: Sequence[SumPart], fits: _Fits) -> Iterator[tuple[int, ...]]:
    """The choices of parts that a term may stand for, single ones first; equal ones once."""
    seen = set()
    for count in range(1, min(MOST_TOGETHER, len(parts)) + 1):
        for taken in combinations(range(len(parts)), count):
            group = tuple(parts[index] for index in taken)
            if group not in seen and fits(term, group):
                seen.add(group)
                yield taken


def _numbers(reading: Reading, term: Term) -> list[float]:
    """The numbers typed in a term that are not zero."""
    text = reading.text[term.span.start : term.span.end].replace(",", ".")
    return [number for found in NUMBER.findall(text) if (number := float(found)) != 0.0]

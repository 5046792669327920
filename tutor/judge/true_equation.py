"""What does the true equation look like in the student's own senses and values?"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from functools import lru_cache
from typing import Any, Literal, TypeVar

from tutor.judge.about import Equation, M, Same, equation_of
from tutor.judge.known_values import KnownValue, KnownValues
from tutor.judge.same import are_same
from tutor.model import Problem
from tutor.notation.elements.fact import fact, kept
from tutor.statics.body import Equilibrium, Force, ForceTerm, Moment

Made = TypeVar("Made")
MOST_LANDMARKS = 20
NO_PART = 1e-9


@fact
class TrueTerm:
    """One force in the true equation, as the student would write it.

    `sense` is +1 or -1; `scale` is 1 for a force typed as an unknown, the load's size for a load,
    and the student's own value for one put in as a number; `radius` is that value's half-width.
    `part` is "x" or "y" where it is only the horizontal or the vertical component of an inclined
    force, and `share` the ratio of that component to the whole.
    """

    problem: Problem
    equation: Equilibrium
    term: ForceTerm
    sense: float
    scale: float
    radius: float = 0.0
    numeric: bool = False
    part: Literal["", "x", "y"] = ""
    share: float = 1.0

    @kept
    def force(self) -> Force:
        return self.term.force

    @kept
    def name(self) -> str:
        return self.term.force.name

    @kept
    def per_unit(self) -> float:
        """The true coefficient per unit of the force, in the student's sense."""
        size = self.force.size if self.force.size is not None else 1.0
        return self.sense * self.term.coefficient / size

    @kept
    def true(self) -> float:
        """The true coefficient of the unknown, or the whole true contribution of a number."""
        return self.per_unit * self.scale

    @kept
    def spread(self) -> float:
        """The sum of the sizes that `true` is added up from."""
        size = self.force.size if self.force.size is not None else 1.0
        return self.term.spread / size * abs(self.scale)

    @kept
    def is_moment(self) -> bool:
        return isinstance(self.equation.sum, Moment)

    @kept
    def unit_vector(self) -> tuple[float, float]:
        """The force's direction as the student drew it."""
        return self.force.x * self.sense, self.force.y * self.sense

    @kept
    def lost_minus(self) -> bool:
        """Whether this is an own earlier value that is negative."""
        return self.numeric and self.force.size is None and self.scale < 0

    @kept
    def turned_already(self) -> bool:
        """Whether this is an own earlier value without a minus that its arrow makes positive in a sum."""
        own = self.numeric and self.force.size is None and self.scale > 0 and not self.is_moment
        return own and self.sense < 0 and self.per_unit > 0

    @property
    def has_own_sign(self) -> bool:
        """Whether this is an own earlier value that is negative, or whose arrow was turned round."""
        return self.numeric and self.force.size is None and min(self.scale, self.sense) < 0

    @kept
    def axis(self) -> tuple[float, float]:
        """The unit vector of the sum of forces; (0, 0) in a moment."""
        return (0.0, 0.0) if isinstance(self.equation.sum, Moment) else self.equation.sum.axis

    @kept
    def along_member(self) -> bool:
        """Whether a member runs from the moment point to where the force acts."""
        about = next((j.name for j in self.problem.joints if j.at == self.moment_point), None)
        return about is not None and self.problem.between(about, self.force.joint) is not None

    @kept
    def is_square_load(self) -> bool:
        """Whether this is a load at right angles to the line from the moment point to its joint."""
        load = self.is_moment and self.force.kind == "load"
        return load and are_same(abs(self.per_unit), math.hypot(*self.offset))

    @kept
    def moment_point(self) -> tuple[float, float] | None:
        return self.equation.sum.point if isinstance(self.equation.sum, Moment) else None

    @kept
    def landmarks(self) -> tuple[tuple[float, float], ...]:
        """Joints an arm may wrongly be measured from: all of a small truss, else the marked ones."""
        problem = self.problem
        if len(problem.joints) <= MOST_LANDMARKS:
            return tuple(joint.at for joint in problem.joints)
        marked = [s.joint for s in problem.supports] + [load.joint for load in problem.loads]
        marked += [m.other(self.force.joint) for m in problem.meeting[self.force.joint]]
        return tuple(problem.joint[name].at for name in dict.fromkeys(marked))[:MOST_LANDMARKS]

    @kept
    def offset(self) -> tuple[float, float]:
        """From the moment point to where the force acts; (0, 0) in a sum of forces."""
        if isinstance(self.equation.sum, Moment):
            px, py = self.equation.sum.point
            return self.force.at[0] - px, self.force.at[1] - py
        return 0.0, 0.0

    @kept
    def parts(self) -> tuple[TrueTerm, ...]:
        """The horizontal and the vertical component of an inclined force in a moment; none otherwise."""
        force, total = self.force, self.equation.sum
        if not self.is_moment or min(abs(force.x), abs(force.y)) < NO_PART:
            return ()
        ways: tuple[tuple[float, float, float, Literal["x", "y"]], ...] = (
            (force.x, 1.0, 0.0, "x"),
            (force.y, 0.0, 1.0, "y"),
        )
        found = []
        for share, x, y, part in ways:
            sign, size = math.copysign(1.0, share), abs(share)
            one = replace(force, x=x * sign, y=y * sign)
            weight = 1.0 if force.size is None else force.size
            term = ForceTerm(one, total.of(one) * weight, total.spread(one) * weight)
            scale, radius = self.scale * size, self.radius * size
            found.append(
                replace(self, term=term, scale=scale, radius=radius, part=part, share=size)
            )
        return tuple(found)

    @kept
    def _made(self) -> dict[Callable[[TrueTerm], Any], Any]:
        return {}

    def once(self, make: Callable[[TrueTerm], Made]) -> Made:
        """What `make` makes of this force, made when first asked for and kept with it."""
        if make not in self._made:
            self._made[make] = make(self)
        found: Made = self._made[make]
        return found


@fact
class TrueEquation:
    """The true equation of `about`: a spot for every force, under what is `given`."""

    problem: Problem
    about: Equation
    own: KnownValues

    @kept
    def _terms(self) -> Terms:
        return _terms(Same(self.problem), self.about, self.own.opposed)

    @property
    def equation(self) -> Equilibrium:
        return self._terms.equation

    @property
    def unknowns(self) -> Mapping[str, TrueTerm]:
        """A spot for each unknown force on the body, zero ones included."""
        return self._terms.unknowns

    @property
    def loads(self) -> tuple[TrueTerm, ...]:
        """A spot for each load on the body."""
        return self._terms.loads

    @kept
    def _numbers(self) -> dict[frozenset[str], tuple[TrueTerm, ...]]:
        return {}

    def numbers(self, typed: frozenset[str]) -> tuple[TrueTerm, ...]:
        """What stands as numbers when the names `typed` stand as unknowns: loads and own values."""
        known = self.own.known
        if not known:
            return self.loads
        found = self._numbers.get(typed)
        if found is None:
            carried = (
                self._put_in(spot, known[name])
                for name, spot in self.unknowns.items()
                if name in known and name not in typed
            )
            found = self._numbers[typed] = (*self.loads, *carried)
        return found

    @property
    def acting(self) -> frozenset[str]:
        """The unknowns that have a part in the equation."""
        return self._terms.acting

    def numbers_acting(self, typed: frozenset[str]) -> tuple[TrueTerm, ...]:
        """Those of `numbers` that come to something, or may by their rounding or in their components."""
        return _coming_to_something(self.numbers(typed)) if self.own.known else self._terms.pushing

    def total(self, typed: frozenset[str]) -> float:
        """What `numbers` add up to."""
        return _total(self.numbers(typed)) if self.own.known else self._terms.total

    def _put_in(self, spot: TrueTerm, own: KnownValue) -> TrueTerm:
        """A force of which the student's own value stands in the line."""
        of = (self.problem, self.equation, spot.term, spot.sense)
        return TrueTerm(*of, own.value, own.radius, numeric=True)

    @property
    def is_moment(self) -> bool:
        return isinstance(self.about, M)


@fact
class Terms:
    """The forces of an equation under the senses drawn, whatever values the student has."""

    equation: Equilibrium
    unknowns: Mapping[str, TrueTerm]
    loads: tuple[TrueTerm, ...]

    @kept
    def acting(self) -> frozenset[str]:
        return frozenset(name for name, spot in self.unknowns.items() if spot.true != 0.0)

    @kept
    def pushing(self) -> tuple[TrueTerm, ...]:
        return _coming_to_something(self.loads)

    @kept
    def total(self) -> float:
        return _total(self.loads)


def _coming_to_something(numbers: Iterable[TrueTerm]) -> tuple[TrueTerm, ...]:
    return tuple([spot for spot in numbers if spot.true != 0.0 or spot.radius or spot.parts])


def _total(numbers: Iterable[TrueTerm]) -> float:
    return math.fsum([spot.true for spot in numbers])


@lru_cache(maxsize=2048)
def _terms(same: Same, about: Equation, opposed: frozenset[str]) -> Terms:
    problem, equation = same.problem, equation_of(same.problem, about)
    unknowns, loads = {}, []
    for term in equation.terms:
        force = term.force
        if force.size is None:
            sense = -1.0 if force.name in opposed else 1.0
            unknowns[force.name] = TrueTerm(problem, equation, term, sense, 1.0)
        else:
            loads.append(TrueTerm(problem, equation, term, 1.0, force.size, numeric=True))
    return Terms(equation, unknowns, tuple(loads))

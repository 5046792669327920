"""Is a condition met by forces that may lie a little off: yes, no, or not to be told so?

Every answer that is one is that of `conditions`, whose limits are looked at here from both sides.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from tutor.model.vary import HOLDS, Condition, Kind
from tutor.statics.many import Forces
from tutor.variants.conditions import FIGURES, NEAR, ROOTS
from tutor.variants.slopes import known_slope

WITHIN, BEYOND = 0.99, 1.01
"""How much of a limit counts as surely inside it, and as surely outside."""
Sure = bool | None
Steps = tuple[tuple[float, float], ...]


@dataclass(frozen=True)
class TrussForces:
    """The forces of a truss in the order of its unknowns: where each stands, and which are members.

    `steps` are the ways, across and up, from end to end of its members.
    """

    forces: Forces
    column: Mapping[str, int]
    members: slice
    steps: Steps

    def size(self, name: str) -> float:
        return abs(self.forces.values[self.column[name]])

    def of_members(self) -> list[float]:
        """The sizes of the member forces that are not 0."""
        return [abs(force) for force in self.forces.values[self.members] if force]


def all_sure(answers: Sequence[Sure]) -> Sure:
    """Whether all are so: no where one is not, and not to be told where one of the others is not."""
    if False in answers:
        return False
    return None if None in answers else True


def surely_met(condition: Condition, case: TrussForces) -> Sure:
    """Whether the condition is met."""
    return SURELY[condition.kind](condition, case)


def surely_known(step: tuple[float, float]) -> Sure:
    """Whether a slope is that of a known triangle."""
    if known_slope(*step, 0.5):
        return True
    return None if known_slope(*step, 2.0) else False


def surely_short(size: float, doubt: float) -> Sure:
    """Whether a force, not negative, is short as `is_short` has it."""
    answer: Sure = False
    for root in ROOTS:
        number = size * root
        rounded = float(f"{number:.{FIGURES}g}")
        gap, most = abs(number - rounded), NEAR * max(number, rounded)
        if not size or gap + doubt * root <= WITHIN * most:
            return True
        if gap - doubt * root <= BEYOND * most:
            answer = None
    return answer


def _held(condition: Condition, size: float, doubt: float) -> Sure:
    gap, most = abs(size - condition.limit), NEAR * max(size, abs(condition.limit))
    if gap + doubt <= WITHIN * most or gap == 0.0 == doubt:
        return condition.relation in ("<=", ">=")
    if gap - doubt > BEYOND * most:
        return HOLDS[condition.relation](size, condition.limit)
    return None


def _nice(condition: Condition, case: TrussForces) -> Sure:
    answer: Sure = True
    for step in case.steps:
        known = surely_known(step)
        if known is False:
            return False
        answer = answer and known
    for force in case.forces.values:
        short = surely_short(abs(force), case.forces.doubt)
        if short is False:
            return False
        answer = answer and short
    return answer


def _extreme(pick: Callable[[list[float]], float]) -> Callable[[Condition, TrussForces], Sure]:
    def check(condition: Condition, case: TrussForces) -> Sure:
        sizes = case.of_members()
        return not sizes or _held(condition, pick(sizes), case.forces.doubt)

    return check


def _size(condition: Condition, case: TrussForces) -> Sure:
    size = case.size(condition.unknown)
    return _held(condition, size, case.forces.doubt if size else 0.0)


def _sense(condition: Condition, case: TrussForces) -> Sure:
    force = case.forces.values[case.column[condition.unknown]]
    return {
        "tension": force > 0,
        "compression": force < 0,
        "zero": force == 0,
        "not zero": force != 0,
    }[condition.kind]


SURELY: Mapping[Kind, Callable[[Condition, TrussForces], Sure]] = {
    "nice": _nice,
    "largest": _extreme(max),
    "smallest": _extreme(min),
    "size": _size,
    "tension": _sense,
    "compression": _sense,
    "zero": _sense,
    "not zero": _sense,
}

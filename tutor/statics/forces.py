"""What is every reaction and member force?

Tension, +x, +y and a reaction's stated direction are positive; forces are in the problem's force
unit. All joints are solved at once as linear equations (common practice).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Literal

from tutor.model import Problem
from tutor.model.naming import member_called, reaction_called, unknown_called
from tutor.statics.determinate import (
    Determinacy,
    Stability,
    determinacy,
    stability,
    support_fault,
    surely_regular,
)
from tutor.statics.exact import exact_values
from tutor.statics.system import joint_equations

RESIDUE = 1e-9


class Unsolvable(Exception):  # noqa: N818 - a fact about the problem, not a slip
    """Statics alone cannot give the forces of this problem.

    `kind` is "too-few" (m + r < 2j), "too-many" (m + r > 2j) or "critical" (the count fits, yet it
    can move). `reason` is one sentence and `how` a second one on the motion, "" where there is none.
    `mechanism` maps each joint to its (dx, dy) in one possible motion, the largest step being 1, and
    is empty where nothing moves; `moving` are the joints that do, and `as_one` says that the whole
    truss moves as one rigid body.
    """

    def __init__(
        self, kind: Literal["too-few", "too-many", "critical"], reason: str, held: Stability
    ) -> None:
        super().__init__(reason)
        self.kind = kind
        self.reason = reason
        self.mechanism = held.mechanism
        self.moving = held.moving
        self.how = held.how
        self.as_one = held.as_one


@dataclass(frozen=True)
class Answer:
    """The solved problem: `values` maps every unknown to its force, in `problem.unknowns` order.

    A look-up takes every spelling that can be typed in a line. For a name that is none here it
    raises a ValueError (a KeyError too) that says which names there are and the nearest.
    """

    problem: Problem
    values: Mapping[str, float] = field(repr=False)

    def value(self, name: str) -> float:
        """Any unknown by its name: "A_x", "R_C", "AB"."""
        return self.values[unknown_called(self.problem, name)]

    def force(self, *joints: str) -> float:
        """A member force, tension positive: `force("A", "B")`, `force("B", "A")` or `force("AB")`."""
        return self.values[member_called(self.problem, *joints)]

    def reaction(self, name: str) -> float:
        """A reaction by its name, positive along +x, +y or its stated direction (a link: pull)."""
        return self.values[reaction_called(self.problem, name)]

    def exact(self, name: str) -> Any:
        """As `value`, as an exact sympy expression (worked out on first use)."""
        return self._exact[unknown_called(self.problem, name)]

    def exact_force(self, *joints: str) -> Any:
        """As `force`, as an exact sympy expression."""
        return self._exact[member_called(self.problem, *joints)]

    def exact_reaction(self, name: str) -> Any:
        """As `reaction`, as an exact sympy expression."""
        return self._exact[reaction_called(self.problem, name)]

    @cached_property
    def _exact(self) -> Mapping[str, Any]:
        return exact_values(self.problem)


def solve(problem: Problem) -> Answer:
    """Every reaction and member force of a statically determinate and stable problem.

    Raises `Unsolvable` for any other. A force below 1e-9 of the largest one is exactly 0.
    """
    import numpy as np  # here for start-up time

    matrix, loads = joint_equations(problem)
    if not surely_regular(matrix):
        _check(problem)
    forces = np.linalg.solve(matrix, -loads)
    forces += np.linalg.solve(matrix, -loads - matrix @ forces)
    scale = max(np.max(np.abs(forces)), np.max(np.abs(loads)))
    forces[np.abs(forces) <= RESIDUE * scale] = 0.0
    return Answer(problem, dict(zip(problem.unknowns, forces.tolist(), strict=True)))


def _check(problem: Problem) -> None:
    """Raise `Unsolvable` unless the problem is statically determinate and stable."""
    count, held = determinacy(problem), stability(problem)
    if count.count == "too-few":
        raise Unsolvable("too-few", _too_few(problem, count), held)
    if count.count == "too-many":
        raise Unsolvable("too-many", _too_many(count, held), held)
    if not held.stable:
        raise Unsolvable("critical", _critical(problem, count), held)


def _too_few(problem: Problem, count: Determinacy) -> str:
    cause = support_fault(problem)
    return (
        f"It is not stable: {count.members} members and {count.reactions} reactions are "
        f"{count.unknowns} unknowns, {count.equations - count.unknowns} fewer than the "
        f"{count.equations} equations of its joints" + (f"; {cause}." if cause else ".")
    )


def _too_many(count: Determinacy, held: Stability) -> str:
    loose = "" if held.stable else ", and yet it can move"
    return (
        f"It is statically indeterminate: {count.members} members and {count.reactions} reactions "
        f"are {count.unknowns} unknowns, but the joints give only {count.equations} equations{loose}."
    )


def _critical(problem: Problem, count: Determinacy) -> str:
    cause = support_fault(problem) or "its members and supports do not brace every joint"
    return (
        f"It is not stable, although {count.unknowns} unknowns match {count.equations} equations: "
        f"{cause}."
    )

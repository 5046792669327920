"""Which forces act on a free body, and what do its equilibrium equations say?

Every force is drawn in its positive sense: a reaction along its stated direction, a member force
pulling on the joint (tension positive), a load as it acts. x is to the right, y is up, moments are
positive counter-clockwise. Source: the equilibrium conditions of a rigid body and of a particle in
the plane; common practice, no single source.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from tutor.model import Direction, Load, Problem

Kind = Literal["reaction", "member", "load"]


@dataclass(frozen=True)
class Force:
    """One force on a free body.

    `name` is the unknown ("B_y", "AC") or the load ("load C", "load C x" for one of two
    components); `joint` is where it acts and `at` that joint's coordinates; (`x`, `y`) is the unit
    vector of its positive sense, or of the load itself; `size` is the load's size, None for an
    unknown; `far` is the other joint of a member.
    """

    name: str
    kind: Kind
    joint: str
    at: tuple[float, float]
    x: float
    y: float
    size: float | None = None
    far: str | None = None
    source: Direction | Load | None = None


@dataclass(frozen=True)
class FreeBody:
    """A body cut free: the whole truss, one joint, or the part on one side of a section.

    `name` is "whole", the joint's name, or "part " and the names of the cut part's joints.
    """

    name: str
    forces: tuple[Force, ...]

    @property
    def unknowns(self) -> tuple[str, ...]:
        """Names of the unknown forces, each once."""
        return tuple(dict.fromkeys(f.name for f in self.forces if f.size is None))


@dataclass(frozen=True)
class Projection:
    """The sum of forces along the direction `degrees` from +x."""

    degrees: float

    @cached_property
    def axis(self) -> tuple[float, float]:
        turn = self.degrees % 360.0
        exact = {0.0: (1.0, 0.0), 90.0: (0.0, 1.0), 180.0: (-1.0, 0.0), 270.0: (0.0, -1.0)}
        return exact.get(turn) or (math.cos(math.radians(turn)), math.sin(math.radians(turn)))

    def of(self, force: Force) -> float:
        """The component of `force` per unit size (pure number)."""
        x, y = self.axis
        return force.x * x + force.y * y

    def spread(self, force: Force) -> float:
        """The sum of the sizes of the parts that `of` adds (pure number)."""
        x, y = self.axis
        return abs(force.x * x) + abs(force.y * y)


@dataclass(frozen=True)
class Moment:
    """The sum of moments about `point`, counter-clockwise positive."""

    point: tuple[float, float]

    def of(self, force: Force) -> float:
        """The moment of `force` per unit size (length unit)."""
        dx, dy = force.at[0] - self.point[0], force.at[1] - self.point[1]
        return dx * force.y - dy * force.x

    def spread(self, force: Force) -> float:
        """The sum of the sizes of the two parts that `of` subtracts (length unit)."""
        dx, dy = force.at[0] - self.point[0], force.at[1] - self.point[1]
        return abs(dx * force.y) + abs(dy * force.x)


Sum = Projection | Moment
SUM_X = Projection(0.0)
SUM_Y = Projection(90.0)


@dataclass(frozen=True)
class ForceTerm:
    """What one force contributes to an equation.

    `coefficient` multiplies the unknown; for a load it is the whole contribution (size included).
    `spread` is the size of the parts it was added up from, never less than |coefficient|.
    """

    force: Force
    coefficient: float
    spread: float


@dataclass(frozen=True)
class Equilibrium:
    """The equilibrium equation `sum` of `body`: the sum of all terms is zero."""

    body: FreeBody
    sum: Sum

    @cached_property
    def terms(self) -> tuple[ForceTerm, ...]:
        """One term for every force on the body, zero ones included, in the body's order.

        A coefficient below 1e-12 of its spread (or of the body's size, for a moment) is exactly 0.
        """
        return tuple(self._term(force) for force in self.body.forces)

    def _term(self, force: Force) -> ForceTerm:
        size = 1.0 if force.size is None else force.size
        coefficient, spread = self.sum.of(force), self.sum.spread(force)
        about = self.sum.point if isinstance(self.sum, Moment) else None
        reach = max(map(abs, (*force.at, *about))) if about else 1.0
        if abs(coefficient) <= 1e-12 * max(spread, reach):
            coefficient = 0.0
        return ForceTerm(force, coefficient * size, max(spread, abs(coefficient)) * abs(size))

    @cached_property
    def linear(self) -> dict[str | None, float]:
        """Coefficients by unknown, the constant under None; zero coefficients left out."""
        sums: dict[str | None, float] = {None: 0.0}
        for term in self.terms:
            key = term.force.name if term.force.size is None else None
            sums[key] = sums.get(key, 0.0) + term.coefficient
        return {name: value for name, value in sums.items() if name is None or value != 0.0}


def load_name(joint: str, part: str = "") -> str:
    """What a load at a joint is called, or one of its components: "load C", "load C x"."""
    return f"load {joint} {part}" if part else f"load {joint}"


def load_named(name: str) -> tuple[str, str] | None:
    """The joint and the component ("x", "y" or "") of the load that `load_name` calls so; None for an unknown."""
    what, *rest = name.split(" ")
    return (rest[0], "".join(rest[1:])) if what == "load" and rest else None


def load_forces(problem: Problem, joint: str) -> tuple[Force, ...]:
    """The loads on one joint; a load with two pushes across each other is two forces."""
    at = problem.joint[joint].at
    return tuple(
        force for load in problem.loads if load.joint == joint for force in _of_load(load, at)
    )


def load_sizes(problem: Problem) -> tuple[float, ...]:
    """The sizes of all loads, as `load_forces` divides them."""
    loaded = dict.fromkeys(load.joint for load in problem.loads)
    return tuple(force.size or 0.0 for joint in loaded for force in load_forces(problem, joint))


def given_forces(problem: Problem, joint: str) -> tuple[Force, ...]:
    """The loads on one joint that were given there, without what follows from loads on members."""
    at = problem.joint[joint].at
    given = (load for load in problem.given_loads if load.joint == joint)
    return tuple(force for load in given for force in _of_load(load, at))


def _of_load(load: Load, at: tuple[float, float]) -> Iterable[Force]:
    right, up = load.vector
    name = load_name(load.joint)
    if load.size is not None:
        size = math.hypot(right, up)
        yield Force(name, "load", load.joint, at, right / size, up / size, size, source=load)
        return
    both = right != 0 and up != 0
    if right != 0:
        label = load_name(load.joint, "x") if both else name
        yield Force(
            label, "load", load.joint, at, math.copysign(1.0, right), 0.0, abs(right), source=load
        )
    if up != 0:
        label = load_name(load.joint, "y") if both else name
        yield Force(
            label, "load", load.joint, at, 0.0, math.copysign(1.0, up), abs(up), source=load
        )


def reaction_forces(problem: Problem, joint: str) -> tuple[Force, ...]:
    """The reactions on one joint, each in its positive sense."""
    at = problem.joint[joint].at
    return tuple(
        Force(r.name, "reaction", joint, at, r.direction.x, r.direction.y, source=r.direction)
        for r in problem.reactions
        if r.joint == joint
    )


def member_force(problem: Problem, name: str, joint: str) -> Force:
    """The force of member `name` on `joint`, pulling: from the joint toward the member's far end."""
    far, at = problem.member[name].other(joint), problem.joint[joint].at
    pull = problem.pulls[name, joint]
    return Force(name, "member", joint, at, pull.x, pull.y, far=far, source=pull)


def whole(problem: Problem) -> FreeBody:
    """The whole truss cut free from its supports: reactions and loads."""
    return FreeBody(
        "whole",
        tuple(
            force
            for joint in problem.joints
            for force in (
                *reaction_forces(problem, joint.name),
                *load_forces(problem, joint.name),
            )
        ),
    )


def joint_body(problem: Problem, joint: str) -> FreeBody:
    """One joint cut free: its members, reactions and loads. KeyError for a joint that is not there."""
    return FreeBody(
        joint,
        (
            *(member_force(problem, m.name, joint) for m in problem.meeting[joint]),
            *reaction_forces(problem, joint),
            *load_forces(problem, joint),
        ),
    )


def part(problem: Problem, joints: Iterable[str]) -> FreeBody:
    """The part of the truss with these joints, cut from the rest: cut members, reactions, loads."""
    inside = set(joints)
    names = [joint.name for joint in problem.joints if joint.name in inside]
    cut = [m for m in problem.members if (m.start in inside) != (m.end in inside)]
    forces: list[Force] = []
    for name in names:
        forces += [member_force(problem, m.name, name) for m in cut if name in (m.start, m.end)]
        forces += [*reaction_forces(problem, name), *load_forces(problem, name)]
    return FreeBody("part " + " ".join(names), tuple(forces))

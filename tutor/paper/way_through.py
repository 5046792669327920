"""What is the whole way through a truss: each equation in its turn, and what it gives?

First the reactions that the whole truss gives, each from an equation with one unknown where there is
one; then the joints in an order in which each has at most two unknown forces, and where no joint goes on,
a section through the truss. Equations that are left over with nothing unknown in them check the work.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from tutor.judge import Along, Equation, Fx, Fy, M
from tutor.judge.about import equation_of
from tutor.model import Problem
from tutor.paper.lines import as_written, written
from tutor.paper.section_lines import part_to_cut, sum_for_one, unknown_in
from tutor.statics import joint_body, joint_order, reactions_from_whole, solve, whole

NEAR = 1e-9


@dataclass(frozen=True)
class WrittenStep:
    """One line: what it is an equation of, the values put in, what is unknown in it, and the values
    that it gives.

    `gives` is empty for the first of two lines that are solved together, and for a check.
    """

    about: Equation
    text: str
    known: Mapping[str, float]
    unknown: tuple[str, ...] = ()
    gives: Mapping[str, float] = field(default_factory=dict)
    with_last: bool = False

    @property
    def finds(self) -> tuple[str, ...]:
        """The unknowns that it gives."""
        return tuple(self.gives)

    @property
    def checks(self) -> bool:
        """Whether nothing unknown is left in it."""
        return not self.unknown


@dataclass(frozen=True)
class Body:
    """A joint, or a part of the truss by its joints, with the lines written for it."""

    joint: str
    part: tuple[str, ...]
    steps: tuple[WrittenStep, ...]


@dataclass(frozen=True)
class Worked:
    """The way through a problem. `values` are all unknowns as written down, four figures.

    `bodies` are joints and parts in their order; `together` are lines of joints that only all at once
    give what is left, where neither a joint nor a section goes on; `closing` are the sums of the whole
    truss, where no line at a joint is left over to check the work.
    """

    problem: Problem
    values: Mapping[str, float]
    reactions: tuple[WrittenStep, ...]
    bodies: tuple[Body, ...]
    together: tuple[WrittenStep, ...] = ()
    closing: tuple[WrittenStep, ...] = ()

    @property
    def steps(self) -> Iterator[WrittenStep]:
        """Every line in its order."""
        yield from self.reactions
        for body in self.bodies:
            yield from body.steps
        yield from self.together
        yield from self.closing


def worked(problem: Problem) -> Worked:
    """The way through a problem. Raises `Unsolvable` where statics gives no forces."""
    answer = solve(problem)
    values = {name: as_written(value) for name, value in answer.values.items()}
    known: dict[str, float] = {}
    reactions = tuple(_reactions(problem, values, known))
    bodies = tuple(_bodies(problem, values, known))
    visited = {body.joint for body in bodies if len(body.steps) > 1}
    left = [joint.name for joint in problem.joints if joint.name not in visited]
    together = tuple(
        step for joint in left for step in _lines(problem, (Fx(joint), Fy(joint)), known)
    )
    way = Worked(problem, values, reactions, bodies, together)
    if together or any(step.checks for step in way.steps):
        return way
    sums = (M(problem.supports[0].joint), Fx(), Fy())
    return replace(way, closing=tuple(_lines(problem, sums, known)))


def _reactions(
    problem: Problem, values: Mapping[str, float], known: dict[str, float]
) -> Iterator[WrittenStep]:
    """The lines that give the reactions which the whole truss fixes; `known` takes them up."""
    left = list(reactions_from_whole(problem))
    while left:
        about = _with_one_unknown(problem, left, known)
        if about is None:
            abouts = _independent(problem, known)
            *first, last = _lines(problem, abouts, known)
            yield from first
            yield _finding(last, tuple(left), values, known, together=True)
            return
        (step,) = _lines(problem, (about,), known)
        yield _finding(step, step.unknown, values, known)
        left = [name for name in left if name not in known]


def _with_one_unknown(
    problem: Problem, left: Sequence[str], known: Mapping[str, float]
) -> Equation | None:
    """The plainest equation of the whole truss with one unknown, and that one to be found: a sum of
    moments at first, then a sum of forces."""
    found: list[tuple[bool, int, int, Equation]] = []
    for place, about in enumerate(_candidates(problem)):
        unknown = [n for n in _unknowns(problem, about) if n not in known]
        if len(unknown) == 1 and unknown[0] in left:
            terms = sum(1 for term in equation_of(problem, about).terms if term.coefficient)
            found.append((isinstance(about, M) == bool(known), terms, place, about))
    return min(found, key=lambda each: each[:3])[3] if found else None


def _candidates(problem: Problem) -> Iterator[Equation]:
    """Equations of the whole truss: moments where two reactions meet, sums, moments elsewhere."""
    supported = {support.joint for support in problem.supports}
    yield from (M(joint.name) for joint in problem.joints if joint.name in supported)
    yield Fx()
    yield Fy()
    yield from (M(point) for point in _meetings(problem))
    yield from (M(joint.name) for joint in problem.joints if joint.name not in supported)


def _meetings(problem: Problem) -> Iterator[tuple[float, float]]:
    """Where the lines of action of two reactions meet, away from the joints."""
    forces = [force for force in whole(problem).forces if force.kind == "reaction"]
    for place, one in enumerate(forces):
        for other in forces[place + 1 :]:
            turn = one.x * other.y - one.y * other.x
            if abs(turn) <= NEAR or one.joint == other.joint:
                continue
            dx, dy = other.at[0] - one.at[0], other.at[1] - one.at[1]
            reach = (dx * other.y - dy * other.x) / turn
            x, y = one.at[0] + reach * one.x, one.at[1] + reach * one.y
            yield round(x, 9) + 0.0, round(y, 9) + 0.0


def _independent(problem: Problem, known: Mapping[str, float]) -> tuple[Equation, ...]:
    """Three equations of the whole truss, those with something unknown in them."""
    supported = next(support.joint for support in problem.supports)
    return tuple(
        about
        for about in (M(supported), Fx(), Fy())
        if any(name not in known for name in _unknowns(problem, about))
    )


def _unknowns(problem: Problem, about: Equation) -> list[str]:
    return unknown_in(problem, about, ())


def _lines(
    problem: Problem, abouts: Sequence[Equation], known: Mapping[str, float]
) -> Iterator[WrittenStep]:
    """The lines of some equations with all known values put in, nothing found yet."""
    have = dict(known)
    for about in abouts:
        unknown = tuple(name for name in _unknowns(problem, about) if name not in have)
        yield WrittenStep(about, written(equation_of(problem, about), have), have, unknown=unknown)


def _finding(
    step: WrittenStep,
    finds: tuple[str, ...],
    values: Mapping[str, float],
    known: dict[str, float],
    together: bool = False,
) -> WrittenStep:
    """The step with what it gives, which is known from then on."""
    gives = {name: values[name] for name in finds}
    known.update(gives)
    return replace(step, gives=gives, with_last=together)


def _bodies(
    problem: Problem, values: Mapping[str, float], known: dict[str, float]
) -> Iterator[Body]:
    """The joints and parts in their order, each with its lines; `known` takes up what they give."""
    visited: set[str] = set()
    while True:
        yield from _joints(problem, values, known, visited)
        part = part_to_cut(problem, known)
        if not part:
            return
        yield Body("", part, tuple(_on_part(problem, part, values, known)))


def _on_part(
    problem: Problem, part: tuple[str, ...], values: Mapping[str, float], known: dict[str, float]
) -> Iterator[WrittenStep]:
    """The sums of a part, each with one unknown, as long as there is one."""
    while (about := sum_for_one(problem, part, known)) is not None:
        (step,) = _lines(problem, (about,), known)
        yield _finding(step, step.unknown, values, known)


def _joints(
    problem: Problem, values: Mapping[str, float], known: dict[str, float], visited: set[str]
) -> Iterator[Body]:
    """The joints that were not `visited` in their order, each with its two lines."""
    for turn in joint_order(problem, tuple(known)).steps:
        if turn.across:
            about = _across(problem, turn.joint, turn.finds[0], known)
            (step,) = _lines(problem, (about,), known)
            yield Body(turn.joint, (), (_finding(step, turn.finds, values, known),))
        elif turn.joint not in visited:
            visited.add(turn.joint)
            yield Body(turn.joint, (), tuple(_at_joint(problem, turn.joint, values, known)))


def _at_joint(
    problem: Problem, joint: str, values: Mapping[str, float], known: dict[str, float]
) -> Iterator[WrittenStep]:
    """Both sums of a joint, first the one with fewer unknowns."""
    sums: list[Equation] = [Fx(joint), Fy(joint)]
    sums.sort(key=lambda about: len([n for n in _unknowns(problem, about) if n not in known]))
    first, *_ = _lines(problem, sums[:1], known)
    together = len(first.unknown) == 2
    yield _finding(first, () if together else first.unknown, values, known)
    second, *_ = _lines(problem, sums[1:], known)
    yield _finding(second, second.unknown, values, known, together)


def _across(problem: Problem, joint: str, finds: str, known: Mapping[str, float]) -> Along:
    """The sum at a joint across the line in which all its other unknown forces lie."""
    line = next(
        force
        for force in joint_body(problem, joint).forces
        if force.size is None and force.name != finds and force.name not in known
    )
    return Along(round(math.degrees(math.atan2(line.x, -line.y)), 9), joint)

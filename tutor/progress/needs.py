"""Which skills does a problem train? How many of the places that a walk passes need each of them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping

from tutor.judge import Fx, Fy, M, Value
from tutor.lesson.place import Place
from tutor.lesson.state import State
from tutor.model import Problem, Support
from tutor.skills.seen import may_be_made
from tutor.skills.table import CLAIMED
from tutor.statics import Unsolvable, solve, zero_force

ZERO_SKILLS = ("step zero", "zero-loaded", "zero-third-member", "zero-rule")


def needs_of(problem: Problem) -> Mapping[str, int]:
    """By the code of a skill, in how many places of a walk through the problem it is needed.

    The sums are ΣFx and ΣFy of the whole and of each joint, and ΣM about each support.
    """
    try:
        forces = solve(problem).values
    except Unsolvable:
        return Counter(["step idealise"])
    found = Counter(_steps(problem))
    state = State(problem)
    for place in _places(problem):
        found.update(may_be_made(state, place))
    for support in problem.supports:
        found.update(_at(problem, support))
    found.update(_beside(problem, forces, found))
    if problem.spreads:
        found.update(dict.fromkeys(CLAIMED["shares"], len(problem.spreads)))
    if seen := len(zero_force(problem)):
        found.update(dict.fromkeys(ZERO_SKILLS, seen))
    return found


def _steps(problem: Problem) -> dict[str, int]:
    """How often a walk asks for each step: its supports, its sums and its values are the student's."""
    return {
        "step idealise": 1,
        "step free body": len(problem.supports),
        "step reactions": len(problem.reactions),
        "step joints": len(problem.members),
        "step values": len(problem.unknowns),
        "step close": 1,
    }


def _places(problem: Problem) -> Iterator[Place]:
    """The places of the lines and values that a walk usually has."""
    yield from (Fx(), Fy())
    yield from (M(support.joint) for support in problem.supports)
    for joint in problem.joints:
        yield from (Fx(joint.name), Fy(joint.name))
    yield from (Value(name) for name in problem.unknowns)


def _beside(
    problem: Problem, forces: Mapping[str, float], found: Mapping[str, int]
) -> dict[str, int]:
    """Mistakes that no single term of a line shows, by what they are made at: our own judgement."""
    pushed = sum(value < 0.0 for value in forces.values())
    return {
        "sense": len(problem.reactions),
        "minus": pushed,
        "complement": found.get("component", 0),
    }


def _at(problem: Problem, support: Support) -> tuple[str, ...]:
    """What can go wrong at a support, and be trained there."""
    names = [r for r in problem.reactions if r.joint == support.joint]
    if len(names) > 1:
        return ("too-few-reactions", "invented-moment")
    way = names[0].direction
    upright = abs(way.x) < abs(way.y) * 1e-9
    return ("too-many-reactions", *(() if upright else ("reaction-direction",)))

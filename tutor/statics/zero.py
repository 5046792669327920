"""Which members can be seen to carry no force, and by which rule?

At a joint in equilibrium, if all forces but one lie in one line, that one is zero, because nothing
balances its part across the line. The rules below are the cases of this that students learn by
name; they are common practice, no single source.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from tutor.model import Problem
from tutor.statics.body import Force, joint_body, load_name
from tutor.text import listed

Rule = Literal["one", "two", "two-along", "three", "three-along"]
PARALLEL = 1e-9


@dataclass(frozen=True)
class ZeroForce:
    """`member` is zero: seen at `joint`, by `rule`, where the forces `others` still act.

    Rules: "one": it is the only force at the joint. "two": two forces not in one line, no load.
    "two-along": two members, and every load and reaction acts along the other one. "three": two
    members in one line and this one across it, no load. "three-along": so, with the loads and
    reactions along that line. `others` are the members, reactions and loads of the other line and
    `members` the members among them; `said` states the reason.
    """

    member: str
    joint: str
    rule: Rule
    others: tuple[str, ...]
    members: tuple[str, ...]
    said: str


def zero_force(problem: Problem, known: Iterable[str] = ()) -> tuple[ZeroForce, ...]:
    """The members that can be seen to be zero, in the order in which they can be seen.

    `known` names unknowns already known to be zero, members or reactions. A member found zero drops
    out, which may show the next one.
    """
    zero = set(known)
    found: list[ZeroForce] = []
    while new := _next(problem, zero):
        found += new
        zero.update(seen.member for seen in new)
    return tuple(found)


def shown_zero(problem: Problem, member: str, known: Iterable[str] = ()) -> tuple[ZeroForce, ...]:
    """How `member` can be seen to be zero, at either end, with `known` being zero already."""
    zero = set(known) - {member}
    ends = (problem.member[member].start, problem.member[member].end)
    seen = (_seen(problem, joint, member, zero) for joint in ends)
    return tuple(one for one in seen if one is not None)


def _next(problem: Problem, zero: set[str]) -> list[ZeroForce]:
    """What the first joint that shows something shows: one member, or both by rule "two"."""
    for joint in problem.joints:
        seen = [
            _seen(problem, joint.name, member.name, zero)
            for member in problem.meeting[joint.name]
            if member.name not in zero
        ]
        found = [one for one in seen if one is not None]
        if found:
            return found
    return []


def _seen(problem: Problem, joint: str, member: str, zero: set[str]) -> ZeroForce | None:
    forces = _acting(problem, joint, zero)
    alone = next(force for force in forces if force.name == member)
    others = [force for force in forces if force is not alone]
    if others and (_in_line(alone, others[0]) or not _in_one_line(others)):
        return None
    if others and all(force.kind == "load" for force in others):
        return None
    rule = _rule(others)
    names = tuple(force.name for force in others)
    beside = tuple(force.name for force in others if force.kind == "member")
    return ZeroForce(member, joint, rule, names, beside, _reason(joint, alone, others, rule))


def _acting(problem: Problem, joint: str, zero: set[str]) -> list[Force]:
    """The forces at the joint that are not known to be zero; loads that cancel do not act."""
    forces = [f for f in joint_body(problem, joint).forces if f.name not in zero]
    loads = [f for f in forces if f.kind == "load"]
    total = sum(f.size or 0.0 for f in loads)
    x = sum(f.x * (f.size or 0.0) for f in loads)
    y = sum(f.y * (f.size or 0.0) for f in loads)
    others = [f for f in forces if f.kind != "load"]
    if max(abs(x), abs(y)) <= PARALLEL * total:
        return others
    return others + _resultant(loads, x, y)


def _resultant(loads: list[Force], x: float, y: float) -> list[Force]:
    """The loads as they are where they lie in one line, else their resultant."""
    if _in_one_line(loads):
        return loads
    size = (x * x + y * y) ** 0.5
    first = loads[0]
    return [Force(load_name(first.joint), "load", first.joint, first.at, x / size, y / size, size)]


def _in_line(one: Force, other: Force) -> bool:
    return abs(one.x * other.y - one.y * other.x) < PARALLEL


def _in_one_line(forces: list[Force]) -> bool:
    return all(_in_line(forces[0], force) for force in forces[1:])


def _rule(others: list[Force]) -> Rule:
    members = sum(1 for force in others if force.kind == "member")
    beside = len(others) - members
    if not others:
        return "one"
    if members == 0:
        return "two"
    if members == 1:
        return "two-along" if beside else "two"
    return "three-along" if beside else "three"


def _reason(joint: str, alone: Force, others: list[Force], rule: Rule) -> str:
    if rule == "one":
        return f"At {joint} only {alone.name} is left to act, so it is zero."
    if rule == "two" and others[0].kind == "member":
        pair = f"{alone.name} and {others[0].name}"
        return (
            f"At {joint} only {pair} meet, not in one line, and nothing else acts: both are zero."
        )
    loads = sum(force.kind == "load" for force in others)
    rest = listed(list(dict.fromkeys(_called(force, loads) for force in others)))
    line = "acts along another line" if len(others) == 1 else "act along one line"
    return f"At {joint}, {rest} {line}; nothing but {alone.name} acts across it, so {alone.name} is zero."


def _called(force: Force, loads: int) -> str:
    if force.kind != "load":
        return force.name
    return f"the load{'s' if loads > 1 else ''} at {force.joint}"

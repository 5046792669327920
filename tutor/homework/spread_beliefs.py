"""What may somebody believe of a load that is spread along members, and what does each joint then take?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from tutor.homework.lenses import Lens, Seen
from tutor.model import Load, Problem
from tutor.model.spread import Spread, brought_to_joints, on_member
from tutor.statics import Force

MOST_MEMBERS = 8
Shares = Mapping[str, tuple[float, float]]
"""What each joint takes of all that is spread, to the right and up (force unit)."""


def of_spread(problem: Problem) -> Iterator[tuple[str, str | None, Lens]]:
    """Each such belief: its name, the member it is about, how the loads look to who holds it.

    Once with the reactions found so, once at the joints alone.
    """
    for name, member, shares in _beliefs(problem):
        see = _taken(shares)
        yield name, member, Lens(joint=see, whole=see)
        yield name, member, Lens(joint=see)


def _beliefs(problem: Problem) -> Iterator[tuple[str, str | None, Shares]]:
    spreads = problem.spreads
    if not spreads:
        return
    for first in (True, False):
        yield "spread-end", None, _at_one_end(problem, first)
    each = [s if s.total else replace(s, on=(n,), total=True) for s in spreads for n in s.on]
    yield "spread-total", None, _brought(problem, each)
    yield "spread-total", None, _brought(problem, [replace(s, total=True) for s in spreads])
    other = [replace(s, per="length" if s.per == "span" else "span") for s in spreads]
    yield "spread-measure", None, _brought(problem, other)
    members = list(dict.fromkeys(name for s in spreads for name in s.on))
    for name in members[:MOST_MEMBERS]:
        left = [replace(s, on=tuple(n for n in s.on if n != name)) for s in spreads if not s.total]
        if len(left) == len(spreads):
            yield "spread-left-out", name, _brought(problem, [s for s in left if s.on])


def _brought(problem: Problem, spreads: list[Spread]) -> Shares:
    loads = brought_to_joints(spreads, problem.joint, problem.member)
    return {load.joint: load.vector for load in loads}


def _at_one_end(problem: Problem, first: bool) -> Shares:
    """All of each member's load at its left end, or at its right one; at the lower or upper one if upright."""
    found: dict[str, tuple[float, float]] = {}
    for spread in problem.spreads:
        for name in spread.on:
            member = problem.member[name]
            ends = sorted((member.start, member.end), key=lambda end: problem.joint[end].at)
            joint = ends[0] if first else ends[-1]
            right, up = found.get(joint, (0.0, 0.0))
            pushes = tuple(on_member(spread, problem.joint, problem.member, name))
            more = Load(joint, pushes).vector
            found[joint] = right + more[0], up + more[1]
    return found


def _taken(shares: Shares) -> Seen:
    """What of all that is spread is seen at each joint; all other forces as they are."""

    def see(force: Force) -> tuple[float, float]:
        source = force.source
        if not isinstance(source, Load) or not source.spread or not force.size:
            return force.x, force.y
        right, up = shares.get(force.joint, (0.0, 0.0))
        return right * abs(force.x) / force.size, up * abs(force.y) / force.size

    return see

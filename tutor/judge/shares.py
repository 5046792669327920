"""Is this what a joint takes of the loads that lie on members, and if not, which mistake is it?"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator
from dataclasses import dataclass, replace
from itertools import combinations

from tutor.judge.claims import CLAIMS
from tutor.judge.verdict import Mistake
from tutor.model import Load, Member, Problem, Spread
from tutor.model.parts import PushDirection
from tutor.model.spread import on_member
from tutor.text import listed

Vector = tuple[float, float]
TINY = 1e-9
MOST_TOGETHER = 8


@dataclass(frozen=True)
class JointShare:
    """What somebody lets a joint take: the components to the right and up, each within `radius`."""

    joint: str
    right: float
    up: float
    radius: float = 0.0


def loaded(problem: Problem) -> tuple[str, ...]:
    """The joints at which a member under a spread load ends, in the order of the problem."""
    ends = {end for member in _under(problem) for end in (member.start, member.end)}
    return tuple(joint.name for joint in problem.joints if joint.name in ends)


def true_share(problem: Problem, joint: str) -> Vector:
    """What a joint takes of all that is spread, to the right and up."""
    return _halves(problem, problem.spreads, _ending_at(problem, joint))


def ways_at(problem: Problem, joint: str) -> frozenset[PushDirection]:
    """The directions in which loads act on the members that end at a joint, or, where none does, on any."""
    here = {member.name for member in _ending_at(problem, joint)}
    spreads = [s for s in problem.spreads if here & set(s.on)] or problem.spreads
    return frozenset(way for spread in spreads for way, _ in spread.pushes)


def fits(problem: Problem, share: JointShare, true: Vector) -> bool:
    """Whether a share is this, to the figures written and the tolerance of the problem."""
    size = math.hypot(*true)
    slack = problem.tolerance.silent * size + min(share.radius, problem.tolerance.remark * size)
    return math.hypot(share.right - true[0], share.up - true[1]) <= slack + TINY * size


def is_right(problem: Problem, share: JointShare) -> bool:
    """Whether a joint takes this of all that is spread."""
    return fits(problem, share, true_share(problem, share.joint))


def with_own_load(problem: Problem, share: JointShare) -> bool:
    """Whether a share is right but for the load that acts at the joint anyway."""
    own = [load.vector for load in problem.given_loads if load.joint == share.joint]
    if not own:
        return False
    true = true_share(problem, share.joint)
    both = true[0] + sum(x for x, _ in own), true[1] + sum(y for _, y in own)
    return fits(problem, share, both)


def mistake_in(problem: Problem, share: JointShare, right: Collection[str]) -> Mistake:
    """Which mistake a wrong share shows; `right` are the joints whose shares are right."""
    here = _ending_at(problem, share.joint)
    code = next(_codes(problem, share, here, right))
    names = listed([member.name for member in here])
    return CLAIMS[code].told(joint=share.joint, members=names)


def _codes(
    problem: Problem, share: JointShare, here: list[Member], right: Collection[str]
) -> Iterator[str]:
    """The mistakes that explain a share, the most plausible first."""
    if not here:
        yield "spread-elsewhere"
        return
    true = true_share(problem, share.joint)
    if fits(problem, share, (2 * true[0], 2 * true[1])):
        between = any(len(_ending_at(problem, joint)) > len(here) for joint in right)
        yield "spread-end" if between else "spread-whole"
    size, given = math.hypot(*true), math.hypot(share.right, share.up)
    if abs(given - size) <= problem.tolerance.silent * size:
        yield "spread-way"
    for count in range(1, min(len(here), MOST_TOGETHER)):
        for some in combinations(here, count):
            if fits(problem, share, _halves(problem, problem.spreads, some)):
                yield "spread-neighbour"
    if any(fits(problem, share, wrong) for wrong in _without_length(problem, here)):
        yield "spread-length"
    if fits(problem, share, _halves(problem, _other_measure(problem), here)):
        yield "spread-slope"
    yield "spread-share"


def _under(problem: Problem) -> list[Member]:
    names = {name for spread in problem.spreads for name in spread.on}
    return [member for member in problem.members if member.name in names]


def _ending_at(problem: Problem, joint: str) -> list[Member]:
    """The members under a spread load that end at a joint."""
    return [member for member in _under(problem) if joint in (member.start, member.end)]


def _halves(problem: Problem, spreads: Collection[Spread], members: Collection[Member]) -> Vector:
    """Half of what lies on these members."""
    loads = [
        Load("", tuple(on_member(spread, problem.joint, problem.member, member.name)))
        for spread in spreads
        for member in members
        if member.name in spread.on
    ]
    return sum(load.vector[0] for load in loads) / 2, sum(load.vector[1] for load in loads) / 2


def _without_length(problem: Problem, here: Collection[Member]) -> Iterator[Vector]:
    """The sizes for each length taken as the force at the joint, of a member, or halved."""
    names = {member.name for member in here}
    sizes = [s for s in problem.spreads if not s.total and names & set(s.on)]
    for spread in sizes:
        x, y = Load("", spread.pushes).vector
        count = len(names & set(spread.on))
        for times in dict.fromkeys((1.0, 0.5, float(count), count / 2)):
            yield times * x, times * y


def _other_measure(problem: Problem) -> tuple[Spread, ...]:
    """The loads as if each were given by the other length."""
    return tuple(
        replace(spread, per="span" if spread.per == "length" else "length")
        for spread in problem.spreads
    )

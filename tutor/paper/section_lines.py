"""Where no joint goes on: which section does, and by which sums of the part that it cuts off?"""

from __future__ import annotations

from collections.abc import Collection, Iterator

from tutor.judge import Equation, Fx, Fy, M
from tutor.judge.about import equation_of
from tutor.model import Problem
from tutor.statics import cut_around, meetings, sections

MOST_MEMBERS = 60
"""In a larger truss no section is looked for: there are too many."""


def part_to_cut(problem: Problem, known: Collection[str]) -> tuple[str, ...]:
    """The joints of a part on which some sum has one unknown alone; of the parts of the first such
    section the one with fewer joints. Empty where there is none."""
    if len(problem.members) > MOST_MEMBERS:
        return ()
    for found in sections(problem, known):
        for part in sorted(found.parts, key=len):
            if len(part) > 1 and sum_for_one(problem, part, known) is not None:
                return part
    return ()


def sum_for_one(problem: Problem, part: tuple[str, ...], known: Collection[str]) -> Equation | None:
    """The plainest sum of a part in which one force alone is unknown: about a joint or along an axis
    before one about a point elsewhere, with few terms before many."""
    sums = list(_sums(problem, part))
    fitting = [
        (isinstance(about, M) and not isinstance(about.at, str), _terms(problem, about), place)
        for place, about in enumerate(sums)
        if len(unknown_in(problem, about, known)) == 1
    ]
    return sums[min(fitting)[2]] if fitting else None


def unknown_in(problem: Problem, about: Equation, known: Collection[str]) -> list[str]:
    """The unknowns of an equation that are not known yet."""
    linear = equation_of(problem, about).linear
    return [name for name in linear if name is not None and name not in known]


def _sums(problem: Problem, part: tuple[str, ...]) -> Iterator[Equation]:
    at_joints = {joint.at for joint in problem.joints}
    yield from (M(joint.name, part=part) for joint in problem.joints)
    yield from (Fx(part=part), Fy(part=part))
    points = meetings(problem, cut_around(problem, part))
    yield from (M(point, part=part) for point in points if point not in at_joints)


def _terms(problem: Problem, about: Equation) -> int:
    return sum(1 for term in equation_of(problem, about).terms if term.coefficient)

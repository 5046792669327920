"""Of what else is a line true: another point, another joint, another direction?"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from itertools import combinations
from typing import NamedTuple

from tutor.judge.about import Along, Equation, Fx, Fy, M
from tutor.judge.fit import fit
from tutor.judge.known_values import KnownValue, KnownValues
from tutor.judge.one_each import each_of, has_its_sizes, number_by_number
from tutor.judge.true_equation import TrueEquation, TrueTerm
from tutor.judge.typed import TypedEquation
from tutor.model import Problem, Tolerance

MOST_POINTS = 40
MOST_CUT = 3
FLAT = 0.02
"""Two forces whose directions differ by less than about a degree show none between them."""
WHOLE = 0.3
"""So near, in degrees, is a direction that rounded factors show to the whole one that is meant."""


class AlongWay(NamedTuple):
    """The direction of a force that is typed, in the student's sense, and the factor beside it."""

    x: float
    y: float
    factor: float


def true_of(
    line: TypedEquation,
    asked: TrueEquation,
    tolerance: Tolerance,
    strictly: bool = False,
    holds: Callable[[], bool] = lambda: True,
) -> Equation | None:
    """Another equation that the line says precisely, or None; `strictly`, number by number.

    So too for a multiple of a sum along a slope, which numbers meet by chance, unless the line `holds`.
    One of its own body comes first, then one that it says as it stands, then one of which it is a
    multiple.
    """
    multiple: Equation | None = None
    fits: dict[str | None, bool] = {}
    for about in _others(asked, line):
        if about.joint not in fits:
            fits[about.joint] = line.names <= forces_on(asked.problem, about.joint)
        if not fits[about.joint] or about == asked.about:
            continue
        other = TrueEquation(asked.problem, about, asked.own)
        found = fit(line, other, tolerance)
        if found is None or found.level != "silent" or not _says_something(other):
            continue
        if _by_chance(line, asked, other, tolerance):
            continue
        as_written = abs(found.scale) == 1.0
        strict = line.names and (strictly or _sum_for_moments(asked.about, about))
        of_its_sizes = not other.is_moment and has_its_sizes(line, asked, tolerance)
        if not as_written and (strict or of_its_sizes):
            continue
        by_number = strictly or (isinstance(about, Along) and not as_written and not holds())
        if not by_number or number_by_number(
            line, other.numbers(line.names), found.scale, tolerance
        ):
            if about.joint == asked.about.joint or math.isclose(abs(found.scale), 1.0):
                return about
            multiple = multiple or about
    return multiple


def _by_chance(
    line: TypedEquation, asked: TrueEquation, other: TrueEquation, tolerance: Tolerance
) -> bool:
    """Whether a line is of its own joint, number by number, and fits another's only in what it adds up to."""
    if other.about.joint in (None, asked.about.joint):
        return False
    return each_of(line, asked, tolerance) and not each_of(line, other, tolerance)


def along_some_slope(
    line: TypedEquation, asked: TrueEquation, tolerance: Tolerance
) -> Along | None:
    """The sum of forces at the joint asked about that a line is along a direction which its own factors give; or None."""
    joint = asked.about.joint
    if joint is None:
        return None
    across, up = (TrueEquation(asked.problem, each, asked.own).unknowns for each in _axes(joint))
    beside = [
        AlongWay(_factor(across, name), _factor(up, name), c.value)
        for name, c in line.unknowns.items()
        if name in across or name in up
    ]
    pairs = [
        (one, other) for one, other in combinations(beside, 2) if abs(_turn(one, other)) > FLAT
    ]
    if len(beside) < len(line.unknowns) or not pairs:
        return None
    one, other = max(pairs, key=lambda pair: abs(_turn(*pair)))
    turn = _turn(one, other)
    x = (one.factor * other.y - one.y * other.factor) / turn
    y = (one.x * other.factor - one.factor * other.x) / turn
    degrees = math.degrees(math.atan2(y, x)) % 180.0
    whole = round(degrees)
    about = Along(float(whole) if abs(degrees - whole) < WHOLE else degrees, joint)
    found = fit(line, TrueEquation(asked.problem, about, asked.own), tolerance)
    return about if found and found.level == "silent" and abs(found.scale) == 1.0 else None


def _factor(sums: Mapping[str, TrueTerm], name: str) -> float:
    return sums[name].per_unit if name in sums else 0.0


def _turn(one: AlongWay, other: AlongWay) -> float:
    return one.x * other.y - one.y * other.x


def forces_on(problem: Problem, joint: str | None) -> frozenset[str]:
    """The unknown forces on a joint, or on the truss as a whole: those of each of its equations."""
    if joint is None:
        return frozenset(problem.reaction)
    members = (member.name for member in problem.meeting[joint])
    held = (name for name, reaction in problem.reaction.items() if reaction.joint == joint)
    return frozenset((*members, *held))


def _sum_for_moments(asked: Equation, about: Equation) -> bool:
    """Whether a sum of forces would be taken for one of moments: nobody multiplies it by an arm."""
    return isinstance(asked, M) and not isinstance(about, M)


def _says_something(true: TrueEquation) -> bool:
    return any(s.true != 0.0 for s in (*true.unknowns.values(), *true.loads))


def _others(asked: TrueEquation, line: TypedEquation) -> Iterator[Equation]:
    problem = asked.problem
    own = asked.about.joint
    if own is not None:
        yield from _of_joint(problem, own)
    if own is None or any(name in problem.reaction for name in line.names):
        yield Fx()
        yield Fy()
        for name in _points(problem):
            yield M(name)
    yield from sums_at_joints(problem, line, own)


def _axes(joint: str) -> tuple[Fx, Fy]:
    return Fx(joint), Fy(joint)


def sums_at_joints(
    problem: Problem, line: TypedEquation, own: str | None = None
) -> Iterator[Equation]:
    """The sums of forces at the joints that the line may be about, apart from its own."""
    for joint in _touched(problem, line, own):
        yield Fx(joint)
        yield Fy(joint)


def true_of_part(
    line: TypedEquation, asked: TrueEquation, tolerance: Tolerance
) -> tuple[Equation | None, bool]:
    """The equation of a part cut off by a section that the line says precisely, or None.

    The first that it says number by number, else the first; and whether it is said so. Sections
    through at most three members are tried, those that the line names among them.
    """
    first: Equation | None = None
    problem = asked.problem
    named = {name for name in line.names if name in problem.member}
    if not 1 <= len(named) <= MOST_CUT or len(problem.joints) > MOST_POINTS:
        return None, False
    others = [m.name for m in problem.members if m.name not in named]
    for more in range(MOST_CUT - len(named) + 1):
        for extra in combinations(others, more):
            for about in _of_section(problem, named.union(extra)):
                other = TrueEquation(problem, about, asked.own)
                found = fit(line, other, tolerance)
                if found is None or found.level != "silent":
                    continue
                if number_by_number(line, other.numbers(line.names), found.scale, tolerance):
                    return about, True
                first = first or about
    return first, False


def _of_section(problem: Problem, cut: set[str]) -> Iterator[Equation]:
    """The equations of both parts of a section, if it divides the truss in two."""
    sides = _sides(problem, cut)
    if len(sides) != 2 or min(map(len, sides)) < 2:
        return
    for side in sides:
        joints = tuple(j.name for j in problem.joints if j.name in side)
        yield Fx(part=joints)
        yield Fy(part=joints)
        for joint in problem.joints:
            yield M(joint.name, part=joints)


def _sides(problem: Problem, cut: set[str]) -> list[set[str]]:
    """The sets of joints that still hang together when some members are cut."""
    left = {joint.name for joint in problem.joints}
    sides = []
    while left:
        side: set[str] = set()
        grow = [min(left)]
        while grow:
            joint = grow.pop()
            if joint not in side:
                side.add(joint)
                grow += [m.other(joint) for m in problem.meeting[joint] if m.name not in cut]
        sides.append(side)
        left -= side
    return sides


def _of_joint(problem: Problem, joint: str) -> Iterator[Equation]:
    yield Fx(joint)
    yield Fy(joint)
    here = problem.joint[joint].at
    for member in problem.meeting[joint]:
        there = problem.joint[member.other(joint)].at
        angle = math.degrees(math.atan2(there[1] - here[1], there[0] - here[0]))
        yield from _along_and_across(angle, joint)
    for reaction in problem.reaction.values():
        if reaction.joint == joint and not reaction.axis:
            way = reaction.direction
            yield from _along_and_across(math.degrees(math.atan2(way.y, way.x)), joint)


def _along_and_across(angle: float, joint: str) -> Iterator[Equation]:
    yield Along(angle % 180.0, joint)
    yield Along((angle + 90.0) % 180.0, joint)


def _points(problem: Problem) -> list[str]:
    if len(problem.joints) <= MOST_POINTS:
        return [joint.name for joint in problem.joints]
    named = [s.joint for s in problem.supports] + [load.joint for load in problem.loads]
    return list(dict.fromkeys(named))[:MOST_POINTS]


def _touched(problem: Problem, line: TypedEquation, own: str | None) -> list[str]:
    """The joints at which a force that is typed acts, all for numbers alone, apart from its own."""
    joints: list[str] = []
    if not line.names and len(problem.joints) <= MOST_POINTS:
        return [joint.name for joint in problem.joints if joint.name != own]
    for name in sorted(line.names):
        if name in problem.member:
            joints += [problem.member[name].start, problem.member[name].end]
        elif name in problem.reaction:
            joints.append(problem.reaction[name].joint)
    return [joint for joint in dict.fromkeys(joints) if joint != own]


def holds_at_solution(
    line: TypedEquation,
    problem: Problem,
    own: KnownValues,
    values: Mapping[str, float],
    tolerance: Tolerance,
) -> bool:
    """Whether the finished truss obeys the line, with the student's own values where they are right.

    What holds of the truss itself holds, however the student's values are rounded.
    """
    if not line.names:
        return False
    near = {
        name: found
        for name in line.unknowns
        if (found := own.known.get(name)) is not None
        and abs(found.value - own.sign(name) * values[name])
        <= tolerance.remark * abs(values[name]) + found.radius
    }
    return any(_obeys(line, own, values, tolerance, known) for known in (near, {}))


def _obeys(
    line: TypedEquation,
    own: KnownValues,
    values: Mapping[str, float],
    tolerance: Tolerance,
    known: Mapping[str, KnownValue],
) -> bool:
    """Whether the line holds with the `known` values and, for all others, the true ones."""
    total, parts, slack = line.total, abs(line.total), line.radius
    for name, typed in line.unknowns.items():
        found = known.get(name)
        value = own.sign(name) * values[name] if found is None else found.value
        coefficient, radius = typed.value, typed.radius
        total += coefficient * value
        parts += abs(coefficient * value)
        slack += radius * abs(value) + (abs(coefficient) * found.radius if found else 0.0)
    return abs(total) <= min(slack, tolerance.silent * parts) + 1e-9 * parts

"""Into which parts does a section divide the truss, and where do the lines of cut members meet?

A section through members is one that leaves the truss in two parts: each is a free body of its own,
on which the cut members, its loads and its reactions act. Source: the method of sections (A. Ritter,
1863), as every textbook of statics has it.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from tutor.model import Problem

Point = tuple[float, float]
PARALLEL = 1e-9
SAME_PLACE = 1e-6


@dataclass(frozen=True)
class Section:
    """Members cut, and the joints of each part that is left, the largest part first.

    `needless` are cut members with both ends in one part: the section does not need them.
    """

    cut: tuple[str, ...]
    parts: tuple[tuple[str, ...], ...]
    needless: tuple[str, ...]

    @property
    def divides(self) -> bool:
        """Whether it leaves just two parts, with every cut member between them."""
        return len(self.parts) == 2 and not self.needless

    def part_with(self, joint: str) -> tuple[str, ...]:
        """The joints of the part that this joint is in. KeyError where there is none."""
        for part in self.parts:
            if joint in part:
                return part
        raise KeyError(joint)


def section_through(problem: Problem, cut: Iterable[str]) -> Section:
    """What cutting these members leaves. KeyError for a member that is not there."""
    chosen = set(cut)
    if strange := chosen - problem.member.keys():
        raise KeyError(min(strange))
    names = tuple(member.name for member in problem.members if member.name in chosen)
    home = _homes(problem, chosen)
    parts: dict[str, list[str]] = {}
    for joint in problem.joints:
        parts.setdefault(home[joint.name], []).append(joint.name)
    needless = tuple(
        name for name in names if home[problem.member[name].start] == home[problem.member[name].end]
    )
    ordered = sorted(parts.values(), key=len, reverse=True)
    return Section(names, tuple(tuple(part) for part in ordered), needless)


def round_one_joint(problem: Problem) -> tuple[tuple[str, ...], str]:
    """The members of one joint, and the joint: cut, they leave it by itself, so that the section finds
    no more than the joint does. One with three members, or the fewest, where there is one."""
    among = {joint: tuple(m.name for m in met) for joint, met in problem.meeting.items()}
    ranked = sorted(among, key=lambda joint: (len(among[joint]) != 3, len(among[joint])))
    alone = (joint for joint in ranked if section_through(problem, among[joint]).divides)
    joint = next(alone, ranked[0])
    return among[joint], joint


def _homes(problem: Problem, cut: Collection[str]) -> dict[str, str]:
    """Each joint, with the first joint that it still hangs together with."""
    home: dict[str, str] = {}
    for joint in problem.joints:
        if joint.name in home:
            continue
        home[joint.name] = joint.name
        waiting = [joint.name]
        while waiting:
            at = waiting.pop()
            for member in problem.meeting[at]:
                far = member.other(at)
                if member.name not in cut and far not in home:
                    home[far] = joint.name
                    waiting.append(far)
    return home


def meetings(problem: Problem, members: Sequence[str]) -> dict[Point, tuple[str, str]]:
    """Where the lines of two of these members meet, each point once, with the first such pair.

    A point at a joint has exactly the place of that joint.
    """
    found: dict[Point, tuple[str, str]] = {}
    for one, other in combinations(members, 2):
        point = _meeting(problem, one, other)
        if point is not None and all(not _near(problem, point, known) for known in found):
            found[point] = (one, other)
    return found


def _meeting(problem: Problem, one: str, other: str) -> Point | None:
    (x, y), (ux, uy) = _line(problem, one)
    (p, q), (vx, vy) = _line(problem, other)
    turn = ux * vy - uy * vx
    if abs(turn) <= PARALLEL * ((ux**2 + uy**2) * (vx**2 + vy**2)) ** 0.5:
        return None
    reach = ((p - x) * vy - (q - y) * vx) / turn
    point = (x + reach * ux, y + reach * uy)
    for joint in problem.joints:
        if _near(problem, point, joint.at):
            return joint.at
    return round(point[0], 9) + 0.0, round(point[1], 9) + 0.0


def _line(problem: Problem, name: str) -> tuple[Point, Point]:
    member = problem.member[name]
    start, end = problem.joint[member.start].at, problem.joint[member.end].at
    return start, (end[0] - start[0], end[1] - start[1])


def _near(problem: Problem, one: Point, other: Point) -> bool:
    reach = max(max(map(abs, joint.at)) for joint in problem.joints) or 1.0
    return all(abs(a - b) <= SAME_PLACE * reach for a, b in zip(one, other, strict=True))


def sections(problem: Problem, known: Collection[str], most: int = 3) -> Iterator[Section]:
    """The sections that cut at most `most` members not in `known`, the fewest such first.

    Members in `known` are cut as well where they lie between the parts.
    """
    unknown = [member.name for member in problem.members if member.name not in known]
    seen: set[tuple[str, ...]] = set()
    for count in range(1, most + 1):
        for cut in combinations(unknown, count):
            for found in _through(problem, cut, known):
                if found.cut not in seen:
                    seen.add(found.cut)
                    yield found


def _through(problem: Problem, cut: Sequence[str], known: Collection[str]) -> Iterator[Section]:
    """The sections whose unknown members are just these."""
    home = _homes(problem, {*cut, *known})
    ends = _ends(problem, cut[0])
    for start, far in (ends, ends[::-1]):
        inside = {joint for joint, first in home.items() if first == home[start]}
        between = cut_around(problem, inside)
        if {name for name in between if name not in known} != set(cut):
            continue
        found = section_through(problem, between)
        if len(found.parts) > 2:
            found = section_through(problem, cut_around(problem, found.part_with(far)))
        if found.divides and set(found.cut) - set(known) == set(cut):
            yield found


def cut_around(problem: Problem, inside: Collection[str]) -> tuple[str, ...]:
    """The members with one end among these joints: those that hold them to the rest."""
    return tuple(m.name for m in problem.members if (m.start in inside) != (m.end in inside))


def _ends(problem: Problem, member: str) -> tuple[str, str]:
    return problem.member[member].start, problem.member[member].end

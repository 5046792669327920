"""Is a truss with its loads and reactions symmetrical, and which forces are then the same on both sides?

Symmetrical means: mirrored in a vertical or a level line, the joints, members, loads and reactions come to
lie on each other. Then a member carries what its mirror image carries. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field

from tutor.judge.values import largest_load
from tutor.model import Problem
from tutor.statics import reaction_forces

NEARLY = 1e-6

Point = tuple[float, float]


@dataclass(frozen=True)
class Mirror:
    """`images` gives the mirror image of each member, and of each reaction along the line; else `why` there is none.

    `shape` gives the mirror image of each member also where loads or reactions alone are not alike.
    """

    images: Mapping[str, str] = field(default_factory=dict)
    why: str = ""
    shape: Mapping[str, str] = field(default_factory=dict)


def mirrored(problem: Problem, values: Mapping[str, float]) -> Mirror:
    """The mirror images of a truss, in the line in which it is symmetrical; `values` are the true ones."""
    upright, level = (_in_line(problem, values, flip) for flip in (True, False))
    return upright if upright.images or not level.images else level


def _in_line(problem: Problem, values: Mapping[str, float], upright: bool) -> Mirror:
    spots = {joint.name: joint.at for joint in problem.joints}
    along = [spot[0] if upright else spot[1] for spot in spots.values()]
    middle = min(along) + max(along)
    size = max(max(abs(x), abs(y)) for x, y in spots.values())

    def image(spot: Point) -> Point:
        return (middle - spot[0], spot[1]) if upright else (spot[0], middle - spot[1])

    joints: dict[str, str] = {}
    for name, spot in spots.items():
        other = next((n for n, at in spots.items() if _near(at, image(spot), size)), None)
        if other is None:
            return Mirror(why=f"joint {name} has no mirror image")
        joints[name] = other
    images: dict[str, str] = {}
    for member in problem.members:
        found = problem.between(joints[member.start], joints[member.end])
        if found is None:
            return Mirror(why=f"{member.name} has no mirror image")
        images[member.name] = found.name

    def flip(push: Point) -> Point:
        return (-push[0], push[1]) if upright else (push[0], -push[1])

    for what, pushes in (("loads", _loads), ("reactions", _reactions(values))):
        for name, other in joints.items():
            if not _near(
                pushes(problem, other), flip(pushes(problem, name)), largest_load(problem)
            ):
                why = f"the {what} at {name} and on the other side are not alike"
                return Mirror(why=why, shape=images)
    along_line = dict(_reactions_along(problem, joints, upright))
    return Mirror({**images, **along_line}, shape=images)


def _near(one: Point, other: Point, size: float) -> bool:
    return max(abs(one[0] - other[0]), abs(one[1] - other[1])) <= NEARLY * size


def _loads(problem: Problem, joint: str) -> Point:
    vectors = [load.vector for load in problem.loads if load.joint == joint]
    return sum(across for across, _ in vectors), sum(up for _, up in vectors)


def _reactions(values: Mapping[str, float]) -> Callable[[Problem, str], Point]:
    def pushes(problem: Problem, joint: str) -> Point:
        forces = reaction_forces(problem, joint)
        return sum(values[f.name] * f.x for f in forces), sum(values[f.name] * f.y for f in forces)

    return pushes


def _reactions_along(
    problem: Problem, joints: Mapping[str, str], upright: bool
) -> Iterator[tuple[str, str]]:
    """The reactions that push along the line of symmetry, each with the one on the other side."""
    for one in problem.reactions:
        for other in problem.reactions:
            way, across = one.direction, one.direction.x if upright else one.direction.y
            same = way.x * other.direction.x + way.y * other.direction.y > 0
            if joints[one.joint] == other.joint and same and across == 0.0:
                yield one.name, other.name

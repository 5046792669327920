"""Which trusses do the tests try? Random valid ones, and the classic families.

`trusses()` and `wall_trusses()` are hypothesis strategies, `make_truss(seed, joints)` is the same
generator on a plain seed. All of them are statically determinate and stable by construction: a
triangle grows by one joint and two members at a time (a simple truss), and is held either by three
reactions that neither run parallel nor meet in one point, or, in `wall_trusses`, by two pins that
stand in for the member between them.
"""

from __future__ import annotations

import math
import random
from collections.abc import Callable, Iterable, Iterator, Sequence
from fractions import Fraction
from typing import Any, TypeVar

from families import fink, howe, member_name, pratt, root, warren
from hypothesis import strategies as st

from tutor.model import Joint, Load, Member, Problem, Reaction, Support
from tutor.model.support import reactions_of
from tutor.notation import Exact

T = TypeVar("T")
Choose = Callable[[Sequence[Any]], Any]
Point = tuple[int, int]

__all__ = ["fink", "howe", "make_truss", "pratt", "trusses", "wall_trusses", "warren"]

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
FORCE_UNITS = ("kN", "N", "MN", "lb", "kip")
LENGTH_SCALES: tuple[tuple[str, Fraction], ...] = (
    ("m", Fraction(1)),
    ("m", Fraction(3, 2)),
    ("ft", Fraction(4)),
    ("in", Fraction(12)),
    ("cm", Fraction(50)),
    ("mm", Fraction(1000)),
)
SIZES = (*(Fraction(n) for n in (12, 5, 20, 1, 36, 100, 7)), Fraction(9, 2), Fraction(31, 4))
LOAD_ANGLES = (270, 225, 300, 210, 330, 240, 15, 60, 135, 180)
ROLLER_ANGLES = (90, 270, 0, 180, 60, 120, 45, 135, 30, 150, 240, 15, 285)
LINK_STEPS: tuple[Point, ...] = (
    (-1, 4), (3, 4), (-4, 3), (5, 12), (0, -2), (3, 0), (1, 1), (-2, -1), (2, -3)
)  # fmt: skip


def make_truss(seed: int, joints: int, *, wall: bool = False) -> Problem:
    """A random valid problem with `joints` joints (3 or more); the same seed, the same problem."""
    return grow(random.Random(seed).choice, joints, wall=wall)


@st.composite
def trusses(draw: Any, min_joints: int = 3, max_joints: int = 8) -> Problem:
    """Determinate, stable problems held by three reactions: pins, rollers of any slope, links."""
    count = draw(st.integers(min_joints, max_joints))
    return grow(lambda options: draw(st.sampled_from(options)), count)


@st.composite
def wall_trusses(draw: Any, min_joints: int = 3, max_joints: int = 8) -> Problem:
    """Determinate, stable problems on two pins: four reactions, which the whole alone won't give."""
    count = draw(st.integers(min_joints, max_joints))
    return grow(lambda options: draw(st.sampled_from(options)), count, wall=True)


def grow(choose: Choose, count: int, *, wall: bool = False) -> Problem:
    """A simple truss with `count` joints, every choice left to `choose(options)`."""
    points, edges = _shape(choose, count)
    names = _names(choose, count)
    force = choose(FORCE_UNITS)
    length, scale = choose(LENGTH_SCALES)
    tall = choose((1, 1, 1, 3))
    joints = tuple(
        Joint(name, Exact.of(scale * x), root(tall, scale * y))
        for name, (x, y) in zip(names, points, strict=True)
    )
    if wall:
        held = choose(edges)
        edges = [edge for edge in edges if edge != held]
        supports = [Support(names[end], "pin") for end in held]
    else:
        supports = _supports(choose, joints, scale)
    pinned = {support.joint for support in supports if support.kind == "pin"}
    return Problem(
        title="A grown truss",
        force=force,
        length=length,
        joints=joints,
        members=tuple(_member(choose, names[a], names[b]) for a, b in edges),
        supports=tuple(supports),
        loads=_loads(choose, names, pinned),
    )


def _names(choose: Choose, count: int) -> list[str]:
    if count <= len(LETTERS) and choose((True, True, True, False)):
        return list(LETTERS[:count])
    return [f"{'LU'[i % 2]}{i // 2}" for i in range(count)]


def _member(choose: Choose, a: str, b: str) -> Member:
    one, other = (a, b) if choose((True, False)) else (b, a)
    return Member(member_name(one, other), one, other)


def _turning(options: Sequence[T], start: int) -> Iterator[T]:
    yield from options[start:]
    yield from options[:start]


def _shape(choose: Choose, count: int) -> tuple[list[Point], list[tuple[int, int]]]:
    points: list[Point] = [(0, 0), (choose((4, 3, 2)), choose((0, 0, 1)))]
    edges = [(0, 1)]
    while len(points) < count:
        pairs = edges
        if len(points) > 3 and choose((True, True, False)) is False:
            pairs = [(a, b) for a in range(len(points)) for b in range(a)]
        placed = _place(choose, points, edges, pairs) or _place(choose, points, edges, edges)
        assert placed is not None
        point, pair = placed
        edges += [(pair[0], len(points)), (pair[1], len(points))]
        points.append(point)
    return points, edges


def _place(
    choose: Choose,
    points: list[Point],
    edges: list[tuple[int, int]],
    pairs: list[tuple[int, int]],
) -> tuple[Point, tuple[int, int]] | None:
    near = [(dx, dy) for dx in range(-3, 4) for dy in range(-3, 4)]
    near.sort(key=lambda step: (step[0] ** 2 + step[1] ** 2, step))
    first = choose(range(len(near)))
    for a, b in _turning(pairs, choose(range(len(pairs)))):
        middle = (points[a][0] + points[b][0]) // 2, (points[a][1] + points[b][1]) // 2
        for dx, dy in _turning(near, first):
            new = middle[0] + dx, middle[1] + dy
            if _fits(new, points, edges, a, b):
                return new, (a, b)
    return None


def _fits(new: Point, points: list[Point], edges: list[tuple[int, int]], a: int, b: int) -> bool:
    if new in points or _sine(new, points[a], points[b]) < 0.4:
        return False
    if any(_off_line(new, points[p], points[q]) < 0.3 for p, q in edges):
        return False
    for end in (a, b):
        others = (p for i, p in enumerate(points) if i != end)
        if any(_off_line(p, new, points[end]) < 0.3 for p in others):
            return False
        if any(
            end not in edge and _cross(new, points[end], *(points[i] for i in edge))
            for edge in edges
        ):
            return False
    return True


def _turn(o: Point, p: Point, q: Point) -> int:
    return (p[0] - o[0]) * (q[1] - o[1]) - (p[1] - o[1]) * (q[0] - o[0])


def _sine(at: Point, p: Point, q: Point) -> float:
    return abs(_turn(at, p, q)) / (math.dist(at, p) * math.dist(at, q))


def _cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    return (_turn(a, b, c) > 0) != (_turn(a, b, d) > 0) and (_turn(c, d, a) > 0) != (
        _turn(c, d, b) > 0
    )


def _off_line(p: Point, a: Point, b: Point) -> float:
    """Distance of p from the segment ab."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    along = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy)
    along = min(1.0, max(0.0, along))
    return math.dist(p, (a[0] + along * dx, a[1] + along * dy))


def _supports(choose: Choose, joints: Sequence[Joint], scale: Fraction) -> list[Support]:
    for _ in range(6):
        first, second, third = _three(choose, joints)
        if choose((True, True, False)):
            supports = [Support(first.name, "pin"), _single(choose, second, joints, scale)]
        else:
            supports = [_single(choose, joint, joints, scale) for joint in (first, second, third)]
        if well_held(joints, supports):
            return supports
    first, second, _ = joints[:3]
    return [Support(first.name, "pin"), Support(second.name, "roller")]


def _three(choose: Choose, joints: Sequence[Joint]) -> list[Joint]:
    rest, taken = list(joints), []
    for _ in range(3):
        taken.append(choose(tuple(rest)))
        rest.remove(taken[-1])
    return taken


def _single(choose: Choose, joint: Joint, joints: Sequence[Joint], scale: Fraction) -> Support:
    kind = choose(("level", "roller", "roller", "link"))
    if kind == "level":
        return Support(joint.name, "roller")
    if kind == "roller":
        return Support(joint.name, "roller", angle=Exact.of(choose(ROLLER_ANGLES)))
    taken = {other.at for other in joints}
    at, unit = joint.at, float(scale)
    steps = [
        (dx, dy) for dx, dy in LINK_STEPS if (at[0] + dx * unit, at[1] + dy * unit) not in taken
    ]
    dx, dy = choose(steps)
    y = joint.y if dy == 0 else root(1, Fraction(round(joint.y.value / float(scale)) + dy) * scale)
    assert joint.x.fraction is not None
    return Support(joint.name, "link", anchor=(Exact.of(joint.x.fraction + dx * scale), y))


def well_held(joints: Sequence[Joint], supports: Iterable[Support]) -> bool:
    """Do three reactions hold a rigid body, and not only just?"""
    named = {joint.name: joint for joint in joints}
    reactions: list[Reaction] = [
        r for support in supports for r in reactions_of(support, named[support.joint])
    ]
    if len(reactions) != 3:
        return False
    size = max(math.dist(one.at, other.at) for one in joints for other in joints)
    (a, b, c), (d, e, f), (g, h, i) = (
        (
            r.direction.x,
            r.direction.y,
            (
                (named[r.joint].at[0] - joints[0].at[0]) * r.direction.y
                - (named[r.joint].at[1] - joints[0].at[1]) * r.direction.x
            )
            / size,
        )
        for r in reactions
    )
    return abs(a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)) > 0.1


def _loads(choose: Choose, names: Sequence[str], pinned: set[str]) -> tuple[Load, ...]:
    free = [name for name in names if name not in pinned]
    loads = [_load(choose, choose(free))]
    for _ in range(choose((0, 1, 2))):
        loads.append(_load(choose, choose(names)))
    return tuple(loads)


def _load(choose: Choose, joint: str) -> Load:
    size = Exact.of(choose(SIZES))
    kind = choose(("one", "one", "two", "angle"))
    if kind == "angle":
        return Load(joint, size=size, angle=Exact.of(choose(LOAD_ANGLES)))
    if kind == "one":
        return Load(joint, ((choose(("down", "down", "up", "left", "right")), size),))
    other = Exact.of(choose(SIZES))
    return Load(joint, ((choose(("down", "up")), size), (choose(("right", "left")), other)))

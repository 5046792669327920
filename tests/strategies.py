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

from hypothesis import strategies as st

from tutor.model import Joint, Load, Member, Problem, Reaction, Support
from tutor.model.support import reactions_of
from tutor.notation import Exact
from tutor.notation.tree import Binary, Call, Number, Span

T = TypeVar("T")
Choose = Callable[[Sequence[Any]], Any]
Point = tuple[int, int]
Plain = int | Fraction

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
SIZES = tuple(Fraction(n) for n in (12, 5, 20, 1, 36, 100, 7)) + (Fraction(9, 2), Fraction(31, 4))
LOAD_ANGLES = (270, 225, 300, 210, 330, 240, 15, 60, 135, 180)
ROLLER_ANGLES = (90, 270, 0, 180, 60, 120, 45, 135, 30, 150, 240, 15, 285)
LINK_STEPS: tuple[Point, ...] = (
    (-1, 4), (3, 4), (-4, 3), (5, 12), (0, -2), (3, 0), (1, 1), (-2, -1), (2, -3)
)  # fmt: skip


# numbers ----------------------------------------------------------------------------------------


def exact(number: Plain | Exact) -> Exact:
    """`number` as the model keeps it."""
    return number if isinstance(number, Exact) else Exact.of(number)


def root(square: Plain, times: Plain = 1) -> Exact:
    """times * sqrt(square), as a file would write it; rational where it can be."""
    square, times = Fraction(square), Fraction(times)
    top, bottom = math.isqrt(square.numerator), math.isqrt(square.denominator)
    if top**2 == square.numerator and bottom**2 == square.denominator:
        return Exact.of(times * Fraction(top, bottom))
    if times == 0:
        return Exact.of(0)
    span = Span(0, 0)
    tree = Binary(
        "*",
        Number(times, Fraction(0), span),
        Call("sqrt", Number(square, Fraction(0), span), span),
        span,
    )
    return Exact(f"({times})*sqrt({square})", float(times) * math.sqrt(square), None, tree)


# the generator ----------------------------------------------------------------------------------


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


def member_name(one: str, other: str) -> str:
    """The one name of the member from `one` to `other`."""
    return one + other if len(one) == len(other) == 1 else f"{one}-{other}"


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


# the classic families ---------------------------------------------------------------------------


def plain_problem(
    joints: Iterable[tuple[str, Plain | Exact, Plain | Exact]],
    members: Iterable[str],
    supports: Iterable[Support],
    loads: Iterable[Load],
    *,
    title: str = "A truss",
    force: str = "kN",
    length: str = "m",
) -> Problem:
    """A problem from plain parts; members as a file names them, "AB" or "U1-L2"."""
    return Problem(
        title=title,
        force=force,
        length=length,
        joints=tuple(Joint(name, exact(x), exact(y)) for name, x, y in joints),
        members=tuple(Member(name, *_ends(name)) for name in members),
        supports=tuple(supports),
        loads=tuple(loads),
    )


def _ends(name: str) -> tuple[str, str]:
    one, other = name.split("-") if "-" in name else name
    return one, other


def down(joint: str, size: Plain | Exact) -> Load:
    """A load straight down."""
    return Load(joint, (("down", exact(size)),))


def _bridge(
    n: int, a: Plain, h: Plain, load: Plain, top: Sequence[tuple[str, Plain]], web: list[str]
) -> Problem:
    bottom = [(f"L{i}", a * i, 0) for i in range(n + 1)]
    chords = [f"L{i}-L{i + 1}" for i in range(n)]
    chords += [f"{one}-{other}" for (one, _), (other, _) in zip(top, top[1:], strict=False)]
    return plain_problem(
        bottom + [(name, x, h) for name, x in top],
        chords + web,
        [Support("L0", "pin"), Support(f"L{n}", "roller")],
        [down(f"L{i}", load) for i in range(1, n)],
        title="A parallel-chord truss",
    )


def _panels(n: int, slopes: Callable[[int], list[str]]) -> list[str]:
    posts = ["L0-U1", f"U{n - 1}-L{n}"] + [f"U{i}-L{i}" for i in range(1, n)]
    return posts + [name for i in range(1, n - 1) for name in slopes(i)]


def pratt(n: int, a: Plain, h: Plain, P: Plain) -> Problem:
    """n (even, 4 or more) panels a wide and h high, P on each inner bottom joint; webs fall inward."""
    left = n // 2
    web = _panels(n, lambda i: [f"U{i}-L{i + 1}" if i < left else f"L{i}-U{i + 1}"])
    return _bridge(n, a, h, P, [(f"U{i}", a * i) for i in range(1, n)], web)


def howe(n: int, a: Plain, h: Plain, P: Plain) -> Problem:
    """As `pratt`, with webs that rise inward."""
    left = n // 2
    web = _panels(n, lambda i: [f"L{i}-U{i + 1}" if i < left else f"U{i}-L{i + 1}"])
    return _bridge(n, a, h, P, [(f"U{i}", a * i) for i in range(1, n)], web)


def warren(n: int, a: Plain, h: Plain, P: Plain) -> Problem:
    """n panels a wide without verticals: top joint Ui above the middle of panel i (from 1)."""
    web = [name for i in range(1, n + 1) for name in (f"L{i - 1}-U{i}", f"U{i}-L{i}")]
    top = [(f"U{i}", Fraction(2 * i - 1, 2) * a) for i in range(1, n + 1)]
    return _bridge(n, a, h, P, top, web)


def fink(panels: int, half: Plain, rise_squared: Plain, P: Plain) -> Problem:
    """A Fink roof of 4 or 8 rafter panels, P on each inner rafter joint, struts square to the rafter.

    `half` is half the span, `rise_squared` the square of the rise (so 30 degrees stays exact).
    Joints, left half ("R" for "L" on the right): L0 the heel, L1, L2, ... up the rafter, T the
    top, LF the foot of the main strut on the tie; with 8 panels LM is the middle of the tie
    from heel to LF and LN the middle of the web tie from LF to T.
    """
    half, rise_squared = Fraction(half), Fraction(rise_squared)
    steps = panels // 2
    foot = (half + rise_squared / half) / 2
    joints: list[tuple[str, Plain | Exact, Plain | Exact]] = [("T", half, root(rise_squared))]
    members, loads = ["LF-RF"], [down("T", P)]
    for side in "LR":

        def put(name: str, x: Fraction, up: Fraction, side: str = side) -> None:
            joints.append((side + name, x if side == "L" else 2 * half - x, root(rise_squared, up)))

        for k in range(steps):
            put(str(k), half * k / steps, Fraction(k, steps))
        put("F", foot, Fraction(0))
        rafter = [f"{side}{k}" for k in range(steps)] + ["T"]
        pairs = list(zip(rafter, rafter[1:], strict=False))
        if panels == 4:
            pairs += [("0", "F"), ("1", "F"), ("F", "T")]
        else:
            put("M", foot / 2, Fraction(0))
            put("N", (foot + half) / 2, Fraction(1, 2))
            pairs += [("0", "M"), ("M", "F"), ("1", "M"), ("2", "F"), ("3", "N")]
            pairs += [("2", "M"), ("2", "N"), ("F", "N"), ("N", "T")]
        ends = [[e if e == "T" or e in rafter else side + e for e in pair] for pair in pairs]
        members += ["-".join(pair) for pair in ends]
        loads += [down(name, P) for name in rafter[1:-1]]
    supports = [Support("L0", "pin"), Support("R0", "roller")]
    return plain_problem(joints, members, supports, loads, title="A Fink roof")

"""Sheets of five trusses as somebody leaves them who holds one belief, half done and full.

The values come from numpy and plain geometry alone: reactions from three sums, then two sums a joint in
the order of the walk, everything rounded to three figures and carried on as it stands on the paper.
Three trusses are worked ones of textbooks, typed from memory: Beer and Johnston, Vector Mechanics for
Engineers: Statics, sample problem 6.1; Meriam and Kraige, Engineering Mechanics: Statics, sample problem
4/1; Hibbeler, Engineering Mechanics: Statics, problem 6-1. The other two are our own.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

import numpy as np
from families import plain_problem, root

from tutor.model import Load, Problem, Support
from tutor.notation import Exact

Way = tuple[float, float]
Sheet = dict[str, str]
HALF = Fraction(1, 2)


@dataclass(frozen=True)
class Truss:
    """A problem, its reactions and loads as plain numbers, and the order in which one walks through it."""

    problem: Problem
    reactions: Mapping[str, tuple[str, Way]]
    loads: Mapping[str, Way]
    walk: Mapping[str, tuple[str, ...]]


@dataclass(frozen=True)
class Belief:
    """What somebody takes for true: how an inclined member lies, how a reaction or load acts, the arms.

    `means` are the kinds of mistake that a teacher would call it by; `given` are reactions taken for
    granted, and `times` is what is done to every value at last. `about` is where moments are taken, the
    first support where it is "".
    """

    name: str
    means: tuple[str, ...]
    see: Callable[[Way], Way] = lambda way: way
    reactions: Mapping[str, Way] = field(default_factory=dict)
    given: Mapping[str, float] = field(default_factory=dict)
    along: bool = False
    about: str = ""
    times: Callable[[str], float] = lambda _: 1.0


def _load(at: str, **pushes: float) -> Load:
    return Load(at, tuple((way, Exact.of(Fraction(size))) for way, size in pushes.items()))


TRUSSES: dict[str, Truss] = {
    "Beer and Johnston 6.1": Truss(
        plain_problem(
            (("A", 0, 8), ("B", 12, 8), ("C", 24, 8), ("D", 6, 0), ("E", 18, 0)),
            ("AB", "AD", "BD", "DE", "BE", "BC", "CE"),
            (Support("C", "pin"), Support("E", "roller")),
            (_load("A", down=2000), _load("B", down=1000)),
            force="lb",
            length="ft",
        ),
        {"C_x": ("C", (1, 0)), "C_y": ("C", (0, 1)), "E_y": ("E", (0, 1))},
        {"A": (0, -2000), "B": (0, -1000)},
        {"A": ("AB", "AD"), "D": ("BD", "DE"), "B": ("BE", "BC"), "E": ("CE",)},
    ),
    "Meriam and Kraige 4/1": Truss(
        plain_problem(
            (
                ("A", 0, 0),
                ("B", 5 * HALF, root(75 * HALF * HALF)),
                ("C", 5, 0),
                ("D", 15 * HALF, root(75 * HALF * HALF)),
                ("E", 10, 0),
            ),
            ("AB", "AC", "BC", "BD", "CD", "CE", "DE"),
            (Support("E", "pin"), Support("D", "roller", Exact.of(30))),
            (_load("A", down=30), _load("C", down=20)),
        ),
        {"E_x": ("E", (1, 0)), "E_y": ("E", (0, 1)), "R_D": ("D", (0.75**0.5, 0.5))},
        {"A": (0, -30), "C": (0, -20)},
        {"A": ("AB", "AC"), "B": ("BC", "BD"), "C": ("CD", "CE"), "D": ("DE",)},
    ),
    "Hibbeler 6-1": Truss(
        plain_problem(
            (("A", 0, 0), ("B", 0, 3 * HALF), ("C", 2, 3 * HALF), ("D", 2, 0)),
            ("AB", "BC", "CD", "AD", "BD"),
            (Support("B", "pin"), Support("A", "roller", Exact.of(0))),
            (_load("C", down=20), _load("D", left=10)),
        ),
        {"B_x": ("B", (1, 0)), "B_y": ("B", (0, 1)), "A_x": ("A", (1, 0))},
        {"C": (0, -20), "D": (-10, 0)},
        {"C": ("BC", "CD"), "D": ("BD", "AD"), "A": ("AB",)},
    ),
    "boathouse": Truss(
        plain_problem(
            (("A", 0, 0), ("B", 12, 0), ("C", 3, 4), ("D", 7, 4), ("E", 7, 0)),
            ("AC", "AE", "CD", "CE", "DE", "BD", "BE"),
            (Support("A", "pin"), Support("B", "roller")),
            (_load("C", down=9, right=6), _load("D", down=15)),
        ),
        {"A_x": ("A", (1, 0)), "A_y": ("A", (0, 1)), "B_y": ("B", (0, 1))},
        {"C": (6, -9), "D": (0, -15)},
        {"A": ("AC", "AE"), "C": ("CD", "CE"), "E": ("DE", "BE"), "D": ("BD",)},
    ),
    "loading bay": Truss(
        plain_problem(
            (("A", 0, 0), ("B", 8, 0), ("C", 3, 3), ("D", 8, 5)),
            ("AB", "AC", "BC", "CD", "BD"),
            (Support("A", "pin"), Support("B", "roller", Exact.of(120))),
            (_load("C", down=10), _load("D", down=14, left=4)),
        ),
        {"A_x": ("A", (1, 0)), "A_y": ("A", (0, 1)), "R_B": ("B", (-0.5, 0.75**0.5))},
        {"C": (0, -10), "D": (-4, -14)},
        {"A": ("AC", "AB"), "C": ("BC", "CD"), "D": ("BD",)},
    ),
}


def _swapped(way: Way) -> Way:
    return math.copysign(way[1], way[0]), math.copysign(way[0], way[1])


def _sloped(degrees: float, radians: bool = False) -> Callable[[Way], Way]:
    angle = degrees if radians else math.radians(degrees)
    run, rise = math.cos(angle), math.sin(angle)
    return lambda way: (math.copysign(1, way[0]) * run, math.copysign(1, way[1]) * rise)


def _radians(way: Way) -> Way:
    angle = round(math.degrees(math.atan2(abs(way[1]), abs(way[0]))), 2)
    return _sloped(angle, radians=True)(way)


def beliefs(name: str) -> Iterator[Belief]:
    """The beliefs that can be held of a truss and that make its values wrong."""
    truss = TRUSSES[name]
    members = truss.problem.member
    yield Belief("sine for cosine", ("component", "complement"), see=_swapped)
    if name in ("boathouse", "loading bay"):
        first = 53.13 if name == "boathouse" else 45.0
        yield Belief("one slope for all", ("slope",), see=_sloped(first))
    if name != "loading bay":
        kinds = ("slope", "component", "complement")
        yield Belief("30 for the angle", kinds, see=_sloped(30))
    yield Belief("radians", ("angle-mode",), see=_radians)
    yield Belief(
        "component for force",
        ("whole-force", "component"),
        see=lambda w: (w[0], math.copysign(1, w[1])),
    )
    turned = ("tension-compression", "sign", "pull-push", "sense")
    yield Belief("all reversed", turned, times=lambda _: -1.0)
    yield Belief("members reversed", turned, times=lambda n: -1.0 if n in members else 1.0)
    yield Belief("thousands", ("unit",), times=lambda _: 1000.0)
    if name == "Beer and Johnston 6.1":
        yield Belief("half each", ("symmetry",), given={"C_x": 0, "C_y": 1500, "E_y": 1500})
        yield Belief("arms along", ("arm", "arm-from"), along=True)
        yield Belief("arms along to the roller", ("arm", "arm-from"), along=True, about="E")
    if name == "boathouse":
        yield Belief("half each", ("symmetry",), given={"A_x": -6, "A_y": 12, "B_y": 12})
        yield Belief("pin as roller", ("missing",), reactions={"A_x": (0, 0)}, given={"A_x": 0})
        yield Belief("arms along", ("arm", "arm-from", "component-in-moment"), along=True)
    if name == "loading bay":
        yield Belief("roller upright", ("inclined-support",), reactions={"R_B": (0, 1)})
        yield Belief("arms along", ("arm", "arm-from", "component-in-moment"), along=True)
    if name == "Meriam and Kraige 4/1":
        yield Belief("link level", ("inclined-support",), reactions={"R_D": (1, 0)})


NONE = Belief("none", ())


def sheet(name: str, held: Belief | None, steps: int) -> Sheet | None:
    """The reactions and what the first `steps` joints give, as written; None where they give nothing."""
    truss, belief = TRUSSES[name], held or NONE
    values = _reactions(truss, belief)
    for joint, new in list(truss.walk.items())[:steps]:
        found = _at_joint(truss, belief, joint, new, values)
        if found is None:
            return None
        values |= found
    return {n: _written(belief.times(n) * v) for n, v in values.items()}


def _written(number: float) -> str:
    return f"{float(f'{number:.3g}') + 0.0:.10g}"


def _rounded(number: float) -> float:
    return float(f"{number:.3g}")


def _reactions(truss: Truss, belief: Belief) -> dict[str, float]:
    if len(belief.given) == 3:
        return dict(belief.given)
    names = [n for n in truss.reactions if n not in belief.given]
    at = {j.name: np.array(j.at) for j in truss.problem.joints}
    about = at[belief.about or truss.problem.supports[0].joint]

    def column(joint: str, way: Way) -> tuple[float, float, float]:
        (x, y), (px, py) = way, at[joint] - about
        moment = px * y - py * x
        if belief.along and abs(moment) > 1e-9:
            moment = math.copysign(math.hypot(px, py) * math.hypot(x, y), moment)
        return x, y, moment

    ways = {n: belief.reactions.get(n, way) for n, (_, way) in truss.reactions.items()}
    matrix = np.array([column(truss.reactions[n][0], ways[n]) for n in names]).T
    right = -sum(
        np.array(column(joint, part))
        for joint, (x, y) in truss.loads.items()
        for part in ((x, 0.0), (0.0, y))
    )
    if len(names) == 2:
        matrix, right = matrix[1:], right[1:]
    solved = np.linalg.solve(matrix, right)
    return {**belief.given, **{n: _rounded(v) for n, v in zip(names, solved, strict=True)}}


def _at_joint(
    truss: Truss, belief: Belief, joint: str, new: tuple[str, ...], values: dict[str, float]
) -> dict[str, float] | None:
    ways: dict[str, Way] = {}
    x, y = truss.problem.joint[joint].at
    for member in truss.problem.members:
        if joint in (member.start, member.end):
            other = member.end if joint == member.start else member.start
            dx, dy = (a - b for a, b in zip(truss.problem.joint[other].at, (x, y), strict=True))
            way = (dx / math.hypot(dx, dy), dy / math.hypot(dx, dy))
            inclined = min(map(abs, way)) > 1e-9
            ways[member.name] = belief.see(way) if inclined else way
    for name, (at, way) in truss.reactions.items():
        if at == joint:
            ways[name] = belief.reactions.get(name, way)
    left = np.array(truss.loads.get(joint, (0.0, 0.0)), dtype=float)
    for name, way in ways.items():
        if name not in new:
            left += values[name] * np.array(way)
    matrix = np.array([ways[n] for n in new]).T
    if len(new) == 1:
        row = int(np.argmax(np.abs(matrix[:, 0])))
        return {new[0]: _rounded(-left[row] / matrix[row, 0])}
    if abs(np.linalg.det(matrix)) < 1e-6:
        return None
    return {n: _rounded(v) for n, v in zip(new, np.linalg.solve(matrix, -left), strict=True)}

"""How does the truss look to somebody who holds one belief throughout a page?

A lens turns the direction in which each force stands in the equations of a joint or of the whole
truss into the one that the belief puts there. Everything else of the walk is as it was.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from tutor.homework.sheet import WHOLE, Bodies, ForcePart, Sheet, middle_and_size
from tutor.homework.vectors import Vector
from tutor.model import Problem
from tutor.statics import Force, Moment

Seen = Callable[[Force], tuple[float, float]]
"""The direction of a force at a joint, as it is seen."""
Turning = Callable[[Force, tuple[float, float]], float]
"""The moment of a force about a point, as it is seen (length unit, counter-clockwise)."""

FAMILIAR = ((0.8, 0.6), (0.6, 0.8), (0.5**0.5, 0.5**0.5), (0.75**0.5, 0.5), (0.5, 0.75**0.5))
"""Run and rise of the slopes that one knows by heart: 3-4-5, 45, 30 and 60 degrees."""
LEVEL = 1e-9
MOMENTS = (0.0, 0.0, 1.0)
"""The equation of moments among those of the whole truss."""


@dataclass(frozen=True)
class Lens:
    """One belief as it changes the bodies. `zero` are forces that it takes to be none at all."""

    joint: Seen | None = None
    whole: Seen | None = None
    turning: Turning | None = None
    balance: Mapping[str, float] = field(default_factory=dict)
    zero: tuple[str, ...] = ()

    @property
    def at_whole(self) -> bool:
        return bool(self.whole or self.turning or self.balance or self.zero)


class Sight:
    """The bodies seen through a lens, each looked at when it is asked for.

    `point` is where the moments of the whole truss are taken. A body that looks as it does without the
    lens is the same one.
    """

    def __init__(
        self, problem: Problem, bodies: Bodies, lens: Lens, point: tuple[float, float] | None = None
    ) -> None:
        self.problem = problem
        self.without = bodies
        self.lens = lens
        self.point = point
        self._body: dict[str, Sheet] = {}

    def body(self, name: str) -> Sheet:
        if name not in self._body:
            sheet = self.without[name]
            if name != WHOLE and self.lens.joint is not None:
                sheet = _turned(sheet, [self.lens.joint(part.force) for part in sheet.parts])
            elif name == WHOLE and self.point is not None:
                sheet = _whole(self.problem, sheet, self.lens, self.point)
            self._body[name] = sheet
        return self._body[name]

    @property
    def bodies(self) -> Bodies:
        found = Bodies({name: self.body(name) for name in self.without})
        found.at = self.without.at
        return found

    @property
    def balances(self) -> bool:
        """Whether the reactions are as what is believed of moments has them, where all are written."""
        whole = self.body(WHOLE)
        believed = bool(self.lens.balance or self.lens.turning)
        return not believed or bool(whole.missing) or whole.holds(MOMENTS)

    def may_give(self, name: str) -> bool:
        """Whether some body has an equation that holds and could have given a value."""
        return any(self.body(body).may_give(name) for body in self.without.at[name])


def through(problem: Problem, bodies: Bodies, lens: Lens) -> Iterator[Sight]:
    """The bodies seen so, once for each support about which the moments may have been taken."""
    if not lens.at_whole:
        yield Sight(problem, bodies, lens)
        return
    points = [problem.joint[s.joint].at for s in problem.supports]
    if lens.turning is None:
        points = points[:1]
    for point in points:
        yield Sight(problem, bodies, lens, point)


def _turned(sheet: Sheet, ways: Sequence[Vector]) -> Sheet:
    """The body with its forces along other directions."""
    if all(part.vector == way for part, way in zip(sheet.parts, ways, strict=True)):
        return sheet
    pairs = zip(sheet.parts, ways, strict=True)
    return Sheet(
        sheet.name, tuple([ForcePart(p.force, way, p.value, p.radius) for p, way in pairs])
    )


def _whole(problem: Problem, sheet: Sheet, lens: Lens, point: tuple[float, float]) -> Sheet:
    _, size = middle_and_size(problem)

    def seen(part: ForcePart) -> Vector:
        force = part.force
        x, y = lens.whole(force) if lens.whole else (force.x, force.y)
        if lens.balance:
            return x, y, lens.balance.get(force.name, 0.0)
        turned = replace(force, x=x, y=y)
        moment = (lens.turning or _moment)(turned, point)
        return x, y, moment / size

    return _turned(sheet, [seen(part) for part in sheet.parts])


def _moment(force: Force, point: tuple[float, float]) -> float:
    return Moment(point).of(force)


def inclined(x: float, y: float) -> bool:
    """Whether a direction, or a force, lies along no axis."""
    return min(abs(x), abs(y)) > LEVEL * max(abs(x), abs(y))


def members(see: Seen) -> Seen:
    """A way to see inclined members, all other forces being as they are."""
    return lambda f: see(f) if f.kind == "member" and inclined(f.x, f.y) else (f.x, f.y)


def swapped(force: Force) -> tuple[float, float]:
    return math.copysign(abs(force.y), force.x), math.copysign(abs(force.x), force.y)


def sloped(run: float, rise: float) -> Seen:
    return lambda f: (math.copysign(run, f.x), math.copysign(rise, f.y))


def in_radians(places: int, upright: bool) -> Seen:
    """Sine and cosine of degrees, read off to so many decimals, as if they were radians."""

    def see(force: Force) -> tuple[float, float]:
        level = round(math.degrees(math.atan2(abs(force.y), abs(force.x))), places)
        run, rise = math.cos(level), math.sin(level)
        if upright:
            run, rise = math.sin(round(90.0 - level, places)), math.cos(round(90.0 - level, places))
        return math.copysign(1.0, force.x) * run, math.copysign(1.0, force.y) * rise

    return see


def by_tangent(force: Force) -> tuple[float, float]:
    return force.x, math.copysign(abs(force.y / force.x), force.y)


def by_cotangent(force: Force) -> tuple[float, float]:
    return math.copysign(abs(force.x / force.y), force.x), force.y


def for_its_component(level: bool) -> Seen:
    """A force of which the number is that of one component, the other component going with it."""

    def see(force: Force) -> tuple[float, float]:
        by = abs(force.x if level else force.y)
        return force.x / by, force.y / by

    return see


def stands_whole(level: bool, upright: bool) -> Seen:
    """A force that stands whole in one sum or in both."""
    return lambda f: (
        math.copysign(1.0, f.x) if level else f.x,
        math.copysign(1.0, f.y) if upright else f.y,
    )


def turned(kind: str, factor: float) -> Seen:
    """All forces of one kind times a factor: -1 the other way round, 0 left out."""
    return lambda f: (factor * f.x, factor * f.y) if f.kind == kind else (f.x, f.y)


def only(name: str, way: tuple[float, float]) -> Seen:
    """One force along another direction."""
    return lambda f: way if f.name == name else (f.x, f.y)


def as_long_as_it_is(force: Force, point: tuple[float, float]) -> float:
    """The distance to the joint for an arm, whatever the line of action."""
    moment = Moment(point).of(force)
    away = math.hypot(force.at[0] - point[0], force.at[1] - point[1])
    return math.copysign(away, moment) if abs(moment) > LEVEL else 0.0


def shifted(kind: str, by: float) -> Turning:
    """All horizontal arms of one kind of force too short, or too long, by one panel."""

    def arm(force: Force, point: tuple[float, float]) -> float:
        moment = Moment(point).of(force)
        if force.kind != kind or abs(force.x) > LEVEL or abs(moment) <= LEVEL:
            return moment
        return math.copysign(max(abs(moment) + by, 0.0), moment)

    return arm

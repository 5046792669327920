"""What does a truss look like while it is drawn up: its grid, what is chosen or wrong, how it moves?"""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from tutor.drafting import drawable
from tutor.figure import Figure, truss_figure
from tutor.figure.parts import Arrow, Item, Stroke
from tutor.model import Problem

Point = tuple[float, float]
EMPTY_SHEET = (8.0, 4.0)
MOST_STEPS = 10
SHOWN_MOTION = 0.16
"""The largest motion of a joint as it is drawn, as a share of the truss's size."""
FEW = 3


@dataclass(frozen=True)
class Grid:
    """Points one step apart from (left, low) to (right, high), in the problem's length unit."""

    step: Fraction
    left: int
    right: int
    low: int
    high: int

    def point(self, i: int, j: int) -> Point:
        """The point i steps right and j steps up of the origin."""
        return float(i * self.step), float(j * self.step)

    @property
    def corners(self) -> tuple[Point, Point]:
        return self.point(self.left, self.low), self.point(self.right, self.high)

    def number(self, place: int) -> str:
        """The coordinate that is so many steps from the origin, as it is written at the edge."""
        return f"{float(place * self.step):g}"

    def numbered(
        self, first: int, last: int, room: float, *, beside: bool = True
    ) -> tuple[int, ...]:
        """The steps from `first` to `last` whose numbers fit where each step has so much room.

        Numbers stand `beside` each other, or else one in each row.
        """
        need = 1 + max(len(self.number(end)) for end in (first, last)) if beside else 1
        every = max(1, math.ceil(need / max(room, 0.01)))
        return tuple(step for step in range(first, last + 1) if step % every == 0)

    def nearest(self, x: float, y: float) -> tuple[Fraction, Fraction]:
        """The point of the grid nearest to (x, y)."""
        return round(x / float(self.step)) * self.step, round(y / float(self.step)) * self.step


def grid_for(problem: Problem, step: Fraction | None) -> Grid:
    """A grid around the truss, one step wider than it; its step is chosen where none is given."""
    xs = [joint.at[0] for joint in problem.joints] or [0.0]
    ys = [joint.at[1] for joint in problem.joints] or [0.0]
    if len(xs) < FEW or (max(xs) == min(xs) and max(ys) == min(ys)):
        wide, high = (side * float(step or 1) for side in EMPTY_SHEET)
        xs += [min(0.0, *xs), max(wide, *xs)]
        ys += [min(0.0, *ys), max(high, *ys)]
    size = max(max(xs) - min(xs), max(ys) - min(ys))
    if step is None or size / float(step) > 4 * MOST_STEPS:
        step = tidy_step(size)
    own = float(step)
    return Grid(
        step,
        math.floor(min(xs) / own - 0.5),
        math.ceil(max(xs) / own + 0.5),
        math.floor(min(ys) / own - 0.5),
        math.ceil(max(ys) / own + 0.5),
    )


def tidy_step(size: float) -> Fraction:
    """The smallest step of 1, 2 or 5 and a power of ten that is not too fine for this size."""
    least = size / MOST_STEPS
    power = math.floor(math.log10(least)) if least > 0 else 0
    for digits in (1, 2, 5, 10):
        step = digits * Fraction(10) ** power
        if step >= least * 0.999:
            return step
    return Fraction(10) ** (power + 1)


def sketch(
    problem: Problem,
    *,
    lit: Collection[str] = (),
    motion: Mapping[str, Point] | None = None,
    grid: Grid | None = None,
) -> Figure:
    """The drawing as it is, with what is `lit` pointed out and, dashed, how it would move.

    The numbers of a grid take the place of dimensions.
    """
    shown = drawable(problem)
    if not shown.joints:
        figure = Figure("An empty sheet", (), ("The sheet is empty.",))
    else:
        dimensions = grid is None and len(shown.joints) > 1
        figure = truss_figure(shown, highlight=lit, dimensions=dimensions)
    items: list[Item] = list(figure.items)
    if grid is not None:
        items += [Stroke(corner, corner, "blank") for corner in grid.corners]
    if motion:
        items += moved(shown, motion)
    return replace(figure, items=tuple(items))


def moved(problem: Problem, motion: Mapping[str, Point]) -> list[Item]:
    """The members where the motion takes them, dashed, and an arrow at each joint that moves."""
    xs, ys = zip(*(joint.at for joint in problem.joints), strict=True)
    size = max(max(xs) - min(xs), max(ys) - min(ys)) or 1.0
    there = {}
    for joint in problem.joints:
        dx, dy = motion.get(joint.name, (0.0, 0.0))
        there[joint.name] = (
            joint.at[0] + SHOWN_MOTION * size * dx,
            joint.at[1] + SHOWN_MOTION * size * dy,
        )
    items: list[Item] = []
    for member in problem.members:
        start, end = there[member.start], there[member.end]
        if start != problem.joint[member.start].at or end != problem.joint[member.end].at:
            items.append(Stroke(start, end, "line-of-action", f"{member.name} moved"))
    for joint in problem.joints:
        dx, dy = motion.get(joint.name, (0.0, 0.0))
        far = math.hypot(dx, dy)
        if far > 0.05:
            way = (dx / far, dy / far)
            items.append(
                Arrow(joint.at, way, "highlight", pushes=False, length=far * SHOWN_MOTION * size)
            )
    return items

"""What does a load that lies on members look like? A row of arrows on each, and a line over them."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.figure.parts import Arrow, Item, Point, Rail
from tutor.figure.wording import given
from tutor.model import Member, Problem, Spread
from tutor.model.parts import AXES, PushDirection
from tutor.statics.along import measured

PARTS = (1 / 6, 1 / 2, 5 / 6)
"""Where along a member the arrows of a row stand."""
FLAT = 0.1
"""Below this sine between a load and its member the arrows lie beside it, in line."""


def spread_items(problem: Problem) -> Iterator[Item]:
    """The rows of arrows of all loads on members, each with its size once."""
    for spread in problem.spreads:
        on = [problem.member[name] for name in spread.on if name in problem.member]
        for way, size in spread.pushes:
            texts = size_texts(problem, spread, way, size.value)
            for member in on:
                here = texts if member is on[len(on) // 2] else ()
                yield from _row(problem, member, way, here)


def size_texts(
    problem: Problem, spread: Spread, way: PushDirection, size: float
) -> tuple[str, ...]:
    """The words beside a row of arrows, the fullest first; the unit is never left out."""
    if spread.total:
        return (f"{given(size)} {problem.force} in all",)
    short = f"{given(size)} {problem.force}/{problem.length}"
    return (short + measured(spread, way), short) if spread.per == "span" else (short,)


def _row(
    problem: Problem, member: Member, way: PushDirection, texts: tuple[str, ...]
) -> Iterator[Item]:
    start, end = problem.joint[member.start].at, problem.joint[member.end].at
    toward = (float(AXES[way][0]), float(AXES[way][1]))
    dx, dy = end[0] - start[0], end[1] - start[1]
    sine = abs(dx * toward[1] - dy * toward[0]) / math.hypot(dx, dy)
    if sine < FLAT:
        yield Arrow(_between(start, end, 1 / 2), toward, "load", texts, pushes=False, beside=1)
        return
    pushes = _is_free(problem, member, (-toward[0], -toward[1])) or not _is_free(
        problem, member, toward
    )
    for part in PARTS:
        here = texts if part == 1 / 2 else ()
        yield Arrow(_between(start, end, part), toward, "load", here, pushes=pushes)
    if pushes:
        outer = _between(start, end, PARTS[0]), _between(start, end, PARTS[-1])
        yield Rail(*outer, (-toward[0], -toward[1]), "load")


def _between(start: Point, end: Point, part: float) -> Point:
    return start[0] + part * (end[0] - start[0]), start[1] + part * (end[1] - start[1])


def _is_free(problem: Problem, member: Member, out: Point) -> bool:
    """Whether no other joint lies on one side of a member, beside the length of it."""
    start, end = problem.joint[member.start].at, problem.joint[member.end].at
    across = (-out[1], out[0])
    low, high = sorted(x * across[0] + y * across[1] for x, y in (start, end))
    width = high - low
    for joint in problem.joints:
        along = joint.at[0] * across[0] + joint.at[1] * across[1]
        if joint.name in (member.start, member.end):
            continue
        part = (along - low) / width
        if not -0.25 < part < 1.25:
            continue
        foot = _between(start, end, part if _rises(start, across, low) else 1 - part)
        if (joint.at[0] - foot[0]) * out[0] + (joint.at[1] - foot[1]) * out[1] > 0:
            return False
    return True


def _rises(start: Point, across: Point, low: float) -> bool:
    return abs(start[0] * across[0] + start[1] * across[1] - low) < 1e-12

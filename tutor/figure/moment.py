"""Which distance is the arm? One force, one point, the line of action and the perpendicular to it."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from tutor.figure.parts import Figure, Glyph, Item, Point, Stroke, Tag, Turn
from tutor.figure.truss import truss_figure
from tutor.figure.wording import given
from tutor.model import Problem
from tutor.statics.body import Force, whole

OVERHANG = 0.12


def moment_figure(
    problem: Problem,
    force: str,
    about: str | Point,
    *,
    reactions: Mapping[str, str] | None = None,
    senses: Mapping[str, str] | None = None,
    turning: Turn | None = None,
) -> Figure:
    """The free body of the whole truss with the arm of one force about one point marked.

    `force` is a reaction or a load as `statics.body.whole` names it; `about` a joint or a point.
    The arm's length is never written. KeyError for a force or a joint that is not there.
    """
    acting = next((f for f in whole(problem).forces if f.name == force), None)
    if acting is None:
        raise KeyError(force)
    if reactions is None:
        reactions = {name: (senses or {}).get(name, "") for name in problem.reaction}
    point = problem.joint[about].at if isinstance(about, str) else about
    name = about if isinstance(about, str) else f"({given(point[0])}, {given(point[1])})"
    base = truss_figure(
        problem, reactions=reactions, senses=senses, highlight={force}, turning=turning
    )
    items = (*base.items, *moment_marks(problem, acting, point, "" if name == about else name))
    return replace(
        base,
        title=f"{base.title}: {force} about {name}",
        items=items,
        sentences=(*base.sentences, arm_words(acting, point, name)),
    )


def moment_marks(problem: Problem, force: Force, point: Point, name: str = "") -> tuple[Item, ...]:
    """The point, the force's line of action, the perpendicular on it and its right angle."""
    foot = foot_of(force, point)
    items: list[Item] = [Stroke(*_line(problem, force, foot), "line-of-action")]
    if not meets(force, point):
        arm = (point[0] - foot[0], point[1] - foot[1])
        length = math.hypot(*arm)
        toward = (arm[0] / length, arm[1] / length)
        items.append(Stroke(point, foot, "moment-arm"))
        items.append(Glyph(foot, "right-angle", "moment-arm", toward, _inward(force, foot)))
    items.append(Glyph(point, "moment-point", "moment-point"))
    if name:
        items.append(Tag(point, (name,), "moment-point"))
    return tuple(items)


def foot_of(force: Force, point: Point) -> Point:
    """Where the perpendicular from `point` meets the force's line of action."""
    along = (point[0] - force.at[0]) * force.x + (point[1] - force.at[1]) * force.y
    return force.at[0] + along * force.x, force.at[1] + along * force.y


def meets(force: Force, point: Point) -> bool:
    """Whether the line of action passes through the point."""
    foot = foot_of(force, point)
    reach = max(map(abs, (*force.at, *point)), default=1.0)
    return math.dist(foot, point) <= 1e-9 * max(reach, 1e-300)


def arm_words(force: Force, point: Point, name: str) -> str:
    """Where the arm runs, without its length."""
    if meets(force, point):
        return f"The line of action of {force.name} passes through {name}."
    if force.y == 0 or force.x == 0:
        way = "vertical" if force.x == 0 else "horizontal"
        arm = "horizontally" if force.x == 0 else "vertically"
        return (
            f"The line of action of {force.name} is {way}; its arm about {name} is measured "
            f"{arm} from {name} to that line."
        )
    return (
        f"The line of action of {force.name} is inclined; its arm about {name} is the "
        f"perpendicular from {name} to that line."
    )


def _inward(force: Force, foot: Point) -> Point:
    """Along the line of action from the foot toward the force."""
    back = (force.at[0] - foot[0]) * force.x + (force.at[1] - foot[1]) * force.y
    return (force.x, force.y) if back >= 0 else (-force.x, -force.y)


def _line(problem: Problem, force: Force, foot: Point) -> tuple[Point, Point]:
    """A piece of the line of action that spans the truss and the foot, and a little more."""
    places = [joint.at for joint in problem.joints] + [foot]
    along = [(x - force.at[0]) * force.x + (y - force.at[1]) * force.y for x, y in places]
    extra = OVERHANG * (max(along) - min(along) or 1.0)
    low, high = min(along) - extra, max(along) + extra
    start, end = (
        (force.at[0] + reach * force.x, force.at[1] + reach * force.y) for reach in (low, high)
    )
    return start, end

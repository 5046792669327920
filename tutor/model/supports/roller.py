"""A roller: it pushes on its joint, at right angles to what it rolls on; up where nothing is said."""

from __future__ import annotations

from tutor.model.direction import RIGHT, UP, Direction
from tutor.model.parts import Joint, Reaction, Support
from tutor.model.support_kind import SupportKind
from tutor.notation import Exact


def _reactions(support: Support, joint: Joint) -> tuple[Reaction, ...]:
    angle = support.angle if support.angle is not None else Exact.of(90)
    direction = Direction.at_angle(angle)
    if direction.y == 0:
        return (Reaction(f"{joint.name}_x", joint.name, RIGHT, axis="x"),)
    if direction.x == 0:
        return (Reaction(f"{joint.name}_y", joint.name, UP, axis="y"),)
    return (Reaction(f"R_{joint.name}", joint.name, direction),)


KIND = SupportKind(
    name="roller",
    reactions=_reactions,
    sign="roller",
    why="A roller pushes at right angles to what it rolls on, and nothing more.",
    takes="angle",
    about="which way it pushes",
    alone="roller on a level floor",
    means="up from a level floor",
    words=("rollers", "rocker"),
    only_pushes=True,
)

"""A short link to a fixed point: it pulls or pushes along itself."""

from __future__ import annotations

from tutor.model.direction import Direction
from tutor.model.parts import Joint, Reaction, Support
from tutor.model.support_kind import SupportKind


def _reactions(support: Support, joint: Joint) -> tuple[Reaction, ...]:
    assert support.anchor is not None
    dx = support.anchor[0].minus(joint.x)
    dy = support.anchor[1].minus(joint.y)
    return (Reaction(f"R_{joint.name}", joint.name, Direction.along(dx, dy), pull=True),)


KIND = SupportKind(
    name="link",
    reactions=_reactions,
    sign="link",
    why="A link pulls or pushes along its own axis, and nothing more.",
    takes="point",
    about="the fixed point it goes to",
)

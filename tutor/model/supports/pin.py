"""A pin: it holds its joint in both directions."""

from __future__ import annotations

from tutor.model.direction import RIGHT, UP
from tutor.model.parts import Joint, Reaction, Support
from tutor.model.support_kind import SupportKind


def _reactions(support: Support, joint: Joint) -> tuple[Reaction, ...]:
    return (
        Reaction(f"{joint.name}_x", joint.name, RIGHT, axis="x"),
        Reaction(f"{joint.name}_y", joint.name, UP, axis="y"),
    )


KIND = SupportKind(
    name="pin",
    reactions=_reactions,
    sign="pin",
    why="A pin holds its joint in both directions and lets it turn.",
    alone="pin",
    means="both ways",
    words=("pinned", "hinge", "hinged"),
)

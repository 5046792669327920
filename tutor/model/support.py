"""Which unknown reactions does each kind of support put on its joint?"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from tutor.model.direction import RIGHT, UP, Direction
from tutor.model.parts import Joint, Reaction, Support, SupportKind
from tutor.notation import Exact


def _pin(support: Support, joint: Joint) -> tuple[Reaction, ...]:
    return (
        Reaction(f"{joint.name}_x", joint.name, RIGHT),
        Reaction(f"{joint.name}_y", joint.name, UP),
    )


def _roller(support: Support, joint: Joint) -> tuple[Reaction, ...]:
    angle = support.angle if support.angle is not None else Exact.of(90)
    direction = Direction.at_angle(angle)
    if direction.y == 0:
        return (Reaction(f"{joint.name}_x", joint.name, RIGHT),)
    if direction.x == 0:
        return (Reaction(f"{joint.name}_y", joint.name, UP),)
    return (Reaction(f"R_{joint.name}", joint.name, direction),)


def _link(support: Support, joint: Joint) -> tuple[Reaction, ...]:
    assert support.anchor is not None
    dx = support.anchor[0].minus(joint.x)
    dy = support.anchor[1].minus(joint.y)
    return (Reaction(f"R_{joint.name}", joint.name, Direction.along(dx, dy), pull=True),)


REACTIONS: Mapping[SupportKind, Callable[[Support, Joint], tuple[Reaction, ...]]] = {
    "pin": _pin,
    "roller": _roller,
    "link": _link,
}


def reactions_of(support: Support, joint: Joint) -> tuple[Reaction, ...]:
    """The unknowns that `support` puts on `joint`; names and positive senses as in `Reaction`."""
    return REACTIONS[support.kind](support, joint)


def push_along(support: Support, reaction: Reaction) -> float:
    """The component of a roller's push along the positive sense of its reaction: 1.0 or -1.0."""
    angle = support.angle if support.angle is not None else Exact.of(90)
    push = Direction.at_angle(angle)
    return push.x * reaction.direction.x + push.y * reaction.direction.y

"""Which unknown reactions does a support put on its joint, and which way does it push?"""

from __future__ import annotations

from tutor.model.direction import Direction
from tutor.model.parts import Joint, Reaction, Support
from tutor.model.support_kind import SupportKind
from tutor.model.supports import SUPPORTS


def kind_of_support(support: Support) -> SupportKind:
    """What is so of every support of its kind."""
    return SUPPORTS[support.kind]


def reactions_of(support: Support, joint: Joint) -> tuple[Reaction, ...]:
    """The unknowns that `support` puts on `joint`; names and positive senses as in `Reaction`."""
    return kind_of_support(support).reactions(support, joint)


def push_along(support: Support, reaction: Reaction) -> float:
    """The component of a support's push along the positive sense of its reaction: 1.0 or -1.0."""
    if support.angle is None:
        return 1.0
    push = Direction.at_angle(support.angle)
    return push.x * reaction.direction.x + push.y * reaction.direction.y

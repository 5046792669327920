"""Which way is a reaction drawn? The student's word for an arrow, as a unit vector."""

from __future__ import annotations

from collections.abc import Mapping

from tutor.figure.parts import Point
from tutor.model import Reaction

AXIS: Mapping[str, Point] = {
    "right": (1.0, 0.0),
    "left": (-1.0, 0.0),
    "up": (0.0, 1.0),
    "down": (0.0, -1.0),
}
AGAINST = frozenset({"against", "push"})


def sense_sign(reaction: Reaction, sense: str | None) -> int:
    """+1 where `sense` agrees with the reaction's positive direction, -1 where it is against it.

    Words: left, right, up, down; along, against (pull, push for a link). Nothing or another word
    means the positive direction. "left" for an inclined reaction is whichever way has a leftward
    part.
    """
    if sense in AGAINST:
        return -1
    x, y = AXIS.get(sense or "", (0.0, 0.0))
    return -1 if x * reaction.direction.x + y * reaction.direction.y < -1e-12 else 1


def drawn(reaction: Reaction, sense: str | None) -> Point:
    """The unit vector of the arrow as drawn."""
    sign = sense_sign(reaction, sense)
    return sign * reaction.direction.x + 0.0, sign * reaction.direction.y + 0.0

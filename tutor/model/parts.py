"""What is a plane truss made of? Frozen facts: joints, members, supports, reactions, loads.

x is to the right, y is up; angles are in degrees from +x, counter-clockwise. Lengths are in the
problem's `length` unit and forces in its `force` unit.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Literal

from tutor.model.direction import Direction
from tutor.notation import Exact

PushDirection = Literal["up", "down", "left", "right"]

AXES: Mapping[PushDirection, tuple[int, int]] = {
    "up": (0, 1),
    "down": (0, -1),
    "left": (-1, 0),
    "right": (1, 0),
}
TURNED: Mapping[PushDirection, PushDirection] = {
    "up": "up",
    "down": "down",
    "left": "right",
    "right": "left",
}
"""Each direction in a truss turned round, left to right."""
Pushes = tuple[tuple[PushDirection, Exact], ...]


def turned(pushes: Pushes) -> Pushes:
    """The pushes in a truss turned round."""
    return tuple((TURNED[way], size) for way, size in pushes)


@dataclass(frozen=True)
class Joint:
    """A frictionless pin where members meet, at (x, y)."""

    name: str
    x: Exact
    y: Exact

    @property
    def at(self) -> tuple[float, float]:
        return self.x.value, self.y.value


@dataclass(frozen=True)
class Member:
    """A straight bar between two joints; its unknown is its axial force, tension positive.

    `name` is the one name every verdict, answer and file uses: "AB", or "U1-L2" for longer joint
    names, with the joints in the order the file gives them.
    """

    name: str
    start: str
    end: str

    def other(self, joint: str) -> str:
        """The joint at the far end from `joint`, which must be one of the two."""
        return self.end if joint == self.start else self.start


@dataclass(frozen=True)
class Reaction:
    """One unknown reaction: its name, the joint it acts at and its positive direction.

    "A_x" and "A_y" are positive to the right and up; "R_C" of an inclined roller is positive along
    the stated direction, "R_C" of a link when the link pulls on the joint. `axis` is that of a component,
    empty where the reaction is the whole force along its line.
    """

    name: str
    joint: str
    direction: Direction
    pull: bool = False
    axis: Literal["x", "y", ""] = ""


@dataclass(frozen=True)
class Support:
    """What holds a joint to the ground: its `kind` is a name of `tutor.model.supports`.

    `angle` is the direction of its push, `anchor` the fixed point it goes to, where its kind takes one.
    """

    joint: str
    kind: str
    angle: Exact | None = None
    anchor: tuple[Exact, Exact] | None = None


@dataclass(frozen=True)
class Load:
    """A given force on a joint: pushes along the axes, or a size in a direction.

    `pushes` holds (direction, size) as the file gives them; a load given by size and angle has
    `size` and `angle` instead and no pushes. Sizes are positive as written in the file. `spread` says
    that no one wrote it down: it follows from what is spread along members (`tutor.model.spread`).
    """

    joint: str
    pushes: Pushes = ()
    size: Exact | None = None
    angle: Exact | None = None
    spread: bool = False

    @cached_property
    def vector(self) -> tuple[float, float]:
        """The components (to the right, up) in the problem's force unit."""
        if self.size is not None and self.angle is not None:
            unit = Direction.at_angle(self.angle)
            return self.size.value * unit.x, self.size.value * unit.y
        return (
            math.fsum(AXES[way][0] * size.value for way, size in self.pushes),
            math.fsum(AXES[way][1] * size.value for way, size in self.pushes),
        )

    def sympy(self) -> tuple[Any, Any]:
        """The components (to the right, up) as exact sympy expressions."""
        import sympy

        if self.size is not None and self.angle is not None:
            ux, uy = Direction.at_angle(self.angle).sympy()
            return self.size.sympy() * ux, self.size.sympy() * uy
        zero = sympy.Integer(0)
        return (
            sum((AXES[way][0] * size.sympy() for way, size in self.pushes), zero),
            sum((AXES[way][1] * size.sympy() for way, size in self.pushes), zero),
        )

"""Which way does something act? Unit vectors, exact where the file is exact.

x is to the right, y is up; angles are in degrees from +x, counter-clockwise.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from tutor.notation import Exact


@dataclass(frozen=True)
class Direction:
    """A unit vector in the plane: `x`, `y` as floats, and exactly through `sympy()`.

    It comes from an `angle` in degrees, or from a vector `(dx, dy)` of any length.
    """

    x: float
    y: float
    angle: Exact | None = None
    vector: tuple[Exact, Exact] | None = None

    def sympy(self) -> tuple[Any, Any]:
        """The two components as exact sympy expressions."""
        import sympy

        if self.angle is not None:
            radians = self.angle.sympy() * sympy.pi / 180
            return sympy.cos(radians), sympy.sin(radians)
        assert self.vector is not None
        dx, dy = (part.sympy() for part in self.vector)
        length = sympy.sqrt(dx**2 + dy**2)
        return dx / length, dy / length

    @classmethod
    def at_angle(cls, angle: Exact) -> Direction:
        """The direction `angle` degrees from +x; the axes come out as exact zeros and ones."""
        turn = angle.value % 360.0
        axis = {0.0: (1.0, 0.0), 90.0: (0.0, 1.0), 180.0: (-1.0, 0.0), 270.0: (0.0, -1.0)}.get(turn)
        x, y = axis or (math.cos(math.radians(turn)), math.sin(math.radians(turn)))
        return cls(x, y, angle=angle)

    @classmethod
    def along(cls, dx: Exact, dy: Exact) -> Direction:
        """The direction of the vector (dx, dy), which must not be zero."""
        length = math.hypot(dx.value, dy.value)
        return cls(dx.value / length, dy.value / length, vector=(dx, dy))


RIGHT = Direction(1.0, 0.0, angle=Exact.of(0))
UP = Direction(0.0, 1.0, angle=Exact.of(90))

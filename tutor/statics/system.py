"""Which equations do all joints give together?

Two rows a joint, in the order of `problem.joints`: the sum of forces along x, then along y. One
column an unknown, in the order of `problem.unknowns`. `matrix @ forces + loads = 0`.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import TYPE_CHECKING

from tutor.model import Problem
from tutor.statics.body import joint_body

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]


def joint_equations(problem: Problem) -> tuple[Floats, Floats]:
    """The matrix (2j by m + r, pure numbers) and the loads (2j, force unit) of all joints."""
    import numpy as np  # here, not at the top: the first frame must not wait for numpy

    row = {joint.name: 2 * k for k, joint in enumerate(problem.joints)}
    matrix = [[0.0] * len(problem.unknowns) for _ in range(2 * len(row))]
    for column, reaction in enumerate(problem.reactions):
        at, way = row[reaction.joint], reaction.direction
        matrix[at][column], matrix[at + 1][column] = way.x, way.y
    for column, member in enumerate(problem.members, len(problem.reactions)):
        here, there = problem.joint[member.start], problem.joint[member.end]
        dx, dy = there.x.less(here.x), there.y.less(here.y)
        length = math.hypot(dx, dy)
        for end, sign in ((row[member.start], 1.0), (row[member.end], -1.0)):
            matrix[end][column], matrix[end + 1][column] = sign * dx / length, sign * dy / length
    loads = [0.0] * (2 * len(row))
    for load in problem.loads:
        x, y = load.vector
        if load.size is not None:
            size = math.hypot(x, y)
            x, y = x / size * size, y / size * size
        loads[row[load.joint]] += x
        loads[row[load.joint] + 1] += y
    shape = (2 * len(row), len(problem.unknowns))
    return np.array(matrix).reshape(shape) + 0.0, np.array(loads) + 0.0


def residuals(problem: Problem, values: Mapping[str, float]) -> dict[str, tuple[float, float]]:
    """What is left over at each joint, (x, y) in the force unit, with these values of the unknowns.

    Values are in the positive senses (tension, +x, +y, stated direction). KeyError if one is missing.
    """
    left = {}
    for joint in problem.joints:
        x = y = 0.0
        for force in joint_body(problem, joint.name).forces:
            size = values[force.name] if force.size is None else force.size
            x += force.x * size
            y += force.y * size
        left[joint.name] = (x, y)
    return left

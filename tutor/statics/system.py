"""Which equations do all joints give together?

Two rows a joint, in the order of `problem.joints`: the sum of forces along x, then along y. One
column an unknown, in the order of `problem.unknowns`. `matrix @ forces + loads = 0`.
"""

from __future__ import annotations

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

    column = {name: k for k, name in enumerate(problem.unknowns)}
    matrix = np.zeros((2 * len(problem.joints), len(column)))
    loads = np.zeros(2 * len(problem.joints))
    for k, joint in enumerate(problem.joints):
        for force in joint_body(problem, joint.name).forces:
            if force.size is None:
                matrix[2 * k, column[force.name]] += force.x
                matrix[2 * k + 1, column[force.name]] += force.y
            else:
                loads[2 * k] += force.x * force.size
                loads[2 * k + 1] += force.y * force.size
    return matrix, loads


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

"""Which equation does a line's own heading name?"""

from __future__ import annotations

import math
from collections.abc import Mapping

from tutor.judge.about import Along, Equation, Fx, Fy, M
from tutor.model import Problem
from tutor.notation import Label, Line, Unreadable

SNAP = 0.06
"""A typed angle this near to a member's own (degrees) is meant to be the member's."""


def headed(problem: Problem, line: Line | Unreadable, joint: str | None) -> Equation | None:
    """The equation that a line's own heading names, None where it has none or cannot be read."""
    if isinstance(line, Unreadable) or line.label is None:
        return None
    return equation_named(problem, line.label, joint)


def equation_named(problem: Problem, label: Label, joint: str | None) -> Equation | None:
    """The equation that a heading names, None where it leaves open which.

    A sum of forces is that of the joint it names, else of `joint`; moments are of the whole truss.
    """
    if label.kind == "moment":
        return None if label.point is None else M(label.point)
    if label.kind is None:
        return None
    place = label.point if isinstance(label.point, str) else None if label.whole else joint
    if label.kind == "along":
        return None if label.degrees is None else snapped(problem, label.degrees, place)
    return Fx(place) if label.kind == "x" else Fy(place)


def snapped(problem: Problem, degrees: float, joint: str | None) -> Equation:
    """The sum along `degrees`, or along the axis or member direction that the angle is rounded from.

    Angles are typed rounded; the sum square to a member has to leave that member out exactly.
    """
    if degrees % 180.0 in (0.0, 90.0):
        return Fy(joint) if degrees % 180.0 else Fx(joint)
    if joint is not None:
        for exact in slants(problem, joint):
            off = (degrees - exact + 90.0) % 180.0 - 90.0
            if abs(off) <= SNAP:
                return Along(exact, joint)
    return Along(degrees, joint)


def slants(problem: Problem, joint: str) -> Mapping[float, tuple[str, bool]]:
    """Directions worth a sum at a joint besides x and y, in degrees from 0 to 180.

    Each comes with the member it lies along (True) or square to (False).
    """
    here = problem.joint[joint].at
    found: dict[float, tuple[str, bool]] = {}
    for member in problem.meeting[joint]:
        there = problem.joint[member.other(joint)].at
        degrees = math.degrees(math.atan2(there[1] - here[1], there[0] - here[0])) % 180.0
        for along, turn in ((True, degrees), (False, (degrees + 90.0) % 180.0)):
            on_axis = min(turn % 90.0, 90.0 - turn % 90.0) < 1e-6
            if not on_axis and all(abs(turn - other) > 1e-6 for other in found):
                found[turn] = (member.name, along)
    return found

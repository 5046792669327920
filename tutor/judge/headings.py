"""Which equation does a line's own heading name?"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from tutor.judge.about import (
    ROUNDED_DIRECTION,
    Along,
    Asked,
    Equation,
    Fx,
    Fy,
    M,
    at_body,
    in_words,
    point_of,
)
from tutor.judge.lines_meant import lines_meant
from tutor.judge.parts import part_named
from tutor.model import Problem
from tutor.notation import Label, Line, Unreadable

NEARLY_EXACT = 1e-6


def headed(problem: Problem, line: Line | Unreadable, joint: str | None) -> Equation | None:
    """The equation that a line's own heading names, None where it has none or cannot be read.

    Where it speaks of a part it is a sum of that part, None where it leaves open which part that is.
    """
    if isinstance(line, Unreadable) or line.label is None:
        return None
    if line.label.part is None:
        return equation_named(problem, line.label, joint)
    part, about = part_named(problem, line.label.part), equation_named(problem, line.label, None)
    return None if part is None or about is None else replace(about, joint=None, part=part)


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
        degrees = direction_named(problem, label, place)
        return None if degrees is None else sum_along(problem, degrees, place)
    return Fx(place) if label.kind == "x" else Fy(place)


def direction_named(problem: Problem, label: Label, joint: str | None = None) -> float | None:
    """The direction of a sum of forces that a heading names, in degrees from +x; None for none.

    Where words alone say it, as "the rafter", it is that of the one line at the `joint` that they can mean.
    """
    if label.line:
        meant = lines_meant(problem, label.line, joint)
        return (meant[0] + 90.0 * label.across) % 180.0 if len(meant) == 1 else None
    if label.between is None:
        return {"x": 0.0, "y": 90.0}.get(label.kind or "", label.degrees)
    (x, y), (to_x, to_y) = (
        problem.joint[name].at for name in (label.between.start, label.between.end)
    )
    return (math.degrees(math.atan2(to_y - y, to_x - x)) + label.between.turn) % 180.0


def sum_along(problem: Problem, degrees: float, joint: str | None) -> Equation:
    """The sum along `degrees`, or along the axis or member direction that the angle is rounded from.

    Angles are typed rounded; the sum square to a member has to leave that member out exactly.
    """
    if degrees % 180.0 in (0.0, 90.0):
        return Fy(joint) if degrees % 180.0 else Fx(joint)
    if joint is not None:
        for exact in slants(problem, joint):
            if abs(_turned(degrees, exact)) <= ROUNDED_DIRECTION:
                return Along(exact, joint)
    return Along(degrees, joint)


def _turned(degrees: float, other: float) -> float:
    """How far one line is turned from another, from -90 to 90 degrees."""
    return (degrees - other + 90.0) % 180.0 - 90.0


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


def member_along(problem: Problem, about: Along) -> tuple[str, bool] | None:
    """The member at the joint that the direction lies along (True) or square to (False), or None."""
    ways = {} if about.joint is None else slants(problem, about.joint)
    near = (way for exact, way in ways.items() if abs(_turned(about.degrees, exact)) < NEARLY_EXACT)
    return next(near, None)


def direction_in_words(problem: Problem, about: Along) -> str:
    """ "AB", "the perpendicular to AB", "30°": along what forces are added."""
    way = member_along(problem, about)
    if way is None:
        return f"{about.degrees:.4g}°"
    return way[0] if way[1] else f"the perpendicular to {way[0]}"


def along_in_words(problem: Problem, about: Along) -> str:
    """ "along AB", "perpendicular to AB" where a member at the joint lies so; else "along 30°"."""
    way = member_along(problem, about)
    if way is None:
        return f"along {about.degrees:.4g}°"
    return f"{'along' if way[1] else 'perpendicular to'} {way[0]}"


def equation_in_words(problem: Problem, about: Asked) -> str:
    """As `in_words`, and a direction by the member it lies along: "ΣF along AB at joint B"."""
    if not isinstance(about, Along):
        return in_words(about)
    return f"ΣF {along_in_words(problem, about)} {at_body(about)}"


def headed_otherwise(problem: Problem, about: Equation, label: Label | None) -> str | None:
    """A sentence where a line's own heading names another equation than the one asked for."""
    if label is None:
        return None
    if _at_another_joint(about, label) or (label.kind and not _is_named(problem, about, label)):
        words = equation_in_words(problem, about)
        return f"What you wrote is {words}, though its heading says otherwise."
    return None


def _at_another_joint(about: Equation, label: Label) -> bool:
    """Whether a heading names a joint, and not the one where the forces are added.

    A joint alone is a heading only where the line begins with it: elsewhere it may be said of a value, "from E".
    """
    named = label.point if label.kind != "moment" and isinstance(label.point, str) else None
    heads = label.kind is not None or label.span.start == 0
    return heads and None not in (named, about.joint) and named != about.joint


def _is_named(problem: Problem, about: Equation, label: Label) -> bool:
    """Whether a heading names an equation, whatever body it names: a sum of forces goes by its direction."""
    if isinstance(about, M):
        if label.kind != "moment" or label.point in (None, about.at):
            return label.kind == "moment"
        return point_of(problem, M(label.point)) == point_of(problem, about)
    if label.kind == "moment":
        return False
    said = direction_named(problem, label, about.joint)
    meant = about.degrees if isinstance(about, Along) else 90.0 * isinstance(about, Fy)
    return said is None or abs((said - meant + 90.0) % 180.0 - 90.0) <= ROUNDED_DIRECTION

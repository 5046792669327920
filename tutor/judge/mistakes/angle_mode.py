"""A calculator in radians was given degrees, or the other way round."""

from __future__ import annotations

import math
from collections.abc import Iterator

from tutor.judge.about import Fx
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind, Look
from tutor.judge.saying import Saying
from tutor.judge.scale import SOMEWHAT
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    if spot.is_moment:
        yield from _in_a_moment(spot)
        return
    if abs(spot.per_unit) in (0.0, 1.0):
        return
    angle = math.degrees(math.acos(min(1.0, abs(spot.per_unit))))
    for degrees in _as_read_off(angle):
        yield math.copysign(1.0, spot.per_unit) * math.cos(degrees)
        yield math.copysign(1.0, spot.per_unit) * math.sin(90.0 - degrees)


def _in_a_moment(spot: TrueTerm) -> Iterator[float]:
    """Both components taken of degrees as if they were radians, each with its own arm."""
    ux, uy = spot.unit_vector
    if min(abs(ux), abs(uy)) < 1e-9 or spot.per_unit == 0.0:
        return
    dx, dy = spot.offset
    for degrees in _as_read_off(math.degrees(math.atan2(abs(uy), abs(ux)))):
        for level, upright in (
            (math.cos(degrees), math.sin(degrees)),
            (math.sin(90.0 - degrees), math.cos(90.0 - degrees)),
        ):
            yield dx * math.copysign(1.0, uy) * upright - dy * math.copysign(1.0, ux) * level


def _as_read_off(angle: float) -> set[float]:
    return {angle, round(angle, 2), round(angle, 1), float(round(angle))}


def look(case: Case) -> Saying:
    return Saying(
        f"A sine or cosine in {case.this_line} was taken with the calculator set to other angles"
    )


def reason(case: Case) -> str:
    return (
        "A calculator reads an angle as degrees or as radians, as it is set. A bare angle in a line is "
        "in degrees here; the word rad behind it says radians."
    )


def place(case: Case) -> Saying:
    if case.force is None:
        return Saying(
            f"Go to each angle in {case.your_line}",
            "are its figures degrees, as they are read, or radians?",
        )
    return Saying(
        "mixes degrees and radians",
        "write the angle in degrees and take it again.",
        of=f"The sine or cosine beside {case.thing}",
    )


def shows(term: Look) -> bool:
    """A calculator answers the wrong kind of angle with a rounded number, or the line says "rad"."""
    return term.factors.radians or (term.rounded and not term.factors.functions)


KIND = Kind(
    code="angle-mode",
    called="an angle in radians",
    rare=SOMEWHAT,
    why="The calculator was last used in another course.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(Fx("A"), "A_x + F_AB + F_AD cos(53.13 rad) = 0"),),
    calculated=True,
    runs_through=True,
    shows=shows,
)

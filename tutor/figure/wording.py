"""How are numbers, slopes and directions said in words?"""

from __future__ import annotations

import math
from fractions import Fraction

from tutor.figure.parts import Point
from tutor.model import Direction, Member, Problem

TIDY = 24
"""The largest rise or run that is still shown as a slope of whole numbers."""


def number(value: float, figures: int = 4) -> str:
    """`value` in plain decimals with about `figures` significant ones, no trailing zeros."""
    if not math.isfinite(value):
        return "?"
    if abs(value) >= 1e9 or 0 < abs(value) < 1e-6:
        return f"{value:.{figures - 1}e}"
    if abs(value - round(value)) <= 1e-9 * max(1.0, abs(value)):
        return str(round(value))
    before = math.floor(math.log10(abs(value))) + 1
    text = f"{value:.{max(0, figures - before)}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text in ("-0", "") else text


def given(value: float) -> str:
    """A given number: as a short decimal or fraction where it is exactly one, else rounded."""
    decimal = f"{value:.6f}".rstrip("0").rstrip(".")
    if abs(float(decimal) - value) <= 1e-12 * max(1.0, abs(value)) and len(decimal) <= 9:
        return decimal
    fraction = Fraction(value).limit_denominator(60)
    if abs(float(fraction) - value) <= 1e-12 * max(1.0, abs(value)) and abs(value) < 1000:
        return str(fraction)
    return number(value)


def member_value(value: float) -> str:
    """A member force as size and letter: "12.5 T", "7.5 C", "0"."""
    if abs(value) < 1e-9:
        return "0"
    return f"{number(abs(value))} {'T' if value > 0 else 'C'}"


def slope(dx: Fraction | None, dy: Fraction | None) -> tuple[int, int] | None:
    """(rise, run) of the line along (dx, dy) in small whole numbers; None where there is none, as
    for a part that is zero or not rational."""
    if not dx or not dy:
        return None
    ratio = abs(dy / dx)
    if max(ratio.numerator, ratio.denominator) > TIDY:
        return None
    return ratio.numerator, ratio.denominator


def member_slope(problem: Problem, member: Member) -> tuple[int, int] | None:
    """(rise, run) of a member, or None where it lies along an axis or is not tidy."""
    one, other = problem.joint[member.start], problem.joint[member.end]
    return slope(other.x.minus(one.x).fraction, other.y.minus(one.y).fraction)


def direction_slope(direction: Direction) -> tuple[int, int] | None:
    """(rise, run) of a direction given as a vector, or None."""
    if direction.vector is None:
        return None
    return slope(direction.vector[0].fraction, direction.vector[1].fraction)


def degrees(toward: Point) -> str:
    """The direction in degrees from +x, counter-clockwise: "150°"."""
    turn = math.degrees(math.atan2(toward[1], toward[0])) % 360.0
    return f"{number(round(turn, 1) % 360.0)}°"


def incline(toward: Point, tidy: tuple[int, int] | None) -> str:
    """How steep: "3 in 4", or the angle from the horizontal, "36.9°"; "" along an axis."""
    if tidy is not None:
        return f"{tidy[0]} in {tidy[1]}"
    steep = math.degrees(math.atan2(abs(toward[1]), abs(toward[0])))
    return "" if steep < 1e-6 or steep > 90 - 1e-6 else f"{number(round(steep, 1))}°"


def ways(toward: Point) -> str:
    """The direction in words: "down", "down and left"."""
    x, y = toward
    vertical = "up" if y > 1e-9 else "down" if y < -1e-9 else ""
    across = "right" if x > 1e-9 else "left" if x < -1e-9 else ""
    return " and ".join(word for word in (vertical, across) if word) or "nowhere"


def heading(toward: Point, tidy: tuple[int, int] | None) -> str:
    """Direction and steepness: "down and left, 3 down for 4 across", "up and right, 30° from the
    horizontal"."""
    steep = incline(toward, tidy)
    if not steep:
        return ways(toward)
    if tidy is not None:
        return f"{ways(toward)}, {tidy[0]} {'up' if toward[1] > 0 else 'down'} for {tidy[1]} across"
    return f"{ways(toward)}, {steep} from the horizontal"

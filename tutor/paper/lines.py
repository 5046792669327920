"""How does a textbook write an equation of equilibrium, with the numbers that are known put in?

Every unknown stands in its positive sense: a member pulls on the joint, a reaction acts along +x, +y or
its stated direction. Slopes of whole numbers are written as ratios, "3/5" or "2/√13", other directions
by the acute angle that they make with the horizontal. Minus is "−", a product "·".
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from fractions import Fraction

from tutor.figure.wording import given, number
from tutor.model import Direction, Load, Problem
from tutor.statics import Equilibrium, Force, Moment, Projection

NEAR = 1e-9
FIGURES = 4


def written(equation: Equilibrium, known: Mapping[str, float]) -> str:
    """The equation as a line; `known` are the values already found, as they were written down."""
    text = ""
    for negative, words in _terms(equation, known):
        if text:
            text += f" − {words}" if negative else f" + {words}"
        else:
            text = f"−{words}" if negative else words
    return f"{text or '0'} = 0"


def rounded(value: float) -> str:
    """A value as it is written down: four figures."""
    return number(value, FIGURES).replace("-", "−")


def as_written(value: float) -> float:
    """The same as it is used from then on."""
    return float(number(value, FIGURES))


def _terms(equation: Equilibrium, known: Mapping[str, float]) -> Iterator[tuple[bool, str]]:
    """Each term: whether it is taken off, and its words."""
    for term in equation.terms:
        if term.coefficient == 0.0:
            continue
        force = term.force
        parts = (
            _moment_parts(equation.sum, force)
            if isinstance(equation.sum, Moment)
            else [_part(equation.sum, force)]
        )
        for negative, ratio, arm in parts:
            amount, below = _amount(force, known)
            words = _joined(amount, ratio, arm)
            yield negative != below, words


def _joined(amount: str, ratio: str, arm: str) -> str:
    """A size, a ratio and an arm as one product: "3/5 F_AC", "R_B sin 60° · 4", "3/5 · 12"."""
    if not ratio:
        words = amount
    elif ratio[0].isalpha():
        words = f"{amount} {ratio}"
    else:
        words = f"{ratio} · {amount}" if amount[0].isdigit() else f"{ratio} {amount}"
    return f"{words} · {arm}" if arm else words


def _amount(force: Force, known: Mapping[str, float]) -> tuple[str, bool]:
    """A force's size without its sign, and whether it has a minus: a number where it is known."""
    if force.size is not None:
        return given(force.size), False
    if force.name in known:
        value = known[force.name]
        return rounded(abs(value)), value < 0.0
    return (member_symbol(force.name) if force.kind == "member" else force.name), False


def force_symbol(problem: Problem, name: str) -> str:
    """An unknown as it is written: "F_AB", "F_{U1-L2}", "A_x"."""
    return member_symbol(name) if name in problem.member else name


def member_symbol(name: str) -> str:
    """A member's force as it is written."""
    return f"F_{{{name}}}" if "-" in name else f"F_{name}"


def _part(axis: Projection, force: Force) -> tuple[bool, str, str]:
    """A force's part along an axis: its sign, its ratio ("" for the whole force), no arm."""
    share = axis.of(force)
    return share < 0, _ratio(force, *axis.axis), ""


def _moment_parts(about: Moment, force: Force) -> list[tuple[bool, str, str]]:
    """A force's components with their arms, those that turn about the point."""
    across, up = force.at[0] - about.point[0], force.at[1] - about.point[1]
    size = max(map(abs, (*force.at, *about.point, 1e-300)))
    parts = []
    for share, arm, axis in ((force.y, across, (0.0, 1.0)), (-force.x, up, (1.0, 0.0))):
        if abs(share) > NEAR and abs(arm) > NEAR * size:
            length = given(abs(arm))
            parts.append((share * arm < 0, _ratio(force, *axis), "" if length == "1" else length))
    return parts


def _ratio(force: Force, x: float, y: float) -> str:
    """The size of a force's part along the axis (x, y), per unit: "", "3/5", "2/√13", "cos 30°"."""
    share = abs(force.x * x + force.y * y)
    if abs(share - 1) <= NEAR:
        return ""
    along_axis = max(abs(x), abs(y)) == 1.0
    ratio = _sides(force.source, level=abs(x) == 1.0) if along_axis else ""
    if ratio:
        return ratio
    if along_axis and (turn := _acute(force)):
        return f"{'cos' if abs(x) == 1.0 else 'sin'} {turn}°"
    return f"{share:.5g}"


def _sides(source: Direction | Load | None, level: bool) -> str:
    """The side of a force's slope triangle over its longest one, where its sides are whole numbers."""
    if not isinstance(source, Direction) or source.vector is None:
        return ""
    dx, dy = source.vector[0].fraction, source.vector[1].fraction
    if not dx or not dy:
        return ""
    slope = abs(dy / dx)
    run, rise = slope.denominator, slope.numerator
    square = run**2 + rise**2
    if square > 10**6:
        return ""
    longest = math.isqrt(square)
    side = run if level else rise
    if longest**2 == square:
        return str(Fraction(side, longest))
    return f"{side}/√{square}"


def _acute(force: Force) -> str:
    """The angle of a force to the horizontal in degrees, where it is a short decimal."""
    degrees = math.degrees(math.atan2(abs(force.y), abs(force.x)))
    text = f"{degrees:.2f}".rstrip("0").rstrip(".")
    return text if abs(float(text) - degrees) <= 1e-7 else ""

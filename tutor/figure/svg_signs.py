"""How are joints and supports drawn in SVG?"""

from __future__ import annotations

import math
from collections.abc import Sequence

from tutor.figure.laid_out import Sign
from tutor.figure.page import LINK
from tutor.figure.palette import Inks
from tutor.figure.parts import Point
from tutor.figure.signs import step

UNIT = 8.0
Segment = tuple[Point, Point]


def path(points: Sequence[Point]) -> str:
    """Path data through page points."""
    return "M" + " L".join(f"{x * UNIT:.1f} {y * UNIT:.1f}" for x, y in points)


def sign_svg(sign: Sign, palette: Inks) -> tuple[str, list[Segment]]:
    """A sign as SVG, and the segments of the page it takes."""
    colour = palette.line("highlight" if sign.lit else sign.role)
    x, y = sign.at[0] * UNIT, sign.at[1] * UNIT
    if sign.symbol == "joint":
        radius = 6 if sign.lit else 4.2
        return (
            f'<circle cx="{x:.1f}" cy="{y:.1f}" r="{radius}" fill="{palette.ground}" '
            f'stroke="{colour}" stroke-width="{3 if sign.lit else 2}"/>',
            [],
        )
    if sign.symbol == "moment-point":
        return (
            f'<circle cx="{x:.1f}" cy="{y:.1f}" r="8" fill="none" stroke="{colour}" '
            f'stroke-width="2"/><circle cx="{x:.1f}" cy="{y:.1f}" r="3" fill="{colour}"/>',
            [],
        )
    if sign.symbol == "right-angle":
        return _strokes([_right_angle(sign)], colour), []
    return _support(sign, colour, palette)


def _right_angle(sign: Sign) -> list[Point]:
    (x, y), (tx, ty), (cx, cy) = sign.at, sign.toward, sign.across
    leg = 1.4
    return [
        (x + leg * tx, y + leg * ty),
        (x + leg * (tx + cx), y + leg * (ty + cy)),
        (x + leg * cx, y + leg * cy),
    ]


def _strokes(lines: Sequence[Sequence[Point]], colour: str, broad: float = 1.8) -> str:
    shape = " ".join(path(line) for line in lines)
    return f'<path d="{shape}" stroke="{colour}" stroke-width="{broad:g}" fill="none"/>'


def _support(sign: Sign, colour: str, palette: Inks) -> tuple[str, list[Segment]]:
    reach = min(sign.size, 4.2)
    if sign.symbol == "pin":
        base = 0.7 * reach
        corners = [step(sign, 0.3), step(sign, base, -0.45 * reach), step(sign, base, 0.45 * reach)]
        shape = (
            f'<path d="{path(corners)} Z" fill="{palette.ground}" stroke="{colour}" '
            f'stroke-width="1.8"/>'
        )
    elif sign.symbol == "roller":
        base = 0.8 * reach
        radius = (base - 0.5) / 2
        x, y = step(sign, 0.5 + radius)
        shape = (
            f'<circle cx="{x * UNIT:.1f}" cy="{y * UNIT:.1f}" r="{radius * UNIT:.1f}" '
            f'fill="{palette.ground}" stroke="{colour}" stroke-width="1.8"/>'
        )
    else:
        base = -LINK * sign.size + 0.7
        shape = _strokes([[sign.at, step(sign, base)]], colour, 6.5)
        shape += _strokes([[sign.at, step(sign, base)]], palette.ground, 3)
        x, y = step(sign, base)
        base -= 0.5
        shape += (
            f'<circle cx="{x * UNIT:.1f}" cy="{y * UNIT:.1f}" r="3.5" fill="{palette.ground}" '
            f'stroke="{colour}" stroke-width="2"/>'
        )
    return shape + _ground(sign, base, colour), [
        (sign.at, step(sign, base)),
        (step(sign, base, -2.4), step(sign, base, 2.4)),
    ]


def _ground(sign: Sign, base: float, colour: str) -> str:
    """The ground line and its hatching on the far side."""
    away = math.copysign(0.8, base)
    lines = [[step(sign, base, -2.4), step(sign, base, 2.4)]]
    lines += [
        [step(sign, base, side / 10), step(sign, base + away, side / 10 - 0.7)]
        for side in range(-17, 25, 8)
    ]
    return _strokes(lines, colour, 1.4)

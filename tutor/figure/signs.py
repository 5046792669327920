"""How are joints, supports and arrow heads drawn in characters?"""

from __future__ import annotations

import itertools
import math
from collections.abc import Mapping
from dataclasses import dataclass

from tutor.figure.laid_out import Sign
from tutor.figure.page import LINK
from tutor.figure.parts import Point, Role, Turn
from tutor.figure.placing import GLYPH
from tutor.figure.raster import Canvas, Glyphs


@dataclass(frozen=True)
class Marks:
    """The signs of one glyph set; `heads` run counter-clockwise from the right.

    `level` and `upright` are the start, a tick, the end and the bar of a dimension line.
    """

    heads: str
    joint: str
    joint_lit: str
    moment_point: str
    level: tuple[str, str, str, str]
    upright: tuple[str, str, str, str]
    turning: Mapping[Turn, str]

    def head(self, toward: Point) -> str:
        """The head nearest to a direction on the page (y down)."""
        return self.heads[round(math.atan2(-toward[1], toward[0]) / (math.pi / 4)) % 8]


FINE = Marks(
    heads="→↗↑↖←↙↓↘",
    joint="○",
    joint_lit="◉",
    moment_point="×",
    level=("├", "┼", "┤", "─"),
    upright=("┬", "┼", "┴", "│"),
    turning={"ccw": "↺ +", "cw": "↻ +"},
)
COARSE = Marks(
    heads=">^^^<vvv",
    joint="o",
    joint_lit="@",
    moment_point="X",
    level=("|", "|", "|", "-"),
    upright=("+", "+", "+", "|"),
    turning={"ccw": "+ ccw", "cw": "+ cw"},
)
MARKS: Mapping[Glyphs, Marks] = {"braille": FINE, "blocks": FINE, "ascii": COARSE}

PICTURES: Mapping[tuple[str, int, int], tuple[tuple[int, int, str], ...]] = {
    ("pin", 0, 1): ((0, 1, "/_\\"), (0, 2, "/////")),
    ("pin", 0, -1): ((0, -1, "\\-/"), (0, -2, "/////")),
    ("pin", 1, 0): ((-1, 0, ">"), (-2, -1, "|"), (-2, 0, "|"), (-2, 1, "|")),
    ("pin", -1, 0): ((1, 0, "<"), (2, -1, "|"), (2, 0, "|"), (2, 1, "|")),
    ("roller", 0, 1): ((0, 1, "(_)"), (0, 2, "-----")),
    ("roller", 0, -1): ((0, -1, "(-)"), (0, -2, "-----")),
    ("roller", 1, 0): ((-1, 0, "O"), (-2, -1, "|"), (-2, 0, "|"), (-2, 1, "|")),
    ("roller", -1, 0): ((1, 0, "O"), (2, -1, "|"), (2, 0, "|"), (2, 1, "|")),
}
"""Supports along the axes in ASCII: by symbol and push, (column, row) of the centre and the text."""


def draw_sign(canvas: Canvas, sign: Sign) -> None:
    """Draw a joint, a support, a right angle or a moment point."""
    role: Role = "highlight" if sign.lit else sign.role
    marks = MARKS[canvas.glyphs]
    if sign.symbol == "joint":
        _point(canvas, sign.at, marks.joint_lit if sign.lit else marks.joint, role)
    elif sign.symbol == "moment-point":
        _point(canvas, sign.at, marks.moment_point, role)
    elif sign.symbol == "right-angle":
        _right_angle(canvas, sign, role)
    elif canvas.glyphs == "ascii" and _picture(canvas, sign, role):
        return
    elif sign.symbol == "link":
        _link(canvas, sign, role)
    elif sign.symbol == "roller":
        _roller(canvas, sign, role)
    else:
        _pin(canvas, sign, role)


def _point(canvas: Canvas, at: Point, char: str, role: Role) -> None:
    canvas.put(at[0], at[1], char, role)
    slot = canvas.board.slot(*at)
    if slot is not None:
        canvas.board.hard[slot] = GLYPH


def _stroke(canvas: Canvas, start: Point, end: Point, role: Role) -> None:
    canvas.line(start, end, "solid", role, owner=0, sign=True)


def step(sign: Sign, out: float, side: float = 0.0) -> Point:
    """The page point `out` from the joint toward the ground, and `side` along the ground."""
    x, y = -sign.toward[0], -sign.toward[1]
    return sign.at[0] + out * x - side * y, sign.at[1] + out * y + side * x


def _pin(canvas: Canvas, sign: Sign, role: Role) -> None:
    small = sign.size < 4
    base, half, ground = (2.8, 1.3, 2.0) if small else (sign.size - 0.7, 2.3, 3.0)
    left, right = step(sign, base, -half), step(sign, base, half)
    _stroke(canvas, step(sign, 0.5), left, role)
    _stroke(canvas, step(sign, 0.5), right, role)
    _stroke(canvas, step(sign, base, -ground), step(sign, base, ground), role)


def _roller(canvas: Canvas, sign: Sign, role: Role) -> None:
    small = sign.size < 4
    base, ground = (2.8, 2.0) if small else (sign.size - 0.2, 3.0)
    if canvas.glyphs == "ascii":
        _point(canvas, step(sign, 2.2), "O", role)
    else:
        radius = (base - 1.5) / 2
        around = [
            step(
                sign,
                1.0 + radius + radius * math.cos(turn * math.pi / 6),
                radius * math.sin(turn * math.pi / 6),
            )
            for turn in range(13)
        ]
        for start, end in itertools.pairwise(around):
            _stroke(canvas, start, end, role)
    _stroke(canvas, step(sign, base, -ground), step(sign, base, ground), role)


def _link(canvas: Canvas, sign: Sign, role: Role) -> None:
    reach = -LINK * sign.size + 0.7
    canvas.line(sign.at, step(sign, reach), "double", role, owner=0, sign=True)
    _stroke(canvas, step(sign, reach - 0.7, -2.5), step(sign, reach - 0.7, 2.5), role)
    _point(canvas, step(sign, reach), MARKS[canvas.glyphs].joint, role)


def _right_angle(canvas: Canvas, sign: Sign, role: Role) -> None:
    (x, y), (tx, ty), (cx, cy) = sign.at, sign.toward, sign.across
    corner = (x + 2 * tx + 2 * cx, y + 2 * ty + 2 * cy)
    if canvas.glyphs == "ascii":
        _point(canvas, sign.at, "+", role)
        return
    _stroke(canvas, (x + 2 * tx, y + 2 * ty), corner, role)
    _stroke(canvas, (x + 2 * cx, y + 2 * cy), corner, role)


def _picture(canvas: Canvas, sign: Sign, role: Role) -> bool:
    key = (sign.symbol, round(sign.toward[0], 6), round(-sign.toward[1], 6))
    picture = PICTURES.get(key)  # type: ignore[arg-type]
    if picture is None:
        return False
    deep = 2 if sign.size > 3 else 1
    for column, row, text in picture:
        if abs(row) > deep and sign.toward[0] == 0:
            continue
        x, y = sign.at[0] + column, sign.at[1] + 2 * row
        canvas.put(x, y, text, role)
        canvas.board.take(x, y, GLYPH, len(text))
    return True

"""How would one write a true line? The last hint, in tidy fractions where the truss has them."""

from __future__ import annotations

from fractions import Fraction

from tutor.judge.about import M
from tutor.judge.true_equation import TrueEquation

LARGEST_DENOMINATOR = 60


def line_of(true: TrueEquation) -> str:
    """The true line with the student's senses and known values, e.g. "3/5 F_AC - 12 = 0"."""
    typed = frozenset(n for n in true.unknowns if n not in true.own.known)
    parts: list[tuple[float, str]] = []
    for name, spot in true.unknowns.items():
        if name in typed and spot.true != 0.0:
            factor = number(abs(spot.true))
            symbol = symbol_of(true, name)
            parts.append((spot.true, symbol if factor == "1" else f"{factor} {symbol}"))
    for spot in true.numbers(typed):
        if spot.true == 0.0:
            continue
        factor = number(abs(spot.per_unit))
        size = number(abs(spot.scale))
        joined = (
            size
            if factor == "1"
            else f"{factor}*{size}"
            if not isinstance(true.about, M)
            else f"{size}*{factor}"
        )
        parts.append((spot.true, joined))
    if not parts:
        return "0 = 0"
    text = ""
    for value, words in parts:
        sign = "-" if value < 0 else "+"
        text += f" {sign} {words}" if text else (f"-{words}" if value < 0 else words)
    return f"{text} = 0"


def symbol_of(true: TrueEquation, name: str) -> str:
    """An unknown as one types it: "F_AB", "F_{U1-L2}", "B_y"."""
    if name in true.problem.member:
        return f"F_{{{name}}}" if "-" in name else f"F_{name}"
    return name


def number(value: float) -> str:
    """A number as a short fraction where it is one, else to five figures."""
    near = Fraction(value).limit_denominator(LARGEST_DENOMINATOR)
    if near and abs(float(near) - value) <= 1e-10 * max(1.0, abs(value)):
        if near.denominator in (1,):
            return str(near.numerator)
        if value >= 1 and float(f"{value:.5g}") == value:
            return f"{value:.5g}"
        return f"{near.numerator}/{near.denominator}"
    return f"{value:.5g}"

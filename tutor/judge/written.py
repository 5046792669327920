"""How would one write a true line? The last hint, in tidy fractions where the truss has them."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from fractions import Fraction

from tutor.judge.true_equation import TrueEquation, TrueTerm
from tutor.notation.lines.reading import MOST_CHARACTERS
from tutor.notation.sides.scanner import MOST_SYMBOLS

_SYMBOL = re.compile(r"[\w.]+|\S")
LARGEST_DENOMINATOR = 60


def true_line(true: TrueEquation) -> str:
    """The true line with the student's senses and known values, e.g. "3/5 F_AC - 12 = 0".

    Products stay as they are typed; of so many that no line holds them each is worked out, and of
    still more all are added up.
    """
    typed = frozenset(n for n in true.unknowns if n not in true.own.known)
    unknowns: list[tuple[float, str]] = []
    for name, spot in true.unknowns.items():
        if name in typed and spot.true != 0.0:
            factor = number_written(abs(spot.true))
            symbol = symbol_of(true, name)
            unknowns.append((spot.true, symbol if factor == "1" else f"{factor} {symbol}"))
    numbers = [spot for spot in true.numbers(typed) if spot.true != 0.0]
    total = math.fsum(spot.true for spot in numbers)
    ways = (
        [(spot.true, _product(spot)) for spot in numbers],
        [(spot.true, number_written(abs(spot.true))) for spot in numbers],
        [(total, number_written(abs(total)))] if total else [],
    )
    lines = [_summed([*unknowns, *parts]) for parts in ways]
    return next((line for line in lines if _fits(line)), lines[-1])


def _product(spot: TrueTerm) -> str:
    factor, size = number_written(abs(spot.per_unit)), number_written(abs(spot.scale))
    if factor == "1":
        return size
    return f"{size}*{factor}" if spot.is_moment else f"{factor}*{size}"


def _summed(parts: Sequence[tuple[float, str]]) -> str:
    text = ""
    for value, words in parts:
        sign = "-" if value < 0 else "+"
        text += f" {sign} {words}" if text else (f"-{words}" if value < 0 else words)
    return f"{text or '0'} = 0"


def _fits(line: str) -> bool:
    """Whether a line is short enough to be read."""
    return len(line) <= MOST_CHARACTERS and len(_SYMBOL.findall(line)) <= MOST_SYMBOLS


def symbol_of(true: TrueEquation, name: str) -> str:
    """An unknown as one types it: "F_AB", "F_{U1-L2}", "B_y"."""
    if name in true.problem.member:
        return f"F_{{{name}}}" if "-" in name else f"F_{name}"
    return name


def number_written(value: float) -> str:
    """A number as a short fraction where it is one, else to five figures."""
    near = Fraction(value).limit_denominator(LARGEST_DENOMINATOR)
    if near and math.isclose(float(near), value, rel_tol=1e-10):
        if near.denominator == 1:
            return str(near.numerator)
        if value >= 1 and float(f"{value:.5g}") == value:
            return f"{value:.5g}"
        return f"{near.numerator}/{near.denominator}"
    return f"{value:.5g}"

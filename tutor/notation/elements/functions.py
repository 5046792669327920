"""What is a function of a number, to the last figure where the angle is a well-known one?"""

from __future__ import annotations

import math
from collections.abc import Callable

_R2, _R3 = math.sqrt(2) / 2, math.sqrt(3) / 2
_SINES = {0.0: 0.0, 30.0: 0.5, 45.0: _R2, 60.0: _R3, 90.0: 1.0}
_SINES |= {180.0 - angle: sine for angle, sine in _SINES.items()}
_SINES |= {180.0 + angle: -sine for angle, sine in _SINES.items() if angle < 180}
_COSINES = {(450.0 - angle) % 360.0: sine for angle, sine in _SINES.items()}


def _sine(angle: float) -> float:
    sine = _SINES.get(angle % 360.0)
    return math.sin(math.radians(angle)) if sine is None else sine


def _cosine(angle: float) -> float:
    cosine = _COSINES.get(angle % 360.0)
    return math.cos(math.radians(angle)) if cosine is None else cosine


def _tangent(angle: float) -> float:
    turn = angle % 180.0
    if turn in _SINES:
        return _sine(turn) / _cosine(turn) if turn != 45.0 else 1.0
    return math.tan(math.radians(turn))


def _clamped(ratio: float) -> float:
    """A ratio that rounding of floats has put just outside -1 to 1, put back."""
    return math.copysign(1.0, ratio) if 1.0 < abs(ratio) < 1.0 + 1e-12 else ratio


IN_RADIANS: dict[str, Callable[[float], float]] = {
    "sin": math.sin,
    "cos": math.cos,
    "tan": math.tan,
    "asin": lambda ratio: math.asin(_clamped(ratio)),
    "acos": lambda ratio: math.acos(_clamped(ratio)),
    "atan": math.atan,
    "sqrt": math.sqrt,
}
IN_DEGREES: dict[str, Callable[[float], float]] = {
    "sin": _sine,
    "cos": _cosine,
    "tan": _tangent,
    "asin": lambda ratio: math.degrees(math.asin(_clamped(ratio))),
    "acos": lambda ratio: math.degrees(math.acos(_clamped(ratio))),
    "atan": lambda ratio: math.degrees(math.atan(ratio)),
    "sqrt": math.sqrt,
}

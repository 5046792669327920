"""What do the digits of a typed number show: rounded too hard, two of them exchanged?

`radius` is half a step of the last place typed, 0 for a whole number.
"""

from __future__ import annotations

import math

from tutor.judge.same import one_way

FEWEST = 3
"""A number of fewer figures may be any other."""
TWICE_ROUNDED = 0.6
"""How far up a value rounded more than once may lie, in steps of its last figure; half of one if once."""


def is_rounded_hard(typed: float, radius: float, true: float) -> bool:
    """Whether the typed figures are the true number's, cut or rounded to fewer figures."""
    step = 2 * radius if radius else 10.0 ** _last_place(abs(typed))
    return (
        one_way(typed, true)
        and -step < abs(typed) - abs(true) <= TWICE_ROUNDED * step
        and abs(typed - true) <= 0.2 * abs(true)
    )


def _last_place(size: float) -> int:
    """The power of ten of the last figure that is not a zero, for a plain integer."""
    if size != int(size) or size == 0:
        return math.floor(math.log10(size)) if size else 0
    digits = str(int(size))
    return len(digits) - len(digits.rstrip("0"))


def are_exchanged(typed: float, radius: float, true: float) -> bool:
    """Whether two neighbouring digits of the true number, to the places typed, changed places."""
    if not math.isfinite(true) or not one_way(typed, true):
        return False
    places = max(0, round(-math.log10(2 * radius))) if radius else 0
    one, other = (f"{abs(number):.{places}f}".replace(".", "") for number in (typed, true))
    if len(one) != len(other) or len(one.lstrip("0")) < FEWEST:
        return False
    apart = [i for i, (a, b) in enumerate(zip(one, other, strict=True)) if a != b]
    return (
        len(apart) == 2
        and apart[1] == apart[0] + 1
        and one[apart[0]] == other[apart[1]]
        and one[apart[1]] == other[apart[0]]
    )

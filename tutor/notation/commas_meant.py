"""Which number does a comma before three figures make, 3,464, where by one of both more of the line adds up?"""

from __future__ import annotations

import re
from collections.abc import Callable
from itertools import pairwise

from tutor.notation.elements.same import are_same
from tutor.notation.elements.unreadable import Broken
from tutor.notation.lines.line import Line, Side

COMMA = re.compile(r"(?<![\w.,])(?P<whole>[0-9]{1,3}),(?P<rest>[0-9]{3})(?![0-9]|[.,][0-9])")
DECIMAL = r"\g<whole>.\g<rest>"
_WAYS = (DECIMAL, r"\g<whole>\g<rest> ")
"""A decimal comma, and one that sets off thousands, each as wide as it was typed."""


def adding_up(broken: Broken, text: str, read: Callable[[str], Line]) -> Line | None:
    """The line as its commas are meant, 8 + 3,464 = 11,464, where more of its sums hold for one reading."""
    if broken.key != "comma" or COMMA.search(text) is None:
        return None
    lines = [line for way in _WAYS if (line := _read(COMMA.sub(way, text), read)) is not None]
    sums = [_that_hold(line) for line in lines]
    most = max(sums, default=0)
    return lines[sums.index(most)] if most and sums.count(most) == 1 else None


def _read(text: str, read: Callable[[str], Line]) -> Line | None:
    try:
        return read(text)
    except Broken:
        return None


def _that_hold(line: Line) -> int:
    """How many sides of numbers alone come to the same as the one before them."""
    return sum(
        one.numeric and other.numeric and are_same(_size(one), _size(other))
        for step in line.steps
        for one, other in pairwise(step.sides)
    )


def _size(side: Side) -> float:
    return abs(sum(term.value for term in side.terms))

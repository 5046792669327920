"""When do two numbers count as the same?

Half a percent, which is what a problem takes without a remark where its file says nothing: for what
is asked of numbers apart from whether a line is right, which goes by the problem's own tolerance.
"""

from __future__ import annotations

import math

from tutor.model import Tolerance
from tutor.notation.elements.same import SAME, are_same

__all__ = ["NEAR", "SAME", "are_near", "are_same", "one_way", "opposed"]

NEAR = Tolerance().remark


def are_near(one: float, other: float) -> bool:
    """Whether two numbers differ by no more than what a remark is made of."""
    return math.isclose(one, other, rel_tol=NEAR)


def one_way(one: float, other: float) -> bool:
    """Whether both numbers are positive or both negative."""
    return min(one, other) > 0.0 or max(one, other) < 0.0


def opposed(one: float, other: float) -> bool:
    """Whether one of two numbers is positive and the other negative."""
    return min(one, other) < 0.0 < max(one, other)

"""When do two numbers count as the same?

Half a percent, which is what a problem takes without a remark where its file says nothing: for what
is asked of numbers apart from whether a line is right, which goes by the problem's own tolerance.
"""

from __future__ import annotations

import math

from tutor.model import Tolerance

SAME = Tolerance().silent
NEAR = Tolerance().remark


def are_same(one: float, other: float) -> bool:
    """Whether two numbers differ by no more than half a percent of the larger one."""
    return math.isclose(one, other, rel_tol=SAME)


def are_near(one: float, other: float) -> bool:
    """Whether two numbers differ by no more than what a remark is made of."""
    return math.isclose(one, other, rel_tol=NEAR)

"""When are two numbers that were typed the same?"""

from __future__ import annotations

SAME = 0.005
"""Half a percent: what a rounded number may be off without a word."""


def are_same(one: float, other: float) -> bool:
    """Whether two numbers differ by no more than half a percent of the larger one."""
    return abs(one - other) <= SAME * max(abs(one), abs(other))

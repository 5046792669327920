"""How much less plausible is that? Three steps and two orders, from which every cost of the judge is taken.

Each step is twice the one before it: halved or doubled it is another one, and lines are told
otherwise. The orders are so small that they never add up to a step: they only say which comes first of
what costs the same otherwise. What is less plausible for several reasons costs the sum of them.
"""

from __future__ import annotations

HARDLY = 2.0**-10
"""Hardly less plausible: comes second, and is told as a tie."""
SLIGHTLY = 2.0**-5
"""Slightly less: comes behind what hardly is, however often, and is told as a tie."""
SOMEWHAT = 0.5
"""Somewhat less: the other is told alone."""
A_SLIP = 1.0
"""As much less as one slip more; what a mistake costs that is made often."""
FAR_LESS = 2.0
"""Far less: as two slips more."""


def in_numbers(degree: float) -> float:
    """The same where values alone are seen, beside how well they fit: there the orders count as well."""
    return {HARDLY: 0.1, SLIGHTLY: 0.25}.get(degree, degree)

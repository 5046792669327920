"""What does one explanation of a wrong line consist of?"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from tutor.judge.costs import ONCE_MORE
from tutor.judge.mistakes import KINDS
from tutor.judge.true_equation import TrueTerm
from tutor.notation import Span
from tutor.notation.elements.fact import fact


@fact
class Slip:
    """One mistake at one force; `spot` is None where the force does not act on the body."""

    code: str
    force: str | None
    spot: TrueTerm | None
    span: Span | None = None


@fact
class Explanation:
    """Slips that together turn `scale` times the true line into the typed one."""

    cost: float
    slips: tuple[Slip, ...]
    scale: float

    @property
    def named(self) -> frozenset[tuple[str, str | None]]:
        return frozenset((slip.code, slip.force) for slip in self.slips)


NOTHING_NAMED = Slip("not-equilibrium", None, None)


def saved(slips: Sequence[Slip]) -> float:
    """What a mistake that runs through a line costs less than one made anew at each force."""
    if len(slips) < 2:
        return 0.0
    counts = Counter(slip.code for slip in slips if KINDS[slip.code].runs_through)
    return sum((count - 1) * (1.0 - ONCE_MORE) * KINDS[code].cost for code, count in counts.items())

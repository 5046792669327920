"""How much longer does one thing take than another? Medians of turns taken one about.

Both are run in turns, so that whatever else the machine does meets both alike; only the ratio of
the medians says something, and only that is ever asserted.
"""

from __future__ import annotations

import gc
import statistics
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True)
class Pair:
    """The median times of two things (seconds), and their ratio."""

    one: float
    other: float

    @property
    def ratio(self) -> float:
        return self.one / self.other

    def told(self, benchmark: Any) -> float:
        """The ratio, noted beside what pytest-benchmark prints."""
        benchmark.extra_info.update(
            ratio=round(self.ratio, 3),
            one_ms=round(1e3 * self.one, 4),
            other_ms=round(1e3 * self.other, 4),
        )
        print(f"\n{1e3 * self.one:.4f} ms against {1e3 * self.other:.4f} ms: {self.ratio:.3f}")
        return self.ratio


def turns(
    one: Callable[[Any], object],
    other: Callable[[Any], object],
    inputs: Sequence[tuple[Any, Any]],
    before: Callable[[], object] = lambda: None,
) -> Pair:
    """Both on their half of every input, in turns; `before` runs before each, untimed."""
    times: tuple[list[float], list[float]] = ([], [])
    gc.collect()
    gc.disable()
    try:
        for mine, theirs in inputs:
            for run, given, spent in ((one, mine, times[0]), (other, theirs, times[1])):
                before()
                start = time.perf_counter()
                run(given)
                spent.append(time.perf_counter() - start)
    finally:
        gc.enable()
    return Pair(statistics.median(times[0]), statistics.median(times[1]))

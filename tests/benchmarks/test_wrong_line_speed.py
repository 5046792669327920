"""How long does the diagnosis of a wrong line take, beside the reading of a right one?

Run with: python -m pytest tests/benchmarks -m benchmark --benchmark-enable -s

The lines have two slips each, on trusses of 3 to 17 joints (up to 31 members). What is asserted is
how the slow ones stand to the median of right lines on the same trusses; the times are printed.
"""

from __future__ import annotations

import gc
import statistics
import time
from typing import Any

import corpus
import pytest
from strategies import make_truss

from tutor.judge import judge

pytestmark = pytest.mark.benchmark
LINES = 600
SLOW_TO_RIGHT, SLOWEST_TO_RIGHT = 30.0, 150.0


def timed(line: corpus.Wrong | corpus.Right) -> float:
    """Seconds of judging a line; its truss has been solved and its names read before."""
    judge(line.problem, line.about, "1 = 0", senses=line.senses, known=line.known)
    start = time.perf_counter()
    judge(line.problem, line.about, line.text, senses=line.senses, known=line.known)
    return time.perf_counter() - start


def test_a_wrong_line_is_diagnosed_while_the_student_still_looks(
    benchmark: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(corpus, "make_truss", lambda seed, n: make_truss(seed, n * 2 - 1 - n % 2))
    gc.collect()
    gc.disable()
    try:
        found = (corpus.wrong_line(seed, 2) for seed in range(2 * LINES))
        wrong = sorted(timed(line) for line in found if line is not None)
        right = statistics.median(timed(corpus.right_line(seed)) for seed in range(LINES))
    finally:
        gc.enable()
    slow = wrong[int(0.95 * len(wrong))]
    benchmark.extra_info.update(
        right_ms=round(1e3 * right, 3),
        slow_ms=round(1e3 * slow, 2),
        worst_ms=round(1e3 * wrong[-1], 1),
    )
    print(
        f"\n{len(wrong)} lines: 95th percentile {1e3 * slow:.2f} ms, worst {1e3 * wrong[-1]:.1f} ms, "
        f"a right line {1e3 * right:.3f} ms"
    )
    line = corpus.right_line(0)
    benchmark.pedantic(lambda: timed(line), rounds=50)
    assert slow <= SLOW_TO_RIGHT * right
    assert wrong[-1] <= SLOWEST_TO_RIGHT * right

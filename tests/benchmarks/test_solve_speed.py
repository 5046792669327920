"""How does the time to solve a truss grow with its joints?

Run with: python -m pytest tests/benchmarks -m benchmark --benchmark-enable -s
"""

from __future__ import annotations

from typing import Any

import pytest
from families import pratt, warren
from pairs import turns

from tutor.statics import solve

pytestmark = pytest.mark.benchmark
SIZES = {10: 5, 50: 24, 200: 100}


@pytest.mark.parametrize("joints", SIZES)
def test_a_truss_is_solved(benchmark: Any, joints: int) -> None:
    make = iter([warren(SIZES[joints], 4, 3, 12) for _ in range(30)])
    answer = benchmark.pedantic(lambda: solve(next(make)), rounds=20, warmup_rounds=1)
    assert max(abs(v) for v in answer.values.values()) > 0


def test_ten_times_the_joints_cost_at_most_as_a_full_elimination_would(benchmark: Any) -> None:
    """A dense elimination grows with the third power; this one must stay well below."""
    inputs = [(pratt(60, 4, 3, 12), pratt(6, 4, 3, 12)) for _ in range(15)]
    times = len(inputs[0][0].joints) / len(inputs[0][1].joints)
    turns(solve, solve, inputs[:2])
    pair = turns(solve, solve, inputs[2:])
    benchmark.pedantic(lambda: solve(pratt(6, 4, 3, 12)), rounds=5)
    assert pair.told(benchmark) <= times**3

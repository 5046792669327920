"""How long does a review take? Run with `-m benchmark --benchmark-enable`."""

from __future__ import annotations

import sys
from itertools import cycle
from pathlib import Path
from random import Random
from typing import Any

import pytest
from strategies import make_truss

sys.path.insert(0, str(Path(__file__).parents[1] / "homework"))
from students_work import Homework, do, plan, slip_at

from tutor.homework import review


def of_forty_members(count: int) -> list[Homework]:
    """Homeworks with one wrong line on trusses of 21 joints and about 40 members."""
    found: list[Homework] = []
    seed = 0
    while len(found) < count:
        seed += 1
        rng = Random(seed)
        problem = make_truss(seed, 21)
        steps = plan(rng, problem)
        right = do(problem, steps, 4, {}) if steps else None
        if steps is None or right is None:
            continue
        step = rng.choice(steps)
        slip = slip_at(rng, problem, step, right.values)
        done = do(problem, steps, 4, {step.place: slip[1]}) if slip else None
        if done is not None:
            found.append(done)
    return found


@pytest.mark.benchmark
def test_forty_members_are_reviewed_at_once(benchmark: Any) -> None:
    works = cycle([(done.problem, done.work()) for done in of_forty_members(100)])
    benchmark.pedantic(lambda: review(*next(works)), rounds=100, warmup_rounds=2)
    times = sorted(benchmark.stats.stats.data)
    benchmark.extra_info["p95_ms"] = round(1000 * times[int(0.95 * len(times))], 1)

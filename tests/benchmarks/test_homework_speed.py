"""How long does a review take? Run with `-m benchmark --benchmark-enable`."""

from __future__ import annotations

import sys
from itertools import cycle
from pathlib import Path
from random import Random
from typing import Any, cast

import pytest
from strategies import make_truss

sys.path.insert(0, str(Path(__file__).parents[1] / "homework"))
from students_work import Homework, do, plan, slip_at

from tutor.homework import review


def of_forty_members(count: int, mistakes: int = 1) -> list[Homework]:
    """Homeworks with a wrong line, or up to so many, on trusses of 21 joints and about 40 members."""
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
        slips = {}
        for step in rng.sample(steps, rng.randint(1, mistakes)):
            slip = slip_at(rng, problem, step, right.values)
            if slip is not None:
                slips[step.place] = slip[1]
        done = do(problem, steps, 4, slips) if slips else None
        if done is not None:
            found.append(done)
    return found


def half_blank(done: Homework, seed: int) -> dict[str, object]:
    """What is on the paper when about every second member is left blank."""
    rng = Random(seed)
    work = done.work()
    forces = cast("dict[str, str]", work["forces"])
    return {**work, "forces": {name: v for name, v in forces.items() if rng.random() < 0.5}}


@pytest.mark.benchmark
def test_forty_members_half_of_them_blank_are_reviewed_at_once(benchmark: Any) -> None:
    """The 95th percentile is to be 0.1 s; it is printed beside the other figures."""
    made = of_forty_members(60, mistakes=3)
    works = cycle([(done.problem, half_blank(done, k)) for k, done in enumerate(made)])
    benchmark.pedantic(lambda: review(*next(works)), rounds=60, warmup_rounds=2)
    times = sorted(benchmark.stats.stats.data)
    benchmark.extra_info["p95_ms"] = round(1000 * times[int(0.95 * len(times))], 1)


@pytest.mark.benchmark
def test_forty_members_are_reviewed_at_once(benchmark: Any) -> None:
    works = cycle([(done.problem, done.work()) for done in of_forty_members(100)])
    benchmark.pedantic(lambda: review(*next(works)), rounds=100, warmup_rounds=2)
    times = sorted(benchmark.stats.stats.data)
    benchmark.extra_info["p95_ms"] = round(1000 * times[int(0.95 * len(times))], 1)

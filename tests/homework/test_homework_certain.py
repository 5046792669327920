"""Is nothing called certain that is false, on pages whose mistakes the catalogue may not even know?

Beside slips of the catalogue, one, two or three on a page, there are wrong numbers of any size in a line
and values got wrong on the way. What is certain must be the place and the mistake that were made.
"""

from __future__ import annotations

from collections.abc import Iterator
from random import Random

import pytest
from lines import pieces
from students_work import Homework, any_problem, do, homework, names_it, plan

from tutor.homework import Review, review
from tutor.judge import Mistake

SOME = [
    pytest.param(range(6), id="some"),
    pytest.param(range(1000), id="all", marks=pytest.mark.slow),
]
FACTORS = (0.5, 2.0, 1.1, 0.9, 1.37, 0.73, 1.2, 1.5, -0.6, 0.3, 1.8)
OTHER_KINDS = frozenset({"sign", "missing", "component", "turning", "extra"})


def with_slips(seed: int) -> Iterator[Homework]:
    for mistakes in (1, 2, 3):
        both = homework(seed, mistakes)
        if both is not None:
            yield both[0]


def with_any_number(seed: int) -> tuple[Homework, str, str] | None:
    """A homework with a wrong factor of any size in one line, its place and the force it stands beside."""
    rng = Random(seed)
    problem = any_problem(rng)
    steps = plan(rng, problem)
    if not steps:
        return None
    step = rng.choice(steps)
    about = rng.choice(step.lines)
    line = pieces(problem, about, {}, {})
    k = rng.randrange(len(line))
    changed = {step.place: (about, k, line[k].coefficient * rng.choice(FACTORS))}
    done = do(problem, steps, 4, changed)
    if done is None or any(abs(value) > 1e5 for value in done.values.values()):
        return None
    return done, step.place, line[k].force


def certain(result: Review) -> list[Mistake | None]:
    return [
        finding.cause
        for finding in result.findings
        if finding.sure == "certain" and finding.state in ("wrong", "follows")
    ]


@pytest.mark.parametrize("seeds", SOME)
def test_what_is_certain_is_the_place_and_the_slip_that_were_made(seeds: range) -> None:
    for seed in seeds:
        for done in with_slips(seed):
            result = review(done.problem, done.work())
            told = certain(result)
            if told and not result.accounts[0].throughout:
                assert result.first in {slip.place for slip in done.slips}, seed
                for cause in filter(None, told):
                    assert any(names_it(done, slip, cause) for slip in done.slips), (seed, cause)


@pytest.mark.parametrize("seeds", SOME)
def test_a_wrong_number_of_any_size_is_never_called_another_mistake_for_certain(
    seeds: range,
) -> None:
    for made in filter(None, map(with_any_number, seeds)):
        done, place, force = made
        result = review(done.problem, done.work())
        told = certain(result)
        assert not told or result.accounts[0].throughout or result.first == place
        for cause in filter(None, told):
            assert cause.force == force or cause.code not in OTHER_KINDS, (done.order, cause)


def test_a_plain_slip_that_nothing_else_explains_is_certain() -> None:
    found = 0
    for seed in range(40):
        both = homework(seed, digits=4)
        if both is None:
            continue
        result = review(both[0].problem, both[0].work())
        found += bool(certain(result))
        if found:
            return
    assert found

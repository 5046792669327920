"""Is every readable line judged, whatever stands in it?"""

from __future__ import annotations

from random import Random

import pytest
from corpus import own_values
from lines import abouts, random_senses
from strategies import make_truss

from tutor.judge import judge
from tutor.model import Problem

NUMBERS = (
    "0",
    "0.0",
    "1",
    "2",
    "0.5",
    "0.6",
    "5",
    "12",
    "100",
    "1e3",
    "-3",
    "3/4",
    "cos 60",
    "0.001",
)


def anything(rng: Random, problem: Problem, known: list[str]) -> str:
    """A line of a few terms, each a number, a product, or an unknown with a factor."""
    forces = [f"F_{{{m.name}}}" for m in problem.members] + [r.name for r in problem.reactions]
    terms = []
    for _ in range(rng.randint(1, 5)):
        term = rng.choice((*NUMBERS, *known))
        if rng.random() < 0.5:
            term = f"{term}*({rng.choice((*NUMBERS, *known))})"
        if rng.random() < 0.5:
            term = f"{term}*{rng.choice(forces)}"
        terms.append(term)
    return f"{' + '.join(terms)} = {rng.choice((*NUMBERS, *known))}"


PIECES = [
    pytest.param(range(start, start + 125), marks=[pytest.mark.slow] if start >= 125 else [])
    for start in range(0, 1500, 125)
]


@pytest.mark.parametrize("seeds", PIECES, ids=str)
def test_no_readable_line_breaks_the_judge(seeds: range) -> None:
    for seed in seeds:
        rng = Random(seed)
        problem = make_truss(rng.randrange(10**6), rng.randint(3, 7))
        senses = random_senses(rng, problem)
        known = own_values(rng, problem, senses, rng.choice((0.0, 0.5, 1.0)))
        text = anything(rng, problem, list(known.values()))
        verdict = judge(problem, rng.choice(abouts(problem)), text, senses=senses, known=known)
        assert verdict.kind in ("right", "wrong", "unreadable", "undecided")
        assert verdict.text

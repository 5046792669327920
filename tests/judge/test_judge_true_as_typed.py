"""Is what is called right true as it was typed? Numbers that stand for nothing, values of another
force, and lines that the true forces do not fulfil.

A small part runs always; the whole figures are marked `slow`.
"""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest
from corpus import own_values, true_line
from lines import Style, abouts, figures, random_senses, written
from strategies import make_truss

from tutor.judge import Value, judge
from tutor.statics import solve

MOST_OFF = 0.02
OPPOSED = ("left", "down", "C", "against")
WITH_NUMBERS = ("{n} = 0", "{n} - {m} = 0", "{f} - {f} + {n} = 0", "0*{f} = {n}", "{n} + {m} = {n}")
SIZES = ("1", "0.5", "0.1", "0.3", "0.02", "2", "0.003", "7/50", "10", "1.7")


def numbers_called_right(seeds: range) -> list[str]:
    """Lines of numbers alone that stand for nothing, at every equation of a truss, and called right."""
    found = []
    for seed in seeds:
        rng = Random(seed)
        problem = make_truss(rng.randrange(10**6), rng.randint(3, 9))
        senses = random_senses(rng, problem)
        known = own_values(rng, problem, senses, rng.choice((0.3, 0.7, 1.0)))
        given = {f"{abs(load.size):g}" for load in _loads(problem)}
        sizes = [size for size in SIZES if size not in given]
        for about in abouts(problem):
            one, other = rng.sample(sizes, 2)
            name = rng.choice([f"F_{{{m.start}-{m.end}}}" for m in problem.members])
            text = rng.choice(WITH_NUMBERS).format(n=one, m=other, f=name)
            if judge(problem, about, text, senses=senses, known=known).right:
                found.append(f"{seed} {about}: {text}")
    return found


def _loads(problem):
    from tutor.statics.body import load_forces

    joints = dict.fromkeys(load.joint for load in problem.loads)
    return [force for joint in joints for force in load_forces(problem, joint)]


def other_values_called_right(seeds: range) -> list[str]:
    """Values typed under the name of a force that is not the one asked for, and called right."""
    found = []
    for seed in seeds:
        rng = Random(seed)
        problem = make_truss(rng.randrange(10**6), rng.randint(3, 9))
        values = solve(problem).values
        asked, named = rng.sample([m.name for m in problem.members], 2)
        value = values[rng.choice((asked, named))]
        letter = rng.choice(("", f" {problem.force} {'T' if value > 0 else 'C'}"))
        size = figures(abs(value) if letter else value, rng.choice((3, 4)))
        text = (
            f"F_{{{'-'.join((problem.member[named].start, problem.member[named].end))}}} = {size}"
        )
        if judge(problem, Value(asked), f"{text}{letter if value else ''}").right:
            found.append(f"{seed} {asked}: {text}{letter}")
    return found


def off_and_right(seeds: range) -> tuple[int, list[str]]:
    """How many lines with terms a little off were called right, and which of them are off as a whole."""
    right, found = 0, []
    for seed in seeds:
        rng = Random(seed)
        problem, about, senses, known, line = true_line(rng)
        values = solve(problem).values
        reach = rng.choice((0.0, 0.004, 0.018, 0.018, 0.03))
        nudged = [
            replace(p, coefficient=p.coefficient * (1 + rng.uniform(-reach, reach))) for p in line
        ]
        scale = rng.choice((1.0, 1.0, -1.0, 2.0, 0.37))
        style = Style(figures=rng.choice((2, 2, 3, 4)), scale=scale, trig=rng.random() < 0.5)
        text = written(rng, problem, nudged, style)
        verdict = judge(problem, about, text, senses=senses, known=known)
        if not verdict.right:
            continue
        right += 1
        put_in = [
            term.value * (1.0 if term.name is None else _own(term.name, values, senses, known))
            for term in verdict.reading.terms
        ]
        if abs(sum(put_in)) > (MOST_OFF + 1e-3) * max(map(abs, put_in), default=1.0):
            found.append(f"{seed} {about}: {text} {known}")
    return right, found


def _own(name, values, senses, known):
    sign = -1.0 if senses.get(name) in OPPOSED else 1.0
    return float(known.get(name, sign * values[name]))


def test_numbers_that_stand_for_nothing_are_never_an_equation() -> None:
    assert numbers_called_right(range(7)) == []


def test_a_value_under_the_name_of_another_force_is_never_right() -> None:
    assert other_values_called_right(range(60)) == []


def test_no_line_is_right_that_the_true_forces_miss_by_over_two_percent() -> None:
    right, found = off_and_right(range(150))
    assert right > 36
    assert found == []


@pytest.mark.slow
@pytest.mark.parametrize("seeds", [range(i, i + 150) for i in range(0, 900, 150)], ids=str)
def test_twenty_thousand_lines_of_such_numbers_are_never_an_equation(seeds: range) -> None:
    assert numbers_called_right(seeds) == []


@pytest.mark.slow
def test_ten_thousand_values_under_another_name_are_never_right() -> None:
    assert other_values_called_right(range(10_000)) == []


@pytest.mark.slow
@pytest.mark.parametrize("seeds", [range(i, i + 10_000) for i in range(0, 80_000, 10_000)], ids=str)
def test_of_thirty_thousand_right_lines_none_is_off_by_over_two_percent(seeds: range) -> None:
    assert off_and_right(seeds)[1] == []

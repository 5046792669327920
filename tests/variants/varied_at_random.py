"""Problems whose numbers vary at random: the trusses that come along, with lists and conditions of our
own invention for them, each made from a seed."""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from tutor.model import Load, Problem
from tutor.model.amounts import Wrong, amount
from tutor.model.vary import Condition, Kind, VariedPart, Vary, parts_of_spread
from tutor.notation import Exact
from tutor.statics import solve

ANGLES = (0, 17, 30, 45, 60, 90, 120, 135, 180, 210, 225, 270, 300, 330)
FACTORS = ("1", "1.5", "0.5", "2", "sqrt(2)", "4/3", "0.1", "tan(30)")


def varied_at_random(base: Sequence[Problem], seed: int) -> Problem:
    """One of the problems, with a `[vary]` for it. All of them have to be solvable."""
    rng = random.Random(seed)
    problem = rng.choice(base)
    choices = [*_loads(rng, problem), *_spreads(rng, problem)]
    if rng.random() < 0.5:
        choices += _joints(rng, problem)
    if rng.random() < 0.4:
        choices += [
            VariedPart("scale", (), axis, _numbers(rng.sample(FACTORS, rng.randint(1, 4))))
            for axis in rng.choice(["x", "y", "xy"])
        ]
    keep = tuple(_conditions(rng, problem))
    return replace(problem, vary=Vary(tuple(choices), rng.random() < 0.6, keep))


def _numbers(texts: Sequence[str]) -> tuple[Exact, ...]:
    read = [amount(text) for text in texts]
    return tuple(number for number in read if not isinstance(number, Wrong))


def _loads(rng: random.Random, problem: Problem) -> Iterator[VariedPart]:
    seen: set[str] = set()
    for load in problem.given_loads:
        if load.joint not in seen:
            seen.add(load.joint)
            yield from _of_load(rng, load)


def _of_load(rng: random.Random, load: Load) -> Iterator[VariedPart]:
    for part, _ in load.pushes:
        if rng.random() < 0.8:
            yield VariedPart("loads", (load.joint,), part, _numbers(_sizes(rng)))
    if load.size is not None and rng.random() < 0.5:
        yield VariedPart("loads", (load.joint,), "size", _numbers(_sizes(rng)))
    if load.size is not None and rng.random() < 0.5:
        angles = rng.sample(ANGLES, rng.randint(1, 4))
        yield VariedPart(
            "loads", (load.joint,), "angle", _numbers([str(angle) for angle in angles])
        )


def _sizes(rng: random.Random) -> list[str]:
    whole, tenths = str(rng.randint(1, 60)), f"{rng.randint(1, 200) / 10}"
    shapes = (whole, tenths, f"{rng.randint(1, 9)}/7", f"{rng.randint(1, 5)}*sqrt(3)")
    return [rng.choice(shapes) for _ in range(rng.randint(1, 6))]


def _spreads(rng: random.Random, problem: Problem) -> Iterator[VariedPart]:
    for spread in problem.spreads:
        for part, _ in parts_of_spread(spread)[:1]:
            if rng.random() < 0.8:
                sizes = [str(rng.randint(1, 9)) for _ in range(3)]
                yield VariedPart("spread", spread.on[:1], part, _numbers(sizes))


def _joints(rng: random.Random, problem: Problem) -> Iterator[VariedPart]:
    for joint in rng.sample(problem.joints, min(len(problem.joints), rng.randint(1, 3))):
        axis = rng.choice("xy")
        here = joint.at["xy".index(axis)]
        step = rng.choice([Fraction(1, 2), Fraction(1), Fraction(1, 4), Fraction(2)])
        start = Fraction(here).limit_denominator(1000)
        places = [start + step * k for k in range(rng.choice([0, -1, -2]), rng.randint(1, 4))]
        yield VariedPart("joints", (joint.name,), axis, _numbers([str(place) for place in places]))


def _conditions(rng: random.Random, problem: Problem) -> Iterator[Condition]:
    values = solve(problem).values
    largest = max(abs(values[name]) for name in problem.member)
    if rng.random() < 0.4:
        yield Condition("nice", "nice")
    if rng.random() < 0.5:
        limit = round(largest * rng.uniform(0.6, 2), rng.choice([0, 1, 3]))
        yield Condition("largest", "largest", "", rng.choice(["<", "<="]), limit)
    if rng.random() < 0.2:
        limit = round(largest * rng.uniform(0, 0.2), 1)
        yield Condition("smallest", "smallest", "", rng.choice([">", ">="]), limit)
    for _ in range(rng.choice([0, 0, 1, 2])):
        yield _of_one(rng, rng.choice(problem.unknowns), values)


def _of_one(rng: random.Random, name: str, values: dict[str, float]) -> Condition:
    force = values[name]
    sense: Kind = "tension" if force > 0 else "compression" if force < 0 else "zero"
    kind = rng.choice([sense, "not zero", "size", "size"])
    limit = rng.choice([abs(force), round(abs(force), 1), abs(force) * 1.3 + 1])
    relation = rng.choice(["<", "<=", ">", ">="])
    return Condition(f"{name} {kind}", kind, name, relation, limit if kind == "size" else 0.0)

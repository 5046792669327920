"""Does the problem proposed train what a student is weak in? Students with one planted weakness.

Whether a problem trains it is told by `slips`, from the free body alone: whether the slip can be made in
some line of it. What the guide itself counts is not asked.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from functools import cache
from random import Random
from typing import Any

import pytest
from habits import Habit
from lines import pieces
from slips import slips
from walker import Walker

from tutor.judge import Fx, Fy, M
from tutor.judge.about import Equation
from tutor.model import Problem, load_sets
from tutor.progress.guide import Guide, Listed
from tutor.progress.where import DONE
from tutor.records.belonging import key_of
from tutor.shipped import shipped_problems
from tutor.statics import solve, soundness

WEAK_IN = (
    "component",
    "sign",
    "turning",
    "arm",
    "no-arm",
    "missing",
    "whole-force",
    "slope",
    "inclined-support",
    "angle-mode",
    "minus",
    "pull-push",
    "stray-reaction",
)
MOST_MEMBERS = 9
MOST_LESSONS = 5
SHARE = 0.9


class OneWeakness(Walker):
    """A student who slips in one way only, wherever it can be done, and chooses rightly."""

    def slip(self, kind: str, *, count_slip: bool = True, **data: Any) -> None:
        return


@cache
def listed() -> tuple[Listed, ...]:
    return tuple(
        Listed(problem, each.title, tuple(map(key_of, each.before(problem))))
        for each in load_sets(shipped_problems())
        for problem in each.problems
    )


def equations(problem: Problem) -> Iterator[Equation]:
    yield from (Fx(), Fy(), *(M(support.joint) for support in problem.supports))
    for joint in problem.joints:
        yield from (Fx(joint.name), Fy(joint.name))


@cache
def slips_of(key: str) -> Counter[str]:
    """In how many lines of a problem each slip can be made, with every value known at joints."""
    problem = next(each.problem for each in listed() if key_of(each.problem) == key)
    if soundness(problem) != "determinate":
        return Counter()
    known = solve(problem).values
    found: Counter[str] = Counter()
    for about in equations(problem):
        values = [{}, known] if about.joint else [{}]
        codes: set[str] = set()
        for given in values:
            line = tuple(pieces(problem, about, {}, given))
            codes |= {slipped.code for slipped in slips(problem, about, line, {})}
        found.update(codes)
    return found


def proposed(code: str, seed: int) -> tuple[str, str]:
    """The key of the problem proposed to a student with this weakness, and the skill it is said to
    train; the student takes small problems until the slip was made, which no problem makes sure of."""
    rng = Random(f"{code} {seed}")
    small = [
        key_of(each.problem)
        for each in listed()
        if len(each.problem.members) <= MOST_MEMBERS
        and slips_of(key_of(each.problem))[code]
        and (each.problem.level or 0) <= 4
    ]
    guide = Guide(listed(), {})
    for turn in range(MOST_LESSONS):
        here = rng.choice(small)
        problem = next(each.problem for each in listed() if key_of(each.problem) == here)
        habit = Habit(f"weak in {code}", 1.0, frozenset({code}), 0.0, ("arithmetic",), sees_at=2)
        walker = OneWeakness(problem, habit, seed + turn)
        walker.walk()
        guide = guide.after(walker.lesson.state, None)
        if any(made.verdict == "wrong" for made in walker.lesson.state.tries):
            break
    ahead = guide.next()
    assert ahead is not None
    assert guide.places.get(ahead.key) != DONE
    return ahead.key, ahead.skill


def share_trained(students: int) -> float:
    """The share of students to whom a problem is proposed in which their slip can be made."""
    trained, named = Counter[str](), Counter[str]()
    for student in range(students):
        code = WEAK_IN[student % len(WEAK_IN)]
        key, skill = proposed(code, student)
        trained[code] += slips_of(key)[code] > 0
        named[code] += skill == code
    any_one = [slips_of(key_of(each.problem))[c] > 0 for each in listed() for c in WEAK_IN]
    print(
        f"\ntrained {trained.total()} of {students}, named {named.total()}; "
        f"by any problem at random {sum(any_one) / len(any_one):.0%}; {dict(named)}"
    )
    return trained.total() / students


@pytest.mark.parametrize("students", [13, pytest.param(200, marks=pytest.mark.slow)])
def test_the_next_problem_trains_the_planted_weakness(students: int) -> None:
    assert share_trained(students) >= SHARE

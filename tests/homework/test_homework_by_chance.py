"""Is a lone wrong value explained by no more than its figures can show?"""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest
from families import plain_problem
from lines import figures
from pages import PIN, ROLLER, load
from students_work import any_problem, do, plan

from tutor import review
from tutor.homework import Review, hint
from tutor.homework.by_chance import _covered
from tutor.model import Problem

ITS_OWN = {"rounding", "tension-compression", "sign", "sense", "unit", "magnitude"}
"""What a value may show by itself."""
GABLE = plain_problem(
    (("A", 0, 0), ("B", 2, 1.5), ("C", 4, 3), ("D", 6, 1.5), ("E", 8, 0), ("F", 4, 0)),
    ("AB", "BC", "CD", "DE", "AF", "FE", "BF", "DF", "CF"),
    (PIN, replace(ROLLER, joint="E")),
    (load("B", down=6), load("C", down=8), load("D", down=4)),
)
RIGHT = {"A_x": "0", "A_y": "9.5", "E_y": "8.5"}
FORCES = {
    "AB": "15.83 C", "AF": "12.67 T", "BC": "10.83 C", "BF": "5 C", "CD": "10.83 C",
    "CF": "5 T", "DE": "14.17 C", "DF": "3.33 C", "FE": "11.33 T",
}  # fmt: skip


def with_one(name: str, value: str) -> Review:
    return review(GABLE, {"reactions": RIGHT, "forces": {**FORCES, name: value}})


def codes(result: Review) -> list[str]:
    return [account.mistake.code for account in result.accounts]


def test_the_values_of_the_gable_are_right() -> None:
    assert with_one("DF", "3.33 C").right


@pytest.mark.parametrize("value", ["3.7 C", "3.6 C", "3.9 C", "3.76 C", "2.87 C"])
def test_a_lone_value_that_many_rules_would_meet_is_only_said_not_to_follow(value: str) -> None:
    result = with_one("DF", value)
    assert codes(result) == ["arithmetic"]
    assert set(result.places) == {"D", "F"}
    assert result.finding["DF"].state == "wrong"
    assert "does not follow" in hint(result, "look")


@pytest.mark.parametrize(
    ("name", "value", "code"),
    [
        ("DF", "3.33 T", "tension-compression"),
        ("AB", "15.38 C", "magnitude"),
        ("DF", "33.3 C", "magnitude"),
        ("DF", "0.333 C", "magnitude"),
        ("AB", "11.87 C", "component"),
        ("AB", "19.00 C", "slope-assumed"),
    ],
)
def test_a_lone_value_that_one_rule_meets_sharply_is_said_to_be_of_it(
    name: str, value: str, code: str
) -> None:
    """9.5 over 4/5 is 11.87, over 1/2 it is 19: a component and a slope; 15.38 has figures changed."""
    assert codes(with_one(name, value)) == [code]


def test_a_value_rounded_too_hard_is_told_nothing_besides() -> None:
    assert codes(with_one("DF", "3 C")) == ["rounding"]


def off(seed: int, digits: int) -> tuple[Problem, dict[str, dict[str, str]]] | None:
    """A right sheet with one member's value off by a tenth and more, for no reason."""
    rng = Random(seed)
    problem = any_problem(rng)
    steps = plan(rng, problem)
    right = do(problem, steps, 4, {}) if steps else None
    if right is None:
        return None
    least = 0.05 * max(map(abs, right.values.values()))
    names = [n for n in right.values if n in problem.member and abs(right.values[n]) > least]
    factor = rng.choice((1, 1, -1)) * rng.uniform(0.5, 1.6)
    if not names or abs(factor - 1) < 0.1:
        return None
    name = rng.choice(names)
    forces = {n: figures(v, 4) for n, v in right.values.items() if n in problem.member}
    forces[name] = figures(right.values[name] * factor, digits)
    reactions = {n: figures(v, 4) for n, v in right.values.items() if n in problem.reaction}
    return problem, {"reactions": reactions, "forces": forces}


@pytest.mark.parametrize("digits", [2, 3])
def test_a_value_off_for_no_reason_is_seldom_given_one(digits: int) -> None:
    made = [each for seed in range(60) if (each := off(seed, digits)) is not None]
    named = [codes(review(*each)) for each in made]
    given = [each for each in named if each and each[0] not in {"arithmetic", *ITS_OWN}]
    assert len(made) >= 40
    assert len(given) <= 0.15 * len(made), given


@pytest.mark.parametrize("seed", [9, 48])
def test_what_the_last_figure_of_a_value_leaves_open_counts_as_met_as_well(seed: int) -> None:
    """Many slips lie close by, and three figures do not tell which of them is meant."""
    made = off(seed, 3)
    assert made is not None
    assert set(codes(review(*made))) <= {"arithmetic"}


@pytest.mark.parametrize(
    ("met", "share"),
    [
        ([(0.0, 0.5)], 0.25),
        ([(0.0, 0.5), (0.25, 0.5)], 0.3125),
        ([(-1.0, 0.25), (1.0, 0.25)], 0.25),
        ([(2.0, 0.5), (-2.0, 0.5)], 0.25),
        ([(0.0, 9.0)], 1.0),
        ([(5.0, 1.0)], 0.0),
    ],
)
def test_what_several_rules_meet_is_counted_once_and_only_as_far_as_looked(
    met: list[tuple[float, float]], share: float
) -> None:
    """Each meets what lies so far around a number; looked at is from -2 to 2."""
    assert _covered(met, 2.0) == pytest.approx(share)

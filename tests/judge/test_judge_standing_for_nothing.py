"""Is a line of numbers that stand for nothing ever called right, or a value far off?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fx, Fy, M, judge, load_problem, review, solve
from tutor.shipped import shipped_problems

BOOM = load_problem(next(shipped_problems().glob("*/boarding-boom.toml")))


@pytest.mark.parametrize("text", ["1 = 0", "0.5 = 0", "0.1 = 0"])
def test_a_number_alone_is_right_of_no_sum_of_which_everything_is_known(text: str) -> None:
    known = {name: float(f"{value:.4g}") for name, value in solve(BOOM).values.items()}
    for joint in BOOM.joints:
        for about in (Fx(joint.name), Fy(joint.name)):
            assert not judge(BOOM, about, text, known=known).right, about


QUAY = load_problem(Path(__file__).parents[1] / "notation/hands/quay.toml")
GABLE = load_problem(next(shipped_problems().glob("*/weigh-house.toml")))


@pytest.mark.parametrize("text", ["-300*4/5 + 260*12/13 = 0", "-4/5*300 = -(12/13)*260"])
def test_a_product_of_a_force_that_is_not_at_the_joint_is_not_right_by_chance(text: str) -> None:
    """AC = -260 does not act at B; 260·12/13 = 240 is what AB and BC come to there (60 + 180)."""
    known = solve(GABLE).values
    assert not judge(GABLE, Fx("B"), text, known=known).right
    for right in ("-300*4/5 + 240 = 0", "84.85*0.7071 + 300*3/5 - 300*4/5 = 0"):
        assert judge(GABLE, Fx("B"), right, known=known).right, right


def test_a_value_seven_percent_off_is_wrong_beside_all_others_that_are_right() -> None:
    values = solve(BOOM).values
    work = {
        "reactions": {name: values[name] for name in BOOM.reaction},
        "forces": {name: values[name] for name in BOOM.member},
    }
    assert review(BOOM, work).right
    for name in BOOM.member:
        if values[name]:
            off = {**work["forces"], name: 1.07 * values[name]}
            assert not review(BOOM, {**work, "forces": off}).right, name


@pytest.mark.parametrize("stray", ["1", "0.5", "0.01", "0.001"])
def test_a_stray_number_does_not_ride_along_with_those_that_stand_for_something(stray: str) -> None:
    """Far below 0.5 % of the sum, and still the number of nothing that acts there."""
    for right in ("8 C_y - 24*4 - 8*3 - 12*4", "8 C_y - 96 - 24 - 48", "8 C_y - 4*(24 + 12) - 24"):
        assert judge(QUAY, M(at="A"), f"{right} = 0").right
        for end in (f"= {stray}", f"- {stray} = 0", f"+ {stray} = 0"):
            assert not judge(QUAY, M(at="A"), f"{right} {end}").right, (right, end)

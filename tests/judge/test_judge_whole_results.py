"""Own results put in whole where a component of each acts: is each taken for itself, and no ratio read into them?

At joint E of the rack AE and CE have the slope 4/3, so the larger result is 5/4 of the smaller one wherever one of them
would be right as the component of the other.
"""

from __future__ import annotations

import pytest
from paper.measure import problem

from tutor import Along, Fx, Fy, judge


@pytest.mark.parametrize(
    ("one", "other"), [(100, 80), (80, 100), (-250, -200), (62.5, 50), (-5, 4)]
)
@pytest.mark.parametrize(
    "form", ["-({one}) - BE - ({other}) = 0", "BE + ({one}) + ({other}) = 0", "BE = {both}"]
)
def test_two_results_put_in_whole_are_two_whole_forces(form: str, one: float, other: float) -> None:
    line = form.format(one=one, other=other, both=-one - other)
    verdict = judge(problem("rack"), Fy("E"), line, known={"AE": one, "CE": other})
    assert {mistake.code for mistake in verdict.mistakes} == {"whole-force"}


@pytest.mark.parametrize("known", [{"AE": 100, "CE": 80}, {"AE": 50, "CE": 40}])
def test_one_result_put_in_whole_beside_a_right_component_is_one(known: dict[str, float]) -> None:
    one, other = known.values()
    for line, name in (
        (f"BE + {one:g} + {0.8 * other:g} = 0", "AE"),
        (f"BE + {0.8 * one:g} + {0.8 * other:g} = 0", None),
        (f"BE + 0.8({one:g}) + {other:g} = 0", "CE"),
    ):
        found = judge(problem("rack"), Fy("E"), line, known=known).mistakes
        assert [(m.code, m.force) for m in found] == ([("whole-force", name)] if name else [])


def test_along_a_slope_a_member_that_is_taken_as_level_has_the_slope_of_another() -> None:
    truss = problem("more/harbour-incline")
    about = Along(30.0, joint="B")
    line = "-F_BD cos 30 - F_BC cos 30 = 0"
    assert [(m.code, m.force) for m in judge(truss, about, line).mistakes] == [("slope", "CB")]
    right = judge(truss, about, "-F_BD cos 30 + F_BC cos 113.13 = 0")
    assert right.right


def test_across_a_level_sum_a_ratio_by_heart_is_one_still() -> None:
    found = judge(problem("rack"), Fx("D"), "-CD - 0.5 DF = 0").mistakes
    assert [(m.code, m.force) for m in found] == [("slope-assumed", "DF")]

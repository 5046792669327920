"""What stands beside a force: a one, a minus before its working, a size that has no place in the sum.

GABLE and WINDY stand in `test_judge_alike`.
"""

from __future__ import annotations

import pytest
from judge.test_judge_alike import GABLE, WINDY

from tutor.judge import Equation, Fx, Fy, M, Value, judge


@pytest.mark.parametrize("way", ["←", "to the left"])
def test_an_arrow_behind_working_says_the_way_whatever_minus_stands_at_the_force(way: str) -> None:
    """A_x = -4."""
    assert judge(WINDY, Value("A_x"), f"-A_x = 8/2 = 4 kN {way}").right
    said = judge(WINDY, Value("A_x"), "-A_x = 8/2 = 4 kN →").mistakes
    assert [(mistake.code, mistake.force) for mistake in said] == [("sign", "A_x")]


@pytest.mark.parametrize("one", ["1 ", "1.0*", "1·"])
@pytest.mark.parametrize(
    ("about", "text"),
    [
        (Fy("D"), "-6 - {}F_CD - {}F_BD = 0"),
        (Fy("D"), "-6 - {}F_CD - {}F_AD - {}F_BD = 0"),
        (Fx("A"), "{}F_AB + {}F_AD = 0"),
        (Fy(), "{}A_y - 16 = 0"),
    ],
)
def test_a_force_with_a_one_beside_it_stands_whole(about: Equation, text: str, one: str) -> None:
    whole, typed = (judge(GABLE, about, text.replace("{}", each)) for each in ("", one))
    assert [(m.code, m.force) for m in typed.mistakes] == [
        (m.code, m.force) for m in whole.mistakes
    ]


@pytest.mark.parametrize(
    ("term", "load"),
    [("10*3", "load B"), ("10*1.5", "load B"), ("6*4", "load D"), ("6*2", "load D")],
)
def test_of_loads_through_the_moment_point_the_one_whose_size_stands_there_is_too_many(
    term: str, load: str
) -> None:
    """B and D lie above one another; D is loaded downwards."""
    said = judge(GABLE, M("B"), f"-3 A_y + 3 C_y - {term} = 0").mistakes
    assert [(mistake.code, mistake.force) for mistake in said] == [("extra", load)]

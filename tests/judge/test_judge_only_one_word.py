"""Is a slip named for what it is: only the word behind a value, a direction beside a bracket, a whole force?

The truss is our own; what is said of each line is what a lecturer would say, common practice, no
source.
"""

from __future__ import annotations

import pytest
from families import exact, plain_problem

from tutor.judge import Equation, Fx, Fy, judge
from tutor.model import Load, Support

LOADS = [
    Load("B", (("down", exact(20)),)),
    Load("D", (("right", exact(9)),)),
]
AWNING = plain_problem(
    [("A", 0, 0), ("B", 3, 0), ("C", 6, 0), ("D", 3, 4)],
    ("AB", "BC", "AD", "BD", "CD"),
    [Support("A", "pin"), Support("C", "roller")],
    LOADS,
)
"""A_x = -9, A_y = 4, C_y = 16; AD = -5, AB = 12, CD = -20, BC = 12, BD = 20."""
FOUND = {"A_x": -9, "A_y": 4, "C_y": 16}


def named(about: Equation, text: str, **known: float) -> list[tuple[str, str | None]]:
    verdict = judge(AWNING, about, text, known={**FOUND, **known})
    return [(m.code, m.force) for m in verdict.mistakes]


@pytest.mark.parametrize(
    ("about", "text", "expected"),
    [
        (Fy("B"), "F_BD = 40/2 = 20 kN (C)", ("tension-compression", "BD")),
        (Fy("B"), "F_BD = 20 kN (strut)", ("tension-compression", "BD")),
        (Fx(), "A_x = 9 kN →", ("sense", "A_x")),
        (Fy("C"), "F_CD = 16 × 4/5 = 12.8 kN (C)", ("component", "CD")),
    ],
)
def test_of_a_right_size_with_the_wrong_word_the_word_is_named(
    about: Equation, text: str, expected: tuple[str, str]
) -> None:
    assert named(about, text) == [expected]


@pytest.mark.parametrize("text", ["F_CD = 16 × 5/4 = 20 kN (C)", "F_BD = 20 kN (tie)"])
def test_the_right_word_is_right(text: str) -> None:
    about = Fy("C" if "CD" in text else "B")
    assert judge(AWNING, about, text, known=FOUND).right


@pytest.mark.parametrize(
    ("text", "before_brackets"),
    [("-BD + 4/5(-5) - 4/5 CD = 0", True), ("-BD - 4/5(5) - 4/5 CD = 0", False)],
)
def test_a_result_in_brackets_with_its_own_minus_is_not_said_to_have_lost_it(
    text: str, before_brackets: bool
) -> None:
    (mistake,) = judge(AWNING, Fy("D"), text, known={**FOUND, "AD": -5}).mistakes
    assert (mistake.code, mistake.force) == ("minus", "AD")
    assert ("before the brackets" in mistake.text) is before_brackets
    assert ("in the brackets of the force in AD is right" in mistake.place) is before_brackets


BRACKET = plain_problem(
    [("A", 0, 3), ("B", 0, 0), ("C", 4, 0)],
    ("AB", "AC", "BC"),
    [Support("A", "pin"), Support("B", "roller", angle=exact(0))],
    [Load("C", (("left", exact(5)), ("down", exact(9))))],
)
"""AC = 15, BC = -17."""


def test_a_line_solved_for_its_force_has_one_load_turned_not_all_members() -> None:
    verdict = judge(BRACKET, Fx("C"), "F_BC = -4/5 × 15 + 5 = -7", known={"AC": 15})
    assert [(m.code, m.force) for m in verdict.mistakes] == [("sign", "load C x")]
    assert "Either" not in verdict.text


@pytest.mark.parametrize("text", ["F_BC = F_CD = 20 kN T", "F_BC = F_CD"])
def test_an_inclined_force_set_equal_to_a_level_one_came_in_whole(text: str) -> None:
    assert ("whole-force", "CD") in named(Fx("C"), text, CD=-20)

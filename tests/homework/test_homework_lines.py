"""Does an equation count where only the value behind it is wrong?"""

from __future__ import annotations

import pytest
from families import plain_problem

from tutor import Fx, Fy, Value, review
from tutor.homework.words import outcome
from tutor.model import Load, Problem, Support
from tutor.notation import Exact

RIGHT = {"A_x": -500, "A_y": -375, "B_y": 375}
FORCES = {"CA": 625, "AB": 0, "BC": -375}
TURNED_OVER = {"CA": 400, "AB": 180, "BC": -240}
"""By hand: CA times 4/5 instead of divided by it; AB = 500 - 4/5 400, BC = -3/5 400."""


@pytest.fixture(name="gable")
def a_triangle() -> Problem:
    return plain_problem(
        (("A", 0, 0), ("B", 4, 0), ("C", 4, 3)),
        ("AB", "BC", "CA"),
        (Support("A", "pin"), Support("B", "roller")),
        (Load("C", (("right", Exact.of(500)),)),),
    )


@pytest.mark.parametrize("forces", [FORCES, TURNED_OVER, {"CA": 400}])
@pytest.mark.parametrize(
    "line", ["500 - 4/5 F_CA = 0, F_CA = 400", "500 - 4/5 CA = 0 → CA = 500*4/5 = 400"]
)
def test_a_right_equation_before_a_wrong_value_is_said_to_be_right(
    gable: Problem, forces: dict[str, float], line: str
) -> None:
    work = {"reactions": RIGHT, "forces": forces, "lines": [(Fx("C"), line)]}
    result = review(gable, work)
    finding = result.finding[0]
    assert finding.state == "wrong"
    assert finding.stands
    assert outcome(finding).startswith("is right as an equation")
    assert result.places == ("C",)
    assert result.accounts[0].about == Value("CA")
    for name in ("AB", "BC"):
        assert result.finding.get(name, finding).state != "right" or forces is FORCES


@pytest.mark.parametrize("forces", [TURNED_OVER, {"CA": 400}])
def test_a_value_that_its_own_right_line_does_not_give_is_wrong_and_the_line_is_not(
    gable: Problem, forces: dict[str, float]
) -> None:
    work = {"reactions": RIGHT, "forces": forces, "lines": [(Fx("C"), "500 - 4/5 F_CA = 0")]}
    result = review(gable, work)
    assert result.finding[0].state == "right"
    assert result.finding["CA"].state == "wrong"
    assert result.finding["CA"].cause is not None
    assert result.accounts[0].about == Value("CA")
    assert all(result.finding[n].state == "follows" for n in forces if n != "CA")


def test_a_value_worked_from_an_earlier_wrong_one_leaves_its_line_right(gable: Problem) -> None:
    lines = [(Fx("C"), "500 - 4/5 F_CA = 0"), (Fx("A"), "-500 + 4/5 CA + AB = 0; AB = 180")]
    result = review(gable, {"reactions": RIGHT, "forces": TURNED_OVER, "lines": lines})
    assert result.finding[1].state == "right"
    assert result.finding["AB"].state == "follows"


def test_two_unknowns_that_solve_their_right_lines_are_right(gable: Problem) -> None:
    lines = [(Fx("C"), "500 - 4/5 F_CA = 0; CA = 625"), (Fy("C"), "-BC - 3/5 CA = 0; BC = -375")]
    assert review(gable, {"reactions": RIGHT, "forces": FORCES, "lines": lines}).right

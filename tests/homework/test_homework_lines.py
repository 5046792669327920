"""Does an equation count where only the value behind it is wrong?"""

from __future__ import annotations

import pytest
from families import SEED_HOUSE, plain_problem

from tutor import Fx, Fy, Value, review
from tutor.homework import read_paper
from tutor.homework.kept import lines_of
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


@pytest.mark.parametrize("forces", [FORCES, {"CA": 400}])
def test_a_statement_that_does_not_follow_is_told_of_its_equation(
    gable: Problem, forces: dict[str, float]
) -> None:
    """It names no force, so that no value is what went wrong."""
    line = (Fx("C"), "500 - 4/5 F_CA = 0 → F_CA/4 = 500*5")
    result = review(gable, {"reactions": RIGHT, "forces": forces, "lines": [line]})
    assert result.finding[0].stands
    assert [account.about for account in result.accounts] == [Fx("C")]


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


PAGE = """\
ΣM_A = 0: R_E·8 m − 6 kN·2 m − 8 kN·4 m − 4 kN·6 m = 0 ⇒ R_E = 8.5 kN ↑
ΣF_y = 0: A_y + 8.5 − 18 = 0 ⇒ A_y = 9.5 kN
ΣF_x = 0: A_x = 0
Joint A
↑ΣF_y = 9.5 + F_AB sin 36.87° = 0, F_AB = −15.83 kN (C)
→ΣF_x = F_AF + (−15.83) cos 36.87° = 0, F_AF = 12.67 kN (T)
Joint E (by symmetry of geometry)
F_DE = −8.5/sin 36.87° = −14.17 kN
F_EF = 14.17 cos 36.87° = 11.33 kN (T)
Joint B
F_BC cosθ + F_BF cosθ + 15.83 cosθ = 0, where θ = 36.87°
F_BC sinθ − F_BF sinθ + 15.83 sinθ − 6 = 0
F_BC = −10.83, F_BF = −5
Joint C
ΣF_x: −F_BC cosθ + F_CD cosθ = 0 → F_CD = F_BC = −10.83 kN
ΣF_y: −8 − F_CF + 2(10.83)(0.6) = 0 → F_CF = 5.0 kN T
Joint D
10.83(0.8) − 14.17(0.8) − 0.8 F_DF = 0
F_DF = −3.34 kN
"""
"""A page as it is written, on a truss of our own; worked by hand."""


def test_a_page_as_it_is_written_is_read_whole_and_right() -> None:
    written = read_paper(SEED_HOUSE, PAGE)
    assert not written.refused
    assert set(written.paper.values) == set(SEED_HOUSE.unknowns)
    assert len(written.paper.lines) == 10
    work = written.paper.work(SEED_HOUSE)
    assert work["order"] == ["A", "E", "B", "C", "D"]
    result = review(SEED_HOUSE, work)
    assert {finding.state for finding in result.findings} == {"right"}
    again = read_paper(SEED_HOUSE, "\n".join(lines_of(SEED_HOUSE, written.paper))).paper
    assert again == written.paper


@pytest.mark.parametrize(
    ("old", "new", "place"),
    [
        ("F_DF = −3.34", "F_DF = −3.7", "D"),
        ("F_CF = 5.0", "F_CF = 8.0", "C"),
        ("10.83(0.8) − 14.17(0.8)", "10.83(0.8) + 14.17(0.8)", "D"),
        ("−8 − F_CF + 2(10.83)(0.6)", "−8 + F_CF + 2(10.83)(0.6)", "C"),
    ],
)
def test_a_slip_on_such_a_page_is_found_at_the_joint_where_it_stands(
    old: str, new: str, place: str
) -> None:
    paper = read_paper(SEED_HOUSE, PAGE.replace(old, new)).paper
    assert review(SEED_HOUSE, paper.work(SEED_HOUSE)).places == (place,)


def test_a_line_with_a_wrong_value_from_above_holds_also_where_another_is_not_on_the_page() -> None:
    """By hand: AD = DE = -20, BD = 0; with DE = 20 the second line gives BD = -24."""
    arch = plain_problem(
        (("A", 0, 0), ("B", 4, 0), ("E", 8, 0), ("D", 4, 3)),
        ("AB", "BE", "AD", "BD", "DE"),
        (Support("A", "pin"), Support("E", "roller")),
        (Load("D", (("down", Exact.of(24)),)),),
    )
    page = [
        "Joint D",
        "ΣFx = 0: -0.8(-20) + 0.8 (-DE) = 0",
        "DE = 20 (T)",
        "ΣFy = 0: -24 - 0.6(-20) - 0.6(20) - BD = 0",
        "BD = -24 (C)",
    ]
    work = read_paper(arch, "\n".join(page)).paper.work(arch)
    assert review(arch, work).finding[1].state == "right"
    page[3] = "ΣFy = 0: -24 - 0.6(-20) + 0.6(20) - BD = 0"
    work = read_paper(arch, "\n".join(page)).paper.work(arch)
    assert review(arch, work).finding[1].state == "wrong"

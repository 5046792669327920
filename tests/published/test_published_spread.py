"""Loads brought to joints, against what books and tables print."""

from __future__ import annotations

import pytest

from tutor.model import Problem
from tutor.model.read import read_text

BENT = """
title = "A bent under a roof deck"
force = "lb"
length = "ft"
members = ["AB", "BC", "CD", "DE", "AF", "FG", "GH", "HE", "BF", "FC", "CG", "CH", "DH"]
[joints]
A = [0, 0]
B = [4, 0]
C = [8, 0]
D = [12, 0]
E = [16, 0]
F = [4, -3]
G = [8, -3]
H = [12, -3]
[supports]
A = "pin"
E = "roller"
[[spread]]
on = ["AB", "BC", "CD", "DE"]
"""


def loads(text: str) -> dict[str, float]:
    problem = read_text(text, "text").problem
    assert isinstance(problem, Problem)
    return {load.joint: -load.vector[1] for load in problem.loads}


def test_a_bent_under_purlins_takes_what_the_book_prints() -> None:
    """R. C. Hibbeler, Structural Analysis, Problem 2-2 (8th edition, from memory): a deck of 125 lb/ft²,
    purlins 4 ft apart, bents 25 ft apart; 500 lb/ft on a purlin, 12.5 kip on the bent at the three inner
    points and 6.25 kip at the two outer ones. On the bent that is 125 * 25 lb for each foot of it."""
    found = loads(BENT + f"down = {125 * 25}\n")
    assert found == {"A": 6250, "B": 12500, "C": 12500, "D": 12500, "E": 6250}
    assert found["B"] == 500 * 25


@pytest.mark.parametrize(("w", "span"), [(2.0, 4.0), (7.5, 3.0), (0.8, 12.0)])
def test_each_end_of_a_member_takes_what_the_table_of_beams_gives_a_support(
    w: float, span: float
) -> None:
    """AISC, Steel Construction Manual, Table 3-23, case 1, simple beam under an even load: R = w l / 2,
    from memory. The joint takes the opposite of the reaction there."""
    found = loads(
        f"""
title = "One loaded member"
force = "kN"
length = "m"
members = ["AB", "BC", "AC"]
[joints]
A = [0, 0]
B = [{span}, 0]
C = [{span / 2}, 3]
[supports]
A = "pin"
B = "roller"
[[spread]]
on = ["AB"]
down = {w}
"""
    )
    assert found == {"A": pytest.approx(w * span / 2), "B": pytest.approx(w * span / 2)}

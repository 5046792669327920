"""A name that spells a reaction and a member is judged as the one that makes the line right.

A bracket of our own, held by a pin at P and a short link at S; RS is the pull R_S or the force in SR.
"""

from __future__ import annotations

import pytest
from families import exact, plain_problem

from tutor.judge import Fx, Fy, M, judge
from tutor.model import Load, Support

BRACKET = plain_problem(
    [("P", 0, 0), ("Q", 120, 0), ("R", 240, 0), ("S", 120, 50)],
    ("PQ", "QR", "PS", "QS", "SR"),
    [Support("P", "pin"), Support("S", "link", anchor=(exact(0), exact(100)))],
    [Load("R", (("down", exact(260)),)), Load("Q", (("down", exact(120)),))],
    force="N",
    length="mm",
)


@pytest.mark.parametrize(
    ("about", "text"),
    [
        (M(at="P"), "RS*12/13*50 + RS*5/13*120 = 120*120 + 260*240"),
        (Fx(), "P_x - 12/13 RS = 0"),
        (Fx(joint="S"), "12/13 (SR - PS - RS) = 0"),
        (Fx(joint="R"), "-QR - 12/13 RS = 0"),
    ],
)
def test_the_reading_that_is_right_is_the_one_meant(about: Fx | M, text: str) -> None:
    assert judge(BRACKET, about, text).right


@pytest.mark.parametrize(
    ("about", "text", "code", "force"),
    [
        (Fx(), "P_x + 12/13 RS = 0", "sign", "R_S"),
        (Fx(joint="R"), "-QR + 12/13 RS = 0", "sign", "SR"),
        (Fx(joint="S"), "12/13 (SR - PS + RS) = 0", "sign", "R_S"),
        (Fy(), "P_y + 12/13 RS - 120 - 260 = 0", "component", "R_S"),
    ],
)
def test_where_neither_is_right_the_nearer_one_is_told(
    about: Fx | Fy, text: str, code: str, force: str
) -> None:
    verdict = judge(BRACKET, about, text)
    assert [(m.code, m.force) for m in verdict.mistakes] == [(code, force)]


@pytest.mark.parametrize(
    ("about", "text", "right"),
    [
        (Fx(), "P_x - R_h = 0", True),
        (Fy(), "P_y + R_v - 380 = 0 where R_v = (5/13)(832) = 320, so P_y = 60", True),
        (Fy(), "P_y + R_v - 260 = 0", False),
        (Fy(), "P_y + R_h - 380 = 0", False),
    ],
)
def test_the_one_inclined_reaction_goes_by_its_letter_alone_and_so_do_its_components(
    about: Fx | Fy, text: str, right: bool
) -> None:
    assert judge(BRACKET, about, text, known={"R_S": 832}).right == right

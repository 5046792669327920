"""Short words before a sum: are they the heading that they stand for, and no other?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fx, Fy, M, judge, load_problem

STALL = load_problem(Path(__file__).parents[1] / "paper/stall.toml")


@pytest.mark.parametrize("head", ["jt A up/dn  {}", "A up/dn {}", "jt A, up/dn: {}", "up/dn   {}"])
def test_up_and_down_heads_the_vertical_sum(head: str) -> None:
    line = head.format("A_y + 3/5 AB = 0")
    assert judge(STALL, Fy("A"), line).right
    other = judge(STALL, Fx("A"), line)
    assert not other.right
    assert not judge(STALL, Fy("A"), head.format("A_y - 3/5 AB = 0")).right


@pytest.mark.parametrize("head", ["jt D l/r  {}", "D l/r {}", "l/r   {}", "jt D left/right {}"])
def test_left_and_right_heads_the_horizontal_sum(head: str) -> None:
    assert judge(STALL, Fx("D"), head.format("CD - AD = 0")).right
    assert not judge(STALL, Fx("D"), head.format("CD + AD = 0")).right


@pytest.mark.parametrize(
    "head", ["mts A  ", "mts @ A: ", "mts about A, ", "mts A (ft)  ", "mt A: "]
)
def test_moments_are_those_about_the_joint_that_is_named(head: str) -> None:
    line = f"{head}16 C_y = 8(300) + 6(120)"
    assert judge(STALL, M("A"), line).right
    assert not judge(STALL, M("C"), line).right
    assert not judge(STALL, M("A"), line.replace("+", "-")).right


@pytest.mark.parametrize(
    ("line", "about"),
    [
        ("up A_y + C_y = dn 300", Fy()),
        ("up: A_y + C_y = dn: 300", Fy()),
        ("up A_y = dn 300 - 195 = 105", Fy()),
        ("up = dn   A_y + C_y = 300", Fy()),
        ("whole l/r   R: A_x + 120 = L: 0", Fx()),
        ("jt D  R: CD = L: AD", Fx("D")),
        ("jt D  L: AD = R: CD", Fx("D")),
        ("R = L   A_x + 120 = 0", Fx()),
    ],
)
def test_two_sides_by_their_letters_are_one_sum(line: str, about: Fx | Fy) -> None:
    assert judge(STALL, about, line, known={"C_y": 195.0}).right
    across = isinstance(about, Fx)
    other = Fy(about.joint) if across else Fx(about.joint)
    assert not judge(STALL, other, line, known={"C_y": 195.0}).right


def test_a_reaction_by_the_letter_of_a_side_is_no_side() -> None:
    assert not judge(STALL, Fx("D"), "L: CD = 12 R").right

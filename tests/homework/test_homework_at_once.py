"""Several equations in one line of work are each written down as the sum that it is.

That systems are written as cases, or as a command to solve, is common practice, no source.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import load_problem
from tutor.homework import read_paper, review
from tutor.judge import Equation, Fx, Fy, M

QUAY = load_problem(Path(__file__).parents[1] / "notation" / "hands" / "quay.toml")

AT_A = [
    "Joint A:\nsolve([15 + 0.6*AD, AB + 0.8*AD - 8], [AD, AB])",
    "Joint A:\nsolve([Eq(15 + 0.6*AD, 0), Eq(AB + 0.8*AD, 8)], [AD, AB])",
    "Joint A: solve([15 + 0.6*AD, AB + 0.8*AD - 8], [AD, AB])",
    "Joint A:\n\\begin{cases} A_y + 0.6 F_{AD} = 0 \\\\ A_x + F_{AB} + 0.8 F_{AD} = 0 \\end{cases}",
    "Joint A:\nA_y + 0.6 F_AD = 0; A_x + F_AB + 0.8 F_AD = 0",
    "at A: 15+0.6AD=0, AB+0.8AD-8=0",
    "Joint A:\nA_y = -0.6 F_AD, A_x = -F_AB - 0.8 F_AD",
]


@pytest.mark.parametrize("text", AT_A)
def test_the_equations_of_a_joint_in_one_line_are_each_taken_as_its_sum(text: str) -> None:
    written = read_paper(QUAY, text)
    assert not written.refused
    assert [about for about, _ in written.paper.lines] == [Fy("A"), Fx("A")]
    assert not written.paper.values
    states = {each.state for each in review(QUAY, written.paper.work(QUAY)).findings}
    assert states <= {"right", "unchecked"}


def test_the_equations_of_the_whole_truss_in_one_line_are_each_taken_as_its_sum() -> None:
    text = "solve([A_x + 8, A_y + C_y - 36, 8*C_y - 168], [A_x, A_y, C_y])"
    written = read_paper(QUAY, text)
    assert [about for about, _ in written.paper.lines] == [Fx(), Fy(), M("A")]
    assert not written.refused


@pytest.mark.parametrize("text", AT_A[:3])
def test_one_of_several_equations_that_is_wrong_is_named_and_the_other_is_not(text: str) -> None:
    written = read_paper(QUAY, text.replace("0.8*AD", "0.6*AD"))
    lines = {each.name: each.state for each in review(QUAY, written.paper.work(QUAY)).findings}
    assert sorted(lines.values()) == ["right", "wrong"]


@pytest.mark.parametrize(
    "text", ["A_y = 15, C_y = 21", "AB = 28; AD = -25", "Joint A: 15 + 0.6 AD = 0, AD = -25"]
)
def test_values_beside_each_other_are_no_equations(text: str) -> None:
    written = read_paper(QUAY, text)
    assert not written.refused
    assert written.paper.values
    assert len(written.paper.lines) == ("0.6" in text)


def test_an_equation_is_kept_as_it_was_typed_whatever_its_numbers_come_to() -> None:
    text = "Joint A: A_y - F_AD = 0, A_x + F_AB + 0.8 F_AD = 0"
    (first, second) = (line for _, line in read_paper(QUAY, text).paper.lines)
    assert "A_y - F_AD = 0" in first
    assert "A_x + F_AB + 0.8 F_AD = 0" in second


@pytest.mark.parametrize(
    ("sums", "abouts"),
    [
        (("ΣFy: A_y + 0.6 AD = 0", "ΣFx: A_x + AB + 0.8 AD = 0"), (Fy("A"), Fx("A"))),
        (("ΣFx: A_x + AB = 0", "ΣFy: A_y - 0.5 AD = 0"), (Fx("A"), Fy("A"))),
        (("ΣFx: A_y - AB = 0", "ΣFy: A_x + AD = 0"), (Fx("A"), Fy("A"))),
        (("ΣFx at D: AB + 5 = 0", "ΣFy at A: A_y + AB = 0"), (Fx("D"), Fy("A"))),
    ],
)
def test_each_of_several_equations_is_the_sum_that_its_own_heading_names(
    sums: tuple[str, str], abouts: tuple[Equation, Equation]
) -> None:
    """Whatever stands in it: a wrong sum is not looked for under another heading."""
    written = read_paper(QUAY, f"Joint A:\n{sums[0]}; {sums[1]}")
    assert not written.refused
    assert written.paper.lines == tuple(zip(abouts, sums, strict=True))

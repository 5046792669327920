"""A scan has made letters of figures: read where the line is right with them, asked about where it is not."""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fx, Fy, M, Value, judge, load_problem
from tutor.judge import judge_of
from tutor.model.read import read_text

FILE = Path(__file__).parents[1] / "notation/hands/quay.toml"
QUAY = load_problem(FILE)
RIGHT = [
    (M(at="A"), "8 C_y − 24·4 − l2·4 − 8·3 = O", "l2"),
    (M(at="A"), "8C_y - 24(4) - l2(4) - 8(3) = 0", "l2"),
    (M(at="A"), "C_y = (96 + 48 + 24)/8 = l68/8 = 21", "l68"),
    (Fy(joint="A"), "O.6 F_AD + I5 = O", "O.6"),
    (Fy(joint="A"), "0.6 F_AD + l5 = O, F_AD = -25 kN", "l5"),
    (Value("AD"), "F_AD = 25.O kN (C)", "25.O"),
]


@pytest.mark.parametrize(("about", "line", "scanned"), RIGHT)
def test_letters_among_figures_are_figures_where_the_line_is_right_so_and_that_is_told(
    about, line: str, scanned: str
) -> None:
    verdict = judge(QUAY, about, line, known={"A_y": 15})
    assert verdict.right
    told = [r.text for r in verdict.remarks if "is read as the number" in r.text]
    assert sum(scanned in text for text in told) == 1


@pytest.mark.parametrize(("about", "line", "scanned"), RIGHT)
def test_they_are_asked_about_where_another_number_of_the_line_is_wrong(
    about, line: str, scanned: str
) -> None:
    known = {"A_y": 15}
    for right, wrong in (("24", "42"), ("96", "69"), ("F_AD +", "F_AD -"), ("(C)", "(T)")):
        if right in line:
            verdict = judge(QUAY, about, line.replace(right, wrong, 1), known=known)
            assert verdict.kind == "unreadable"
            assert "letter among its figures" in verdict.text


@pytest.mark.parametrize(
    "line", ["A_x + 8O = 0", "A_x + 8.8O = 0", "A_x - 8.OO = O", "A_x + 8.OO = O, A_x = 8.OO"]
)
def test_no_wrong_line_is_right_or_wrong_by_a_letter(line: str) -> None:
    assert judge(QUAY, Fx(), line).kind == "unreadable"


@pytest.mark.parametrize("joint", ["O", "L", "I"])
def test_where_a_joint_goes_by_the_letter_it_is_asked(joint: str) -> None:
    text = FILE.read_text("utf-8").replace('"AB"', f'"A{joint}"').replace('"BC"', f'"{joint}C"')
    text = text.replace('"BD"', f'"{joint}D"').replace("B = [", f"{joint} = [")
    named = read_text(text.replace('at = "B"', f'at = "{joint}"'), "named.toml").problem
    assert named is not None
    line = {"O": "80C_y = 168O", "L": "8C_y = l68", "I": "8C_y = I68"}[joint]
    assert judge(named, M(at="A"), line).kind == "unreadable"
    assert judge(QUAY, M(at="A"), line).right


def test_a_letter_that_an_earlier_line_gives_a_size_is_no_figure() -> None:
    verdict = judge(QUAY, M(at="A"), "8C_y - 24(4) - l2(4) - 8(3) = 0")
    assert verdict.right
    with_length = judge_of(QUAY).knowing({"l": 12.0})
    said = with_length.judge(M(at="A"), "8C_y - 24(4) - l2(4) - 8(3) = 0")
    assert not said.right

"""What is put in before an equation is held against the student's values, and the equation counts."""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fy, Value, judge, load_problem
from tutor.notation import Line, read_line

QUAY = load_problem(Path(__file__).parents[1] / "notation/hands/quay.toml")
LEADS = (
    "Substituting {} from (4): ", "With {}: ", "With {} kN in (2), ", "Putting {} in: ", "Putting {} into Eq. 2 gives ",
    "Using {} from Eq. 3, ", "Inserting {} from (4) into (2): ", "Plugging in {}, ", "Given that {} (Eq. 4), ",
    "Mit {} aus (4): ", "now putting back {} → ", "Using {} kN (T) from joint B: ", "w/ {}; ",
)  # fmt: skip
KNOWN = {"BD": 12, "AD": -25}
RIGHT = "-24 - 12 - 0.6(-25) - 0.6 F_CD = 0"


@pytest.mark.parametrize("lead", LEADS)
def test_the_equation_behind_what_is_put_in_is_judged_as_without_it(lead: str) -> None:
    for line in (RIGHT, RIGHT.replace("- 12", "+ 12"), RIGHT.replace("0.6 F", "0.8 F")):
        alone = judge(QUAY, Fy(joint="D"), line, known=KNOWN)
        led = judge(QUAY, Fy(joint="D"), lead.format("F_BD = 12") + line, known=KNOWN)
        assert (led.kind, [m.code for m in led.mistakes]) == (
            alone.kind,
            [m.code for m in alone.mistakes],
        )


@pytest.mark.parametrize("lead", LEADS)
def test_a_value_put_in_that_is_not_so_is_never_passed_over(lead: str) -> None:
    assert not judge(QUAY, Fy(joint="D"), lead.format("F_BD = 21") + RIGHT, known=KNOWN).right


def test_several_values_may_be_put_in_behind_a_heading() -> None:
    line = f"ΣFy at D, substituting F_BD = 12 and F_AD = -25 from (3): {RIGHT}"
    read = read_line(line, QUAY.names)
    assert isinstance(read, Line)
    assert [step.sides[0].name for step in read.steps] == ["BD", "AD", None]
    assert read.referred == ("(3)",)
    assert judge(QUAY, Fy(joint="D"), line, known=KNOWN).right


def test_a_value_may_follow_from_what_is_put_in() -> None:
    line = "With F_BD = 12 and F_AD = -25, F_CD = (-36 + 15)/0.6 = {}"
    assert judge(QUAY, Value("CD"), line.format("-35"), known=KNOWN).right
    assert judge(QUAY, Value("CD"), line.format("-53"), known=KNOWN).kind == "wrong"


@pytest.mark.parametrize(
    ("row", "kind"),
    [
        ("0.6\t(F_AD + F_CD)\t=\t-36", "right"),
        ("0.6\tF_AD\t+\t0.6\tF_CD\t=\t-36", "right"),
        ("3/5\t(F_AD + F_CD) = -36", "right"),
        ("0.6\t(F_AD - F_CD)\t=\t-36", "wrong"),
    ],
)
def test_a_tab_between_a_factor_and_what_it_multiplies_parts_no_cells(row: str, kind: str) -> None:
    assert judge(QUAY, Fy(joint="D"), row, known={"BD": 12}).kind == kind

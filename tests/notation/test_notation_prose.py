"""Is what a page says in words or in proportions read as the formula and the heading that it is?

The wordings are our own. The arm leans 3 in 4, and so does its link.
"""

from __future__ import annotations

import math

import pytest
from families import down, exact, plain_problem

from tutor.model import Problem, Support
from tutor.notation import Line, read_line

ARM: Problem = plain_problem(
    [("A", 0, 0), ("B", 4, 0), ("C", 4, 3), ("D1", 0, 3)],
    ("AB", "BC", "AC", "C-D1", "A-D1"),
    [Support("A", "pin"), Support("D1", "link", anchor=(exact(-4), exact(0)))],
    [down("B", 6)],
)


def read(text: str) -> Line:
    line = read_line(text, ARM.names)
    assert isinstance(line, Line), line
    return line


@pytest.mark.parametrize(
    "words", ["From", "By considering", "Isolating", "By inspection of", "Because of", "Examining"]
)
@pytest.mark.parametrize("heading", ["ΣFy: ", "+↑ΣF_y = 0: ", "↑: ", "resolving vertically: "])
def test_the_joint_holds_whatever_leads_to_it(words: str, heading: str) -> None:
    line = read(f"{words} joint B, {heading}F_BC - 5 = 0")
    assert line.label is not None
    assert (line.label.kind, line.label.point, line.passed) == ("y", "B", ())


@pytest.mark.parametrize("end", [":", ","])
def test_a_member_with_a_dash_gives_the_direction_of_a_sum(end: str) -> None:
    label = read(f"Joint C: resolving along C-D1{end} F_CD1 + 4/5 F_AC = 0").label
    assert label is not None
    assert (label.kind, label.point, label.degrees) == ("along", "C", 0.0)


def test_the_link_gives_the_direction_of_a_sum() -> None:
    label = read("Resolving perpendicular to the link: 0.8 A_y - 0.6 A_x - 4.8 = 0").label
    assert label is not None
    assert label.degrees is not None
    assert math.isclose(label.degrees, 126.869897645844)


@pytest.mark.parametrize("unit", ["metres", "m", "kN m", "meters"])
def test_a_unit_said_in_a_heading_is_no_joint(unit: str) -> None:
    label = read(f"Taking moments about A in {unit}: 2.4 R_D1 - 24 = 0").label
    assert label is not None
    assert (label.kind, label.point) == ("moment", "A")


def test_an_angle_said_before_the_line_is_the_angle_of_the_line() -> None:
    line = read("Since sin θ = 3/5, cos θ = 4/5: joint C, F_CD1 + F_AC cos θ = 0")
    assert line.label is not None
    assert line.label.point == "C"
    assert math.isclose(line.letters["θ"], 36.8699, abs_tol=1e-4)


def test_a_function_takes_a_multiple_of_an_angle() -> None:
    one = read("F_BC sin 2θ = 9, tan θ = 3/4").result
    other = read("F_BC sin(2θ) = 9, tan θ = 3/4").result
    assert [side.terms[0].value for side in one.sides] == [
        side.terms[0].value for side in other.sides
    ]


@pytest.mark.parametrize(
    "ratio", ["F_ACy : F_ACx = 3 : 4", "F_AC,y / F_AC,x = 3/4", "ACy/ACx=0.75"]
)
def test_a_ratio_of_components_is_the_one_times_a_number(ratio: str) -> None:
    one, other = read(ratio).result.sides
    assert math.isclose(one.terms[0].value, other.terms[0].value)

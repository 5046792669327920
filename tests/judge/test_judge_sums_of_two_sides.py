"""A heading of two opposite sides names the sum that its equation is: ups = downs, cw = ccw about A."""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fx, Fy, M, judge, load_problem
from tutor.notation import Label, read_line

QUAY = load_problem(Path(__file__).parents[1] / "notation/hands/quay.toml")
UPRIGHT = (
    "Up = down, ", "up = down: ", "ups = downs: ", "sum of ups equals sum of downs: ", "forces up = forces down → ",
    "total up = total down; ", "the upward forces must equal the downward forces: ", "↑ = ↓: ", "Σ↑ = Σ↓: ",
    "down balances up: ", "everything up = everything down: ", "up = down ", "so upwards = downwards => ",
)  # fmt: skip
LEVEL = (
    "Right = left, ",
    "left = right: ",
    "forces to the right = forces to the left => ",
    "rechts = links: ",
)
TURNING = (
    "cw = ccw about A: ", "clockwise = anticlockwise about A: ", "about A: clockwise moments = anticlockwise moments, ",
    "↻ = ↺ about A: ", "moments about A: acw = cw, ",
)  # fmt: skip
CASES = [
    *((Fy(), heading, "A_y + C_y = 24 + 12", "A_y + C_y = 24 - 12") for heading in UPRIGHT),
    *(
        (Fx("D"), f"joint D: {one}", "0.8 F_CD + 8 = 0.8 F_AD", "0.8 F_CD = 0.8 F_AD")
        for one in LEVEL
    ),
    *((M("A"), one, "24·4 + 12·4 + 8·3 = 8C_y", "24·4 + 12·4 = 8C_y") for one in TURNING),
]


@pytest.mark.parametrize(("about", "heading", "right", "wrong"), CASES)
def test_the_equation_behind_two_sides_is_judged_as_any(
    about, heading: str, right: str, wrong: str
) -> None:
    for line in (right, wrong):
        alone, headed = judge(QUAY, about, line), judge(QUAY, about, heading + line)
        assert (alone.kind, alone.remarks) == (headed.kind, headed.remarks)
        assert [m.code for m in alone.mistakes] == [m.code for m in headed.mistakes]
    assert judge(QUAY, about, heading + right).right
    assert judge(QUAY, about, heading + wrong).kind == "wrong"


@pytest.mark.parametrize(
    ("heading", "kind", "point"),
    [
        ("up = down:", "y", None),
        ("left = right:", "x", None),
        ("at D up = down:", "y", "D"),
        ("up = down at D:", "y", "D"),
        ("cw = ccw about C:", "moment", "C"),
        ("cw = ccw:", "moment", None),
    ],
)
def test_two_sides_name_a_sum_for_whoever_asks_which(heading: str, kind: str, point: str) -> None:
    line = read_line(f"{heading} A_y + C_y = 36", QUAY.names)
    assert isinstance(line.label, Label)
    assert (line.label.kind, line.label.point) == (kind, point)


@pytest.mark.parametrize(
    ("about", "line"),
    [
        (Fy(), "up: A_y + C_y = down: 24 + 12"),
        (Fy(), "ups A_y + C_y = downs 24 + 12"),
        (Fy(), "↑ A_y + C_y = ↓ 24 + 12"),
        (Fx("D"), "joint D: right 8 + 0.8 F_CD = left 0.8 F_AD"),
        (M("A"), "clockwise moments: 24·4 + 12·4 + 8·3 = 168 = anticlockwise moments: 8C_y"),
    ],
)
def test_what_is_said_beside_each_side_names_the_sum_as_well(about, line: str) -> None:
    assert judge(QUAY, about, line).right
    turned = line.replace("24", "42").replace("0.8 F_AD", "0.6 F_AD")
    assert judge(QUAY, about, turned).kind == "wrong"


def test_another_sum_than_the_one_asked_for_is_noticed() -> None:
    remarks = judge(QUAY, Fy(), "left = right: A_y + C_y = 36").remarks
    assert [remark.code for remark in remarks] == ["heading"]


@pytest.mark.parametrize(
    "line", ["up = 36, down = 36", "up = left, down = right", "A_x = 8 left = right"]
)
def test_sides_without_an_equation_are_none(line: str) -> None:
    assert not judge(QUAY, Fy(), line).right

"""Does the judge see a line as it was typed: in parts, lumped, with factors where none belong?

The trusses are our own. What an instructor calls each mistake is common practice, no source.
"""

from __future__ import annotations

import pytest

from tutor.judge import Along, Fx, Fy, M, Verdict, judge
from tutor.model import Problem
from tutor.model.read import read_text

BRACKET = """
title = "Bracket of a shop sign"
force = "lb"
length = "in"
members = ["AB", "BC", "CD", "AC", "AD"]
loads = [{ at = "D", size = 800, angle = 330 }, { at = "C", down = 200 }]
joints = { A = [0, 0], B = [0, 40], C = [30, 40], D = [60, 40] }
supports = { A = "pin", B = { roller = 180 } }
"""
ROOF = """
title = "Roof of a net store in the wind"
force = "kip"
length = "ft"
members = ["AB", "BC", "CD", "DE", "AF", "FE", "BF", "CF", "DF"]
joints = { A = [0, 0], B = [8, 6], C = [16, 12], D = [24, 6], E = [32, 0], F = [16, 0] }
supports = { A = "pin", E = "roller" }
loads = [
  { at = "A", size = 1, angle = "270+atan(3/4)" },
  { at = "B", size = 2, angle = "270+atan(3/4)" },
  { at = "C", size = 1, angle = "270+atan(3/4)" },
  { at = "C", down = 1.5 },
  { at = "F", down = 2 },
]
"""
BRIDGE = """
title = "Bridge over the mill race"
force = "kip"
length = "ft"
members = ["L0-L1", "L1-L2", "L0-U1", "L1-U1", "L2-U1"]
joints = { L0 = [0, 0], L1 = [15, 0], L2 = [30, 0], U1 = [15, 20] }
supports = { L0 = "pin", L2 = "roller" }
loads = [{ at = "L1", down = 18 }, { at = "U1", down = 30, right = 5 }]
"""


def read(text: str) -> Problem:
    found = read_text(text, "truss.toml")
    assert found.problem is not None, found
    return found.problem


@pytest.fixture(scope="module")
def bracket() -> Problem:
    return read(BRACKET)


@pytest.fixture(scope="module")
def roof() -> Problem:
    return read(ROOF)


@pytest.fixture(scope="module")
def bridge() -> Problem:
    return read(BRIDGE)


def named(verdict: Verdict) -> list[tuple[str, str | None]]:
    return [(m.code, m.force) for m in verdict.mistakes]


@pytest.mark.parametrize(
    ("text", "slips", "place"),
    [
        (
            "40B_x - 200(30) - 400(60) + 692.8(40) = 0",
            [("turning", "load D")],
            "The horizontal component of the load at D has the wrong sign",
        ),
        (
            "40B_x - 200(30) - 400(60) = 0",
            [("component-missing", "load D")],
            "The moment of the horizontal component of the load at D about A is left out",
        ),
        (
            "40B_x - 800 sin30 (60) - 800 cos30 (40) = 0",
            [("missing", "load C")],
            "The load at C is left out",
        ),
        (
            "40B_x - 200(30) - 400(40) - 692.8(60) = 0",
            [("component-in-moment", "load D")],
            "The components of the load at D",
        ),
        (
            "40B_x - 200(30) - 400(30) - 692.8(40) = 0",
            [("arm-from", "load D")],
            "The distance beside the vertical component of the load at D",
        ),
        (
            "40B_x - 200(60) - 400(60) - 692.8(40) = 0",
            [("arm-from", "load C")],
            "The distance beside the load at C",
        ),
        (
            "40B_x + 200(30) - 400(60) - 692.8(40) = 0",
            [("turning", "load C")],
            "The load at C has the wrong sign",
        ),
    ],
)
def test_the_two_parts_of_a_slanting_load_are_judged_each_by_itself(bracket, text, slips, place):
    verdict = judge(bracket, M("A"), text, senses={"B_x": "left"})
    assert named(verdict) == slips
    assert verdict.mistakes[0].place.startswith(place)


def test_the_two_parts_of_a_slanting_load_written_right_are_right(bracket):
    for text in (
        "40B_x - 200(30) - 400(60) - 692.8(40) = 0",
        "40B_x - 200(30) - 800 sin 30 (60) - 800 cos 30 (40) = 0",
        "40B_x - 200*30 - 800*64.641 = 0",
    ):
        assert judge(bracket, M("A"), text, senses={"B_x": "left"}).right


def test_no_force_is_blamed_whose_term_is_right_beside_a_part_that_is_not(roof):
    right = "32E_y - 1.6(8) - 1.2(6) - 0.8(16) - 0.6(12) - 1.5(16) - 2(16) = 0"
    assert judge(roof, M("A"), right).right
    for wrong in (
        right.replace("- 1.2(6)", "+ 1.2(6)"),
        right.replace("- 1.5(16)", ""),
        right.replace("0.6(12)", "0.6(6)"),
    ):
        verdict = judge(roof, M("A"), wrong)
        assert verdict.kind == "wrong"
        assert "E_y" not in [m.force for m in verdict.mistakes]
        assert [m.code for m in verdict.mistakes] in (["turning"], ["lost-load"], ["arm-from"])


@pytest.mark.parametrize(
    ("about", "text", "code", "forces"),
    [
        (Fx(), "A_x + 0.8*4 = 0", "component", {"load A", "load B", "load C"}),
        (Fx(), "A_x + 4 = 0", "whole-force", {"load A", "load B", "load C"}),
        (Fy(), "A_y + E_y - 4 - 1.5 - 2 = 0", "whole-force", {"load A", "load B", "load C"}),
    ],
)
def test_loads_side_by_side_that_were_taken_together_share_their_mistake(
    roof, about, text, code, forces
):
    verdict = judge(roof, about, text)
    assert {m.code for m in verdict.mistakes} == {code}
    assert {m.force for m in verdict.mistakes} == forces


@pytest.mark.parametrize(
    "text", ["30 L2_y - 48(15) = 0", "30 L2_y - 48*15 - 5*20 + 3 = 0", "30 L2_y - (18+30)(15) = 0"]
)
def test_the_lumped_line_of_a_truss_with_one_arm_leaves_the_level_load_out_or_is_not_named(
    bridge, text
):
    verdict = judge(bridge, M("L0"), text)
    assert verdict.kind == "wrong"
    assert not {("arm-from", "load L1"), ("arm", "load L1")} & set(named(verdict))


def test_a_force_along_the_sum_has_no_component_to_be_taken(bridge):
    verdict = judge(bridge, Fy("L1"), "F_L1U1 - 0.8*18 = 0")
    assert named(verdict) == [("needless-component", "load L1")]
    verdict = judge(bridge, Fy("L1"), "0.8 F_L1U1 - 18 = 0")
    assert named(verdict) == [("needless-component", "L1-U1")]


def test_a_load_that_fits_is_not_blamed_for_the_factor_beside_the_member(bracket):
    for text in ("-AD sin 35 - 800 sin 30 = 0", "-0.45AD - 400 = 0"):
        verdict = judge(bracket, Fy("D"), text)
        assert named(verdict) == [("not-equilibrium", "AD")]
    for text in ("-AD sin 30 - 800 sin 30 = 0", "-0.5AD - 400 = 0", "-AD sin 45 - 400 = 0"):
        verdict = judge(bracket, Fy("D"), text)
        assert named(verdict) == [("slope-assumed", "AD")]


def test_numbers_alone_are_not_explained_by_chance(bracket):
    known = {"A_x": "-1443", "A_y": "600", "B_x": "750", "AD": "721", "AC": "250", "CD": "1293"}
    verdict = judge(bracket, Fx("A"), "5 - 5 = 0", known=known)
    assert named(verdict) == [("not-equilibrium", None)]


def test_a_sum_at_a_joint_with_an_unrecorded_value_is_known_as_that(bracket):
    verdict = judge(bracket, Fx(), "-CD + 0.832*721 + 693 = 0")
    assert verdict.true_of == Fx("D")


def test_leaving_out_what_is_zero_is_no_mistake_beside_another(bridge):
    verdict = judge(bridge, Along(0.0, "L2"), "F_L1L2 - 3/5 F_L2U1 = 0")
    assert named(verdict) == [("sign", "L2-U1")] or verdict.candidates


@pytest.mark.parametrize(
    "text",
    [
        "40B_x - 6000 - 24000 - 27700 = 0",
        "B_x - 150 - 600 - 690 = 0",
        "40B_x = 6000 + 51700",
    ],
)
def test_components_rounded_each_to_three_figures_are_right(bracket, text):
    assert judge(bracket, M("A"), text, senses={"B_x": "left"}).right


def test_a_number_with_its_digits_exchanged_is_not_true_of_something_else(roof):
    verdict = judge(roof, M("A"), "32E_y - 2*10 - 20 - 1.5(16) - 2(18) = 0")
    assert named(verdict) == [("arm", "load F")]


def test_a_force_without_arm_is_known_in_a_line_that_is_doubled(bracket):
    text = "80B_x - 2*200 - 1600(64.641) = 0"
    verdict = judge(bracket, M("A"), text, senses={"B_x": "left"})
    assert named(verdict) == [("no-arm", "load C")]


def test_of_several_products_none_is_taken_for_a_sum_that_it_does_not_show(bracket):
    verdict = judge(bracket, M("A"), "40B_x - 250(30) - 800*64.641 = 0", senses={"B_x": "left"})
    assert named(verdict) == [("magnitude", "load C")]
    assert "Either" not in verdict.text


@pytest.mark.parametrize(
    ("text", "slips"),
    [
        ("L2_y - 18000 - 30 = 0", {("missing", "L0_y"), ("unit", "load L1")}),
        ("18 + 30 = 0", {("missing", "L0_y"), ("missing", "L2_y")}),
    ],
)
def test_no_value_is_taken_as_put_in_that_no_number_of_the_line_shows(bridge, text, slips):
    verdict = judge(bridge, Fy(), text)
    assert set(named(verdict)) == slips


def test_numbers_that_are_all_exact_as_typed_hide_no_force_left_out(bracket):
    """60 and 10 are of two figures; what is left out is 1.5 % of their product."""
    text = """
    title = "Derrick on the quay"
    force = "kN"
    length = "m"
    members = ["AB", "BC", "CA"]
    joints = { A = [0, 0], B = [0, 36], C = [10, 0] }
    supports = { A = "pin", B = { roller = 180 } }
    loads = [{ at = "C", down = 60, right = 2 }, { at = "B", down = 3 }, { at = "A", up = 3 }, { at = "B", right = 0.25 }]
    """
    derrick = read(text)
    assert judge(derrick, M("A"), "-36 B_x - 60*10 = 36*0.25").right
    assert not judge(derrick, M("A"), "-36 B_x - 60*10 = 0").right
    assert not judge(derrick, M("A"), "-36 B_x - 600 = 0").right


OVER_THE_FOOT = """
title = "Gantry over the drying floor"
force = "N"
length = "m"
members = ["KL", "LS", "KP", "LP", "LQ", "SQ", "PQ"]
[joints]
K = [0, 0]
L = [3, 0]
S = [6, 0]
P = [1.5, "1.5*sqrt(3)"]
Q = [4.5, "1.5*sqrt(3)"]
[supports]
K = "pin"
L = "roller"
[[loads]]
at = "P"
down = 12000
[[loads]]
at = "Q"
size = 2000
angle = 210
"""


@pytest.mark.parametrize(
    ("components", "right"),
    [
        ("", True),
        ("- 2000*sin(30)*4.5 + 2000*cos(30)*2.598", True),
        ("- 4500 + 4500", True),
        ("+ 2000*cos(30)*4.5*tan(30) - 1000*4.5", True),
        ("- 4500 - 4500", False),
        ("- 4500", False),
        ("- 2000*4.5 + 2000*4.5", False),
        ("- 5 + 5", False),
    ],
)
def test_both_components_of_a_load_that_acts_through_the_point_may_stand_and_nothing_else(
    components, right
):
    line = f"3L_y - 12000*1.5 {components} = 0"
    assert judge(read(OVER_THE_FOOT), M("K"), line).right is right

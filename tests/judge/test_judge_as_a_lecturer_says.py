"""Is what a wrong line is told what a lecturer says first, where another slip would explain it as well?

The trusses are our own; what a lecturer says first is common practice, no source.
"""

from __future__ import annotations

import pytest

from tutor.judge import Along, Equation, Fx, Fy, M, Value, judge
from tutor.model import Problem
from tutor.model.read import read_text

STAND = """
title = "Stand for a grinder"
force = "N"
length = "mm"
members = ["AB", "BC", "AD", "BD", "CD"]
joints = { A = [0, 0], B = [400, 0], C = [800, 0], D = [400, 300] }
supports = { A = "pin", D = { link = [0, 600] } }
loads = [{ at = "C", down = 900 }, { at = "B", down = 240 }]
"""
RACK = """
title = "Rack beside a press"
force = "N"
length = "mm"
members = ["AB", "AC", "BC", "BD", "CD"]
joints = { A = [0, 0], B = [0, 800], C = [1500, 0], D = [1500, 800] }
supports = { A = "pin", B = { roller = 0 } }
loads = [{ at = "D", down = 240, right = 90 }, { at = "C", down = 400 }]
"""
SHED = """
title = "Roof of a cart shed"
force = "lb"
length = "ft"
members = ["AB", "BC", "CD", "DE", "AF", "FE", "BF", "CF", "DF"]
joints = { A = [0, 0], B = [12, 5], C = [24, 10], D = [36, 5], E = [48, 0], F = [24, 0] }
supports = { A = "pin", E = "roller" }
loads = [{ at = "B", down = 650 }, { at = "C", down = 1300 }, { at = "D", down = 650 }]
"""
LEAN = """
title = "Lean-to over a pump"
force = "kN"
length = "m"
members = ["AB", "BC", "AD", "DC", "BD"]
joints = { A = [0, 0], B = [3, 3], C = ["3 + 3*sqrt(3)", 0], D = [3, 0] }
supports = { A = "pin", C = "roller" }
loads = [{ at = "B", size = 10, angle = 240 }, { at = "D", down = 12 }]
"""
POLE = """
title = "Pole with a lamp"
force = "lb"
length = "ft"
members = ["AB", "AC", "BC", "CD", "BD", "CE", "DE"]
joints = { A = [0, 0], B = [8, 0], C = [0, 15], D = [8, 15], E = [8, 30] }
supports = { A = "pin", B = "roller" }
loads = [{ at = "E", right = 400, down = 300 }, { at = "D", right = 160 }]
"""
SPAN = """
title = "Span over a ditch"
force = "kip"
length = "ft"
members = ["AB", "BC", "CD", "AE", "EF", "FD", "EB", "FC", "EC"]
joints = { A = [0, 0], B = [15, 0], C = [30, 0], D = [45, 0], E = [15, 8], F = [30, 8] }
supports = { A = "pin", D = "roller" }
loads = [{ at = "B", down = 24 }, { at = "C", down = 12 }]
"""
Named = list[tuple[str, str | None]]


def read(text: str) -> Problem:
    found = read_text(text, "truss.toml")
    assert found.problem is not None, found
    return found.problem


def named(truss: str, about: Equation | Value, text: str, **given: object) -> Named:
    verdict = judge(read(truss), about, text, **given)
    assert verdict.kind == "wrong"
    return [(mistake.code, mistake.force) for mistake in verdict.mistakes]


@pytest.mark.parametrize(
    ("truss", "text", "force"),
    [
        (RACK, "800 B_x + 240·1.5 + 400·1.5 + 90·0.8 = 0", "B_x"),
        (RACK, "800 B_x + 640·1.5 + 90·0.8 = 0", "B_x"),
        (RACK, "800 B_x = -640(1.5) - 90(0.8)", "B_x"),
        (STAND, "480 R_D = 900·0.8 + 240·0.4", "R_D"),
        (STAND, "480 R_D - 900(0.8) - 240(0.4) = 0", "R_D"),
        (STAND, "480 R_D = 900·0.8 + 240·0.4 = 816, so R_D = 1.7 N", "R_D"),
        (STAND, "0.48 R_D - 900(0.8) - 240(400) = 0", "load B"),
        (STAND, "0.48 R_D - 900(800) - 240(0.4) = 0", "load C"),
        (RACK, "0.8 B_x + 640·1.5 + 90·800 = 0", "load D x"),
        (STAND, "480 R_D - 900(800) - 240(0.4) = 0", "load B"),
    ],
)
def test_distances_in_two_units_are_told_at_what_stands_alone(truss, text, force) -> None:
    assert named(truss, M("A"), text) == [("arm-unit", force)]


def test_forces_in_another_unit_are_told_as_forces() -> None:
    line = "480 R_D = 0.9·800 + 0.24·400"
    assert named(STAND, M("A"), line) == [("unit", None)]


@pytest.mark.parametrize(
    "text", ["B_x + 240·1.5 + 400·1.5 + 90·0.8 = 0", "B_x = -640·1.5 - 90·0.8"]
)
def test_an_unknown_without_an_arm_has_no_arm_in_another_unit(text: str) -> None:
    assert ("arm-unit", "B_x") not in named(RACK, M("A"), text)


@pytest.mark.parametrize(
    "text",
    [
        "8A_y + 400*30 + 300*8 + 160*15 = 0",
        "8A_y + 400*30 + 160*15 + 300*8 = 0",
        "8A_y = -400(30) - 300(8) - 160(15)",
    ],
)
def test_a_product_of_another_load_is_no_load_counted_twice(text: str) -> None:
    assert named(POLE, M("B"), text) == [("extra", "load E y")]


@pytest.mark.parametrize(
    "text", ["8A_y + 400*30 + 160*15 + 160*15 = 0", "8A_y + 400*30 + 2400 + 160*15 = 0"]
)
def test_the_same_moment_once_more_is_counted_twice(text: str) -> None:
    assert named(POLE, M("B"), text) == [("double", "load D")]


@pytest.mark.parametrize(
    ("about", "text", "forces"),
    [
        (Fy("F"), "(5/12)(F_BF + F_DF) + F_CF = 0", ["BF", "DF"]),
        (Fy("F"), "F_CF + 5/12 F_BF + 5/12 F_DF = 0", ["BF", "DF"]),
        (Fy("B"), "(5/12)(F_BC - F_AB - F_BF) - 650 = 0", ["BC", "AB", "BF"]),
    ],
)
def test_no_factor_is_found_beside_a_force_that_stands_whole(about, text, forces) -> None:
    assert named(SHED, about, text) == [("tangent", force) for force in forces]


def test_forces_that_all_lack_their_factor_stand_whole() -> None:
    found = named(SHED, Fy("B"), "F_BC - F_AB - F_BF - 650 = 0")
    assert found == [("whole-force", "BC"), ("whole-force", "AB"), ("whole-force", "BF")]


@pytest.mark.parametrize(
    "text", ["(5/13)(F_BF + F_DF + F_CF) = 0", "5/13 F_BF + 5/13 F_DF + 5/13 F_CF = 0"]
)
def test_a_factor_beside_a_force_that_needs_none_is_told(text: str) -> None:
    assert named(SHED, Fy("F"), text) == [("needless-component", "CF")]


@pytest.mark.parametrize(
    "text",
    ["(5/13)(BC + CD) + CF = 1300", "1300 = (5/13)(BC + CD) + CF", "5/13 BC + 5/13 CD + CF = 1300"],
)
def test_a_load_alone_across_the_equals_sign_was_moved_with_its_sign(text: str) -> None:
    assert named(SHED, Fy("C"), text) == [("sign", "load C")]


@pytest.mark.parametrize(
    "text", ["(5/13)(BC + CD) + CF - 1300 = 0", "-1300 + (5/13)(BC + CD) + CF = 0"]
)
def test_members_that_all_point_the_other_way_in_one_sum_are_told_so(text: str) -> None:
    assert named(SHED, Fy("C"), text) == [("pull-push", None)]


@pytest.mark.parametrize("text", ["500 R_D = 900·800 + 240·400", "R_D*500 - 900·800 - 240·400 = 0"])
def test_the_distance_to_a_joint_is_no_sum_of_exchanged_components(text: str) -> None:
    assert named(STAND, M("A"), text) == [("arm-from", "R_D")]


def test_components_that_are_written_out_and_exchanged_are_told_so() -> None:
    line = "0.6*300 R_D + 0.8*400 R_D = 900·800 + 240·400"
    assert named(STAND, M("A"), line) == [("component", "R_D")]


@pytest.mark.parametrize(
    "text",
    [
        "F_BC + F_BD cos 60° - F_AB cos 45° = 0",
        "F_BC + F_BD cos 60° - F_AB sin 45° = 0",
        "F_BC + 0.5 F_BD - 0.707 F_AB = 0",
    ],
)
def test_the_angle_to_the_horizontal_in_an_oblique_sum_is_measured_from_another_line(text) -> None:
    assert named(LEAN, Along(330, "B"), text) == [("complement", "AB")]


@pytest.mark.parametrize(
    ("truss", "about", "text"),
    [
        (SHED, Fy("B"), "(5/13)(BC - AB - BF) = 650 → BC - AB - BF = 650*5/13 = 250"),
        (SHED, Fy("B"), "(5/13)(BC - AB - BF) = 650, so BC - AB - BF = 250"),
        (SPAN, Fy("E"), "(8/17)(AE + EC) + EB = 0, so AE + EC + 8/17 EB = 0"),
        (SHED, Fy("C"), "-(5/13)(BC + CD) - CF = 1300, so -BC - CD = 5/13 CF + 500"),
    ],
)
def test_an_equation_that_does_not_follow_says_what_was_multiplied(truss, about, text) -> None:
    verdict = judge(read(truss), about, text)
    assert verdict.kind == "wrong"
    assert "stands" in verdict.text
    if "250" in text:
        assert [mistake.code for mistake in verdict.mistakes] == ["component"]
        assert "divided by" in verdict.text


def test_what_follows_by_division_is_right() -> None:
    line = "(5/13)(BC - AB - BF) = 650 → BC - AB - BF = 650*13/5 = 1690"
    assert judge(read(SHED), Fy("B"), line).right


@pytest.mark.parametrize(
    ("truss", "unknown", "text", "known", "says"),
    [
        (SPAN, "FD", "by symmetry FD = AE = -42.5 kip", {"AE": -42.5}, "no mirror image"),
        (SPAN, "D_y", "By symmetry D_y = A_y = 20 kip", {"A_y": 20}, "no mirror image"),
        (SHED, "AB", "by symmetry AB = BC = -1690", {"BC": -1690}, "mirror images"),
    ],
)
def test_a_symmetry_that_is_none_is_told_as_that(truss, unknown, text, known, says) -> None:
    verdict = judge(read(truss), Value(unknown), text, known=known)
    assert [(m.code, m.force) for m in verdict.mistakes] == [("symmetry", unknown)]
    assert says in verdict.text


@pytest.mark.parametrize(
    "text", ["By symmetry A_y = E_y = 650 + 1300 + 650 = 2600 lb", "by symmetry A_y = 2600"]
)
def test_the_whole_of_the_loads_by_symmetry_lacks_its_half(text: str) -> None:
    verdict = judge(read(SHED), Value("A_y"), text)
    assert verdict.kind == "wrong"
    assert "half" in verdict.text


def test_what_symmetry_shows_is_right() -> None:
    assert judge(read(SHED), Value("A_y"), "By symmetry A_y = E_y = 1300 lb").right
    assert judge(
        read(SHED), Value("DE"), "by symmetry DE = AB = -3380 lb", known={"AB": -3380}
    ).right


@pytest.mark.parametrize(
    "text",
    [
        "F_BD = 12, since AB is also a strut",
        "F_BD = 12 kN, as AB is also in compression",
        "F_BD = 12 kN; AB is also compressed",
        "F_BD = 12 kN, AB is compressed",
    ],
)
def test_what_another_member_also_is_says_nothing_of_the_value(text: str) -> None:
    assert judge(read(LEAN), Value("BD"), text, known={"AB": -21.1}).right
    assert not judge(read(LEAN), Value("BD"), "F_BD = 12 kN, which is also compression").right


def test_no_sum_of_forces_is_about_distances() -> None:
    assert ("arm-unit", None) not in named(SHED, Fx("A"), "A_x + AF + 1000·12/13 AB = 0")

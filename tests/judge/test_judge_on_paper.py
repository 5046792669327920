"""Is what a lecturer sees at a glance seen here: algebra, numbers of lines, arms, results, zeros?

The trusses are our own; what a lecturer calls each thing is common practice, no source.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from families import warren

from tutor.judge import Fx, Fy, M, Value, Verdict, judge, judge_of, right_line
from tutor.judge.known_values import KnownValues
from tutor.model import Problem, load_problem
from tutor.model.read import read_text

DAVIT = """
title = "Davit over the lock gate"
force = "kN"
length = "m"
members = ["AB", "BC", "CA"]
joints = { A = [0, 0], B = [0, 3], C = [4, 3] }
supports = { A = "pin", B = { roller = 0 } }
loads = [{ at = "C", down = 9, right = 2 }]
"""
LINKED = """
title = "Landing stage on a link"
force = "kN"
length = "m"
members = ["PQ", "QR", "PR"]
joints = { P = [0, 0], Q = [5, 2], R = [10, 0] }
supports = { P = "pin", Q = { link = [1, 5] } }
loads = [{ at = "R", down = 7 }]
"""


def read(text: str) -> Problem:
    found = read_text(text, "truss.toml")
    assert found.problem is not None, found
    return found.problem


@pytest.fixture(scope="module")
def davit() -> Problem:
    return read(DAVIT)


@pytest.fixture(scope="module")
def linked() -> Problem:
    return read(LINKED)


def codes(verdict: Verdict) -> list[str]:
    return [mistake.code for mistake in verdict.mistakes]


@pytest.mark.parametrize("text", ["3/5 AC = -9", "3AC + 45 = 0", "AC(3) = -9(5)", "0.6 AC + 9 = 0"])
def test_a_step_of_algebra_on_a_line_that_stands_is_right_whatever_was_asked(davit, text) -> None:
    verdict = judge(davit, Fx("C"), text, standing=(Fy("C"),), lines=("-0.6 AC - 9 = 0",))
    assert verdict.right
    assert "dependent" in [remark.code for remark in verdict.remarks]


@pytest.mark.parametrize("number", ["(3)", "[4]", "(ii)", "... (2)"])
def test_the_number_of_a_line_is_no_factor_of_it(davit, number) -> None:
    assert judge(davit, Fy("C"), f"0.6 AC + 9 = 0   {number}").right
    assert not judge(davit, Fy("C"), f"0.6 AC + 8 = 0   {number}").right


def test_a_force_beside_moments_has_lost_its_arm(davit) -> None:
    verdict = judge(davit, M("A"), "-B_x - 9(4 m) - 2(3 m) = 0")
    assert codes(verdict)[:1] == ["no-arm"]


def test_a_component_typed_for_the_force_is_known_as_a_component(davit) -> None:
    verdict = judge(davit, Value("AC"), "9 C", lines=("-0.6 AC - 9 = 0",))
    assert verdict.kind == "wrong"
    assert "another force" not in verdict.text


@pytest.mark.parametrize("factor", ["0.61", "0.57", "0.62"])
def test_a_factor_that_lies_near_the_true_one_hides_no_wrong_angle(davit, factor) -> None:
    assert not judge(davit, Fy("C"), f"{factor} AC + 9 = 0").right


def test_the_term_with_the_wrong_arm_is_told_and_not_the_right_one(davit) -> None:
    (mistake,) = judge(davit, M("A"), "3 B_x + 9*3 + 2*3 = 0").mistakes
    assert (mistake.code, mistake.force) == ("arm", "load C y")
    assert mistake.span is not None
    assert mistake.span.start == len("3 B_x + ")


def test_a_link_whose_second_component_has_no_moment_lacks_a_component(linked) -> None:
    verdict = judge(linked, M("P"), "R_Q*4/5*2 - 7*10 = 0")
    assert codes(verdict) == ["component-missing"]


def test_tangents_on_an_inclined_member_are_no_factor_beside_a_force_that_needs_none(davit) -> None:
    verdict = judge(davit, Fx("C"), "-BC - 3/4 AC + 2 = 0")
    assert "needless-component" not in codes(verdict)
    assert "needs none" not in verdict.text


@pytest.mark.parametrize("text", ["AC = 0", "0 = AC"])
def test_a_force_said_to_be_zero_does_not_stand_there_whole(davit, text) -> None:
    assert "whole-force" not in codes(judge(davit, Fy("C"), text))


@pytest.mark.parametrize("text", ["AC = -15", "B_x = -14", "fx: BC = 14"])
def test_a_result_shows_no_equation(davit, text) -> None:
    assert judge(davit, M("A"), text).kind != "right"


def test_a_line_of_one_sum_is_not_taken_for_another_once_one_force_is_open(davit) -> None:
    verdict = judge(davit, Fx("C"), "-0.6(-15) - 9 = 0", known={"AC": "-15"})
    assert not verdict.right


def test_whether_what_is_left_out_is_zero_is_asked_and_not_told() -> None:
    text = DAVIT.replace("down = 9, right = 2", "down = 9").replace(
        '"BC", "CA"]', '"BC", "CA", "BD", "CD"]'
    )
    problem = read(text.replace("C = [4, 3] }", "C = [4, 3], D = [2, 6] }"))
    verdict = judge(problem, Fy("C"), "-0.6 AC - 9 = 0")
    assert verdict.right
    said = " ".join(remark.text for remark in verdict.remarks)
    assert "CD" in said
    assert "zero" not in said


@pytest.mark.parametrize("panels", [5, 33, 70])
def test_the_line_that_the_last_hint_gives_is_read_and_right(panels) -> None:
    problem = warren(panels, 4, 3, 12)
    own = KnownValues({}, {})
    for about in (Fx(), Fy(), M(problem.joints[0].name)):
        assert judge_of(problem).judge(about, right_line(problem, about, own), own).right


@pytest.mark.parametrize(
    "text", ["3 = 0", "0.3 = 0", "AC - AC + 2.5 = 0", "0*BC = 0.4", "9 - 9 = 0.2"]
)
@pytest.mark.parametrize("about", [Fx(), Fy(), M("A"), Fx("C"), Fy("C")])
def test_numbers_that_stand_for_nothing_close_no_body(davit, about, text) -> None:
    known = {"A_x": "12.00", "A_y": "9.000", "B_x": "-14.00", "AC": "-15.00", "BC": "14.00"}
    assert not judge(davit, about, text, known=known).right


@pytest.mark.parametrize("share", [1.03, 0.96, 1.07])
@pytest.mark.parametrize("unknown", ["AC", "BC", "AB"])
def test_a_value_that_is_off_is_wrong_with_all_others_known(davit, unknown, share) -> None:
    known = {"A_x": "12.00", "A_y": "9.000", "B_x": "-14.00", "AC": "-15.00", "BC": "14.00"}
    value = {"AC": 15.0, "BC": 14.0, "AB": 9.0}[unknown] * share
    others = {name: number for name, number in known.items() if name != unknown}
    for letter in "TC":
        assert not judge(davit, Value(unknown), f"{value:.4f} {letter}", known=others).right


def test_a_value_under_another_name_is_of_that_force(davit) -> None:
    assert judge(davit, Value("BC"), "AC = 14 T").kind == "undecided"


SKEWED = """
title = "Sign on the retaining wall"
force = "kN"
length = "m"
members = ["AB", "AC", "BD", "CD"]
joints = { A = [0, 0], B = [4, 0], C = [2, -1], D = [5, -1] }
supports = { B = "pin", C = "pin" }
loads = [{ at = "D", size = 12, angle = 225 }]
"""


@pytest.mark.parametrize(
    "text",
    [
        "16.97*1 - 0*2 - 12 sin 45*1 - 12 cos 45*1 = 0",
        "16.97 - 12 sin 45 - 12 cos 45 = 0",
        "8.485 + 8.485 = 16.97",
    ],
)
def test_moments_of_components_in_numbers_alone_are_right_though_they_equal_a_sum_of_forces(
    text,
) -> None:
    known = {"C_x": "16.97", "C_y": "0", "B_x": "-8.485", "B_y": "8.485"}
    assert judge(read(SKEWED), M("B"), text, known=known).right
    assert not judge(read(SKEWED), M("B"), "16.97 - 12 sin 45 = 8.485 + 1", known=known).right


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("F_PQ sin 22° + P_y = 0", "rounding"),
        ("F_PQ sin(22) + P_y = 0", "rounding"),
        ("F_PQ sin 21.8° + P_y = 0", ""),
        ("F_PQ sin 21° + P_y = 0", "wrong"),
        ("F_PQ sin 23° + P_y = 0", "wrong"),
        ("F_PQ cos 22° + P_y = 0", "wrong"),
    ],
)
def test_an_angle_rounded_to_whole_degrees_is_right_and_another_is_not(linked, text, said) -> None:
    verdict = judge(linked, Fy("P"), text)
    assert verdict.right == (said != "wrong")
    if verdict.right:
        assert [remark.code for remark in verdict.remarks] == [said][: len(said)]


def test_a_number_in_brackets_at_the_end_of_a_product_is_no_number_of_the_line() -> None:
    quay = load_problem(Path(__file__).parents[1] / "notation/hands/quay.toml")
    verdict = judge(quay, M("A"), r"0 = 8\,C_y - 24\,(4) - 8\,(3) + 12\,(4)")
    assert [(m.code, m.force) for m in verdict.mistakes] == [("turning", "load B")]

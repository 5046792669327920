"""Which mistake does a wrong line show? One truss by hand, a table of lines and what they show.

The truss is a triangle A(0,0) pin, B(4,0) roller, C(4,3), with 12 kN down and 6 kN to the right at C:
slopes 3-4-5, so every coefficient can be read off. By hand: A_x = -6, B_y = 16.5, A_y = -4.5.
"""

from __future__ import annotations

import pytest
from families import down, exact, plain_problem

from tutor.judge import Along, Fx, Fy, M, Value, judge
from tutor.judge.about import as_text, from_text
from tutor.model import Load, Support
from tutor.notation import Exact


@pytest.fixture(scope="module")
def triangle():
    return plain_problem(
        (("A", 0, 0), ("B", 4, 0), ("C", 4, 3)),
        ("AB", "BC", "AC"),
        (Support("A", "pin"), Support("B", "roller")),
        (Load("C", (("down", Exact.of(12)), ("right", Exact.of(6)))),),
    )


RIGHT = [
    (Fx(), "A_x + 6 = 0"),
    (Fx(), "-6 = A_x"),
    (Fx(), "ΣF_x: A_x + 6 kN = 0"),
    (Fy(), "A_y + B_y = 12"),
    (Fy(), "2 Ay + 2 By - 24 = 0"),
    (M("A"), "B_y(4 m) - 12 kN * 4 m - 6 kN * 3 m = 0"),
    (M("A"), "B_y - 12 - 6*3/4 = 0"),
    (M("A"), "-4 B_y + 66 = 0"),
    (M("B"), "4 A_y + 18 = 0"),
    (M("C"), "4 A_y - 3 A_x = 0"),
    (M((4, 3)), "3 A_x = 4 A_y"),
    (Fx("C"), "-4/5 F_AC + 6 = 0"),
    (Fx("C"), "F_AC cos 36.87° = 6"),
    (Fx("C"), "F_AC*4/sqrt(3^2+4^2) = 6"),
    (Fy("C"), "-F_BC - 0.6 F_CA - 12 = 0"),
    (Along(36.86989764584402, "C"), "-F_AC - 0.6 F_BC + 6*0.8 - 12*0.6 = 0"),
]


@pytest.mark.parametrize(("about", "text"), RIGHT)
def test_a_right_line_is_right(triangle, about, text):
    verdict = judge(triangle, about, text)
    assert verdict.right, verdict
    assert verdict.remarks == ()


WRONG = [
    (Fx(), "A_x - 6 = 0", [("sign", "load C x")]),
    (Fy(), "A_y + B_y + 12 = 0", [("sign", "load C y")]),
    (Fy(), "A_y + B_y = 0", [("missing", "load C y")]),
    (Fy(), "B_y = 12", [("missing", "A_y")]),
    (Fx(), "A_x + 6 + B_y = 0", [("extra", "B_y")]),
    (Fx(), "A_x + 6 - 12 = 0", [("extra", "load C y")]),
    (Fy(), "A_y + B_y = 21", [("magnitude", "load C y")]),
    (Fy(), "A_y + B_y = 12000", [("unit", "load C y")]),
    (M("A"), "4 B_y + 48 - 18 = 0", [("turning", "load C y")]),
    (M("A"), "4 B_y - 48 = 0", [("missing", "load C x")]),
    (M("A"), "4 B_y - 48 - 6*4 = 0", [("arm", "load C x")]),
    (M("A"), "4 B_y - 12*5 - 18 = 0", [("arm-from", "load C y")]),
    (M("A"), "B_y - 48 - 18 = 0", [("no-arm", "B_y")]),
    (M("A"), "4 B_y - 12 - 18 = 0", [("no-arm", "load C y")]),
    (M("B"), "4 B_y - 48 - 18 = 0", [("other-point", None)]),
    (Fx(), "A_y + B_y - 12 = 0", [("other-equation", None)]),
    (Fx("C"), "-3/5 F_AC + 6 = 0", [("component", "AC")]),
    (Fx("C"), "-F_AC + 6 = 0", [("whole-force", "AC")]),
    (Fx("C"), "4/5 F_AC + 6 = 0", [("sign", "AC")]),
    (Fy("C"), "F_BC + 3/5 F_AC - 12 = 0", [("pull-push", None)]),
    (Fy("C"), "-F_BC + 3/5 F_AC - 12 = 0", [("sign", "AC")]),
    (Fy("C"), "-F_BC - 4/5 F_AC - 12 = 0", [("component", "AC")]),
    (Fy("C"), "-F_BC - 12 = 0", [("missing", "AC")]),
    (Fx("C"), "-4/5 F_AC - F_BC + 6 = 0", [("extra", "BC")]),
    (Fx("C"), "-F_AC cos(36.87 rad) + 6 = 0", [("angle-mode", "AC")]),
    (Fx("C"), "-F_AC cos(0.6435) + 6 = 0", [("angle-mode", None)]),
    (Fy("C"), "0.8 F_AC - 6 = 0", [("other-equation", None)]),
    (Fx("C"), "-5/4 F_AC + 6 = 0", [("upside-down", "AC")]),
    (Fx("C"), "-(5/3) F_AC + 6 = 0", [("upside-down", "AC")]),
    (Fx("C"), "-F_AC/cos 36.87° + 6 = 0", [("upside-down", "AC")]),
    (Fy("C"), "-F_BC - 5/3 F_AC - 12 = 0", [("upside-down", "AC")]),
    (Fy("C"), "-F_BC - 1.667 F_AC = 12", [("upside-down", "AC")]),
    (Fx("A"), "A_x + F_AB + 5 F_AC/4 = 0", [("upside-down", "AC")]),
    (Fx("A"), "A_x + F_AB - 5/4 F_AC = 0", [("upside-down", "AC"), ("sign", "AC")]),
]


@pytest.mark.parametrize(("about", "text", "expected"), WRONG)
def test_a_wrong_line_shows_its_mistake(triangle, about, text, expected):
    verdict = judge(triangle, about, text)
    assert verdict.kind == "wrong"
    assert [(m.code, m.force) for m in verdict.mistakes] == expected, verdict


@pytest.mark.parametrize("text", ["F_AB + 5/4(7.5) - 6 = 0", "F_AB + 7.5/0.8 - 6 = 0"])
def test_a_ratio_upside_down_beside_an_earlier_value_is_named(triangle, text):
    verdict = judge(triangle, Fx("A"), text, known={"A_x": "-6", "AC": "7.5"})
    assert [(m.code, m.force) for m in verdict.mistakes] == [("upside-down", "AC")]


@pytest.mark.parametrize("text", ["F_AC = 6*4/5", "F_AC = 6 cos 36.87"])
def test_a_result_multiplied_by_its_ratio_is_no_ratio_upside_down(triangle, text):
    verdict = judge(triangle, Fx("C"), text)
    assert [m.code for m in verdict.mistakes] == ["component"]


@pytest.mark.parametrize(
    ("text", "first", "other"),
    [
        ("-F_AB - 4/5 F_AC - 6 = 0", "pull-push", "minus"),
        ("-6 - F_AB = 4/5 F_AC", "pull-push", "minus"),
        ("F_AB + 4/5 F_AC + 6 = 0", "minus", ""),
    ],
)
def test_whether_a_minus_was_lost_or_all_members_reversed_is_told_by_the_signs_as_they_stand(
    triangle, text, first, other
):
    verdict = judge(triangle, Fx("A"), text, known={"A_x": "-6"})
    assert [mistake.code for mistake in verdict.mistakes] == [first]
    assert verdict.others == ((other,) if other else ())


def test_two_slips_in_one_line_are_both_named(triangle):
    verdict = judge(triangle, M("A"), "4 B_y + 48 - 6*4 = 0")
    assert {(m.code, m.force) for m in verdict.mistakes} == {
        ("turning", "load C y"),
        ("arm", "load C x"),
    }


def test_a_line_against_the_students_own_arrow_is_a_sense_mistake(triangle):
    senses = {"A_x": "left"}
    assert judge(triangle, Fx(), "-A_x + 6 = 0", senses=senses).right
    verdict = judge(triangle, Fx(), "A_x + 6 = 0", senses=senses)
    assert [(m.code, m.force) for m in verdict.mistakes] == [("sense", "A_x")]


def test_own_values_may_stand_for_unknowns(triangle):
    known = {"A_x": -6, "AC": "7.5"}
    assert judge(triangle, Fx("A"), "-6 + 0.8(7.5) + F_AB = 0", known=known).right
    assert judge(triangle, Fx("A"), "A_x + 0.8(7.5) + F_AB = 0", known=known).right
    assert not judge(triangle, Fx("A"), "-6 - 0.8(7.5) + F_AB = 0", known=known).right
    verdict = judge(triangle, Fx("A"), "6 + 0.8(7.5) + F_AB = 0", known=known)
    assert [(m.code, m.force) for m in verdict.mistakes] == [("minus", "A_x")]


def test_terms_that_cancel_are_measured_by_what_was_added():
    """34.18(0.9363) - 32 + F = 0 with F = 0: the terms are 32, what is left of them is 0.003."""
    problem = plain_problem(
        (("A", 0, 0), ("B", 8, 0), ("C", 8, 3)),
        ("AB", "BC", "AC"),
        (Support("A", "pin"), Support("B", "roller")),
        (Load("C", (("right", Exact.of(32)),)),),
    )
    assert judge(problem, Fx("C"), "-34.18(0.9363) + 32 = 0", known={"AC": "34.18"}).right


@pytest.mark.parametrize(
    ("text", "senses", "kind", "code"),
    [
        ("7.5", {}, "right", None),
        ("7.5 kN T", {}, "right", None),
        ("7.5 T", {"AC": "C"}, "right", None),
        ("-7.5", {"AC": "C"}, "right", None),
        ("F_CA = 15/2", {}, "right", None),
        ("7500 N (T)", {}, "right", None),
        ("7.5 C", {}, "wrong", "tension-compression"),
        ("-7.5", {}, "wrong", "sign"),
        ("7.5", {"AC": "C"}, "wrong", "sense"),
        ("7500", {}, "wrong", "unit"),
        ("8", {}, "wrong", "rounding"),
        ("6.9", {}, "wrong", "arithmetic"),
        ("-7.5 T", {}, "undecided", None),
        ("7.5 kN*m", {}, "unreadable", None),
    ],
)
def test_a_value_is_judged(triangle, text, senses, kind, code):
    verdict = judge(triangle, Value("AC"), text, senses=senses)
    assert verdict.kind == kind, verdict
    assert [m.code for m in verdict.mistakes] == ([code] if code else [])


def test_a_line_that_adds_nothing_is_right_and_said_to_be_dependent(triangle):
    standing = (Fx(), Fy(), M("A"))
    verdict = judge(triangle, M("C"), "4 A_y = 3 A_x", standing=standing)
    assert verdict.right
    assert [r.code for r in verdict.remarks] == ["dependent"]
    assert judge(triangle, M("C"), "4 A_y = 3 A_x", standing=standing[:2]).remarks == ()


@pytest.mark.parametrize(
    ("factor", "right", "codes"),
    [("0.801", True, []), ("0.80", True, []), ("0.81", False, []), ("0.83", False, [])],
)
def test_a_coefficient_near_the_true_one_is_no_rounding_of_it(triangle, factor, right, codes):
    verdict = judge(triangle, Fx("C"), f"-{factor} F_AC + 6 = 0")
    assert verdict.right is right
    assert [r.code for r in verdict.remarks] == codes


@pytest.mark.parametrize(
    ("factor", "right", "codes"),
    [
        ("0.832", True, []),
        ("0.83", True, []),
        ("0.8", False, []),
        ("0.84", False, []),
        ("0.81", False, []),
    ],
)
def test_a_coarse_decimal_is_right_only_as_the_true_one_rounded_and_within_two_percent(
    factor, right, codes
):
    slope = plain_problem(
        (("A", 0, 0), ("B", 6, 0), ("C", 3, 2)),
        ("AB", "BC", "AC"),
        (Support("A", "pin"), Support("B", "roller")),
        (Load("C", (("down", Exact.of(6)),)),),
    )
    verdict = judge(slope, Fx("A"), f"A_x + F_AB + {factor} F_AC = 0")
    assert verdict.right is right
    assert [r.code for r in verdict.remarks] == codes


def test_a_factor_rounded_to_its_figures_within_two_percent_is_remarked():
    slope = plain_problem(
        (("A", 0, 0), ("B", 4, 0), ("C", 2, 4)),
        ("AB", "BC", "AC"),
        (Support("A", "pin"), Support("B", "roller")),
        (Load("C", (("down", Exact.of(6)),)),),
    )
    verdict = judge(slope, Fx("A"), "A_x + F_AB + 0.45 F_AC = 0")
    assert verdict.right
    assert [r.code for r in verdict.remarks] == ["rounding"]
    assert not judge(slope, Fx("A"), "A_x + F_AB + 0.4 F_AC = 0").right


def test_no_level_below_the_last_tells_a_number(triangle):
    for about, text, _ in WRONG:
        for mistake in judge(triangle, about, text).mistakes:
            for level in (mistake.text, mistake.reason, mistake.place):
                assert not any(c.isdigit() for c in level.replace("0.5 rad", "")), level


@pytest.fixture(scope="module")
def bridge():
    """A parallel-chord truss of three 4 m panels, 3 m high, with 10 kN at each lower inner joint."""
    return plain_problem(
        (
            ("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 12, 0), ("E", 4, 3), ("F", 8, 3),
        ),
        ("AB", "BC", "CD", "AE", "EF", "FD", "BE", "CF", "BF"),
        (Support("A", "pin"), Support("D", "roller")),
        (Load("B", (("down", Exact.of(10)),)), Load("C", (("down", Exact.of(10)),))),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("asked", "text", "about"),
    [
        (Fx("B"), "3 F_EF + 4*10 = 0", M("B", part=("A", "B", "E"))),
        (Fx("D"), "3/5 F_BF + 10 - 10 = 0", Fy(part=("A", "B", "E"))),
        (Fx("B"), "F_EF + F_BC + 4/5 F_BF = 0", Fx(part=("A", "B", "E"))),
    ],
)
def test_a_line_true_of_a_cut_part_is_named_as_that(bridge, asked, text, about):
    verdict = judge(bridge, asked, text, known={"A_x": 0, "A_y": 10, "D_y": 10})
    assert [m.code for m in verdict.mistakes] == ["other-equation"]
    assert (type(verdict.true_of), bool(verdict.true_of.part)) == (type(about), True)
    kept = judge(bridge, verdict.true_of, text, known={"A_x": 0, "A_y": 10, "D_y": 10})
    assert kept.right
    assert from_text(as_text(verdict.true_of)) == verdict.true_of


def test_a_line_that_is_a_sum_of_the_joint_one_is_at_as_well_is_named_as_that(bridge):
    known = {"A_x": 0, "A_y": 10, "D_y": 10}  # BE is 10 as A_y is, and not recorded
    assert judge(bridge, Fx("B"), "3/5 F_BF + 10 - 10 = 0", known=known).true_of == Fy("B")


def test_so_it_is_where_the_sum_asked_for_is_that_of_the_vertical_parts():
    roof = plain_problem(
        (("A", 0, 0), ("B", 3, 0), ("C", 6, 0), ("D", 3, 4)),
        ("AB", "BC", "AD", "CD", "BD"),
        (Support("A", "pin"), Support("C", "roller")),
        (down("D", 6), down("B", 10)),
    )  # CD is -10; at B such a sum is BC - AB
    assert judge(roof, Fy("C"), "-F_BC + 0.6*10 = 0").true_of == Fx("C")


@pytest.mark.parametrize(
    ("unknown", "text", "code"),
    [
        ("B_y", "66", "no-arm"),
        ("B_y", "6", "symmetry"),
        ("AC", "6", "component"),
        ("AC", "10", "component"),
        ("BC", "4.5", "carried"),
        ("BC", "17 C", "rounding"),
    ],
)
def test_a_wrong_value_shows_where_it_comes_from(triangle, unknown, text, code):
    verdict = judge(triangle, Value(unknown), text, known={"A_y": "-4.5"})
    assert [m.code for m in verdict.mistakes] == [code]


def test_terms_that_cannot_be_explained_are_pointed_at(bridge):
    known = {"AE": "-16.667", "AB": "13.333"}
    verdict = judge(bridge, Fx("E"), "F_EF + 5 F_BE + 0.45(16.667) = 0", known=known)
    assert {(m.code, m.force) for m in verdict.mistakes} == {
        ("extra", "BE"),
        ("not-equilibrium", "AE"),
    }


def test_what_fits_is_said_where_the_rest_cannot_be_named(bridge):
    verdict = judge(bridge, Fy(), "A_y + 3 D_y - 4 = 0")
    assert [m.code for m in verdict.mistakes] == ["not-equilibrium", "arithmetic"]
    verdict = judge(bridge, Fx("B"), "-F_AB + F_CD - 3 F_AE + 5 - 17 = 0")
    assert [m.code for m in verdict.mistakes] == ["not-equilibrium"]
    assert "the force in AB" in verdict.mistakes[0].place


@pytest.mark.parametrize("text", ["5 - 5 = 0", "0 = 0", "3 = 3", "2*4 - 8 = 0"])
def test_numbers_that_cancel_say_nothing_of_a_body(bridge, text):
    assert not judge(bridge, Fy(), text, known={"A_y": 10, "D_y": 10}).right
    assert not judge(bridge, Fx(), text, known={"A_x": 0}).right or text == "0 = 0"


def test_loads_that_cancel_need_not_be_written():
    problem = plain_problem(
        (("A", 0, 0), ("R", 4, 0), ("C", 4, 3)),
        ("AR", "RC", "AC"),
        (Support("R", "pin"), Support("A", "roller")),
        (Load("C", (("right", Exact.of(5)),)), Load("A", (("left", Exact.of(5)),))),
    )
    assert judge(problem, Fx(), "R_x = 0").right
    assert judge(problem, Fx(), "R_x + 5 - 5 = 0").right
    assert not judge(problem, Fx(), "R_x + 5 = 0").right
    assert judge(problem, Fx(), "-R_x = 0", senses={"R_x": "left"}).right


def test_a_false_line_is_not_true_by_the_wrong_value_it_gave(triangle):
    """Without the load's horizontal part, ΣM about A gives B_y = 12: false, and so is the line."""
    verdict = judge(triangle, M("A"), "4 B_y - 48 = 0", known={"B_y": 12})
    assert [(m.code, m.force) for m in verdict.mistakes] == [("missing", "load C x")]


@pytest.mark.parametrize(
    ("text", "force"),
    [
        ("A_y*12 - 20*(12-3) - 32*(12-6) = 0", "load D"),
        ("A_y*12 - 20*(12-3) - 20*(12-9) = 0", "load C"),
    ],
)
def test_a_load_left_out_is_named_though_the_arms_stand_as_differences(
    text: str, force: str
) -> None:
    """At first the terms of each bracket, taken one by one, were said to fit nothing."""
    deck = plain_problem(
        [
            ("A", 0, 0),
            ("B", 3, 0),
            ("C", 6, 0),
            ("D", 9, 0),
            ("E", 12, 0),
            ("F", 3, 4),
            ("G", 6, 4),
            ("H", 9, 4),
        ],
        ("AB", "BC", "CD", "DE", "FG", "GH", "AF", "BF", "CF", "CG", "CH", "DH", "EH"),
        [Support("A", "pin"), Support("E", "roller")],
        [down("B", 20), down("C", 32), down("D", 20)],
    )
    verdict = judge(deck, M("E"), text)
    assert [(m.code, m.force) for m in verdict.mistakes] == [("missing", force)]


@pytest.mark.parametrize(
    ("about", "text"),
    [
        (M("B"), "-6 A_y + 10*3 = 0"),
        (M("B"), "-6 A_y - 10*4 = 0"),
        (M("A"), "6 B_y - 10*3 = 0"),
        (M("A"), "6 B_y = 10*4"),
    ],
)
def test_an_inclined_load_taken_for_an_upright_or_a_level_one_turns_as_that_would(about, text):
    members = ("AB", "AC", "BC")
    problem = plain_problem(
        [("A", 0, 0), ("B", 6, 0), ("C", 3, 4)],
        members,
        [Support("A", "pin"), Support("B", "roller")],
        [Load("C", size=exact(10), angle=exact(330))],
    )
    (mistake,) = judge(problem, about, text).mistakes
    assert (mistake.code, mistake.force) == ("whole-force", "load C")
    assert "arm of one of its components" in mistake.text

"""Is a line that is solved for its force explained by the sum it was solved from, and a cut part by itself?

The truss is our own, in kN and m. By hand: ΣM_A: 9 D_y = 15*3 + 24*6 + 9*4 = 225, D_y = 25; A_y = 14,
A_x = -9; at the cut through BC, BF and EF: ΣM_B: 14*3 + 9*4 + 4 EF = 0, EF = -19.5; ΣFy: BF = 1.25.
What is said of each line is what a lecturer would say first, common practice, no source.
"""

from __future__ import annotations

import pytest
from families import exact, plain_problem

from tutor.judge import Equation, Fx, Fy, M, Value, judge
from tutor.model import Load, Problem, Support

KNOWN = {"A_x": "-9", "A_y": "14", "D_y": "25"}
LEFT, RIGHT = ("A", "B", "E"), ("C", "D", "F")
SLIP: Problem = plain_problem(
    [("A", 0, 0), ("B", 3, 0), ("C", 6, 0), ("D", 9, 0), ("E", 3, 4), ("F", 6, 4)],
    ("AB", "BC", "CD", "AE", "BE", "BF", "EF", "CF", "DF"),
    [Support("A", "pin"), Support("D", "roller")],
    [
        Load("B", (("down", exact(15)),)),
        Load("C", (("down", exact(24)),)),
        Load("E", (("right", exact(9)),)),
    ],
)


def named(about: Equation, text: str) -> list[tuple[str, str | None]]:
    return [(m.code, m.force) for m in judge(SLIP, about, text, known=KNOWN).mistakes]


@pytest.mark.parametrize("divided", ["/5", "/6"])
@pytest.mark.parametrize("end", ["", " = {value:.4g}"])
def test_a_sum_of_moments_divided_by_a_wrong_arm_is_told_by_that_arm(
    divided: str, end: str
) -> None:
    text = f"F_EF = -(14*3 + 9*4){divided}{end.format(value=-78 / float(divided[1:]))}"
    assert named(M("B", part=LEFT), text) == [("arm", "EF")]


def test_a_wrong_arm_above_the_line_is_told_whatever_stands_below_it() -> None:
    """The 4 below the line is the arm of EF, and not that of the load beside it."""
    found = named(M("B", part=LEFT), "F_EF = -(14*3 + 9*3)/4 = -17.25")
    assert found[0][1] == "load E"
    assert found[0][0] in ("arm", "arm-from")


@pytest.mark.parametrize(
    ("about", "text", "said"),
    [
        (Fy(part=LEFT), "14 - 15 - 24 + 4/5 F_BF = 0", ("stray-load", "load C")),
        (M("B", part=LEFT), "-14*3 - 9*4 - 24*3 - 4 F_EF = 0", ("stray-load", "load C")),
        (Fy(part=RIGHT), "25 - 24 - 15 - 4/5 F_BF = 0", ("stray-load", "load B")),
        (Fy(part=LEFT), "14 - 15 + D_y + 4/5 F_BF = 0", ("stray-reaction", "D_y")),
        (Fx(part=RIGHT), "A_x - F_BC - 3/5 F_BF - F_EF = 0", ("stray-reaction", "A_x")),
    ],
)
def test_what_acts_on_the_other_part_is_told_to_do_so(
    about: Equation, text: str, said: tuple[str, str]
) -> None:
    verdict = judge(SLIP, about, text, known=KNOWN)
    assert [(m.code, m.force) for m in verdict.mistakes] == [said]
    mistake = verdict.mistakes[0]
    assert "on the part with" in mistake.text
    assert "the members that are cut" in mistake.reason
    assert "on the other part" in mistake.place


def test_a_component_typed_times_two_is_counted_twice() -> None:
    assert named(Fy("B"), "F_BE + 4/5 F_BF - 2*15 = 0") == [("double", "load B")]
    chute = plain_problem(
        [("A", 0, 0), ("B", 8, 0), ("C", 16, 0), ("D", 8, 6)],
        ("AB", "BC", "AD", "BD", "CD"),
        [Support("A", "pin"), Support("C", "roller")],
        [Load("D", size=exact(500), angle=exact(300))],
    )
    text = "-0.6 F_AD - 0.6 F_CD - F_BD - 2*433 = 0"
    found = judge(chute, Fy("D"), text).mistakes
    assert [(m.code, m.force) for m in found] == [("double", "load D")]


@pytest.mark.parametrize(
    ("about", "text", "said"),
    [
        (Fy("D"), "0.8 F_DF + 0.6 F_DF + 25 = 0", [("double", "DF")]),
        (Fy("B"), "F_BE + 0.8 F_BF + 0.6 F_BF - 15 = 0", [("double", "BF")]),
        (Fx("E"), "-F_AE - 0.6 F_AE + F_EF + 9 = 0", [("double", "AE")]),
        (Fx(), "A_x + 0.75 A_x + 9 = 0", [("double", "A_x")]),
        (Fy("C"), "F_CF + F_CF - 18 = 0", [("double", "CF"), ("magnitude", "load C")]),
    ],
)
def test_a_force_with_a_right_term_and_another_one_is_counted_twice(
    about: Equation, text: str, said: list[tuple[str, str]]
) -> None:
    assert named(about, text) == said


@pytest.mark.parametrize(
    "text", ["A_x + F_AB + F_AE = 0", "1 A_x + 1 F_AB + 1 F_AE = 0", "A_x + F_AB + 1 F_AE = 0"]
)
def test_no_force_that_stands_whole_is_rounded(text: str) -> None:
    """AE of this flat truss counts with 12/13 of it in ΣFx, which is one to one figure."""
    flat = plain_problem(
        [("A", 0, 0), ("B", 12, 0), ("C", 24, 0), ("E", 12, 5)],
        ("AB", "BC", "AE", "BE", "CE"),
        [Support("A", "pin"), Support("C", "roller")],
        [Load("B", (("down", exact(15)),))],
    )
    found = judge(flat, Fx("A"), text).mistakes
    assert [(m.code, m.force) for m in found] == [("whole-force", "AE")]


def test_an_own_result_of_another_force_with_the_right_factor_is_that_before_a_wrong_component() -> (
    None
):
    """3/5 of 20 is 4/5 of 15: what is typed says which."""
    found = judge(SLIP, Fx("E"), "F_EF + 3/5(20) + 9 = 0", known={"AE": "-15", "BE": "20"}).mistakes
    assert [(m.code, m.force) for m in found] == [("carried", "AE")]


def test_a_tenth_of_a_line_is_known_by_what_it_would_be_at_a_scale_near_to_one() -> None:
    found = named(Fx("F"), "-0.2 F_EF - 0.08 F_BF + 0.06 F_DF = 0")
    assert found == [("double", "EF"), ("component", "BF")]


CHUTE = plain_problem(
    [("A", 0, 0), ("B", 800, 0), ("C", 1600, 0), ("D", 800, 600)],
    ("AB", "BC", "AD", "BD", "CD"),
    [Support("A", "pin"), Support("C", "roller", exact(120))],
    [Load("B", (("down", exact(700)),)), Load("D", size=exact(500), angle=exact(300))],
    force="N",
    length="mm",
)
"""ΣM_A: 1600 sin 60° R_C = 700*800 + 433*800 + 250*600 = 1056410, R_C = 762.4 N."""


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("R_C sin 60 (1.6) = 0.7(0.8) + 0.433(0.8) + 0.25(0.6)", "unit"),
        ("0.866 R_C (1.6) - 0.7(0.8) - 0.433(0.8) - 0.25(0.6) = 0", "unit"),
        ("R_C sin 60 (1.6) = 700(800) + 433(800) + 250(600)", "arm-unit"),
    ],
)
def test_a_sum_in_kilonewtons_and_metres_is_told_by_its_units(text: str, code: str) -> None:
    """Where the problem counts in newtons and millimetres; its arms alone may be in metres throughout."""
    verdict = judge(CHUTE, M("A"), text)
    assert [mistake.code for mistake in verdict.mistakes] == [code]
    assert judge(CHUTE, M("A"), "R_C sin 60 (1.6) = 700(0.8) + 433(0.8) + 250(0.6)").right


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("R_C sin 60 (1.6 m) = 700(800) + 433(800) + 250(600)", "where a distance in m counts"),
        ("R_C sin 60 (1600) = 700(800) + 433(800) + 250(600)", "not the unit they are read in"),
    ],
)
def test_a_value_off_by_a_distance_in_another_unit_is_told_by_that_distance(
    line: str, said: str
) -> None:
    verdict = judge(CHUTE, Value("R_C"), "762400", lines=[line])
    assert [mistake.code for mistake in verdict.mistakes] == ["unit"]
    assert said in verdict.text
    assert judge(CHUTE, Value("R_C"), "762.4", lines=[line]).right


def test_the_height_of_the_line_of_action_of_an_inclined_force_is_no_arm_of_it_and_not_rounded() -> (
    None
):
    """U1U2 rises 1 for 3; it passes 4 m above L2, and its arm is 4*3/√10 = 3.795 m."""
    places = {"L0": (0, 0), "L1": (3, 0), "L2": (6, 0), "L3": (9, 0), "L4": (12, 0)}
    places |= {"U1": (3, 3), "U2": (6, 4), "U3": (9, 3)}
    members = "L0-L1 L1-L2 L2-L3 L3-L4 L0-U1 U1-L1 U1-U2 U1-L2 U2-L2 U2-U3 U3-L2 U3-L3 U3-L4"
    roof = plain_problem(
        [(name, *at) for name, at in places.items()],
        tuple(members.split()),
        [Support("L0", "pin"), Support("L4", "roller")],
        [
            Load(joint, (("down", exact(size)),))
            for joint, size in (("U1", 20), ("L2", 60), ("U3", 20))
        ],
    )
    text = "50(6) - 20(3) + 4 F_U1U2 = 0"
    found = judge(roof, M("L2", part=("L0", "L1", "U1")), text, known={"L0_y": "50"}).mistakes
    assert [(m.code, m.force) for m in found] == [("arm", "U1-U2")]


@pytest.mark.parametrize(
    ("about", "text"),
    [
        (M("A"), "9D_y - 15*3 - 24*6 - 9*4 = 0, D_y = (45 + 134 + 36)/9 = 23.9"),
        (M("A"), "15*3 + 24*6 + 9*4 = 9D_y, D_y = (45 + 144 + 63)/9 = 28"),
        (M("D"), "9A_y - 15*6 - 24*3 + 9*4 = 0, A_y = (90 + 72 - 26)/9 = 15.1"),
        (Fx("A"), "-9 + 3/5(-17.5) + AB = 0, AB = 9 + 11.5 = 20.5"),
        (Fx("A"), "-9 + 3/5(-17.5) + AB = 0, AB = -(-9 - 9.5) = 18.5"),
        (Fx("E"), "9 + 0.6*17.5 + EF = 0, EF = -9 - 12.5 = -21.5"),
    ],
)
def test_a_product_worked_out_wrongly_behind_its_sum_is_no_number_copied_wrongly(
    about: Equation, text: str
) -> None:
    known = {"A_x": "-9", "AE": "-17.5"}
    verdict = judge(SLIP, about, text, known=known)
    assert [mistake.code for mistake in verdict.mistakes] == ["arithmetic"]
    assert verdict.stands


def test_a_number_that_the_sum_had_otherwise_is_still_one_copied_wrongly() -> None:
    known = {"A_x": "-9", "AE": "-17.5"}
    verdict = judge(
        SLIP, Fx("A"), "-9 + 3/5(-17.5) + AB = 0, AB = 9 + 3/5(15.7) = 18.42", known=known
    )
    assert [(m.code, m.force) for m in verdict.mistakes] == [("carried", "AE")]


def test_what_follows_from_a_line_of_numbers_follows_to_the_numbers_in_it() -> None:
    """Values given as floats are not written to any figure; those of a line are."""
    known = {"A_x": -9.0, "AE": -17.5}
    for end, right in (("19.5", True), ("19.45", True), ("19.29", False)):
        text = f"-9 + 3/5(-17.5) + AB = 0, AB = {end}"
        assert judge(SLIP, Fx("A"), text, known=known).right == right

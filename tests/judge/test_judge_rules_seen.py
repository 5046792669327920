"""Does each small rule of the search show in a line: which arm, which load, which unit?

The trusses are our own; what is said of each line is what a lecturer would say, common practice, no
source.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from corpus import wrong_line
from families import exact, plain_problem
from paper.measure import problem

from tutor.judge import Along, Equation, Fx, Fy, M, Mistake, Value, judge
from tutor.judge.about import equation_of
from tutor.judge.headings import sum_along
from tutor.judge.known_values import KnownValues
from tutor.judge.mistakes import KINDS
from tutor.judge.ties import told_with
from tutor.judge.true_equation import TrueEquation
from tutor.judge.written import number_written
from tutor.model import Load, Support


def pushed(joint: str, **sizes: int) -> Load:
    ways: Any = sizes
    return Load(joint, tuple((way, exact(size)) for way, size in ways.items()))


MAST = plain_problem(
    [("A", 0, 0), ("B", 4, 0), ("C", 5, 6), ("D", 0, 2)],
    ("AB", "BC", "AD", "BD", "CD"),
    [Support("A", "pin"), Support("B", "roller")],
    [pushed("C", right=10, down=8)],
)


ROOF = plain_problem(
    [("A", 0, 0), ("B", 12, 0), ("C", 6, 8)],
    ("AB", "AC", "BC"),
    [Support("A", "pin"), Support("B", "roller")],
    [pushed("C", down=10)],
)


def named(problem, about, text: str, **more) -> list[tuple[str, str | None]]:
    return [(m.code, m.force) for m in judge(problem, about, text, **more).mistakes]


def test_the_arm_of_a_level_load_may_be_measured_from_a_joint_on_the_way() -> None:
    assert named(MAST, M("A"), "4 B_y - 10*4 - 8*5 = 0") == [("arm-from", "load C x")]


@pytest.mark.parametrize(
    "beside", ["0.5 F_AC + 0.5 F_AC", "3/5 F_AC + 2/5 F_AC", "1.8 F_AC - 0.8 F_AC"]
)
def test_a_force_in_two_terms_was_not_taken_whole(beside: str) -> None:
    assert named(ROOF, Fy("A"), f"A_y + {beside} = 0") == [("not-equilibrium", "AC")]
    assert named(ROOF, Fy("A"), "A_y + F_AC = 0") == [("whole-force", "AC")]


@pytest.mark.parametrize(
    ("about", "text"), [(Fy("A"), "A_y + 4 F_AC = 0"), (Fx("A"), "F_AB + 3 F_AC = 0")]
)
def test_a_side_of_the_smallest_slope_triangle_in_whole_numbers_is_a_side(about, text: str) -> None:
    assert named(ROOF, about, text, known={"A_x": "0"}) == [("side", "AC")]


def test_centimetres_beside_metres_are_another_unit() -> None:
    text = "12 L4_y - 14*300 - 18*6 - 6*4 = 0"
    assert named(problem("siding"), M("L0"), text) == [("arm-unit", "load L1")]


def test_an_inclined_force_may_be_mirrored_in_a_sum_along_a_slope() -> None:
    text = "-.9196 F_AD - .866 F_BD - .9196 F_CD + 2 - 5.196 = 0"
    found = named(problem("hopper"), Along(60, joint="D"), text)
    assert found == [("reflected", "CD")]


def test_of_two_loads_elsewhere_the_one_that_acts_so_is_meant() -> None:
    loads = [pushed("D", up=9), pushed("B", down=9)]
    other = plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 4, 3)],
        ("AB", "BC", "AD", "BD", "CD"),
        [Support("A", "pin"), Support("C", "roller")],
        loads,
    )
    assert named(other, Fy("A"), "A_y + 3/5 F_AD - 9 = 0") == [("stray-load", "load B")]
    assert named(other, Fy("A"), "A_y + 3/5 F_AD + 9 = 0") == [("stray-load", "load D")]


def test_a_force_that_stands_whole_has_no_angle_to_be_taken_in_radians() -> None:
    true = TrueEquation(problem("rack"), Fx("A"), KnownValues({}, {}))
    variants = KINDS["angle-mode"].variants
    assert variants is not None
    assert list(variants(true.unknowns["AB"])) == []
    assert list(variants(true.unknowns["AE"]))


def test_a_value_with_its_figures_in_a_unit_of_another_country_is_told_by_its_unit() -> None:
    truss = plain_problem(
        [("A", 0, 0), ("B", 8, 0), ("C", 4, 3)],
        ("AB", "BC", "AC"),
        [Support("A", "pin"), Support("B", "roller")],
        [pushed("C", down=48)],
    )
    known, lines = {"A_y": 24, "B_y": 24, "A_x": 0}, ("24 + 0.6 AC = 0",)
    said = judge(truss, Value("AC"), "AC = -40 kip", known=known, lines=lines)
    assert [mistake.code for mistake in said.mistakes] == ["unit"]
    again = judge(truss, Value("AC"), "AC = -41.5 kip", known=known, lines=lines)
    assert [mistake.code for mistake in again.mistakes] == ["arithmetic"]


def test_arms_measured_along_the_rafter_all_through_are_one_mistake() -> None:
    """The rafters rise 3 for 4 across: 5, 10 and 15 along the slope for 4, 8 and 12."""
    gable = plain_problem(
        [("A", 0, 0), ("B", 4, 3), ("C", 8, 6), ("D", 12, 3), ("E", 16, 0), ("F", 8, 0)],
        ("AB", "BC", "CD", "DE", "AF", "EF", "BF", "DF", "CF"),
        [Support("A", "pin"), Support("E", "roller")],
        [pushed("B", down=6), pushed("C", down=8), pushed("D", down=6)],
    )
    said = judge(gable, M("A"), "16 E_y = 6(5) + 8(10) + 6(15)")
    assert [(mistake.code, mistake.force) for mistake in said.mistakes] == [("arm", None)]


def test_a_direction_typed_in_rounded_degrees_is_that_of_the_member_it_leaves_out() -> None:
    verdict = judge(
        problem("pratt"), Along(112.61986, joint="F"), "F_BF + 6 = 0", known={"AF": "-31.2"}
    )
    assert (verdict.right, verdict.remarks) == (True, ())


def test_a_load_turned_round_beside_one_open_member_is_no_matter_of_the_members_arrows() -> None:
    found = named(problem("ktruss"), Fy("F"), "-F_EF - 9 + 6 = 0", known={"FG": "15"})
    assert found == [("sign", "load F")]


def test_a_line_times_two_is_known_also_where_its_one_open_force_is_wrong() -> None:
    wrong = wrong_line(437)
    assert wrong is not None
    assert "12(2)" in wrong.text
    known = {"senses": wrong.senses, "known": wrong.known}
    assert set(named(wrong.problem, wrong.about, wrong.text, **known)) == wrong.made


def test_a_reaction_that_is_nothing_is_a_value_that_the_lines_give_as_any_other() -> None:
    beam = plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 4, 3)],
        ("AB", "BC", "AD", "BD", "CD"),
        [Support("A", "pin"), Support("C", "roller")],
        [pushed("C", down=6)],
    )
    verdict = judge(beam, M("D"), "A_y = 0", standing=[M("A"), Fy()])
    assert verdict.right
    assert [remark.code for remark in verdict.remarks] == ["result"]


def test_of_a_product_of_which_nothing_is_given_it_is_said_that_a_number_is_not_the_given_one() -> (
    None
):
    text = "15by-7*8-4*2-10*7.5-6*11.25=0"
    assert named(problem("hall"), M("A"), text) == [("magnitude", "load D y")]


def test_three_level_forces_in_the_vertical_sum_are_each_too_many() -> None:
    truss = plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 2, 3), ("D", 2, 0)],
        ("AD", "DB", "AC", "BC", "CD"),
        [Support("A", "pin"), Support("B", "roller")],
        [pushed("D", down=12, right=4), pushed("C", down=6)],
    )
    found = named(truss, Fy("D"), "CD - 12 + 9 - 5 + 4 = 0", known={"AD": 5, "DB": 9})
    assert sorted(found) == [("extra", "AD"), ("extra", "DB"), ("extra", "load D x")]


def test_three_mistakes_of_a_line_are_told_without_other_accounts_of_it() -> None:
    """More than that cannot be taken in; of two the best other account is told beside them."""
    three = tuple(Mistake("sign", force, force, force, force) for force in ("AB", "BC", "CD"))
    other = ((Mistake("slope", "AD", "x", "y", "z"),),)
    assert told_with(three, other) == three
    assert told_with(three[:2], other) != three[:2]


def test_a_heading_of_another_sum_is_remarked_on_with_the_sum_that_was_written() -> None:
    verdict = judge(problem("coaling"), Fx("D"), "ΣFy: -0.8 F_AD + 0.8 F_DE - F_BD = 0")
    (remark,) = verdict.remarks
    said = "What you wrote is ΣFx at joint D, though its heading says otherwise."
    assert (verdict.right, remark.code, remark.text) == (True, "heading", said)


@pytest.mark.parametrize("heading", ["Joint B:", "(B, →)", "B, ΣFx:", "Joint B →:"])
def test_a_heading_of_another_joint_is_remarked_on(heading: str) -> None:
    line = "{} -0.8 F_AD + 0.8 F_DE - F_BD = 0"
    verdict = judge(problem("coaling"), Fx("D"), line.format(heading))
    (remark,) = verdict.remarks
    said = "What you wrote is ΣFx at joint D, though its heading says otherwise."
    assert (verdict.right, remark.code, remark.text) == (True, "heading", said)
    own = judge(problem("coaling"), Fx("D"), line.format(heading.replace("B", "D")))
    assert own.right
    assert not own.remarks


def test_a_force_from_elsewhere_with_a_factor_that_makes_it_fit_is_not_right() -> None:
    """0.4 of A_x is as much as 0.6 of AD, but A_x does not act at D."""
    known = {"AD": -30, "CD": 6, "DE": 20, "BD": 40, "A_x": 45}
    right = judge(problem("coaling"), Fy("D"), "0.6*30 - 6 - 0.6*20 = 0", known=known)
    wrong = judge(problem("coaling"), Fy("D"), "0.4*45 - 6 - 0.6*20 = 0", known=known)
    assert (right.kind, wrong.kind) == ("right", "wrong")


def test_a_reaction_put_in_may_be_as_large_as_a_load_through_the_moment_point() -> None:
    """B_y is 10, as the load at A is, which has no moment about A: 10*8 is about B_y."""
    truss = plain_problem(
        [("A", 0, 0), ("B", 8, 0), ("C", 5, 3), ("D", 4, -2)],
        ("AB", "BC", "AC", "AD", "BD"),
        [Support("A", "pin"), Support("B", "roller")],
        [pushed("A", down=10), pushed("C", down=12), pushed("D", down=5)],
    )
    assert named(truss, M("A"), "10*8 - 12*5 + 5*4 = 0") == [("turning", "load D")]
    assert named(truss, M("A"), "10*8 - 12*3 - 5*4 = 0") == [("arm", "load C")]


def test_an_arm_may_be_measured_from_the_moment_point_to_another_joint() -> None:
    """9 is how far B lies from D, and the load acts at C."""
    truss = plain_problem(
        [("A", 0, 0), ("B", 3, 0), ("C", 8, 0), ("D", 12, 0), ("E", 3, 4), ("F", 8, 4)],
        ("AB", "BC", "CD", "AE", "BE", "CE", "CF", "EF", "DF"),
        [Support("A", "pin"), Support("D", "roller")],
        [pushed("C", down=20)],
    )
    assert named(truss, M("D"), "12 A_y = 20*9") == [("arm-from", "load C")]


def test_what_rounding_leaves_of_no_force_is_nothing_beside_a_large_load() -> None:
    truss = plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 4, 3)],
        ("AB", "BC", "AD", "BD", "CD"),
        [Support("A", "pin"), Support("C", "roller")],
        [pushed("D", down=6000)],
    )
    assert judge(truss, Value("BD"), "2").right
    assert named(truss, Value("BD"), "4") == [("arithmetic", "BD")]


def test_a_number_a_percent_from_its_quotient_of_integers_does_not_follow() -> None:
    verdict = judge(problem("rack"), Value("C_y"), "C_y = 432000/600 = 727.5", known={"A_x": -120})
    assert verdict.text == "The first part is right, but 727.5 is not 432000/600."
    assert judge(problem("rack"), Value("C_y"), "C_y = 432000/600 = 720").right


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("7*4 + 5*2 - 8.66*4 = 6 B_y", "turning"),
        ("7*4 + 5*3 + 8.66*4 = 6 B_y", "arm"),
        ("7*4 + 5*4 + 8.66*2 = 6 B_y", "component-in-moment"),
        ("28 + 5*2 + 9.66*4 - 6 B_y = 0", "magnitude"),
    ],
)
def test_a_slip_at_one_component_is_named_also_with_the_loads_on_the_left(
    text: str, code: str
) -> None:
    """The load at C is 10 kN down to the right at 30°: 8.66 across and 5 down."""
    truss = plain_problem(
        [("A", 0, 0), ("B", 6, 0), ("C", 2, 4), ("D", 4, 4)],
        ("AB", "BC", "AC", "CD", "BD"),
        [Support("A", "pin"), Support("B", "roller")],
        [Load("C", size=exact(10), angle=exact(330)), pushed("D", down=7)],
    )
    assert named(truss, M("A"), text) == [(code, "load C")]


def test_a_sum_of_a_truss_is_made_once_and_never_that_of_another_alike() -> None:
    truss = problem("rack")
    assert equation_of(truss, Fx()) is equation_of(truss, Fx())
    assert equation_of(truss, Fx()) is not equation_of(replace(truss), Fx())


def test_an_angle_from_the_vertical_is_known_in_a_sum_along_a_slope() -> None:
    """CD goes 4 across and 3 down: taken 3 across and 4 down it has 0.3928 along 60° for 0.1196."""
    text = "-.9196 F_AD - .866 F_BD - .3928 F_CD + 2 - 5.196 = 0"
    assert named(problem("hopper"), Along(60, joint="D"), text) == [("complement", "CD")]


def test_in_a_line_times_two_the_force_left_out_is_named() -> None:
    wrong = wrong_line(377)
    assert wrong is not None
    assert wrong.text == "-2*31/4 =0"
    known = {"senses": wrong.senses, "known": wrong.known}
    assert named(wrong.problem, wrong.about, wrong.text, **known) == [("missing", "FB")]


@pytest.mark.parametrize(("value", "shown"), [(11 / 60, "11/60"), (11 / 61, "0.18033")])
def test_a_true_line_has_fractions_up_to_sixtieths_and_decimals_beyond(
    value: float, shown: str
) -> None:
    assert number_written(value) == shown


def test_a_ratio_where_an_arm_belongs_is_no_slope_taken_by_heart() -> None:
    """The load at C is 10 kN down to the right at 30°, and 0.6 is neither of its ratios."""
    truss = plain_problem(
        [("A", 0, 0), ("B", 6, 0), ("C", 2, 4)],
        ("AB", "BC", "AC"),
        [Support("A", "pin"), Support("B", "roller")],
        [Load("C", size=exact(10), angle=exact(330))],
    )
    assert named(truss, M("A"), "6 B_y - 10*0.6 = 0") == [("arm", "load C")]


def test_a_number_that_stands_there_twice_is_not_once_the_sum_of_both() -> None:
    truss = plain_problem(
        [("A", 0, 0), ("B", 6, 0), ("C", 3, 4)],
        ("AB", "BC", "AC"),
        [Support("A", "pin"), Support("B", "roller")],
        [Load(j, (("down", exact(size)),)) for j, size in (("A", 6), ("B", 6), ("C", 18))],
    )
    found = named(truss, Fy(), "A_y + B_y = 12 + 18 + 12")
    assert {code for code, _ in found} <= {"magnitude", "double"}
    assert {force for _, force in found} == {"load A", "load B"}


def test_arms_that_all_run_from_another_joint_are_one_mistake() -> None:
    """From A both loads are 4 m out; that 4 m is also how high C lies above D says nothing."""
    truss = plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 4, 4), ("D", 11, 0)],
        ("AB", "AC", "BC", "BD", "CD"),
        [Support("A", "pin"), Support("D", "roller")],
        [Load(j, (("down", exact(size)),)) for j, size in (("C", 300), ("B", 200))],
    )
    found = named(truss, M("D"), "-11 A_y + 300*4 + 200*4 = 0")
    assert sorted(found) == [("arm-from", "load B"), ("arm-from", "load C")]


def test_a_result_found_under_a_turned_arrow_is_told_by_that_arrow() -> None:
    truss = plain_problem(
        [("A", 0, 0), ("B", 6, 0), ("C", 3, 4)],
        ("AB", "BC", "AC"),
        [Support("A", "pin"), Support("B", "roller")],
        [Load("C", (("down", exact(24)),))],
    )
    known = {"AC": "15"}
    verdict = judge(truss, Fy("A"), "A_y + 0.8(15) = 0", known=known, senses={"AC": "C"})
    (mistake,) = verdict.mistakes
    assert (mistake.code, mistake.force) == ("sense", "AC")


def test_a_number_beside_a_force_without_a_part_is_a_term_too_many_whatever_number_it_is() -> None:
    """BE stands upright at B; 0.448 is what a calculator set to radians says of 90."""
    found = named(problem("rack"), Fx("B"), "-F_AB + F_BC - 0.448 F_BE = 0")
    assert found == [("extra", "BE")]


def test_a_value_found_may_be_added_to_a_line_that_stands_but_no_letter_behind_the_sum() -> None:
    """The vertical sum at D and CD = 6; a sum of three forces is not in tension."""
    more = {"standing": [Fx("D"), Fy("D")], "known": {"CD": "6"}}
    text = "0.6 F_AD + 2 F_CD + 0.6 F_DE = 6"
    assert judge(problem("coaling"), Fx("D"), text, **more).right
    assert judge(problem("coaling"), Fx("D"), f"{text} T", **more).kind == "wrong"


DECK = plain_problem(
    [(name, 3 * place, 0) for place, name in enumerate("ABCDE")]
    + [(name, 3 * place, 4) for place, name in enumerate("FGH", start=1)],
    ("AB", "BC", "CD", "DE", "AF", "FG", "GH", "EH", "BF", "CG", "DH", "CF", "CH"),
    [Support("A", "pin"), Support("E", "roller")],
    [pushed("B", down=7), pushed("C", down=10), pushed("D", down=4), pushed("G", down=5)],
)


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("12 E_y = 15*6 + 4*3 + 7*6", [("arm-from", "load B"), ("arm-from", "load D")]),
        ("12 E_y = 15*6 - 4*9", [("missing", "load B"), ("turning", "load D")]),
    ],
)
def test_two_slips_beside_two_loads_that_were_taken_together_are_both_named(
    text: str, found: list[tuple[str, str]]
) -> None:
    """The loads at C and G lie one above the other: 15*6 is both."""
    assert sorted(named(DECK, M("A"), text)) == found


@pytest.mark.parametrize(
    ("text", "degrees"),
    [
        ("F_DE - 0.28 F_AD - 0.8 F_BD + 0.6 F_CD = 0", 143.13),
        ("F_AD - 0.28 F_DE + 0.8 F_BD + 0.6 F_CD = 0", 36.87),
        ("0.96 F_AD + 0.6 F_BD + 0.8 F_CD = 0", 53.13),
        ("0.96 F_DE - 0.6 F_BD + 0.8 F_CD = 0", 126.87),
    ],
)
def test_a_sum_along_a_slope_is_one_equation_whichever_way_along_it(
    text: str, degrees: float
) -> None:
    """Both members leave D downwards: the direction told lies in the upper half all the same."""
    told = judge(problem("coaling"), Fx("D"), text).true_of
    assert isinstance(told, Along)
    assert told.degrees == pytest.approx(degrees, abs=0.01)


@pytest.mark.parametrize("arm", [4, 6])
@pytest.mark.parametrize("sign", ["+", "-"])
def test_a_load_right_above_the_moment_point_has_no_arm_to_be_mistaken(arm: int, sign: str) -> None:
    truss = plain_problem(
        [("A", 0, 0), ("B", 6, 0), ("C", 0, 4), ("D", 6, 4)],
        ("AB", "AC", "CD", "BD", "BC"),
        [Support("A", "pin"), Support("B", "roller")],
        [pushed("C", down=7), pushed("D", down=10)],
    )
    assert named(truss, M("A"), f"6 B_y - 60 {sign} {7 * arm} = 0") == [("extra", "load C")]


def test_the_result_of_another_member_with_the_right_factor_is_one_mistake() -> None:
    """BC is -33.33; 42.67 was found for AC."""
    truss = plain_problem(
        [("A", 0, 3), ("B", 0, 0), ("C", 4, 3), ("D", 4, 0), ("E", 8, 3)],
        ("AB", "AC", "CE", "BD", "DE", "CD", "BC"),
        [Support("A", "pin"), Support("B", "roller", exact(0))],
        [pushed("E", down=12), pushed("D", down=8)],
    )
    known = {"AC": "42.67", "BC": "-33.33"}
    assert named(truss, Fy("B"), "F_AB + 0.6*42.67 = 0", known=known) == [("carried", "BC")]


@pytest.mark.parametrize("sign", ["+", "-"])
def test_a_load_elsewhere_that_goes_along_the_sum_is_meant_before_one_that_goes_across(
    sign: str,
) -> None:
    truss = plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 4, 3)],
        ("AB", "BC", "AD", "BD", "CD"),
        [Support("A", "pin"), Support("C", "roller")],
        [pushed("D", right=8), pushed("B", down=8)],
    )
    found = named(truss, Fy("A"), f"A_y + 3/5 F_AD {sign} 8 = 0")
    assert found == [("stray-load", "load B")]


@pytest.mark.parametrize(
    ("about", "text", "told"),
    [
        (
            Fy(),
            "A_y + C_y - 560 - 240 + 0.8 F_AE = 0",
            "does not enter the whole truss from outside",
        ),
        (Fy("B"), "F_BE - 560 + F_CF = 0", "does not act on joint B: see where it ends"),
        (Fx("B"), "-F_AB + F_BC + F_BE = 0", "does any of it go the way this sum goes?"),
        (
            M("A"),
            "600 C_y - 300*560 - 900*240 - 400*120 + 300 A_x = 0",
            "see where its line of action passes",
        ),
        (
            M("A"),
            "600 C_y - 300*560 - 900*240 - 400*120 + 300 F_BE = 0",
            "does not enter the whole truss from outside",
        ),
    ],
)
def test_of_a_term_too_many_it_is_said_why_it_has_no_place(about, text: str, told: str) -> None:
    (mistake,) = judge(problem("rack"), about, text).mistakes
    assert mistake.code == "extra"
    assert told in mistake.place


SLOPING = plain_problem(
    [("A", 0, 0), ("B", 6, 0), ("C", 2, 4)],
    ("AB", "BC", "AC"),
    [Support("A", "pin"), Support("B", "roller", angle=exact(120))],
    [pushed("C", right=5, down=12), pushed("B", down=7)],
)


def test_a_ratio_may_stand_upside_down_beside_an_arm() -> None:
    text = "6 R_B/sin60 - 5*4 - 12*2 - 7*6 = 0"
    assert named(SLOPING, M("A"), text) == [("upside-down", "R_B")]


def test_the_resultant_of_a_load_given_by_components_is_that_load_whole() -> None:
    assert named(SLOPING, Fy(), "A_y + R_B sin60 - 13 - 7 = 0") == [("whole-force", "load C y")]
    assert named(SLOPING, Fy(), "A_y + R_B sin60 + 13 - 7 = 0")[0] == ("whole-force", "load C y")


def test_a_force_too_many_in_a_moment_is_that_whose_size_is_typed() -> None:
    text = "-6 A_y + 12*4 - 5*4 - 7*4 = 0"
    assert named(SLOPING, M("B"), text) == [("extra", "load B")]


def test_all_loads_may_be_added_up_before_an_own_result_is_put_in_wrongly() -> None:
    truss = plain_problem(
        [("A", 0, 0), ("B", 12, 0), ("C", 4, 4), ("D", 8, 4)],
        ("AB", "BD", "AC", "CD", "AD"),
        [Support("A", "pin"), Support("B", "roller")],
        [Load(j, (("down", exact(s)),)) for j, s in zip("ABCD", (6, 6, 24, 18), strict=True)],
    )
    found = named(truss, Fy(), "A_y = 54 - 62", known={"B_y": "26"})
    assert found == [("carried", "B_y")]


def test_a_result_that_stands_as_it_was_found_is_not_the_one_that_is_turned() -> None:
    truss = plain_problem(
        [("A", 0, 0), ("B", 6, 0), ("C", 3, 4)],
        ("AB", "BC", "AC"),
        [Support("A", "pin"), Support("B", "roller")],
        [Load("C", (("up", exact(24)),))],
    )
    verdict = judge(truss, Fy("A"), "-12 - 0.8 AC = 0", known={"A_y": "-12"})
    assert [(m.code, m.force) for m in verdict.mistakes] == [("sign", "AC")]
    assert "Either" in verdict.text


def test_one_wrong_arm_goes_before_arms_of_all_the_others_in_a_multiplied_line() -> None:
    truss = plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 4, 4), ("D", 11, 0)],
        ("AB", "AC", "BC", "BD", "CD"),
        [Support("A", "pin"), Support("D", "roller")],
        [Load(j, (("down", exact(size)),)) for j, size in (("C", 300), ("B", 200))],
    )
    (found,) = named(truss, M("A"), "4 D_y = 500*4")
    assert found[1] == "D_y"


def test_a_load_far_away_that_fits_is_named_before_a_near_one_that_fits_only_in_size() -> None:
    truss = plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 4, 3)],
        ("AB", "BC", "AD", "BD", "CD"),
        [Support("A", "pin"), Support("C", "roller")],
        [pushed("D", right=8), pushed("C", down=8)],
    )
    (mistake,) = judge(truss, Fy("A"), "A_y + 3/5 F_AD - 8 = 0").mistakes
    assert (mistake.code, mistake.force, mistake.alike) == ("stray-load", "load C", ("load D",))


@pytest.mark.parametrize(
    ("about", "text", "code"),
    [
        (Fy("A"), "A_y - F_AC sin(4/5) = 0", "ratio"),
        (Fx("A"), "F_AB - F_AC cos(53.13 rad) = 0", "angle-mode"),
    ],
)
def test_a_function_of_a_wrong_angle_is_named_also_under_a_wrong_sign(
    about, text: str, code: str
) -> None:
    """With a plus the same is named alone."""
    known = {"A_x": "0"}
    assert named(ROOF, about, text, known=known) == [(code, "AC"), ("sign", "AC")]
    assert named(ROOF, about, text.replace("-", "+"), known=known) == [(code, "AC")]


def test_a_distance_of_no_rule_has_the_sign_with_which_the_fewest_terms_are_turned() -> None:
    truss = plain_problem(
        [("A", 0, 0), ("B", 12, 0), ("C", 3, 4), ("D", 6, 4)],
        ("AB", "AC", "CD", "AD", "BD"),
        [Support("A", "pin"), Support("B", "roller")],
        [pushed("C", down=5), pushed("D", down=8)],
    )
    found = named(truss, M("A"), "7 B_y + 5*3 - 8*6 = 0")
    assert sorted(found) == [("arm", "B_y"), ("turning", "load C")]
    found = named(truss, M("A"), "7 B_y + 5*3 + 8*6 = 0")
    assert found == [("arm", "B_y"), ("turning", "B_y")]


@pytest.mark.parametrize(
    ("text", "code"),
    [("F_AB + 31.2(12/13) = 0", "minus"), ("F_AB - (-31.2)(12/13) = 0", "minus")],
)
def test_one_mistake_is_told_with_another_that_is_about_as_likely(text: str, code: str) -> None:
    """The minus of AF is lost, or AB has the other sign."""
    verdict = judge(problem("pratt"), Fx("A"), text, known={"A_x": "0", "AF": "-31.2"})
    (mistake,) = verdict.mistakes
    assert (mistake.code, mistake.force, mistake.alike) == (code, "AF", ("AB",))
    assert verdict.text.startswith("Either")


@pytest.mark.parametrize(
    ("degrees", "about"),
    [(0.0, Fx("A")), (90.0, Fy("A")), (180.0, Fx("A")), (270.0, Fy("A")), (-90.0, Fy("A"))],
)
def test_a_sum_along_an_axis_is_that_of_the_axis_whichever_way_along_it(
    degrees: float, about: Equation
) -> None:
    assert sum_along(ROOF, degrees, "A") == about


def test_a_negative_result_with_the_other_share_is_wrong_in_both_and_the_other_force_in_none() -> (
    None
):
    found = {"A_x": "0", "A_y": "12", "AF": "-31.2"}
    text = "F_AB - -31.2(5/13) = 0"
    assert named(problem("pratt"), Fx("A"), text, known=found) == [
        ("component", "AF"),
        ("minus", "AF"),
    ]


def test_one_component_of_an_inclined_load_does_not_stand_for_its_moment() -> None:
    text = "3B_y - 16 sin60°(9) - 20(8) = 0"
    assert named(problem("jib"), M("A"), text) == [("component-in-moment", "load E")]


def test_several_loads_at_one_arm_that_is_none_of_theirs_are_one_mistake() -> None:
    """12 kN act in three places; 6.72 is no arm of any."""
    found = named(problem("gantry"), M("B"), "3.96ax=12*6.72")
    assert found == [("arm-from", f"load {joint}") for joint in "CDE"]


THIRD = plain_problem(
    [("A", 0, 0), ("B", 3, 0), ("C", 9, 0), ("D", 3, 4)],
    ("AB", "BC", "AD", "BD", "CD"),
    [Support("A", "pin"), Support("C", "roller")],
    [pushed("D", down=4)],
)
"""9 C_y = 4*3, so that C_y = 1.333."""


@pytest.mark.parametrize(
    ("moment", "codes"),
    [
        ("6*1.3", []),
        ("7.8", []),
        ("8", ["rounding"]),
        ("6*1.333", ["rounding"]),
        ("8.3", ["carried"]),
    ],
)
def test_a_result_written_down_with_two_figures_may_stand_in_the_next_line_with_more(
    moment: str, codes: list[str]
) -> None:
    found = named(THIRD, M("D"), f"-3 A_y + 4 A_x + {moment} = 0", known={"C_y": "1.3"})
    assert [code for code, _ in found] == codes


TAIL = plain_problem(
    [("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 4, 3)],
    ("AB", "BC", "AD", "BD", "CD"),
    [Support("A", "pin"), Support("B", "roller")],
    [pushed("C", down=12)],
)
"""A_y = -12: the load hangs behind the roller."""


def test_up_behind_a_working_without_a_minus_is_what_the_working_says() -> None:
    assert named(TAIL, Fy(), "A_y = 12 up", known={"B_y": "24"}) == [("sense", "A_y")]
    assert named(TAIL, Fy(), "A_y = 24 - 12 = 12 up", known={"B_y": "24"}) == [("sign", "A_y")]
    assert judge(TAIL, Fy(), "A_y = 12 down", known={"B_y": "24"}).right

"""Does each small rule of the search show in a line: which arm, which load, which unit?

The trusses are our own; what is said of each line is what a lecturer would say, common practice, no
source.
"""

from __future__ import annotations

from typing import Any

from corpus import wrong_line
from families import exact, plain_problem
from paper.measure import problem

from tutor.judge import Along, Fx, Fy, M, Mistake, Value, judge
from tutor.judge.known_values import KnownValues
from tutor.judge.mistakes import KINDS
from tutor.judge.ties import told_with
from tutor.judge.true_equation import TrueEquation
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


def named(problem, about, text: str, **more) -> list[tuple[str, str | None]]:
    return [(m.code, m.force) for m in judge(problem, about, text, **more).mistakes]


def test_the_arm_of_a_level_load_may_be_measured_from_a_joint_on_the_way() -> None:
    assert named(MAST, M("A"), "4 B_y - 10*4 - 8*5 = 0") == [("arm-from", "load C x")]


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

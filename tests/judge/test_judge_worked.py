"""Is a value judged with its working: the numbers, the last of them, and the way it acts?

The truss is our own. That a value is written with its working and its T or C behind it is common
practice, no source.
"""

from __future__ import annotations

import pytest
from families import SEED_HOUSE, exact, plain_problem

from tutor.judge import Fx, Fy, M, Value, Verdict, judge
from tutor.model import Load, Support
from tutor.model.read import read_text

# By hand: ΣM_A: 8 E_y = 4*24, E_y = 12; A_y = 12; joint A: 0.6 AD + 12 = 0, AD = -20 (C),
# AB = 0.8*20 = 16 (T).
GANTRY = read_text(
    """
title = "Gantry over the boat slip"
force = "kN"
length = "m"
members = ["AB", "BE", "AD", "BD", "DE"]
joints = { A = [0, 0], B = [4, 0], E = [8, 0], D = [4, 3] }
supports = { A = "pin", E = "roller" }
loads = [{ at = "D", down = 24 }]
""",
    "gantry.toml",
).problem
KNOWN = {"A_x": "0", "A_y": "12", "E_y": "12"}


def told(about, text: str, **more) -> Verdict:
    return judge(GANTRY, about, text, **{"known": KNOWN, **more})


@pytest.mark.parametrize(
    "text",
    [
        "AD = -12/.6 = -20",
        "AD = -12/.6 = -20 kN",
        "AD = -12/.6 = 20 C",
        "AD = 12/.6 = 20 C",
        "AD = -12/.6 => -20",
        ".6AD + 12 = 0 => 20 C",
        ".6AD + 12 = 0 -> AD = -12/.6 = -20",
        ".6AD + 12 = 0 so AD is in compression",
    ],
)
def test_a_value_with_right_working_is_right(text: str) -> None:
    assert told(Fy("A"), text).right
    assert told(Value("AD"), text, lines=["0.6 AD + 12 = 0"]).right or "is in" in text


@pytest.mark.parametrize(
    "text",
    [
        "AD = -12/.6 = -19",
        "AD = -12/.6 = -21.5",
        "AD = -12/.6 = -19.82",
        "AD = -12/.6 => -99",
        "AD = -20 => 20 T",
        "AD = -12/.6 = 20 T",
        "AD = 12/.6 = 20 T",
        "-12/.6 = AD = 14 T",
        ".6AD + 12 = 0 => 20 T",
        ".6AD + 12 = 0 => 2.0",
        ".6AD + 12 = 0 so AD is in tension",
    ],
)
@pytest.mark.parametrize("about", [Fy("A"), Fx("A"), Value("AD")])
def test_a_value_with_a_wrong_end_is_wrong_whatever_was_asked_for(about, text: str) -> None:
    if about == Value("AD") and "is in" in text:
        return
    verdict = told(about, text, standing=[Fy("A")], lines=["0.6 AD + 12 = 0"])
    assert verdict.kind == "wrong", verdict


def test_a_wrong_letter_is_named_first_and_its_rule_only_behind_it() -> None:
    (mistake,) = told(Value("AD"), "AD = -12/.6 = -20 T", lines=["0.6 AD + 12 = 0"]).mistakes
    assert mistake.text.startswith("The letter behind it says the opposite")
    assert mistake.reason.startswith("A force drawn pulling on the joint that comes out positive")


def test_a_minus_and_a_t_behind_a_lone_number_are_asked_about() -> None:
    assert told(Value("AD"), "AD = -20 (T)").kind == "undecided"


@pytest.mark.parametrize("about", [Fy("A"), Value("AD")])
@pytest.mark.parametrize("text", ["AD = -12/.6 = -20 (T)", "-AD = 12/.6 = 20 (T)"])
def test_a_t_against_the_minus_that_the_working_comes_to_is_wrong(about, text: str) -> None:
    verdict = told(about, text)
    assert [mistake.code for mistake in verdict.mistakes] == ["tension-compression"]
    assert verdict.stands == (text[: text.rindex(" =")] if about == Fy("A") else "")


@pytest.mark.parametrize("text", ["-AD = 12/.6 = 20 (C)", "-AD = A_y/.6 = 20 kN", "-AD = 20 (C)"])
def test_a_value_said_of_a_force_with_its_minus_is_the_value_of_the_force(text: str) -> None:
    verdict = told(Value("AD"), text, lines=["0.6 AD + 12 = 0"])
    assert verdict.right
    assert verdict.value == -20


def test_a_slip_in_the_sizes_of_a_strut_is_no_false_sign_as_well() -> None:
    for text in ("ad = 12/.6 = 21.5 c", "AD = 12*5/3 = 21.5 kN C"):
        verdict = told(Fy("A"), text)
        assert [mistake.code for mistake in verdict.mistakes] == ["arithmetic"], text


@pytest.mark.parametrize("text", ["AD = -12/.6 = -21.5", "AD\t-12/.6 = -21.5"])
def test_the_number_that_does_not_follow_is_named_with_its_sign(text: str) -> None:
    said = told(Fy("A"), text).text
    assert said == "The first part is right, but -21.5 is not -12/.6."


def test_a_wrong_value_behind_a_right_equation_says_that_the_equation_is_right() -> None:
    text = told(Fy("A"), ".6AD + 12 = 0 => 20 T").text
    assert text.startswith("The equation is right and stands; the value is not: the size is right")


@pytest.mark.parametrize(
    ("text", "stands"),
    [
        (".6AD + 12 = 0 => 20 T", ".6AD + 12 = 0"),
        ("ΣFy: .6AD + 12 = 0, AD = -21", "ΣFy: .6AD + 12 = 0"),
        (".6AD + 12 = 0 (T)", ".6AD + 12 = 0"),
        ("AD = -12/.6 = -21.5", "AD = -12/.6"),
        (".6AD + 12 = 0 => AD = -12/.6 = -25", ".6AD + 12 = 0 => AD = -12/.6"),
        (".6AD = -12 = -20", ".6AD = -12"),
    ],
)
def test_of_a_line_with_a_wrong_value_the_equation_stands_by_itself(text: str, stands: str) -> None:
    verdict = told(Fy("A"), text)
    assert (verdict.kind, verdict.stands) == ("wrong", stands)
    assert told(Fy("A"), stands).right


@pytest.mark.parametrize("text", [".8AD + 12 = 0 => -15", "AD = 20 T", "AD = -12 = -20"])
def test_nothing_of_a_line_stands_whose_equation_is_wrong(text: str) -> None:
    assert told(Fy("A"), text).stands == ""


def test_a_reaction_behind_an_arrow_is_looked_at_with_its_way() -> None:
    assert judge(GANTRY, M("A"), "8 E_y = 96 => 12").right
    assert judge(GANTRY, M("A"), "8 E_y = 4*24 => 96").right
    assert judge(GANTRY, M("A"), "8 E_y = 96 => 11.2").kind == "wrong"
    assert judge(GANTRY, Fy(), "A_y = 24 - 12 = 12 up", known={"E_y": 12}).right
    assert judge(GANTRY, Fy(), "A_y = 24 - 12 = 12 down", known={"E_y": 12}).kind == "wrong"


def test_a_moved_term_that_kept_its_sign_is_told_as_that() -> None:
    verdict = judge(
        GANTRY, Value("A_y"), "A_y = 24 + 12 = 36", known={"E_y": 12}, lines=["A_y + 12 = 24"]
    )
    assert [mistake.code for mistake in verdict.mistakes] == ["sign"]
    assert "size is right" not in verdict.text


def test_an_arrow_or_a_bracket_behind_a_heading_sets_it_apart() -> None:
    for text in ("Fy -> .6AD + 12 = 0", "Fy => .6AD + 12 = 0", "Fy) 12 + .6AD = 0"):
        assert told(Fy("A"), text).right


def test_a_value_in_another_unit_is_told_to_take_the_one_of_the_problem() -> None:
    verdict = told(Value("AD"), "AD = -12/.6 = -20 N", lines=["0.6 AD + 12 = 0"])
    assert verdict.kind == "wrong"
    verdict = told(Value("AD"), "AD = -20 N", lines=["0.6 AD + 12 = 0"])
    assert [mistake.code for mistake in verdict.mistakes] == ["unit"]
    assert "write that unit behind the number" not in verdict.mistakes[0].place


def test_a_component_at_an_arm_of_one_has_its_arm() -> None:
    crane = read_text(
        """
title = "Arm over the hopper"
force = "kN"
length = "m"
members = ["AB", "AC", "BC"]
joints = { A = [0, 0], B = [1, 2], C = [3, 0] }
supports = { A = "pin", B = { link = [-1, 4] } }
loads = [{ at = "C", down = 6 }]
""",
        "arm.toml",
    ).problem
    verdict = judge(crane, M("A"), "R_B*sin45*1 = 18")
    assert [mistake.code for mistake in verdict.mistakes] == ["component-missing"]


def test_a_remark_in_brackets_behind_the_line_is_passed_over_and_said() -> None:
    assert told(Fy("A"), ".6AD + 12 = 0 (30 deg slope)").right
    verdict = told(Fy("A"), ".6AD = -12 kN (vert equil.)")
    assert verdict.right
    assert [remark.code for remark in verdict.remarks] == ["passed"]


@pytest.mark.parametrize("text", [".6AD = -12 (cso 30)", ".6AD = -12(AB)"])
def test_a_bracket_that_may_be_a_factor_is_never_passed_over(text: str) -> None:
    assert not told(Fy("A"), text).right


# The same gantry with 6 kN to the right at D: A_x = -6, that is, 6 to the left.
PUSHED = read_text(
    """
title = "Gantry in the wind"
force = "kN"
length = "m"
members = ["AB", "BE", "AD", "BD", "DE"]
joints = { A = [0, 0], B = [4, 0], E = [8, 0], D = [4, 3] }
supports = { A = "pin", E = "roller" }
loads = [{ at = "D", down = 24, right = 6 }]
""",
    "pushed.toml",
).problem


@pytest.mark.parametrize("text", ["A_x = -6 = 6 left", "A_x = -6 = 6 ←", "A_x = 6 left = -6"])
def test_a_way_behind_a_number_is_its_sign_in_a_chain(text: str) -> None:
    assert judge(PUSHED, Value("A_x"), text).right


def test_without_a_way_behind_it_a_number_of_another_sign_does_not_follow() -> None:
    assert judge(PUSHED, Value("A_x"), "A_x = -6 = 6").text.endswith("6 is not -6.")


@pytest.mark.parametrize(
    ("text", "code"),
    [("96", "no-arm"), ("96/2 = 48", "arithmetic"), ("E_y = 96/4 = 24", "arithmetic")],
)
def test_a_moment_is_said_to_be_left_only_where_nothing_was_divided(text: str, code: str) -> None:
    verdict = judge(GANTRY, Value("E_y"), text, lines=["8 E_y - 4*24 = 0"])
    assert [mistake.code for mistake in verdict.mistakes] == [code]


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("AD = -12", "component"),
        ("AD = -7.2", "component"),
        ("AD = -15", "component"),
        ("AD = -31", "arithmetic"),
    ],
)
def test_a_component_is_said_to_be_given_only_where_the_line_gives_it(text: str, code: str) -> None:
    verdict = judge(GANTRY, Value("AD"), text, known=KNOWN, lines=["0.6 AD + 12 = 0"])
    assert [mistake.code for mistake in verdict.mistakes] == [code]


def test_no_component_is_said_to_be_given_where_the_line_has_the_force_whole() -> None:
    verdict = judge(
        GANTRY, Value("AB"), "12.8", known={**KNOWN, "AD": "-20"}, lines=["AB - 0.8*20 = 0"]
    )
    assert [mistake.code for mistake in verdict.mistakes] == ["arithmetic"]


# What a chain comes to, whatever stands between: AB = BE by the sum at B, AB = -(4/5) AD by that at A.
FOUND = {**KNOWN, "AD": "-20"}


@pytest.mark.parametrize(
    "text", ["AB = -4/5AD = 16 {}", "-4/5AD = AB = 16 {}", "-AB = 4/5AD = 16 {}"]
)
@pytest.mark.parametrize("middle", ["16 {}", "-(4/5)(-20) = 16 {}", "-(4/5)(-20) = 16 = 16 {}"])
def test_the_letter_behind_a_chain_is_read_whatever_stands_between(text: str, middle: str) -> None:
    text = text.replace("16 {}", middle) if not text.startswith("-AB") else text
    assert judge(GANTRY, Fx("A"), text.format("T"), known=FOUND).right
    verdict = judge(GANTRY, Fx("A"), text.format("C"), known=FOUND)
    assert [mistake.code for mistake in verdict.mistakes] == ["tension-compression"]
    assert verdict.text.startswith("The equation is right and stands; the value is not")


@pytest.mark.parametrize(
    "text",
    ["AD = -5/4AB = -20 = 20 {}", "AD = -5/4AB = 20 {}", "AD = -5/4AB = -20 kN = 20 kN ({})"],
)
def test_a_chain_through_a_negative_number_ends_in_compression(text: str) -> None:
    known = {**KNOWN, "AB": "16"}
    for asked in (Fx("A"), Value("AD")):
        assert judge(GANTRY, asked, text.format("C"), known=known).right
        assert judge(GANTRY, asked, text.format("T"), known=known).kind == "wrong"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("BE = AB = 61 T", "The first part is right, but AB is 16, not 61."),
        ("BE = AB = -16", "The first part is right, but AB is 16, not -16."),
        ("BE = AB = 16 = 61", "The first part is right, but 61 is not 16."),
    ],
)
def test_the_link_of_a_chain_that_does_not_hold_is_named(text: str, said: str) -> None:
    verdict = judge(GANTRY, Fx("B"), text, known={**KNOWN, "AB": "16"})
    assert (verdict.kind, verdict.text) == ("wrong", said)
    assert verdict.stands.startswith("BE = AB")


def test_a_link_that_was_worked_out_wrongly_is_told_without_what_it_comes_to() -> None:
    verdict = judge(GANTRY, Fx("A"), "AB = -4/5AD = 61", known=FOUND)
    assert verdict.text == "The first part is right, but 61 is not -4/5AD, with AD = -20."


def test_the_way_behind_a_chain_of_a_reaction_is_read() -> None:
    given = {"known": {"E_y": "12"}}
    assert judge(GANTRY, Fy(), "A_y = 24 - E_y = 12 up", **given).right
    assert judge(GANTRY, Fy(), "A_y = 24 - E_y = 12 down", **given).kind == "wrong"
    assert judge(GANTRY, Fy(), "A_y = 24 - E_y = -12", **given).kind == "wrong"


@pytest.mark.parametrize("text", ["AB = 4/5AD = 16", "AB = 3/5AD = 16 T", "AB = 4/5AD = 16 C"])
def test_a_value_cannot_follow_from_a_link_that_does_not_hold(text: str) -> None:
    assert judge(GANTRY, Value("AB"), text, known=FOUND).kind == "wrong"


def test_a_link_may_go_by_the_size_of_a_force_where_the_value_says_its_letter() -> None:
    verdict = judge(GANTRY, Value("AB"), "AB = 4/5AD = 16 T", known=FOUND)
    assert verdict.right
    assert [remark.code for remark in verdict.remarks] == ["declared"]


@pytest.mark.parametrize("text", ["AB = 16 T", "BE = AB = 16 T", "BE = 16 T"])
def test_a_value_of_another_force_is_never_that_of_the_one_asked_for(text: str) -> None:
    known = {**KNOWN, "AB": "16"}
    assert not judge(GANTRY, Value("DE"), text, known=known).right


def test_the_unit_is_named_where_a_chain_ends_in_another_one() -> None:
    verdict = told(Fy("A"), ".6AD + 12 = 0 => AD = -12/.6 = -20 N")
    assert verdict.text.endswith("-12/.6 comes out in kN, not in the unit of -20 N.")
    assert told(Fy("A"), ".6AD + 12 = 0 => AD = -12/.6 = -21 N").text.endswith("is not -12/.6.")
    assert told(Fy("A"), ".6AD + 12 = 0 => AD = -12/.6 = -20000 N").right


def test_a_sum_along_a_level_or_an_upright_member_is_one_along_its_axis() -> None:
    assert not told(Fx("A"), "ΣF along AB: AB + .8AD = 0").remarks
    assert told(Fy("A"), "ΣF along AB: 12 + .6AD = 0").remarks
    assert not told(Fy("D"), "ΣF along BD: -24 - BD - .6AD - .6DE = 0", known={}).remarks


# By hand: A_y = (12*6 + 24*3)/9 = 16, joint E: BE = -4/5 AE = 16; so that the sum at B has the numbers
# of the part with A, B and E as well.
LADDER = read_text(
    """
title = "Pipe rack over the yard"
force = "kN"
length = "m"
members = ["AB", "BC", "CD", "AE", "EF", "FD", "BE", "CF", "BF"]
joints = { A = [0, 0], B = [3, 0], C = [6, 0], D = [9, 0], E = [3, 4], F = [6, 4] }
supports = { A = "pin", D = "roller" }
loads = [{ at = "B", down = 12 }, { at = "C", down = 24 }]
""",
    "ladder.toml",
).problem


@pytest.mark.parametrize("end", ["", ", BF = -5", " => 5 C"])
def test_a_line_with_a_value_put_in_is_the_sum_of_its_own_joint_before_any_other_body(
    end: str,
) -> None:
    known = {"A_x": "0", "A_y": "16", "D_y": "20"}
    verdict = judge(LADDER, Fx("B"), f"4/5 BF + 16 - 12 = 0{end}", known=known)
    assert verdict.true_of == Fy("B")


# By hand: R_D = 297/(18 sin 60°) = 19.053, A_x = 3.526, A_y = 8.5, AC = -10.625, AB = BD = 2.849.
HOIST = read_text(
    """
title = "Quarry hoist"
force = "kip"
length = "ft"
members = ["AB", "BC", "CD", "AC", "BD"]
joints = { A = [0, 0], B = [9, 0], C = [9, 12], D = [18, 0] }
supports = { A = "pin", D = { roller = 120 } }
loads = [{ at = "C", down = 15, right = 6 }, { at = "B", down = 10 }]
""",
    "hoist.toml",
).problem
ROUNDED = {"AB": "2.84", "BC": "10"}


@pytest.mark.parametrize("text", ["BD = AB = 2.84", "BD = AB = 2.84 T", "F_BD = F_AB = 2.84 kip"])
def test_a_value_that_equals_one_found_before_is_right_however_that_was_rounded(text: str) -> None:
    assert judge(HOIST, Value("BD"), text, known=ROUNDED).right


@pytest.mark.parametrize("text", ["BD = BC = 10", "BD = AB = 2.4", "BD = AB = -2.84"])
def test_a_value_that_does_not_equal_what_it_is_said_to_is_wrong(text: str) -> None:
    assert judge(HOIST, Value("BD"), text, known=ROUNDED).kind == "wrong"


@pytest.mark.parametrize(
    "text", ["-8 - F_CF + 2(10.83)(0.6) = 0", "F_CF = 2(10.83)(.6) - 8", "-8 - F_CF + 13 = 0"]
)
def test_numbers_put_in_for_two_forces_at_once_are_no_sum_along_a_slope(text: str) -> None:
    verdict = judge(SEED_HOUSE, Fy("C"), text, known={"AB": "-15.83", "BC": "-10.83"})
    assert verdict.right
    assert [remark.code for remark in verdict.remarks] == ["unrecorded"]
    assert verdict.without == ("CD",)


@pytest.mark.parametrize(
    ("unknown", "text", "rounded"),
    [
        ("DF", "DF = 3 C", True),
        ("AF", "AF = 12 T", True),
        ("A_y", "A_y = 10", True),
        ("DF", "DF = 4 C", False),
        ("A_y", "A_y = 11", False),
        ("CF", "CF = 6 T", False),
    ],
)
def test_a_value_is_rounded_where_its_figures_are_cut_or_rounded_and_not_the_next_ones_up(
    unknown: str, text: str, rounded: bool
) -> None:
    verdict = judge(SEED_HOUSE, Value(unknown), text)
    assert verdict.kind == "wrong"
    assert ([mistake.code for mistake in verdict.mistakes] == ["rounding"]) is rounded


def test_a_formula_is_told_again_with_its_last_bracket() -> None:
    line = r"AD = \frac{-16}{0.8} = -25\ \mathrm{kN}"
    verdict = judge(SEED_HOUSE, Value("AB"), line.replace("AD", "AB"))
    assert r"-25\ \mathrm{kN} is not \frac{-16}{0.8}." in verdict.text


@pytest.mark.parametrize("how", [", so {}.", " so {}", ". {}.", ", therefore {}.", " ∴ {}", "; {}"])
@pytest.mark.parametrize(
    ("said", "kind"),
    [
        ("AD is a strut of 20 kN", "right"),
        ("AD is in compression with 20 kN", "right"),
        ("AD is a strut of 25 kN", "wrong"),
        ("AD is a tie of 20 kN", "wrong"),
        ("AD is a tie", "wrong"),
    ],
)
def test_a_value_in_words_behind_its_equation_is_answered(how: str, said: str, kind: str) -> None:
    assert told(Fy("A"), f"ΣV = 0: 12 + 0.6 F_AD = 0{how.format(said)}").kind == kind


@pytest.mark.parametrize(
    ("about", "text", "right"),
    [
        (Fy("A"), "3/5 = 0.6 so 12 + 0.6 AD = 0", True),
        (Fy("A"), "12/0.6 = 20 so 0.6 AD = -12 and AD = -20", True),
        (Fy("A"), "12/0.6 = 18 so 0.6 AD = -10.8", False),
        (Fy("A"), "4/5 = 0.8 so 12 + 0.8 AD = 0", False),
        (Value("AD"), "12/0.6 = 20 so AD = -20", True),
        (Value("AD"), "12/0.6 = 18 so AD = -18", False),
        (Fy("A"), "12 + 0.6 AD = 0; 30", False),
        (Fy("A"), "12 + 0.6 AD = 0; -20", True),
    ],
)
def test_a_number_worked_out_before_an_equation_stands_aside_and_one_behind_it_is_its_value(
    about, text: str, right: bool
) -> None:
    verdict = told(about, text)
    assert verdict.kind == ("right" if right else "wrong"), verdict


@pytest.mark.parametrize(
    ("typed", "code"), [("200 N (C)", "unit"), ("2000 N (C)", "unit"), ("200 kN (C)", "arithmetic")]
)
def test_a_wrong_power_of_ten_is_a_slip_of_the_unit_where_another_one_is_typed(
    typed: str, code: str
) -> None:
    assert [mistake.code for mistake in told(Value("AD"), typed).mistakes] == [code]


@pytest.mark.parametrize("text", ["-12/.8 = -20", "12/.8 = 20 C", "AD = -12/.8 = -20"])
def test_a_right_value_behind_working_that_comes_to_another_is_not_right(text: str) -> None:
    verdict = told(Value("AD"), text)
    assert [mistake.code for mistake in verdict.mistakes] == ["component"]
    assert verdict.text.startswith("In ")


@pytest.mark.parametrize("part", ["-12/.6", "-12/.8", "-12/.7", "-12*.6"])
@pytest.mark.parametrize("end", ["-19", "-15", "-20"])
@pytest.mark.parametrize("about", [Fy("A"), Value("AD")])
@pytest.mark.parametrize("before", ["", ".6AD + 12 = 0 => "])
def test_the_first_part_is_called_right_only_where_it_is(
    before: str, about, part: str, end: str
) -> None:
    verdict = told(about, f"{before}AD = {part} = {end}")
    right = part == "-12/.6"
    assert verdict.right == (right and end == "-20")
    assert verdict.right or ("The first part is right" in verdict.text) == right


def test_numbers_alone_are_working_too_where_a_value_is_asked_for() -> None:
    verdict = told(Value("AD"), "-12/sin(36.87) = 16.27")
    assert [mistake.code for mistake in verdict.mistakes] == ["angle-mode"]
    assert told(Value("AD"), "-12/sin(36.87) = -20").right
    assert told(Value("AD"), "12/sin(36.87) = 20 C").right


def test_of_an_expression_it_is_not_said_that_it_was_rounded_too_hard() -> None:
    verdict = told(Value("AD"), "12*5/4 C")
    assert [mistake.code for mistake in verdict.mistakes] == ["component"]


@pytest.mark.parametrize(
    "text",
    [
        "0.6 AD = -{y}, so A_y = {y}",
        "A_y + 0.6 AD = 0, 0.6 AD = -{y}, A_y = {y}",
        "-0.6 AD = {y}, A_y = {y} up",
    ],
)
def test_what_is_worked_out_of_an_own_value_holds_where_that_is_only_rounded(text: str) -> None:
    """AD is 20 in compression: 19.8 is near enough, 19 is not."""

    def said(about, found: str, y: str) -> str:
        more = {"known": {"AD": found}, "lines": ["A_y + 0.6 AD = 0"]}
        return judge(GANTRY, about, text.format(y=y), **more).kind

    assert said(Fy("A"), "-19.8", "11.88") == said(Value("A_y"), "-19.8", "11.88") == "right"
    assert said(Fy("A"), "-19", "11.4") == "wrong"


@pytest.mark.parametrize("value", ["12 kN m", "12 kN·m", "96/8 = 12 kNm"])
def test_a_force_is_no_moment_whatever_the_equation_before_it_says(value: str) -> None:
    line = "8 E_y = 4*24 = 96"
    verdict = judge(GANTRY, M("A"), f"{line} => E_y = {value}")
    assert [(m.code, m.force) for m in verdict.mistakes] == [("unit", "E_y")]
    assert verdict.stands.startswith(line)
    assert judge(GANTRY, M("A"), f"{line} kNm => E_y = 12 kN").right


@pytest.mark.parametrize(
    ("text", "code", "force"),
    [
        ("AB = 20*3/5 = 12 T", "component", "AD"),
        ("20*.6 = 12 T", "component", "AD"),
        ("AB = -20*.8 = -16", "sign", "AB"),
        ("AB = 20 T", "whole-force", "AD"),
    ],
)
def test_a_value_is_told_by_the_slip_that_its_working_shows(
    text: str, code: str, force: str
) -> None:
    (mistake,) = told(Value("AB"), text, known={"AD": "-20"}).mistakes
    assert (mistake.code, mistake.force) == (code, force)


def test_a_lone_value_is_the_sum_of_a_joint_where_two_forces_meet_it() -> None:
    truss = plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 4, 3)],
        ("AB", "BC", "AD", "BD", "CD"),
        [Support("A", "pin"), Support("C", "roller")],
        [Load("B", (("down", exact(24)),)), Load("D", (("down", exact(9)),))],
    )
    for text, code in (("0", "missing"), ("9 T", "magnitude")):
        (mistake,) = judge(truss, Value("BD"), text).mistakes
        assert (mistake.code, mistake.force) == (code, "load B")


def test_what_is_said_to_follow_and_does_not_is_told_by_its_slip() -> None:
    verdict = judge(
        GANTRY,
        Fy("D"),
        "-24 - BD - .6AD - .6DE = 0 -> 24 + BD = .6AD + .6DE",
    )
    assert verdict.kind == "wrong"
    assert verdict.stands == "-24 - BD - .6AD - .6DE = 0"
    verdict = judge(GANTRY, Fy("D"), "-24 - BD - .6AD - .6DE = 0 -> BD = 24 - .6AD - .6DE")
    assert [(m.code, m.force) for m in verdict.mistakes] == [("sign", "load D")]
    assert "what is said to follow from it does not" in verdict.text


def test_numbers_put_together_wrongly_leave_the_equation_before_them_standing() -> None:
    truss = plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 4, 3)],
        ("AB", "BC", "AD", "BD", "CD"),
        [Support("A", "pin"), Support("C", "roller")],
        [Load("B", (("down", exact(24)),)), Load("D", (("down", exact(9)),))],
    )
    typed = "8 C_y - 24*4 - 9*4 = 0"
    assert judge(truss, M(at="A"), f"{typed}, 8 C_y = 132").right
    verdict = judge(truss, M(at="A"), f"{typed}, 8 C_y = 123")
    assert (verdict.kind, verdict.stands) == ("wrong", typed)
    assert [mistake.code for mistake in verdict.mistakes] == ["arithmetic"]
    assert "what is said to follow from it does not" in verdict.text
    other = judge(truss, M(at="A"), f"{typed}, 4 C_y = 123")
    assert (other.kind, other.stands) == ("wrong", "")


def test_a_moment_that_changes_sides_with_its_sign_is_arithmetic() -> None:
    truss = plain_problem(
        [("A", 0, 0), ("B", 400, 0), ("C", 600, 0), ("D", 0, 200)],
        ("AB", "BC", "AD", "BD", "CD"),
        [Support("A", "pin"), Support("B", "roller")],
        [Load("C", (("down", exact(800)),)), Load("D", (("left", exact(300)),))],
    )
    for typed in ("400By - 800(600) + 300(200) = 0", "-800(600) + 300(200) + 400 B_y = 0"):
        for joint in (", ", " => ", "; "):
            verdict = judge(truss, M(at="A"), f"{typed}{joint}400By = 540000, By = 1350 N")
            assert [(m.code, m.force) for m in verdict.mistakes] == [("arithmetic", None)]
            assert verdict.stands == typed
            assert "One number has the other sign" in verdict.text
    turned = judge(truss, M(at="A"), "400By - 800(600) - 300(200) = 0, 400By = 540000")
    assert [(m.code, m.force) for m in turned.mistakes] == [("turning", "load D")]


def test_a_minus_lost_between_two_links_is_named_with_its_force() -> None:
    verdict = told(Fx("A"), "AB = -.8AD = -.8(20) = -16", known={**KNOWN, "AD": "-20"})
    assert [(m.code, m.force) for m in verdict.mistakes] == [("minus", "AD")]


def test_a_sum_with_its_values_put_in_behind_it_is_that_sum() -> None:
    known = {**KNOWN, "AD": "-20", "AB": "16"}
    assert told(Fy("A"), "A_y + .6AD = 12 - 12 = 0", known=known).right
    assert told(Fy("A"), "A_y + .6AD = 12 + .6(-20) = 0", known=known).right
    for wrong, code in (
        ("A_y + .8AD = 12 - 12 = 0", "component"),
        ("A_y + .6AD = 12 + 12 = 0", "minus"),
        ("A_y + .6AD = 16 - 16 = 0", "other-equation"),
    ):
        verdict = told(Fy("A"), wrong, known=known)
        assert verdict.mistakes[0].code == code, wrong


@pytest.mark.parametrize(
    ("text", "code", "force"),
    [
        ("24*8/8 = 24", "arm-from", "load D"),
        ("42*4/8 = 21", "magnitude", "load D"),
        ("24*4/4 = 24", "arm-from", "E_y"),
    ],
)
def test_a_reaction_is_told_by_the_slip_in_what_was_divided(
    text: str, code: str, force: str
) -> None:
    mistakes = told(Value("E_y"), text, known={}).mistakes
    assert [(m.code, m.force) for m in mistakes] == [(code, force)]


@pytest.mark.parametrize(
    ("text", "code", "force"),
    [
        ("-(12 + 24)/.6 = -60", "stray-load", "load D"),
        ("-12/.6 + 0 = 20 T", "tension-compression", "AD"),
        ("-12*.6", "component", "AD"),
    ],
)
def test_a_member_is_told_by_the_slip_in_what_was_divided(text: str, code: str, force: str) -> None:
    mistakes = told(Value("AD"), text).mistakes
    assert [(m.code, m.force) for m in mistakes] == [(code, force)]

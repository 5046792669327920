"""Numbers that a line works out beside its equation: in brackets, put into a sum, left over by rounding.

Two rafters of our own on a pin and a roller, with a pull to the right at the ridge.
"""

from __future__ import annotations

from typing import Any

import pytest
from families import exact, plain_problem

from tutor.judge import Fx, Fy, M, Value, judge
from tutor.model import Load, Support

BENCH = plain_problem(
    [("A", 0, 0), ("B", 6, 0), ("C", 3, 4)],
    ("AB", "AC", "BC"),
    [Support("A", "pin"), Support("B", "roller")],
    [Load("C", (("down", exact(30)),)), Load("C", (("right", exact("1.5")),))],
)
"""A_x = -1.5, A_y = 14, B_y = 16, AC = -17.5, BC = -20, AB = 12"""
KNOWN = {"A_x": -1.5, "A_y": 14, "B_y": 16}


def kind_of(about: Any, text: str) -> str:
    return judge(BENCH, about, text, known=KNOWN).kind


@pytest.mark.parametrize(
    ("about", "text"),
    [
        (Fy(joint="A"), "14 + 0.8 AC = 0 (0.8 = 4/5), AC = -17.5"),
        (Fy(joint="A"), "14 + 0.8 AC = 0. (14 = 28/2, 0.8 = 4/5)"),
        (Fy(joint="A"), "(0.8 = 4/5) 14 + 0.8 AC = 0"),
        (Fy(joint="A"), "A_y + 0.8 AC = 0 (0.8 AC = -14), AC = -17.5"),
        (Fy(joint="A"), "(A_y = 28/2 = 14) 14 + 0.8 AC = 0, AC = -17.5"),
        (M("A"), "6 B_y = 30(3) + 1.5(4) (arm = 0.8*5 = 4) = 96, B_y = 16"),
        (M("A"), "6 B_y = 30(3) + 1.5(4) (height of C = 4) = 96 so B_y = 16"),
        (Fy(joint="A"), "14 + 0.8 AC = 0 (4/5, not 3/5!) → AC = -17.5"),
        (Fy(joint="A"), "A vert 14 + 0.8 AC = 0"),
        (Fx(joint="A"), "A horizontal -1.5 + AB + 0.6 AC = 0"),
        (Fy(joint="A"), "14 + 0.8 AC = 0 so AC = -17.5 bc A_y = 14"),
    ],
)
def test_what_a_bracket_works_out_leaves_the_line_as_it_is(about: Any, text: str) -> None:
    assert kind_of(about, text) == "right"


@pytest.mark.parametrize(
    ("about", "text"),
    [
        (Fy(joint="A"), "14 - 0.8 AC = 0 (0.8 = 4/5), AC = 17.5"),
        (Fy(joint="A"), "14 + 0.8 AC = 0. (14 = 26/2, 0.8 = 4/5)"),
        (Fy(joint="A"), "A_y + 0.8 AC = 0 (0.8 AC = 14), AC = -17.5"),
        (M("A"), "6 B_y = 30(3) + 1.5(5) (arm = 5) = 97.5, B_y = 16.25"),
        (Fy(joint="A"), "14 + 0.6 AC = 0 (3/5, not 4/5) → AC = -23.3"),
        (Fy(joint="A"), "A vert 14 + 0.6 AC = 0"),
    ],
)
def test_and_what_is_wrong_beside_one_is_not_right(about: Any, text: str) -> None:
    assert kind_of(about, text) != "right"


@pytest.mark.parametrize(
    "text",
    [
        "A_y + B_y = 28/2 + 16 = 30",
        "A_y + B_y = 14 + 16 = 30",
        "A_y + B_y = 16 + 14 = 30 = 30",
        "A_y + B_y - 30 = 14 + 16 - 30 = 0",
    ],
)
def test_a_sum_with_its_own_values_put_in_says_what_they_are_together(text: str) -> None:
    assert kind_of(Fy(), text) == "right"


@pytest.mark.parametrize(
    "text", ["A_y + B_y = 14 + 16 = 31", "A_y + B_y = 15 + 15 = 28", "A_y - B_y = 14 - 16 = -2"]
)
def test_but_only_with_what_the_loads_are(text: str) -> None:
    assert kind_of(Fy(), text) == "wrong"


KNOWN_AT_C = {"AC": "-17.52", "BC": "-20.03"}


def closes(text: str) -> bool:
    return judge(BENCH, Fy(joint="C"), text, known=KNOWN_AT_C).right


@pytest.mark.parametrize(
    "text",
    [
        "0.8(17.52) + 0.8(20.03) - 30 = 0.04",
        "0.8(17.52) + 0.8(20.03) - 30 = 14.016 + 16.024 - 30 = 0.04",
        "0.8(17.52) + 0.8(20.03) - 30 = 14.016 + 16.024 - 30 = 0.04 ≈ 0",
        "0.8(17.52) + 0.8(20.03) - 30 = 0.04, ok (rounding)",
    ],
)
def test_what_rounding_leaves_over_is_nothing(text: str) -> None:
    assert closes(text)


@pytest.mark.parametrize(
    "text",
    [
        "0.8(17.52) + 0.8(20.03) - 30 = 0.4",
        "0.8(17.52) + 0.8(20.03) - 30 = -0.04",
        "0.8(17.52) + 0.6(20.03) - 30 = -3.966",
        "30 - 30 = 0.04",
        "0.8(17.52) + 0.8(20.03) - 30 = 14.016 + 17.024 - 30 = 0.04",
    ],
)
def test_but_what_is_not_left_over_is_wrong(text: str) -> None:
    assert not closes(text)


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("AC = -17.5 kN (17.5 C)", "right"),
        ("AC = -17.5 (17.5 C)", "right"),
        ("AC = -17.5 kN (17.5 T)", "wrong"),
        ("AC = 17.5 (17.5 T)", "wrong"),
        ("AC = -17.5 kN (negative => it pushes)", "right"),
        ("AC = -17.5 (17.5 = 14/0.8)", "right"),
        ("AC = -17.5 (17.5 = 14/0.7)", "wrong"),
    ],
)
def test_a_value_said_again_by_its_size_and_letter_is_the_same(text: str, kind: str) -> None:
    assert kind_of(Value("AC"), text) == kind


def test_a_sum_in_brackets_that_is_an_own_value_stands_for_it() -> None:
    known = {"A_y": "14.0"}
    about = Fy(joint="A")
    assert judge(BENCH, about, "0.8 AC = -(30 - 16)", known=known).right
    assert not judge(BENCH, about, "0.8 AC = -(30 - 15)", known=known).right
    assert not judge(BENCH, about, "0.8 AC = (30 - 16)", known=known).right


MAST = plain_problem(
    [("A", 0, 0), ("B", 4, 0), ("C", 2, -1), ("D", 2, 1), ("F", 2, 2)],
    ("AB", "AC", "BC", "BD", "AF", "BF"),
    [Support("A", "pin"), Support("D", "pin")],
    [
        Load("C", size=exact(12), angle=exact(225)),
        Load("F", size=exact(12), angle=exact(15)),
    ],
)
"""D_x = -21.21, D_y = 10.61; about A the load at F turns by as much as one component of that at C."""


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("-12 sin 45 *2 - 12 cos 45 + 21.21 + 10.61*2 + 12 sin 15 *2 - 12 cos 15 *2 = 0", "right"),
        ("-12 sin 45 *2 + 12 cos 45 + 21.21 + 10.61*2 + 12 sin 15 *2 - 12 cos 15 *2 = 0", "wrong"),
        ("-12 sin 45 *2 - 12 cos 45 + 21.21 + 10.61*2 - 12 cos 15 *2 = 0", "wrong"),
    ],
)
def test_a_component_that_is_as_large_as_another_load_is_still_the_component(
    text: str, kind: str
) -> None:
    known = {"D_x": "-21.21", "D_y": "10.61"}
    assert judge(MAST, M("A"), text, known=known).kind == kind


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("AC = -14000*5/4 = -17500 N = 17.5 kN C", "right"),
        ("AC = -14000*5/4 = -17500 N", "right"),
        ("AC = -14000*4/5 = -11200 N", "wrong"),
        ("AC = -14000*5/4 = -17500", "wrong"),
        ("AC = -14*5/4 = -17.5 N", "wrong"),
        ("AC = -14000*5/4 = -17.5 N", "wrong"),
    ],
)
def test_a_unit_behind_the_last_number_is_that_of_the_numbers_before_it(
    text: str, kind: str
) -> None:
    assert kind_of(Value("AC"), text) == kind
    assert kind_of(Fy(joint="A"), f"14000 N + 0.8 AC = 0, {text}") == kind


def test_in_which_units_a_line_is_worked_out_may_be_said_before_it() -> None:
    assert kind_of(M("A"), "(in m) 6 B_y = 30*3 + 1.5*4") == "right"
    assert kind_of(M("A"), "(all in kN and m) 6 B_y = 30*3 + 1.5*4 = 96") == "right"
    assert kind_of(M("A"), "(in m) 6 B_y = 30*3 - 1.5*4") == "wrong"


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("AB = 12 kN = 1200 N", "unit"),
        ("AB = 12000 N = 120 kN (T)", "unit"),
        ("AB = 12 kN = 12500 N", "arithmetic"),
        ("AB = 12 kN = 120 kN", "arithmetic"),
    ],
)
def test_a_number_given_again_in_another_unit_is_off_by_a_power_of_ten(
    text: str, code: str
) -> None:
    verdict = judge(BENCH, Value("AB"), text, known=KNOWN)
    assert [mistake.code for mistake in verdict.mistakes] == [code]


@pytest.mark.parametrize(
    ("about", "text", "kind"),
    [
        (Fy(joint="A"), "14 + 4/5 AC = 0, because 3 : 4 : 5 = 6 : 8 : 10", "right"),
        (Fy(joint="A"), "14 + 4/5 AC = 0 (15 : 20 : 25 = 3 : 4 : 5)", "right"),
        (Fy(joint="A"), "14 + 3/5 AC = 0, because 15 : 20 : 25 = 3 : 4 : 5", "wrong"),
        (Fy(), "A_y + B_y = (5 kN/m)(6 m)", "right"),
        (Fy(), "A_y + B_y = 5 kN/m * 6 m", "right"),
        (Fy(), "A_y + B_y = (5 kN/m)(3 m)", "wrong"),
    ],
)
def test_sides_in_proportion_and_loads_on_a_length(about: Any, text: str, kind: str) -> None:
    assert kind_of(about, text) == kind


ALL_KNOWN = {"A_x": "-1.5", "A_y": "14", "B_y": "16", "AB": "12", "AC": "-17.5", "BC": "-20"}


@pytest.mark.parametrize(
    ("about", "text", "said"),
    [
        (Fx(joint="A"), "-1.5 + 12 - 0.8*17.5 = -3.5", ("component", "AC")),
        (Fx(joint="A"), "1.5 + 12 - 0.6*17.5 = 3 nearly", ("minus", "A_x")),
        (Fy(joint="A"), "14 - 0.6*17.5 = 3.5", ("component", "AC")),
        (Fy(joint="C"), "-30 + 0.8*17.5 + 0.6*20 = -4", ("component", "BC")),
        (Fy(joint="C"), "-30 + 0.8*17.5 - 0.8*20 = -32", ("minus", "BC")),
        (M("A"), "6*16 - 30*3 - 1.5*5 = -1.5", ("arm-from", "load C")),
    ],
)
def test_what_a_sum_of_numbers_comes_to_is_no_term_of_it(
    about: Any, text: str, said: tuple[str, str]
) -> None:
    verdict = judge(BENCH, about, text, known=ALL_KNOWN)
    assert [(mistake.code, mistake.force) for mistake in verdict.mistakes] == [said]


@pytest.mark.parametrize(
    "text", ["-1.5 + 12 - 10.5 = 0", "-1.5 + 12 - 0.6*17.5 = 0.00", "12 - 1.5 = 10.5"]
)
def test_a_sum_of_numbers_that_closes_is_right(text: str) -> None:
    assert judge(BENCH, Fx(joint="A"), text, known=ALL_KNOWN).right


@pytest.mark.parametrize(
    "text",
    [
        "10.5 + 1.5 = 12, AB = 12 kN T",
        "0.6*17.5 = 10.5, AB = 10.5 + 1.5 = 12 T",
        "0.6*17.5 = 10.5, 10.5 + 1.5 = 12 so AB = 12",
        "the strut pushes back with 0.6*17.5 = 10.5 and the pin with 1.5: AB = 12 T",
        "the chord has to pull with 10.5 + 1.5 = 12: AB = 12 T",
    ],
)
def test_numbers_worked_out_before_a_value_are_no_sums(text: str) -> None:
    known = {"A_x": "-1.5", "AC": "-17.5"}
    assert judge(BENCH, Fx(joint="A"), text, known=known).right


@pytest.mark.parametrize("before", ["", "12 - 1.5 = 10.5, ", "12 - 1.5 = 10.5, 10.5/0.6 = 17.5, "])
def test_a_result_behind_its_working_is_still_no_equation(before: str) -> None:
    known = {"A_x": "-1.5", "AB": "12"}
    verdict = judge(BENCH, Fx(joint="A"), f"{before}AC = -17.5", known=known)
    assert verdict.kind == "undecided"
    assert [remark.code for remark in verdict.remarks] == ["result"]


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("12 - 1.5 = 10.5, AC = -10.5/0.8 = -13.125", "component"),
        ("12 + 1.5 = 13.5, AC = -13.5/0.6 = -22.5", "minus"),
        ("12 - 1.5 = 11.5, AC = -11.5/0.6 = -19.2", "arithmetic"),
    ],
)
def test_what_is_wrong_of_a_value_is_told_of_it_behind_its_working(text: str, code: str) -> None:
    known = {"A_x": "-1.5", "AB": "12"}
    verdict = judge(BENCH, Fx(joint="A"), text, known=known)
    assert [mistake.code for mistake in verdict.mistakes] == [code]


@pytest.mark.parametrize("beside", ["12", "10"])
def test_one_distance_beside_an_unknown_is_an_arm_even_if_it_is_twice_the_right_one(
    beside: str,
) -> None:
    verdict = judge(BENCH, M("A"), f"{beside} B_y - 30*3 - 1.5*4 = 0")
    assert [(mistake.code, mistake.force) for mistake in verdict.mistakes] == [("arm", "B_y")]


def test_an_unknown_with_its_arm_written_twice_is_counted_twice() -> None:
    verdict = judge(BENCH, M("A"), "6 B_y + 6 B_y - 30*3 - 1.5*4 = 0")
    assert [(mistake.code, mistake.force) for mistake in verdict.mistakes] == [("double", "B_y")]


@pytest.mark.parametrize(
    "text",
    [
        "0.6*20 = 12, AB = 12 C",
        "3/5 of 20 kN = 12 kN, so AB = 12 kN (C)",
        "BC pushes with 3/5 of 20 kN = 12 kN and AB has to hold it, so AB = 12 kN, that is 12 kN (C)",
        "BC pushes with 3/5 of 20 kN = 12 kN, so AB = -12 kN, that is 12 kN (C)",
        "BC pushes to the right with 0.6*20 = 12: AB = -12 kN, so 12 (C)",
    ],
)
def test_a_letter_behind_what_was_worked_out_is_what_is_wrong(text: str) -> None:
    verdict = judge(BENCH, Fx(joint="B"), text, known={"BC": "-20"})
    assert [(m.code, m.force) for m in verdict.mistakes] == [("tension-compression", "AB")]
    right = text.replace("(C)", "(T)").replace("12 C", "12 T").replace("-12", "12")
    assert judge(BENCH, Fx(joint="B"), right, known={"BC": "-20"}).right

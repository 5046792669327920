"""Is the slip named of a sum that a value is found from, and that does not hold?

The truss is our own, in kN and m. By hand: ΣM_A: 9 D_y = 15*3 + 24*6 + 9*4 = 225, D_y = 25; A_y = 14,
A_x = -9; joint A: 0.8 AE + 14 = 0, AE = -17.5, AB = 9 + 0.6*17.5 = 19.5; ΣFy left of the cut: BF = 1.25.
What is said of each line is what a lecturer would say first, common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from families import exact, plain_problem

from tutor.judge import M, Value, Verdict, judge
from tutor.model import Load, Problem, Support

FOUND = {"A_x": "-9", "A_y": "14", "D_y": "25", "AE": "-17.5", "BE": "14"}
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


def told(unknown: str, text: str, known: dict[str, str] | None = None) -> Verdict:
    return judge(SLIP, Value(unknown), text, known=FOUND if known is None else known)


def named(
    unknown: str, text: str, known: dict[str, str] | None = None
) -> list[tuple[str, str | None]]:
    return [(m.code, m.force) for m in told(unknown, text, known).mistakes]


@pytest.mark.parametrize(
    ("unknown", "text", "slip"),
    [
        ("AE", "A ↑: 3/5 F_AE + 14 = 0 ⇒ F_AE = −23.3", ("component", "AE")),
        ("AE", "A: 3/5 F_AE + 14 = 0 ⇒ F_AE = −23.3", ("component", "AE")),
        ("AE", "3/5 F_AE + 14 = 0 ⇒ F_AE = −23.3", ("component", "AE")),
        ("AE", "F_AE + 14 = 0 so F_AE = -14", ("whole-force", "AE")),
        ("AE", "A ↑: 14 − 4/5 F_AE = 0 → F_AE = 17.5", ("sign", "AE")),
        ("AB", "A →: F_AB + 3/5 F_AE = 0 → F_AB = 10.5", ("missing", "A_x")),
        ("AB", "F_AB − 9 + 4/5 (−17.5) = 0, F_AB = 23", ("component", "AE")),
        ("BE", "B ↑: F_BE + 4/5 F_BF + 15 = 0, F_BE = −16", ("sign", "load B")),
        ("D_y", "9 D_y = 15·3 + 24·6 → D_y = 21", ("missing", "load E")),
        ("D_y", "ΣM_A: 9 D_y − 15·3 − 24·3 − 9·4 = 0 → D_y = 17", ("arm-from", "load C")),
        ("A_y", "A_y + D_y = 15 + 24 + 9 → A_y = 23", ("extra", "load E")),
        ("D_y", "Whole truss: 9 D_y = 15·3 + 24·6 → D_y = 21", ("missing", "load E")),
        ("D_y", "D: D_y + 3/5 F_DF = 0 → D_y = 21", ("component", "DF")),
        ("AE", "A: 4/5 F_AE = 14 ⇒ F_AE = 17.5", ("sign", "A_y")),
    ],
)
def test_the_slip_of_a_sum_that_a_value_is_found_from_is_named(
    unknown: str, text: str, slip: tuple[str, str]
) -> None:
    assert named(unknown, text, {**FOUND, "BF": "1.25"} if unknown == "BE" else None) == [slip]


@pytest.mark.parametrize(
    ("unknown", "text", "slip"),
    [
        ("EF", "Cut, left part, about B: 4 F_EF + 14·3 = 0 → F_EF = −10.5", ("missing", "load E")),
        ("EF", "about B: 4 F_EF + 14·3 = 0 → F_EF = −10.5", ("missing", "load E")),
        (
            "EF",
            "right part, about B: 4 F_EF + 25·6 − 24·6 = 0 → F_EF = −1.5",
            ("arm-from", "load C"),
        ),
        ("BF", "Left of the cut, ↑: 14 − 15 − 4/5 F_BF = 0 → F_BF = −1.25", ("sign", "BF")),
        ("BF", "Left part: 14 − 15 + 3/5 F_BF = 0 → F_BF = 1.67", ("component", "BF")),
        (
            "BF",
            "Shear in the middle panel: 14 + 4/5 F_BF = 0 → F_BF = −17.5",
            ("missing", "load B"),
        ),
        ("BC", "Left part, about F: 4 F_BC = 14·3 + 9·4 − 15·3 → F_BC = 8.25", ("arm-from", "A_y")),
    ],
)
def test_the_slip_of_a_sum_of_a_part_is_named_where_the_heading_says_the_part(
    unknown: str, text: str, slip: tuple[str, str]
) -> None:
    assert named(unknown, text) == [slip]


@pytest.mark.parametrize(
    "text",
    [
        "F_BF = 15/0.8 + F_BE/0.8 = 36.25",
        "B: F_BF = (15 + 14)/0.8 = 36.25",
        "F_BF = 15/0.8 + 14/0.8 = 36.25",
    ],
)
def test_a_wrong_sign_is_named_where_the_factor_of_the_force_was_divided_out(text: str) -> None:
    assert named("BF", text) == [("sign", "BE")]


@pytest.mark.parametrize("text", ["(15*3 + 24*6 - 9*4)*0", "(15*3 + 24*6 - 9*4)*0 = 17"])
def test_a_sum_times_nothing_gives_no_value(text: str) -> None:
    (mistake,) = told("D_y", f"D_y = {text}", {}).mistakes
    assert mistake.code == "arithmetic"


def test_a_sum_that_could_be_any_is_said_not_to_hold_and_is_shown() -> None:
    (mistake,) = told("AE", "3 F_AE + 2 F_EF − 61 = 0, F_AE = 12").mistakes
    assert mistake.code == "arithmetic"
    assert "“3 F_AE + 2 F_EF − 61 = 0” does not hold" in mistake.text
    assert "“3 F_AE + 2 F_EF − 61 = 0”" in mistake.place


@pytest.mark.parametrize(
    "text",
    ["A ↑: 4/5 F_AE + 14 = 0 ⇒ F_AE = −17.5", "about B: 4 F_EF + 14·3 + 9·4 = 0 → F_EF = −19.5"],
)
def test_a_right_sum_with_its_value_is_right(text: str) -> None:
    assert told("AE" if "AE" in text else "EF", text).right


@pytest.mark.parametrize(
    "text", ["4/5 F_AE = −14, so F_AE = −14·4/5 = −11.2", "4/5 F_AE = −14, F_AE = −11.2"]
)
def test_a_factor_multiplied_by_goes_before_a_number_that_is_found_elsewhere_too(text: str) -> None:
    assert named("AE", text, {**FOUND, "CF": "11.2"}) == [("component", "AE")]


def test_a_reaction_that_is_what_another_support_does_is_the_value_of_something_else() -> None:
    (mistake,) = told("D_y", "D_y = 14 kN", {}).mistakes
    assert mistake.code == "carried"
    assert "your result" not in mistake.place
    assert named("D_y", "D_y = 19.5 kN", {}) == [("symmetry", "D_y")]
    assert named("D_y", "D_y = 17 kN", {}) == [("arithmetic", "D_y")]


def test_a_number_in_brackets_at_the_end_is_a_factor_where_that_leaves_fewer_mistakes() -> None:
    text = "9 D_y = 15(3) + 24(3) + 9(4)"
    assert [(m.code, m.force) for m in judge(SLIP, M("A"), text).mistakes] == [
        ("arm-from", "load C")
    ]


@pytest.mark.parametrize(
    ("unknown", "text", "slip"),
    [
        ("AB", "A →: F_AB = −3/5 F_AE = 12", ("missing", "A_x")),
        ("AB", "F_AB = 9 − 4/5 F_AE = 20", ("component", "AE")),
        ("AE", "A ↑: F_AE = −3/5 A_y = −9", ("component", "AE")),
    ],
)
def test_what_forces_are_set_equal_to_is_judged_before_the_number_that_does_not_follow(
    unknown: str, text: str, slip: tuple[str, str]
) -> None:
    verdict = told(unknown, text)
    assert "first part is right" not in verdict.text
    assert [(m.code, m.force) for m in verdict.mistakes][:1] == [slip] or unknown == "AE"


def test_a_first_part_that_is_right_is_said_to_be_and_the_number_behind_it_not_to_follow() -> None:
    verdict = told("AB", "A →: F_AB = 9 − 3/5 F_AE = 12")
    assert verdict.text.startswith("The first part is right")


def test_a_number_that_follows_in_another_unit_than_is_written_behind_it_is_told_by_its_unit() -> (
    None
):
    (mistake,) = told("AB", "F_AB = 9 − 3/5 F_AE = 19.5 N").mistakes
    assert (mistake.code, mistake.force) == ("unit", "AB")
    assert "comes out in kN" in mistake.text


@pytest.mark.parametrize(
    ("text", "alike"),
    [
        ("9 D_y = 24(3) + 12(9)", ()),
        ("9 D_y = 12(6) + 24(5)", ()),
        ("9 D_y = 72 + 108", ("load B",)),
    ],
)
def test_a_product_that_shows_its_load_is_told_of_no_other_of_the_same_moment(
    text: str, alike: tuple[str, ...]
) -> None:
    loads = [Load("B", (("down", exact(24)),)), Load("C", (("down", exact(12)),))]
    mistakes = judge(replace(SLIP, loads=tuple(loads)), M("A"), text).mistakes
    assert [mistake.alike for mistake in mistakes] == [alike]


def test_of_two_loads_at_a_joint_the_one_that_is_counted_twice_is_told() -> None:
    problem = plain_problem(
        [("A", 0, 0), ("B", 48, 0), ("C", 24, -20)],
        ("AB", "AC", "BC"),
        [Support("A", "pin"), Support("C", "roller")],
        [Load("A", (("up", exact(5)),)), Load("A", size=exact(36), angle=exact(135))],
    )
    text = "-48*5 - 36(33.941) - 48 A_y - 33.941*36 = 24 C_y"
    (mistake,) = judge(problem, M("B"), text).mistakes
    assert (mistake.code, mistake.force) == ("double", "load A")


@pytest.mark.parametrize(
    ("text", "kind", "codes"),
    [
        ("F_AE = -17.5 kN T, so F_AE = 17.5 kN T", "wrong", ["tension-compression"]),
        ("F_AE = -17.5 kN, pulled, so 17.5 kN T", "wrong", ["tension-compression"]),
        ("F_AE = -17.5 kN in tension, that is 17.5 kN T", "wrong", ["tension-compression"]),
        ("F_AE = -17.5 kN T, so F_AE = 17.5 kN C", "undecided", []),
        ("F_AE = -17.5 kN T, F_AE = -17.5", "undecided", []),
        ("F_BE = -14 kN T, so F_AE = 17.5 kN C", "undecided", []),
        ("F_AE = -17.5 kN C, so F_AE = 17.5 kN C", "right", []),
    ],
)
def test_a_value_before_another_with_a_minus_against_its_letter_is_never_said_not_to_hold(
    text: str, kind: str, codes: list[str]
) -> None:
    verdict = told("AE", text, {})
    assert verdict.kind == kind
    assert [mistake.code for mistake in verdict.mistakes] == codes

"""Words beside a right line that are not so are told, and give nothing away that is not found yet."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from families import exact

from tutor import Along, Fx, Fy, M, Value, judge, load_problem, solve
from tutor.model import Load

QUAY = load_problem(Path(__file__).parents[1] / "notation" / "hands" / "quay.toml")
TRUE = dict(solve(QUAY).values)
FOUND = {"CD": -35, "A_y": 15, "BC": 28, "AB": 28, "A_x": -8}


def said(about, text: str, known=None) -> str:
    """The remarks on a line that is right, as one text."""
    verdict = judge(QUAY, about, text, known=known)
    assert verdict.right, verdict.text
    return " ".join(remark.text for remark in verdict.remarks)


@pytest.mark.parametrize(
    ("text", "truth"),
    [
        ("F_BD = 12, since CD is in tension", "CD is in compression"),
        ("F_BD = 12 (CD is a tie)", "CD is in compression"),
        ("F_BD = 12, as CD and BD are in tension", "CD is in compression"),
        ("F_BD = 12 since CD is zero", "CD is in compression"),
        ("F_BD = 12, because A_y acts down", "A_y acts the other way"),
        ("F_BD = 12, because A_y is 16", "A_y is 15 kN"),
        ("F_BD = 12, where CD is a strut of 25 kN", "CD is -35 kN"),
        ("F_BD = 12, because the load is 30", "no load of that size is given"),
        ("F_BD = 12, because the load at D is 12", "no load at D of that size is given"),
        ("F_BD = 12 (the load at B is 24 kN)", "no load at B of that size is given"),
        ("F_BD = 12, weil die Last 30 ist", ""),
        ("F_BD = 12 (CD is a zero bar)", "CD is in compression"),
        ("F_BD = 12 (CD is zero, nothing hangs on it)", "CD is in compression"),
        ("F_BD = 12, since BC is a strut", "BC is in tension"),
        ("bd = 12, since cd is in tension", "CD is in compression"),
        ("bd = 12, as cd is zero", "CD is in compression"),
        ("F_BD = 12, as A_y is zero", "A_y is not zero"),
        ("F_BD = 12, as A_x acts to the right", "A_x acts the other way"),
        ("F_BD = 12, where CD is a strut of 35.4 kN", "CD is -35 kN"),
        ("F_BD = 12, because A_y is 15.3", "A_y is 15 kN"),
        ("F_BD = 12, because the load at B is 12.1", "no load at B of that size is given"),
    ],
)
def test_a_reason_that_is_not_so_is_told_with_what_is_so(text: str, truth: str) -> None:
    told = said(Value("BD"), text, FOUND)
    assert truth in told
    assert told


LIGHT = replace(
    QUAY,
    force="MN",
    loads=(
        Load("D", (("down", exact(Fraction(24, 1000))), ("right", exact(Fraction(8, 1000))))),
        Load("B", (("down", exact(Fraction(12, 1000))),)),
    ),
)
"""The same in meganewtons."""


@pytest.mark.parametrize("way", ["up", "down"])
@pytest.mark.parametrize("reaction", ["A_y", "C_y"])
def test_the_way_of_a_reaction_is_told_however_small_the_loads_are(reaction: str, way: str) -> None:
    for truss in (QUAY, LIGHT):
        values = dict(solve(truss).values)
        verdict = judge(
            truss, Value("BD"), f"{values['BD']:g}, as {reaction} acts {way}", known=values
        )
        assert verdict.right
        assert ["acts the other way" in said.text for said in verdict.remarks] == [True] * (
            way == "down"
        )


@pytest.mark.parametrize(
    "text",
    [
        "F_BD = 12, since CD is in compression",
        "F_BD = 12 (CD is a strut)",
        "F_BD = 12, because the load at B is 12",
        "F_BD = 12, because the load is 12 kN",
        "F_BD = 12, because A_y is 15",
        "F_BD = 12, as A_y acts up",
        "F_BD = 12, CD is a strut of 35 kN",
        "F_BD = 12, so BD is in tension",
        "F_BD = 12, since AB is also a tie",
        "F_BD = 12, as A_x acts to the left",
        "F_BD = 12, where CD is a strut of 35.3 kN",
        "F_BD = 12, because A_y is 15.1",
        "F_BD = 12, because the load is 25.3",
        "F_BD = 12, because the load at B is 12.05",
    ],
)
def test_a_reason_that_is_so_costs_nothing(text: str) -> None:
    assert not said(Value("BD"), text, FOUND)


@pytest.mark.parametrize("text", ["F_BD = 12, since 0.6 CD is 21", "F_BD = 12 (as 0.6 CD is 21)"])
def test_of_a_part_of_a_force_nothing_is_held_against_the_whole(text: str) -> None:
    assert "is not so" not in said(Value("BD"), text, FOUND)


@pytest.mark.parametrize("name", sorted(set(QUAY.member) - {"BD"}))
def test_of_a_force_not_found_yet_the_same_is_said_of_a_true_and_of_a_false_reason(
    name: str,
) -> None:
    told = {
        way: said(Value("BD"), f"F_BD = 12, since {name} is in {way}")
        for way in ("tension", "compression")
    }
    assert told["tension"].replace("tension", "compression") == told["compression"]
    assert f"{name} is not found yet" in told["tension"]


@pytest.mark.parametrize(
    "text",
    [
        "A_x + F_AB + 0.8 F_AD = 0 (AD drawn in tension)",
        "A_x + F_AB + 0.8 F_AD = 0, taking AD in tension",
        "A_x + F_AB + 0.8 F_AD = 0, if AD is in tension",
    ],
)
def test_how_a_force_is_drawn_or_taken_is_no_reason(text: str) -> None:
    assert "not so" not in said(Fx(joint="A"), text, {"AD": -25})


def test_a_false_reason_never_makes_a_right_line_wrong_nor_a_wrong_one_right() -> None:
    for line in ("A_y + 0.6 F_AD = 0", "A_y - 0.6 F_AD = 0"):
        for reason in ("since CD is in tension", "because the load is 30", "as A_y is 3"):
            plain = judge(QUAY, Fy(joint="A"), line, known=FOUND)
            given = judge(QUAY, Fy(joint="A"), f"{line}, {reason}", known=FOUND)
            assert given.kind == plain.kind, (line, reason)
            assert given.mistakes == plain.mistakes or plain.right


@pytest.mark.parametrize(
    "text",
    [
        "F_BD = 12 (arm of the load = AB = 4)",
        "F_BD = 12 (AB is 4 m long)",
        "F_BD = 12, the distance AD is 5",
        "F_BD = 12, as AB = 4 m",
        "F_BD = 12 (AD left out)",
    ],
)
def test_a_length_or_what_is_left_out_is_not_taken_for_what_a_force_does(text: str) -> None:
    told = said(Value("BD"), text, FOUND)
    assert "not so" not in told
    assert "not looked at" not in told


# EH is a member here, and spelled as "he" and "the" are.
CHAPEL = load_problem(Path(__file__).parents[1] / "paper" / "more" / "lecterns-chapel.toml")


@pytest.mark.parametrize(
    "text",
    [
        "F_DH = -900, since the strut is in compression",
        "F_DH = -900 (the strut is in compression)",
        "F_DH = -900: The strut is in compression",
        "the force in DH is -900, the strut is in compression",
    ],
)
def test_an_everyday_word_is_no_member_though_one_is_spelled_as_it_is(text: str) -> None:
    verdict = judge(CHAPEL, Value("DH"), text, known={"EH": 600})
    assert verdict.right
    assert not any("EH" in remark.text for remark in verdict.remarks)


def test_a_member_written_in_small_letters_in_the_line_is_one_in_its_words_too() -> None:
    small, large = "600 + he + 0.5 de + 0.5 ef = 0", "600 + F_EH + 0.5 F_DE + 0.5 F_EF = 0"
    kinds = [
        judge(CHAPEL, Fy(joint="E"), f"{line}, as he is in compression", known={"EH": 600}).kind
        for line in (small, large)
    ]
    assert kinds == ["undecided", "right"]


@pytest.mark.parametrize("sign", ["⊥", "⟂"])
def test_the_signs_for_square_to_are_read_alike(sign: str) -> None:
    verdict = judge(
        CHAPEL, Along(120.0, joint="D"), f"D, {sign} to rafter: −F_DH cos 30° − 900 cos 30° = 0"
    )
    assert verdict.right
    assert not verdict.remarks


def test_a_value_with_its_letter_needs_no_word_on_how_it_was_read() -> None:
    assert "Read with" not in said(Value("CD"), "CD = 35 kN, pushing, so 35 kN (C)", {"C_y": 21})


@pytest.mark.parametrize("way", ["the rafter", "the slope"])
def test_a_heading_along_the_rafter_is_not_read_along_a_member_spelled_the(way: str) -> None:
    text = f"D, perpendicular to {way}: −F_DH cos 30° − 900 cos 30° = 0"
    verdict = judge(CHAPEL, Along(120.0, joint="D"), text)
    assert verdict.right
    assert "heading" not in {remark.code for remark in verdict.remarks}


@pytest.mark.parametrize(
    ("senses", "text"),
    [
        ({"A_x": "left"}, "8 - A_x = 0, I drew A_x to the left"),
        ({"A_x": "left"}, "8 - A_x = 0 (A_x drawn to the left)"),
        ({"A_x": "left"}, "I've drawn A_x against the wind, so 8 - A_x = 0"),
        ({}, "8 + A_x = 0 (A_x drawn to the right)"),
    ],
)
def test_that_an_arrow_is_drawn_as_it_is_needs_no_remark(senses, text: str) -> None:
    verdict = judge(QUAY, Fx(), text, senses=senses)
    assert verdict.right
    assert not verdict.remarks


def test_that_an_arrow_is_drawn_otherwise_than_the_line_has_it_is_asked_about() -> None:
    verdict = judge(QUAY, Fx(), "8 - A_x = 0 (A_x drawn to the right)", senses={"A_x": "left"})
    assert verdict.kind == "undecided"
    assert "A_x acts to the right" in verdict.text


@pytest.mark.parametrize(
    "text",
    [
        "A ↑: A_y + 0.6 F_AD = 0, over at the wall on the left hand it is as before",
        "A ↑: 15 + 0.6 F_AD = 0 (two along, two up: 45°) ⇒ F_AD = -25",
    ],
)
def test_a_heading_of_a_line_read_in_part_is_not_said_to_be_passed_over(text: str) -> None:
    verdict = judge(QUAY, Fy(joint="A"), text, known={"A_y": 15})
    assert verdict.right
    assert not any("A ↑" in remark.text for remark in verdict.remarks)
    assert "heading" not in {remark.code for remark in verdict.remarks}


def test_a_heading_of_a_line_read_in_part_that_names_another_sum_is_told() -> None:
    text = "A →: A_y + 0.6 F_AD = 0 (two along, two up: 45°) ⇒ F_AD = -25"
    verdict = judge(QUAY, Fy(joint="A"), text, known={"A_y": 15})
    assert verdict.right
    assert "heading" in {remark.code for remark in verdict.remarks}


@pytest.mark.parametrize(
    "aside", ["H_B goes through D", "C lies on the line of the stay", "the wall gives no arm"]
)
def test_what_stands_in_brackets_behind_a_heading_names_no_other_sum(aside: str) -> None:
    verdict = judge(QUAY, M("A"), f"ΣM_A ({aside}): 8 C_y - 24(4) - 8(3) - 12(4) = 0")
    assert verdict.right
    assert [remark.text for remark in verdict.remarks] == [
        f"Passed over without being read: “({aside})”."
    ]


@pytest.mark.parametrize("text", ["F_BD = 12, is CD in tension?", "F_BD = 12, CD in tension?"])
def test_a_question_claims_nothing(text: str) -> None:
    assert not said(Value("BD"), text, FOUND)

"""Is a line that copying has taken apart judged as the line it was, whether right or wrong?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fx, Fy, M, Value, judge, load_problem

HANDS = Path(__file__).parents[1] / "notation" / "hands"
QUAY = load_problem(HANDS / "quay.toml")
RAMP = load_problem(HANDS / "ramp.toml")
FOUND = {"A_x": "-8", "A_y": "15", "AD": "-25", "CD": "-35"}
A_X, A_Y = Fx(joint="A"), Fy(joint="A")
SUMS = [
    (A_X, ("A_x", "+F_AB", "+0,8*F_AD"), "0"),
    (A_X, ("-8", "+F_AB", "+0,8*F_AD"), "0"),
    (A_X, ("+F_AB", "+0,8*F_AD"), "8"),
    (A_X, ("A_x", "-F_AB", "+0,8*F_AD"), "0"),
    (A_X, ("A_x", "+F_AB", "+0,6*F_AD"), "0"),
    (A_Y, ("F_AD", "*0,6", "+15"), "0"),
    (A_Y, ("F_AD", "*0,8", "+15"), "0"),
    (Fx(), ("A_x", "+8"), "0"),
    (Fx(), ("A_x", "-8"), "0"),
    (Value("AB"), ("AB", "20", "+8"), "28"),
    (Value("AB"), ("AB", "20", "+8"), "26"),
]
WORKED = [
    ("AD", "-15/sin(36,87) = -25"),
    ("AD", "-15/sin(53,13) = -18,75"),
    ("CD", "-21*5/3 = -35"),
    ("CD", "-21*3/5 = -12,6"),
    ("CD", "21*5/3 = 35"),
]
LETTERS = [
    ("{s} + F_AB + c F_AD = 0", "s=3/5 c=4/5", True),
    ("{s} + F_AB + s F_AD = 0", "s=3/5 c=4/5", False),
    ("{s} + F_AB + c F_AD = 0", "s=4/5 c=3/5", False),
]


def said(about, text: str, problem=QUAY) -> tuple:
    verdict = judge(problem, about, text, known=FOUND if problem is QUAY else None)
    return verdict.kind, [(mistake.code, mistake.force) for mistake in verdict.mistakes]


@pytest.mark.parametrize("lead", ["", "3.\t"])
@pytest.mark.parametrize(("about", "cells", "right"), SUMS)
def test_a_sum_split_over_cells_is_judged_as_the_sum_in_one(about, cells, right, lead) -> None:
    if lead and isinstance(about, Value):
        return
    alone = [cells[0], "= " + " ".join(cells[1:])] if isinstance(about, Value) else list(cells)
    row = "\t".join([*cells, "=", right])
    assert said(about, f"{lead}{row}") == said(about, f"{' '.join(alone)} = {right}")


@pytest.mark.parametrize(("name", "work"), WORKED)
def test_a_working_headed_by_its_member_is_that_of_its_value(name: str, work: str) -> None:
    assert said(Value(name), f"{name}: {work}") == said(Value(name), f"{name} = {work}")


@pytest.mark.parametrize(("text", "letters", "right"), LETTERS)
def test_two_letters_are_brought_in_with_a_comma_or_without(text, letters, right) -> None:
    line = text.format(s="A_x")
    apart = said(A_X, f"{letters}: {line}")
    assert apart == said(A_X, f"{letters.replace(' ', ', ')}: {line}")
    assert (apart[0] == "right") is right


@pytest.mark.parametrize("factor", ["0.6", "0.8"])
def test_a_number_broken_at_its_point_is_that_number(factor: str) -> None:
    broken = said(A_Y, f"A y + {factor.replace('.', ' .')} F AD = 0")
    assert broken == said(A_Y, f"A_y + {factor} F_AD = 0")


@pytest.mark.parametrize("text", ["3 .5 F_AD + A_y = 0", "A_y + F_AD 12 .6 = 0"])
def test_two_numbers_that_may_be_a_product_are_asked_about(text: str) -> None:
    assert said(A_Y, text)[0] == "unreadable"


@pytest.mark.parametrize(
    ("value", "kind"),
    [("0.00", "right"), ("0", "right"), ("12", "unreadable"), ("4.0", "unreadable")],
)
def test_a_dash_for_the_letter_says_nothing_beside_nothing_alone(value: str, kind: str) -> None:
    assert said(Value("PQ"), f"PQ\t{value}\tN\t–", RAMP)[0] == kind


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("A ↑: AD pushes down with V = (3/5)(25) = 15, A_y − V = 0", True),
        ("A ↑: AD pushes down with V = (4/5)(25) = 20, A_y − V = 0", False),
        ("A ↑: AD pulls up with V = (3/5)(25) = 15, A_y + V = 0", False),
        ("A_y + V = 0, where V = (3/5)F_AD = −15 ∴ A_y = 15", True),
        ("A_y − V = 0, where V = (3/5)F_AD = −15 ∴ A_y = −15", False),
        ("A_y + V = 0, where V = (3/5)F_AD = −25 ∴ A_y = 25", False),
    ],
)
def test_a_share_that_goes_by_a_letter_is_judged_as_the_share(text: str, right: bool) -> None:
    assert (said(A_Y, text)[0] == "right") is right


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("8C_y - 12x4 - 24x4 - 8x3 = 0, the 8 is level but D is high", True),
        ("8C_y - 12x4 - 24x4 = 0, the 8 is horizontal so no moment", False),
    ],
)
def test_numbers_with_x_for_times_stay_numbers_beside_an_aside(text: str, right: bool) -> None:
    kind, mistakes = said(M("A"), text)
    assert kind == ("right" if right else "wrong")
    assert mistakes == ([] if right else [("missing", "load D x")])


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("A_x = -8 so it pulls to the left", "right"),
        ("A_x = 8 so it pulls back to the left", "right"),
        ("A_x = 8 so it pushes to the right", "wrong"),
        ("A_x = -8 so it pushes to the right", "undecided"),
    ],
)
def test_pulls_and_pushes_before_a_way_say_that_way(text: str, kind: str) -> None:
    assert said(Value("A_x"), text)[0] == kind


@pytest.mark.parametrize(("way", "kind"), [("pulls", "right"), ("pushes", "wrong")])
def test_pulls_and_pushes_of_a_member_stay_tension_and_compression(way: str, kind: str) -> None:
    assert said(Value("BD"), f"F_BD = 12 {way}")[0] == kind


def test_a_number_that_may_be_of_the_row_or_of_the_sum_is_asked_about() -> None:
    assert said(A_X, "3\t+F_AB + 0,8*F_AD = 8")[0] == "right"
    assert said(A_X, "3\t+F_AB\t+0,8*F_AD\t=\t8")[0] == "unreadable"
    assert said(A_X, "-8\t+F_AB\t+0,8*F_AD\t=\t0")[0] == "right"

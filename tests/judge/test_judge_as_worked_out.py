"""Is a wrong line told by what its working shows: arrows, values put in, letters, units and likenesses?

The trusses and lines are our own; what is said of each is common practice, no source.
"""

from __future__ import annotations

import pytest
from families import exact, plain_problem, root

from tutor.judge import Asked, Fx, Fy, M, Value, judge
from tutor.judge.verdict import Verdict
from tutor.model import Load, Problem, Support

AWNING = plain_problem(
    [("A", 0, 0), ("B", 3, 0), ("C", 6, 0), ("D", 3, 4)],
    ("AB", "BC", "AD", "BD", "CD"),
    [Support("A", "pin"), Support("C", "roller")],
    [Load("B", (("down", exact(20)),)), Load("D", (("right", exact(9)),))],
)
"""A_x = -9, A_y = 4, C_y = 16; AD = -5, AB = 12, CD = -20, BC = 12, BD = 20."""
GABLE = plain_problem(
    [("A", 0, 0), ("B", 8, 0), ("C", 4, 3), ("D", 4, 0)],
    ("AC", "BC", "AD", "BD", "CD"),
    [Support("A", "pin"), Support("B", "roller")],
    [Load("C", (("right", exact(4)), ("down", exact(12)))), Load("D", (("down", exact(6)),))],
)
"""A_x = -4, A_y = 7.5, B_y = 10.5; AC = -12.5, BC = -17.5, AD = BD = 14, CD = 6."""
BRACKET = plain_problem(
    [("A", 0, 3), ("B", 0, 0), ("C", 4, 0)],
    ("AB", "AC", "BC"),
    [Support("A", "pin"), Support("B", "roller", angle=exact(0))],
    [Load("C", (("left", exact(5)), ("down", exact(9))))],
)
"""AC = 15, BC = -17, B_x = 17."""


WIND = plain_problem(
    [("A", 0, 0), ("B", 8, 0), ("C", 2, root(12))],
    ("AB", "AC", "BC"),
    [Support("A", "pin"), Support("B", "roller")],
    [Load("C", size=exact(10), angle=exact(330))],
)
"""The load is square to AC, 4 m from A."""


def named(verdict: Verdict) -> list[tuple[str, str | None]]:
    return [(mistake.code, mistake.force) for mistake in verdict.mistakes]


@pytest.mark.parametrize(
    ("truss", "about", "text", "known", "senses", "force"),
    [
        (AWNING, Fx("D"), "9 - 0.6 AD + 0.6(20) = 0", {"CD": "20"}, {"CD": "C"}, "CD"),
        (AWNING, Fx("A"), "9 + AB + 0.6 AD = 0", {"A_x": "9"}, {"A_x": "left"}, "A_x"),
        (GABLE, Fx("A"), "A_x + 0.8(12.5) + AD = 0", {"AC": "12.5"}, {"AC": "C"}, "AC"),
        (GABLE, Fy("B"), "B_y + 0.6(17.5) = 0", {"BC": "17.5"}, {"BC": "C"}, "BC"),
        (BRACKET, Fx("B"), "B_x + 17 = 0", {"BC": "17"}, {"BC": "C"}, "BC"),
    ],
)
def test_a_result_without_a_minus_that_goes_against_its_arrow_is_told_by_the_arrow(
    truss: Problem,
    about: Asked,
    text: str,
    known: dict[str, str],
    senses: dict[str, str],
    force: str,
) -> None:
    assert named(judge(truss, about, text, known=known, senses=senses)) == [("sense", force)]


@pytest.mark.parametrize(
    ("truss", "about", "text", "force", "value"),
    [
        (AWNING, Fx("C"), "-BC - 0.6(20) = 0", "CD", "20"),
        (GABLE, Fx("B"), "-BD - 0.8(17.5) = 0", "BC", "17.5"),
        (GABLE, Fx("C"), "4 - 12.5(0.8) + 0.8 BC = 0", "AC", "12.5"),
    ],
)
def test_a_result_turned_on_the_diagram_and_once_more_is_told_by_its_minus(
    truss: Problem, about: Asked, text: str, force: str, value: str
) -> None:
    verdict = judge(truss, about, text, known={force: value}, senses={force: "C"})
    assert named(verdict) == [("minus", force)]
    assert "once too often" in verdict.text


@pytest.mark.parametrize(
    ("truss", "about", "text", "known", "force"),
    [
        (AWNING, Fy("B"), "BD - 20 + 4 = 0", {"A_y": "4"}, "A_y"),
        (AWNING, Fy("D"), "-BD - 0.8 AD - 0.8 CD + 16 = 0", {"C_y": "16"}, "C_y"),
        (GABLE, Fy("D"), "CD - 6 + 7.5 = 0", {"A_y": "7.5"}, "A_y"),
        (GABLE, Fy("C"), "-12 - CD - 0.6 AC - 0.6 BC + 10.5 = 0", {"B_y": "10.5"}, "B_y"),
        (GABLE, Fy("A"), "7.5 + 10.5 + 0.6 AC = 0", {"A_y": "7.5", "B_y": "10.5"}, "B_y"),
    ],
)
def test_the_number_of_a_reaction_found_elsewhere_is_told_as_that_reaction(
    truss: Problem, about: Asked, text: str, known: dict[str, str], force: str
) -> None:
    assert named(judge(truss, about, text, known=known)) == [("stray-reaction", force)]


def test_a_load_of_another_joint_is_no_second_time_of_a_product_that_comes_to_as_much() -> None:
    known = {"AC": "-12.5", "BC": "-20"}
    text = "-12 - CD - 0.6(-12.5) - 0.6(-20) - 6 = 0"
    (mistake,) = judge(GABLE, Fy("C"), text, known=known).mistakes
    assert (mistake.code, mistake.force) == ("stray-load", "load D")


@pytest.mark.parametrize(
    ("truss", "force", "text", "code"),
    [
        (GABLE, "AD", "AD = 12.5*0.8 = 10 T", "missing"),
        (AWNING, "AB", "AB = 5*0.6 = 3 T", "missing"),
        (AWNING, "AB", "AB = 6 kN T (9 - 3)", "minus"),
        (GABLE, "AD", "AD = 10 - 4 = 6 kN T", "minus"),
        (GABLE, "CD", "CD = 7.5 + 10.5 = 18 kN T", "missing"),
    ],
)
def test_the_working_of_a_value_is_told_by_its_slip_though_no_value_was_recorded(
    truss: Problem, force: str, text: str, code: str
) -> None:
    (mistake,) = judge(truss, Value(force), text).mistakes
    assert mistake.code == code


@pytest.mark.parametrize(
    ("truss", "about", "text", "known", "force"),
    [
        (AWNING, Fx("A"), "AB = 9 - 0.6 AD = 9 - 0.6(-4) = 11.4", {"A_x": "-9", "AD": "-5"}, "AD"),
        (
            AWNING,
            Fx("A"),
            "A_x + AB + 0.6 AD = 0, AB = 9 + 0.6(4) = 11.4",
            {"A_x": "-9", "AD": "-5"},
            "AD",
        ),
        (AWNING, Fx("C"), "BC = -0.6 CD = -0.6(-16) = 9.6", {"CD": "-20"}, "CD"),
        (GABLE, Fx("B"), "BD = -0.8 BC = -0.8(-10.5) = 8.4", {"BC": "-17.5"}, "BC"),
        (GABLE, Fx("B"), "BD + 0.8 BC = 0, BD = 0.8(12.5) = 10", {"BC": "-17.5"}, "BC"),
    ],
)
def test_another_number_put_in_for_a_result_on_the_way_is_told_as_that(
    truss: Problem, about: Asked, text: str, known: dict[str, str], force: str
) -> None:
    assert named(judge(truss, about, text, known=known)) == [("carried", force)]


@pytest.mark.parametrize("wrong", ["AB = 12 kN = 1200 N", "AB = 24/2 = 12 kN = 120 N"])
def test_the_same_figures_in_another_unit_with_the_point_elsewhere_are_told_by_the_unit(
    wrong: str,
) -> None:
    assert named(judge(AWNING, Value("AB"), wrong)) == [("unit", "AB")]
    assert judge(AWNING, Value("AB"), wrong.split(" = 12")[0] + " = 12 kN = 12000 N").right


def test_other_figures_in_another_unit_are_no_slip_of_the_unit() -> None:
    assert named(judge(AWNING, Value("AB"), "AB = 12 kN = 1300 N")) == [("arithmetic", None)]


@pytest.mark.parametrize(
    ("truss", "force", "text", "code"),
    [
        (AWNING, "A_y", "A_y = 16 kN up (same as C_y by symmetry)", "symmetry"),
        (GABLE, "AC", "AC = 17.5 kN C, same as BC by symmetry", "symmetry"),
        (GABLE, "B_y", "B_y = 7.5 (same as A_y, by symmetry)", "symmetry"),
        (AWNING, "AD", "AD = 20 kN C, same as CD", "symmetry"),
        (AWNING, "AD", "AD = 12 kN T, same as AB", "carried"),
        (GABLE, "CD", "CD = 14 kN T (same as AD)", "carried"),
    ],
)
def test_a_value_said_to_be_the_same_as_another_that_it_is_not_is_told_by_that(
    truss: Problem, force: str, text: str, code: str
) -> None:
    verdict = judge(truss, Value(force), text)
    assert named(verdict) == [(code, force)]


def test_a_value_that_is_the_same_as_another_is_right() -> None:
    assert judge(GABLE, Value("BD"), "BD = 14 kN T (same as AD)").right
    assert judge(AWNING, Value("BC"), "BC = 12 kN T, same as AB").right


@pytest.mark.parametrize(
    ("truss", "about", "text", "known", "forces"),
    [
        (AWNING, Fy("C"), "CD = 16 × 5/4 = 20 kN (T)", {"C_y": "16"}, {"CD", "C_y"}),
        (GABLE, Fy("A"), "AC = 7.5/0.6 = 12.5 T", {"A_y": "7.5"}, {"AC", "A_y"}),
        (GABLE, Fy("B"), "BC = 10.5/0.6 = 17.5 kN tension", {"B_y": "10.5"}, {"BC", "B_y"}),
        (GABLE, Fx(), "A_x = 8/2 = 4 kN →", {}, {"A_x", "load C x"}),
    ],
)
def test_a_letter_that_says_what_its_working_says_leaves_the_slip_in_the_sum(
    truss: Problem, about: Asked, text: str, known: dict[str, str], forces: set[str]
) -> None:
    (mistake,) = judge(truss, about, text, known=known).mistakes
    assert mistake.code == "sign"
    assert {mistake.force, *mistake.alike} == forces


@pytest.mark.parametrize(
    "text",
    [
        "8 B_y - 10(2) = 0",
        "8 B_y - 10(3.464) = 0",
        "B_y(8) = 2*10",
        "10*3.464 = 8 B_y",
        "-8 B_y + 10*2 = 0",
    ],
)
def test_a_load_square_to_the_line_from_the_point_has_its_arm_wrong_and_needs_no_component(
    text: str,
) -> None:
    (mistake,) = judge(WIND, M("A"), text).mistakes
    assert (mistake.code, mistake.force) == ("arm", "load C")
    assert judge(WIND, M("A"), "8 B_y - 10(4) = 0").right

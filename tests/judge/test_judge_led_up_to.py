"""Is a line right by its own value, whatever leads up to it: a likeness, a length, a shear, a slope, a sum broken off?

Two trusses of our own. GABLE is alike on both sides: A_y = B_y = 9, AC = BC = -15, AD = BD = 12, CD = 6.
BRIDGE is not: A_y = 12.5, E_y = 17.5, AB = -15.625, BC = 3.125, CD = -3.125, AC = 9.375.
"""

from __future__ import annotations

from typing import Any

import pytest
from families import down, plain_problem

from tutor.judge import Fx, Fy, M, Value, Verdict, judge
from tutor.model import Support

GABLE = plain_problem(
    [("A", 0, 0), ("B", 8, 0), ("C", 4, 3), ("D", 4, 0)],
    ("AC", "BC", "AD", "BD", "CD"),
    [Support("A", "pin"), Support("B", "roller")],
    [down("C", 12), down("D", 6)],
)
BRIDGE = plain_problem(
    [("A", 0, 0), ("B", 3, 4), ("C", 6, 0), ("D", 9, 4), ("E", 12, 0)],
    ("AB", "AC", "BC", "BD", "CD", "CE", "DE"),
    [Support("A", "pin"), Support("E", "roller")],
    [down("B", 10), down("D", 20)],
)
KNOWN = {id(GABLE): {"A_y": 9, "AC": -15, "AD": 12}, id(BRIDGE): {"A_y": 12.5}}


def verdict_on(truss: Any, about: Any, text: str) -> Verdict:
    return judge(truss, about, text, known=KNOWN[id(truss)])


def code_of(truss: Any, about: Any, text: str) -> str:
    """The mistake that is named, or else the kind of the verdict."""
    verdict = verdict_on(truss, about, text)
    return verdict.mistakes[0].code if verdict.mistakes else verdict.kind


@pytest.mark.parametrize(
    ("force", "text", "code"),
    [
        ("B_y", "B_y same as A_y, 9 kN ↑", "right"),
        ("B_y", "B_y: the same as A_y by symmetry, so 9 kN up", "right"),
        ("BC", "BC same as AC, 15 kN C", "right"),
        ("BC", "BC is equal to AC = -15 kN", "right"),
        ("BD", "BD = same as AD, 12 T", "right"),
        ("B_y", "B_y same as A_y, 9 kN ↓", "sign"),
        ("BC", "BC same as AC, 15 kN T", "tension-compression"),
        ("BD", "BD: same as AD by symmetry, 12 kN C", "tension-compression"),
        ("CD", "CD same as AD, 12 kN T", "carried"),
        ("BD", "BD same as AC by symmetry, 15 kN T", "symmetry"),
        ("BC", "BC same as AC", "unreadable"),
    ],
)
def test_a_value_given_by_its_likeness_is_that_of_the_force_named_first(
    force: str, text: str, code: str
) -> None:
    assert code_of(GABLE, Value(force), text) == code


@pytest.mark.parametrize(
    ("about", "text", "code"),
    [
        (Fx("C"), "BC same as AC, 15 kN C", "right"),
        (Fx("D"), "BD same as AD = 12 kN T, straight through", "right"),
        (Fx("D"), "BD: same as AD by symmetry, 12 kN T", "right"),
        (Fx("D"), "CD same as AD = 12 kN T", "extra"),
        (Fy("C"), "BC same as AC, 15 kN C", "other-equation"),
        (Fx("A"), "AC same as AD, 12 kN T", "whole-force"),
    ],
)
def test_a_likeness_is_the_sum_of_a_joint_that_shows_it(about: Any, text: str, code: str) -> None:
    assert code_of(GABLE, about, text) == code


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("AC | 5 m | 15 kN | C", "right"),
        ("| AC | 5 m | 15 | C |", "right"),
        ("AC\t5 m\t-15 kN", "right"),
        ("AC | 15 kN | 5 m | C", "right"),
        ("AC, 5 m, 15 kN C", "right"),
        ("AC | 5 m | 15 kN | T", "tension-compression"),
        ("AC | 5 m | -9 kN", "whole-force"),
        ("AC | 5 m | C", "unreadable"),
        ("AC | 5 | 15 kN | C", "unreadable"),
        ("AC | 5 m | 15 kN | 9 kN | C", "unreadable"),
    ],
)
def test_a_column_with_the_length_of_a_member_is_no_second_number(text: str, code: str) -> None:
    assert code_of(GABLE, Value("AC"), text) == code


@pytest.mark.parametrize(
    ("force", "text", "code"),
    [
        ("BC", "Shear right of B = 12.5 - 10 = 2.5 kN, BC = 2.5/0.8 = 3.125 kN (T)", "right"),
        ("BC", "Panel shear = 12.5 - 10 = 2.5 kN = 0.8 F_BC, hence F_BC = 3.125 kN T", "right"),
        ("CD", "The shear in section 2 is 17.5 - 20 = -2.5 kN, CD = -2.5/0.8 = -3.125", "right"),
        ("BC", "Shear right of B = 12.5 - 10 = 2.5 kN, BC = 2.5/0.6 = 4.17 kN (T)", "component"),
        (
            "BC",
            "Shear in panel 1 is 12.5 - 10 = 2.5 = 0.8 BC, so BC = 3.125 C",
            "tension-compression",
        ),
        ("BC", "Shear right of B = 12.5 - 10 = 1.5 kN, BC = 2.5/0.8 = 3.125 T", "arithmetic"),
        ("BC", "Shear in panel 2 = 12.5 - 10 = 2.5 kN", "unreadable"),
    ],
)
def test_what_is_said_to_be_a_shear_is_the_numbers_that_the_force_follows_from(
    force: str, text: str, code: str
) -> None:
    assert code_of(BRIDGE, Value(force), text) == code


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("By similar triangles AB : 12.5 = 5 : 4, so AB = 15.625 kN (C)", "right"),
        ("From similar triangles AB : AC = 5 : 3, AB = 15.625 C", "right"),
        ("By similar triangles AB : 12.5 = √25 : 4, so AB = 15.625 kN (T)", "sign"),
        ("By similar triangles AB : 12.5 = 4 : 5, so AB = 10 kN (C)", "arithmetic"),
    ],
)
def test_similar_triangles_may_lead_to_a_proportion_without_a_comma(text: str, code: str) -> None:
    assert code_of(BRIDGE, Value("AB"), text) == code


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("Joint C: AC falls 3 in 4, so its vertical part is 0.6 AC. -12 - 1.2 AC - 6 = 0", "right"),
        ("AC rises 3 m in 4 m; the vertical part of AC is 3/5 AC. -18 - 1.2 AC = 0", "right"),
        ("Joint C: its vertical component is AC (3/5), so -18 - 6/5 AC = 0", "right"),
        ("Joint C: AC falls 3 in 4, so its vertical part is 0.8 AC. -18 - 1.6 AC = 0", "component"),
        ("Joint C: AC falls 3 in 4, so its vertical part is 0.6 AC. -18 + 1.2 AC = 0", "sign"),
        ("Joint C: AC falls 3 in 4, its vertical part is 0.6 AC. -12 - 1.2 AC = 0", "missing"),
    ],
)
def test_the_share_of_a_force_said_before_its_sum_is_judged_by_the_sum(
    text: str, code: str
) -> None:
    known = {"BC": "-15", "CD": "6"}
    verdict = judge(GABLE, Fy("C"), text.replace("1.2 AC", "0.6 AC - 0.6 BC"), known=known)
    assert (verdict.mistakes[0].code if verdict.mistakes else verdict.kind) == code


@pytest.mark.parametrize(
    ("about", "text", "code"),
    [
        (Fx("A"), "x: AD - 0.8 AC.. no AC pushes left. AD + 0.8 AC = 0", "right"),
        (Fx("A"), "joint A x: AD - 0.8 AC - no, AC is drawn as a pull. AD + 0.8 AC = 0", "right"),
        (Fx("A"), "x: AD + 0.8 AC.. no AC pushes left. AD - 0.8 AC = 0", "sign"),
        (Fx("A"), "x: AD + 0.8 AC.. no AC is steep. AD + 0.6 AC = 0", "component"),
        (Fx("A"), "x: AD + 0.8 AC.. no gull sits there. AD + 0.8 AC = 0", "unreadable"),
        (Value("CD"), "CD = 12.. no, = 6 kN T", "right"),
        (Value("CD"), "CD = 6.. no, = 12 kN T", "carried"),
        (Value("AC"), "exactly AC = -9√5·√5/3 kN, or 15 kN C", "right"),
        (Value("AC"), "exactly AC = -15 kN, or 16 kN C", "arithmetic"),
        (Fx("A"), "AD + 0.8 AC = 0, AC = -12(5)/4 = -15, call it 15 kN C", "right"),
        (Fx("A"), "AD + 0.8 AC = 0, AC = -12(5)/4 = -15, call it 15 kN T", "tension-compression"),
        (Fy("A"), "jt A  up +   9 + (3/5)AC = 0    AC = -15", "right"),
        (Fy("A"), "node A up +  -9 - 0.6 AC = 0", "right"),
        (Fy("A"), "jt A  up +   -9 + (3/5)AC = 0    AC = 15", "sign"),
        (M("B"), "about B instead: -8 A_y + 18(4) = 0", "right"),
        (M("B"), "moments about B instead; -8 A_y + 12(4) + 6(8) = 0", "arm-from"),
        (M("B"), "moments about B instead of A: -8 A_y + 18(4) = 0", "unreadable"),
    ],
)
def test_what_is_broken_off_or_said_again_counts_as_it_is_said_last(
    about: Any, text: str, code: str
) -> None:
    known = {} if about == M("B") else KNOWN[id(GABLE)]
    if about == Fx("A"):
        known = {"A_x": 0}
    verdict = judge(GABLE, about, text, known=known)
    assert (verdict.mistakes[0].code if verdict.mistakes else verdict.kind) == code


@pytest.mark.parametrize(
    ("force", "text", "known"),
    [
        ("AB", "AB = A_y · 4/5 = 12.5(0.8) = 10 kN C", {"A_y": 12.5}),
        ("AB", "Joint A: AB = A_y sin 53.13° = 12.5(0.8) = 10 kN (C)", {"A_y": 12.5}),
        ("DE", "Joint E: DE = 0.8 E_y = 14 kN (C)", {"E_y": 17.5}),
        ("DE", "Joint E: DE = E_y/0.6 = 29.2 kN (C)", {"E_y": 17.5}),
        ("BC", "BC = 0.8 (A_y - 10) = 2 kN T", {"A_y": 12.5}),
    ],
)
def test_a_force_set_equal_to_another_times_a_factor_was_multiplied_where_it_is_divided(
    force: str, text: str, known: dict[str, float]
) -> None:
    mistakes = judge(BRIDGE, Value(force), text, known=known).mistakes
    assert [(mistake.code, mistake.force) for mistake in mistakes] == [("component", force)]

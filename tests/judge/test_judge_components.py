"""Is a component of a force that has its value judged as that, and never as a sum of forces?"""

from __future__ import annotations

import pytest
from families import down, exact, plain_problem

from tutor.judge import Equation, Fx, Fy, Value, judge
from tutor.model import Load, Problem, Support

SHED: Problem = plain_problem(
    [("A", 0, 0), ("B", 12, 0), ("C", 12, 5)],
    ("AB", "BC", "AC"),
    [Support("A", "pin"), Support("B", "roller")],
    [Load("C", (("right", exact(240)),)), down("C", 30)],
)
"""Worked by hand at C: 12/13 AC = 240, so that AC = 260 and its components are 240 and 100."""
KNOWN = {"AC": 260}


@pytest.mark.parametrize("about", [Fx("C"), Fy("C"), Fx("A"), Fx()])
@pytest.mark.parametrize(
    "text", ["F_ACy = (5/13)(260) = 100 kN", "(F_AC)_x = 12/13*260 = 240", "ACy = 100"]
)
def test_a_component_is_right_whichever_sum_is_asked_for_and_is_none(
    about: Equation, text: str
) -> None:
    verdict = judge(SHED, about, text, known=KNOWN)
    assert verdict.right
    assert [remark.code for remark in verdict.remarks] == ["component"]


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("F_ACy = (12/13)(260) = 240 kN", "component"),
        ("F_ACx = (5/13)(260) = 100", "component"),
        ("F_ACy = 260", "whole-force"),
        ("F_ACy = (5/13)(260) = 110", "arithmetic"),
        ("F_ACy = 117", "arithmetic"),
        ("F_ACy = -100", "sign"),
    ],
)
def test_a_wrong_component_is_told_by_what_it_comes_to(text: str, code: str) -> None:
    verdict = judge(SHED, Fx("C"), text, known=KNOWN)
    assert [mistake.code for mistake in verdict.mistakes] == [code]


@pytest.mark.parametrize(
    ("joint", "text", "kind"),
    [
        ("C", "F_ACy = 100 ↓", "right"),
        ("C", "F_ACy = 100 ↑", "wrong"),
        ("A", "F_ACy = 100 ↑", "right"),
        ("A", "F_ACx = 240 ←", "wrong"),
        ("C", "F_ACx = 240 ←", "right"),
        ("B", "F_ACx = 240 ←", "right"),
        ("C", "F_ACx = 240 ↑", "undecided"),
    ],
)
def test_the_arrow_of_a_component_is_that_of_the_force_on_the_joint(
    joint: str, text: str, kind: str
) -> None:
    """A tension pulls C down and to the left, and A up and to the right; on B it does not act."""
    assert judge(SHED, Fx(joint), text, known=KNOWN).kind == kind


def test_a_component_of_an_open_force_is_no_component_of_a_known_one() -> None:
    verdict = judge(SHED, Fx("C"), "F_ACy = 100")
    assert "component" not in [remark.code for remark in verdict.remarks]


def test_a_component_before_its_sum_leaves_the_sum_to_count() -> None:
    text = "F_ACy = 5/13*260 = 100; ΣFy = -30 - BC - 100 = 0"
    verdict = judge(SHED, Fy("C"), text, known=KNOWN)
    assert verdict.right
    assert "component" not in [remark.code for remark in verdict.remarks]


@pytest.mark.parametrize(
    ("text", "codes"),
    [
        ("F_ACy = 100 T", []),
        ("F_ACx = (12/13)(260) = 240 kN (T)", []),
        ("F_ACy = 100 C", ["tension-compression"]),
        ("F_ACx = (12/13)(260) = 240 kN (C)", ["tension-compression"]),
    ],
)
def test_the_letter_behind_a_component_says_what_its_force_does(
    text: str, codes: list[str]
) -> None:
    verdict = judge(SHED, Fx("C"), text, known=KNOWN)
    assert [mistake.code for mistake in verdict.mistakes] == codes
    assert verdict.right is not bool(codes)


@pytest.mark.parametrize(
    ("text", "right"),
    [("F_ACy = 100.8", True), ("F_ACy = 101.0", True), ("F_ACy = 101.2", False)],
)
def test_a_component_may_be_as_far_off_as_its_force_and_its_own_figures(
    text: str, right: bool
) -> None:
    """AC is known to 1.3 of 260, of which a component has 0.5; half a percent is let pass anyway."""
    assert judge(SHED, Fx("C"), text, known=KNOWN).right is right


SLOPING = plain_problem(
    [("A", 0, 0), ("B", 12, 0), ("C", 12, 5)],
    ("AB", "BC", "AC"),
    [Support("A", "pin"), Support("B", "roller", exact(120))],
    [down("C", 30)],
)
"""R_B acts up and to the left at 120 degrees: of 40 it has 20 to the left, 34.64 up."""


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("R_Bx = 20", "right"),
        ("R_Bx = -20", "right"),
        ("R_Bx = 20 to the left", "right"),
        ("R_Bx = 20 to the right", "wrong"),
        ("R_By = 34.64 up", "right"),
        ("R_By = 34.64 down", "wrong"),
        ("R_By = 20", "wrong"),
        ("R_By = 34.64 left", "undecided"),
    ],
)
def test_a_component_of_an_inclined_reaction_acts_as_the_reaction_does(
    text: str, kind: str
) -> None:
    assert judge(SLOPING, Fx(), text, known={"R_B": 40}).kind == kind


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("F_ACx = 240 C", "tension-compression"),
        ("F_ACx = -240", "sign"),
        ("F_ACy = 240", "component"),
        ("F_ACy = 117", "arithmetic"),
    ],
)
def test_where_the_force_is_asked_for_its_wrong_component_is_told_as_the_force_is(
    text: str, code: str
) -> None:
    verdict = judge(SHED, Value("AC"), text)
    assert [mistake.code for mistake in verdict.mistakes] == [code]
    assert verdict.text == verdict.mistakes[0].text

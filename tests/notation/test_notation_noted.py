"""Shortened words, questions for a nod, to whom something is said, and what is done to both sides."""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fx, Fy, M, Value, judge, load_problem

STALL = load_problem(Path(__file__).parents[1] / "paper/stall.toml")
SUM = "A_y + 3/5 F_AB = 0"


@pytest.mark.parametrize(
    "line",
    [
        "I'd write {} here",
        "you'll get {}",
        "we've got {}",
        "that leaves us {}",
        "which gives you {}",
        "{}, isn't it?",
        "{}, right?",
        "{}, if I'm not mistaken.",
        "{} (×5) → 5 A_y + 3 F_AB = 0",
        "{} (÷ 3/5) → F_AB + 5/3 A_y = 0",
        "{}; dividing by 3/5, F_AB + 5/3 A_y = 0   … (3)",
        "{} … (2); F_AB = -5/3 A_y",
    ],
)
def test_what_is_said_around_a_sum_leaves_it_as_it_is(line: str) -> None:
    assert judge(STALL, Fy("A"), line.format(SUM)).right
    assert not judge(STALL, Fy("A"), line.format("A_y - 3/5 F_AB = 0")).right


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("F_AB = -175 lb, so AB's a strut", "right"),
        ("F_AB = -175 lb, so AB's a tie", "undecided"),
        ("So it's in compression: 175 lb.", "right"),
        ("it is in tension: 175 lb", "wrong"),
        ("The left rafter, AB, pushes with 175 lb.", "right"),
        ("The left rafter, AB, pulls with 175 lb.", "wrong"),
        ("From joint A we then see that AB pushes with 175 lb", "right"),
        ("From joint A we then see that AB pulls with 175 lb", "wrong"),
        ("what we've found: AB = -175 lb, so AB pulls with 175 lb", "wrong"),
    ],
)
def test_what_a_member_does_is_taken_from_shortened_words(text: str, kind: str) -> None:
    assert judge(STALL, Value("AB"), text).kind == kind


def test_a_sum_of_a_sheet_adds_its_terms() -> None:
    for text in ("SUM(A_y, 3/5*F_AB) = 0", "=SUM(A_y; 3/5*F_AB)=0", "np.sum([A_y, 3/5*F_AB]) = 0"):
        assert judge(STALL, Fy("A"), text).right
    assert judge(STALL, Fy("A"), "SUM(A_y, 4/5*F_AB) = 0").kind == "wrong"


def test_two_forces_may_be_set_in_proportion_by_colons() -> None:
    assert judge(STALL, Fx("A"), "AD - 120 = -4/5 AB").right
    assert judge(STALL, Fy("B"), "-BD - 3/5 AB - 3/5 BC = 0").right
    assert judge(STALL, Fy("A"), "AB : 5 = -A_y : 3").right
    assert judge(STALL, Fy("A"), "AB : 3 = -A_y : 5").kind == "wrong"


def test_a_check_in_numbers_is_right_behind_its_equation_and_asked_about_alone() -> None:
    checks = "105 - 105 = 0", "A_y + 3/5 F_AB = 105 - 105 = 0"
    assert judge(STALL, Fy("A"), f"A_y + 3/5 F_AB = 0, i.e. {checks[0]}").right
    assert judge(STALL, Fy("A"), checks[1]).right
    assert not judge(STALL, Fy("A"), "A_y + 3/5 F_AB = 0, i.e. 120 - 120 = 0").right
    assert judge(STALL, Fx("B"), "140 - 260 + 120 = 0").kind == "undecided"
    assert judge(STALL, Fx("B"), "140 - 250 + 110 = 0").kind == "wrong"


@pytest.mark.parametrize(
    "line",
    [
        "u_AB = (4/5, 3/5); y: {}",
        "e_AB = (0.8, 0.6), e_AD = (1, 0): {}",
        "Upthrust of the pin = downward push of the rafter: {}",
        "{}, since neither the roller nor the 300 lb has any part at A",
        "{}, because none of the loads has a share here",
    ],
)
def test_vectors_words_and_reasons_beside_a_sum_are_told_and_leave_it_as_it_is(line: str) -> None:
    verdict = judge(STALL, Fy("A"), line.format(SUM))
    assert verdict.right
    assert not judge(STALL, Fy("A"), line.format("A_y + 4/5 F_AB = 0")).right


def test_a_sum_of_loads_by_a_letter_is_what_the_line_gives_for_it() -> None:
    assert judge(STALL, Fy(), "A_y + C_y - ΣP = 0, ΣP = 300").right
    assert judge(STALL, Fy(), "A_y + C_y - ΣP = 0, ΣP = 420").kind == "wrong"


def test_where_an_angle_lies_is_no_statement() -> None:
    for lead in ("angle DAB = θ, tan θ = 3/4. ", "∠DAB = θ, tan θ = 3/4: "):
        assert judge(STALL, Fy("A"), f"{lead}A_y + F_AB sin θ = 0").right
        assert not judge(STALL, Fy("A"), f"{lead}A_y + F_AB cos θ = 0").right


def test_a_length_by_the_joints_of_a_member_is_no_value_of_its_force() -> None:
    sums = "16 C_y = 8(300) + 6(120)", "16 C_y = 8(300) - 6(120)"
    lead = "the crate hangs square to AD and AD = 8, so "
    assert judge(STALL, M("A"), f"{lead}{sums[0]}").right
    assert judge(STALL, M("A"), f"{lead}{sums[1]}").kind == "wrong"
    assert not judge(STALL, M("A"), f"AD = 7, so {sums[0]}").right


def test_by_symmetry_names_no_reaction() -> None:
    assert judge(STALL, Fx("D"), "F_CD = F_AD by symmetry").right
    assert judge(STALL, Fx("D"), "F_CD = F_AD by joint D").right


@pytest.mark.parametrize(
    ("text", "of", "kind"),
    [
        ("my answer for BD is 300 lb T", "BD", "right"),
        ("my answer for AB is 175 lb T", "AB", "wrong"),
        ("BD got 300 lb and its being stretched", "BD", "right"),
        ("AB got 175 lb and its being stretched", "AB", "wrong"),
        ("the rafter AB gets 175 lb squeezed", "AB", "right"),
        ("the rafter AB gets 175 lb stretched", "AB", "wrong"),
        ("so the left pin pushes on the frame with 120 lb to the left", "A_x", "right"),
        ("so the left pin pushes on the frame with 120 lb to the right", "A_x", "wrong"),
    ],
)
def test_what_a_member_or_a_support_gets_is_its_value(text: str, of: str, kind: str) -> None:
    assert judge(STALL, Value(of), text).kind == kind


def test_a_joint_and_a_way_head_their_sum() -> None:
    for way, sums, joint in (
        ("sideways is", "CD - AD", "D"),
        ("up and down would be", "A_y + 0.6 AB", "A"),
        ("horizontally gives", "CD - AD", "D"),
    ):
        about = Fx(joint) if joint == "D" else Fy(joint)
        assert judge(STALL, about, f"{joint} {way} {sums} = 0").right
        other = Fy(joint) if joint == "D" else Fx(joint)
        assert not judge(STALL, other, f"{joint} {way} {sums} = 0").right


def test_another_point_takes_nothing_back() -> None:
    line = "pivot at C instead, the wind helps so 16 A_y + 6(120) - 8(300) = 0"
    assert judge(STALL, M("C"), line).right
    assert not judge(STALL, M("C"), line.replace("+ 6", "- 6")).right

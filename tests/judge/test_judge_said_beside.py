"""Is a line with words around it judged as the same line without them, right or wrong?"""

from __future__ import annotations

from itertools import product
from pathlib import Path

import pytest

from tutor import Fx, Fy, M, Value, judge, load_problem

HANDS = Path(__file__).parents[1] / "notation" / "hands"
QUAY = load_problem(HANDS / "quay.toml")
SPAN = load_problem(HANDS / "span.toml")
HOIST = load_problem(HANDS / "hoist.toml")
A_X, A_Y, B_Y = Fx(joint="A"), Fy(joint="A"), Fy(joint="B")
UPRIGHT = ["A_y + 0.6 F_AD = 0", "A_y - 0.6 F_AD = 0", "A_y + 0.8 F_AD = 0", "0.6 F_AD + 15 = 0"]
BESIDE = [
    "Joint A, slope triangle 3-4-5: {}",
    "A, 3:4:5 triangle: {}",
    "3-4-5 at A: {}",
    "3 : 4 : 5 for joint A: {}",
    "Now A ↑, tan β = 3/4 so sin β = 3/5: {}",
    "Next A ↑: {}",
    "Kn. A, vertikal: {}",
    "knoop A, verticaal: {}",
    "{} (A_y points up and AD down to the left, look at the wall)",
    "{} (AD goes up and to the right, mind)",
    "let S = force in bar, {}",
    "{}, where S is the force in a bar",
    "↑: {} (A_y goes up, as drawn)",
]
TURNED = [
    "A ↑, β the slope of AD with {s}: A_y + F_AD {f} = 0",
    "A ↑, β being the angle of AD to the horizontal, {s}: A_y + F_AD {f} = 0",
    "A ↑: A_y + F_AD {f} = 0, where {s} off the slope triangle (4 across, 3 up)",
    "A ↑: A_y + F_AD {f} = 0, {s} off the drawing",
    "ΣF_y at A, writing s for {s}: A_y + s·F_AD = 0",
    "Joint A ↑, with s = {s}: A_y + s F_AD = 0",
    "A ↑, s standing for {s}: A_y + s F_AD = 0",
    "s = {s}, A_y + s F_AD = 0",
]


def said(about, text: str, known=None, problem=QUAY) -> tuple:
    verdict = judge(problem, about, text, known=known or {"AB": 28})
    return verdict.kind, [(mistake.code, mistake.force) for mistake in verdict.mistakes]


@pytest.mark.parametrize(("around", "line"), list(product(BESIDE, UPRIGHT)))
def test_a_line_is_judged_as_without_what_is_said_beside_it(around: str, line: str) -> None:
    assert said(A_Y, around.format(line)) == said(A_Y, line)


@pytest.mark.parametrize("around", TURNED)
def test_an_angle_said_of_a_member_is_judged_as_that_angle(around: str) -> None:
    right = said(A_Y, around.format(s="sin β = 3/5", f="sin β"))
    wrong = said(A_Y, around.format(s="cos β = 4/5", f="cos β"))
    assert right == ("right", [])
    assert wrong == ("wrong", [("component", "AD")])


@pytest.mark.parametrize(
    ("line", "known"),
    [
        ("Joint A, horizontally (F_AD = -25): A_x + F_AB - 20 = 0", {"AD": -25}),
        ("nudo A, horizontal (con F_AD = -25 kN): A_x + F_AB - 20 = 0", {"AD": -25}),
        ("At A → [F_AD = -25]: A_x + F_AB - 20 = 0", {"AD": -25}),
        ("A_x + F_AB + 0.8 F_AD = 0 (A_x = -8) ∴ F_AB = 28 kN (T)", {"AD": -25, "A_x": -8}),
    ],
)
def test_a_value_in_brackets_is_put_in(line: str, known) -> None:
    assert said(A_X, line, known)[0] == "right"
    wrong = line.replace("F_AB -", "F_AB +").replace("(T)", "(C)")
    assert said(A_X, wrong, known)[0] == "wrong"


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("A_x + 8 = 0, hence A_x = -8 kN — it pulls on the wall, as one expects", "right"),
        ("A_x + 8 = 0, hence A_x = -8 kN: it pushes back", "right"),
        ("A_x + 8 = 0, so A_x = -6 kN — it pulls on the wall", "wrong"),
        ("A_x + 8 = 0, A_x = 8 kN, pulling to the left", "right"),
        ("A_x + 8 = 0, A_x = 8 kN, pushing to the right", "wrong"),
        ("A_x + 8 = 0, A_x = 8 kN, pushing", "undecided"),
        ("A_x + 8 = 0, A_x = -8 kN (T)", "undecided"),
    ],
)
def test_what_a_support_does_to_the_wall_says_no_tension(text: str, kind: str) -> None:
    assert said(Fx(), text)[0] == kind


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("AD = 25 kN pushing A to the left", "right"),
        ("AD = 25 kN, pushing A to the left and down", "right"),
        ("AD = 25 kN, pushes D ↑", "right"),
        ("AD = 25 kN pulling A to the right", "wrong"),
        ("AD = 25 kN pushing A to the right", "unreadable"),
        ("AD = 25 kN pulling D up", "unreadable"),
        ("AD = 25 kN pushes, T", "unreadable"),
    ],
)
def test_the_way_that_a_joint_is_pushed_is_held_against_its_member(text: str, kind: str) -> None:
    assert said(Value("AD"), text)[0] == kind


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("- C_y + A_y - 36 = 0", "undecided"),
        ("- A_y - C_y + 36 = 0", "right"),
        ("-C_y + A_y - 36 = 0", "wrong"),
        ("− C_y + A_y − 36 = 0", "wrong"),
        ("- A_y + 2 C_y - 36 = 0", "wrong"),
        ("* A_y + C_y - 36 = 0", "right"),
        ("- 36 = A_y + C_y\n- C_y = 36 - A_y", "undecided"),
        ("- 2 A_y + 2 C_y - 72 = 0\n- A_y + C_y = 36", "undecided"),
        ("- 2 A_y - 2 C_y + 72 = 0\n- A_y - C_y = -36", "right"),
        ("- 2 A_y + 2 C_y - 72 = 0", "wrong"),
        ("-2 A_y + 2 C_y - 72 = 0\n-A_y + C_y = 36", "wrong"),
        ("- 26 = A_y + C_y\n- C_y = 26 - A_y", "wrong"),
    ],
)
def test_a_dash_that_may_mark_a_list_is_asked_about_where_the_line_is_right_only_so(
    text: str, kind: str
) -> None:
    assert said(Fy(), text)[0] == kind


@pytest.mark.parametrize("name", ["C_y", "AD", "F_AD", "BD"])
@pytest.mark.parametrize("size", ["{:g}", "{:g} kN", "7.3"])
def test_a_force_that_is_asked_for_and_its_value_need_no_equals_sign(name, size) -> None:
    true = {"C_y": 21, "AD": -25, "F_AD": -25, "BD": 12}[name]
    text = size.format(true)
    asked = Value(name.removeprefix("F_"))
    assert said(asked, f"{name} {text}") == said(asked, f"{name} = {text}")


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("barre AD: 25 kN, non comprimée", "wrong"),
        ("barre AD: 25 kN, non tendue", "right"),
        ("barre AD: 25 kN, comprimée et non tendue", "right"),
        ("staaf AD: 25 kN, niet druk", "wrong"),
        ("staaf AD: 25 kN, geen druk", "wrong"),
        ("asta AD: 25 kN, non compressa", "wrong"),
    ],
)
def test_what_is_denied_in_another_language_is_not_heeded(text: str, kind: str) -> None:
    assert said(Value("AD"), text)[0] == kind


@pytest.mark.parametrize(
    "text", ["s = 3/5, c = 4/5: + c AD + AB + A_x = 0", "+c AD + AB - 8 = 0 where c = 4/5"]
)
def test_a_letter_behind_a_plus_is_a_factor_before_a_force(text: str) -> None:
    assert said(A_X, text, {"A_x": -8})[0] == "right"


def test_a_letter_or_another_force_before_a_number_is_no_value() -> None:
    assert said(Value("BD"), "BD - 12")[0] == "unreadable"
    assert said(Value("C_y"), "C 10")[0] == "undecided"
    assert said(Value("C_y"), "A_y 21")[0] == "unreadable"


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("C_y = 20, no wait, C_y = 21", "right"),
        ("C_y = 21, no wait, C_y = 20", "wrong"),
        ("C_y = 20 oops C_y = 21", "right"),
        ("C_y = 168/8 = 20, sorry I slipped, C_y = 21 kN", "right"),
        ("C_y = 20, A_y = 15", "wrong"),
        ("C_y = 21k N", "right"),
        ("C_y = 21 k N", "right"),
        ("C_y = 20k N", "wrong"),
        ("C_y = 21 (AB is not zero)", "right"),
        ("C_y = 20 (AB is not zero)", "wrong"),
        ("C_y = 21 (C_y is not 21)", "unreadable"),
    ],
)
def test_the_value_that_stands_last_and_whole_is_judged(text: str, kind: str) -> None:
    assert said(Value("C_y"), text)[0] == kind


@pytest.mark.parametrize(
    ("about", "right", "wrong"),
    [
        (A_Y, "15 + 0.6x = 0, x = AD = -25", "15 + 0.6x = 0, x = AD = 25"),
        (A_Y, "15 + 0.6x = 0 -> x = -25 = AD", "15 + 0.8x = 0 -> x = -18.75 = AD"),
        (B_Y, "y - 12 = 0, y = BD = 12 T", "y + 12 = 0, y = BD = -12"),
        (A_Y, "m = 0.6 (slope): A_y + m·F_AD = 0", "m = 0.8 (slope): A_y + m·F_AD = 0"),
        (A_Y, "k = 3/5 (ratio), A_y + k AD = 0", "k = 3/4 (ratio), A_y + k AD = 0"),
        (B_Y, "BD + 12 = 0, minus of course: BD - 12 = 0", "BD - 12 = 0, plus of course: BD + 12 = 0"),
        (A_X, "let X = force in bar, A_x + X_AB + 0.8 X_AD = 0", "let X = force in bar, A_x + X_AB + 0.6 X_AD = 0"),
    ],
)  # fmt: skip
def test_a_letter_that_a_line_brings_in_or_a_slip_it_takes_back_is_judged(
    about, right, wrong
) -> None:
    assert said(about, right)[0] == "right"
    assert said(about, wrong)[0] == "wrong"


@pytest.mark.parametrize(
    ("value", "kind"),
    [
        ("barre AD : {} kN, {}", None),
        ("AD = {} kN, barre {}", None),
        ("staaf AD: {} kN, {}", None),
        ("N_AD = {} kN ({})", None),
    ],
)
@pytest.mark.parametrize(
    ("push", "pull"),
    [
        ("comprimée", "tendue"),
        ("druk", "trek"),
        ("comprimida", "traccionada"),
        ("compressa", "tesa"),
    ],
)
def test_tension_and_compression_are_heeded_in_each_gender_and_language(
    value, kind, push, pull
) -> None:
    assert said(Value("AD"), value.format(25, push))[0] == "right"
    assert said(Value("AD"), value.format(25, pull))[0] == "wrong"


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("{lead}Fy = 0; A_y + C_y — 36 = 0", "right"),
        ("{lead}Fy = 0; A_y — C_y — 36 = 0", "wrong"),
    ],
)
@pytest.mark.parametrize("lead", ["+t Z ", "+T Z", "Z ", "+ t E", "+f Σ "])
def test_signs_that_a_scan_takes_for_letters_head_a_sum(lead: str, text: str, kind: str) -> None:
    assert said(Fy(), text.format(lead=lead))[0] == kind


@pytest.mark.parametrize("so", [".:", ":.", ".'.", "∴"])
def test_dots_that_a_page_has_for_therefore_lead_on(so: str) -> None:
    assert said(B_Y, f"F_BD — 12 = 0  {so}  F_BD = 12 kN")[0] == "right"
    assert said(B_Y, f"F_BD — 12 = 0  {so}  F_BD = — 12 kN")[0] == "wrong"


@pytest.mark.parametrize("point", ["{(8,0)}", "{(8,\\,0)}", "{(8; 0)}", "(8,0)"])
def test_a_moment_point_may_stand_in_braces_and_brackets(point: str) -> None:
    about = M(at=(8, 0))
    assert (
        said(about, rf"\sum M_{point} = -8A_y + 24\cdot 4 + 12\cdot 4 - 8\cdot 3 = 0")[0] == "right"
    )
    assert (
        said(about, rf"\sum M_{point} = -8A_y + 24\cdot 4 + 12\cdot 8 - 8\cdot 3 = 0")[0] == "wrong"
    )


@pytest.mark.parametrize(("value", "kind"), [("21", "right"), ("20", "wrong")])
def test_a_row_may_give_the_name_and_its_equals_sign_in_one_cell(value: str, kind: str) -> None:
    row = f"M_A\t8*C_y - 24*4 - 12*4 - 8*3\t=\t0\tC_y =\t{value}\tkN"
    assert said(M("A"), row)[0] == kind


def test_a_heading_that_is_read_is_not_told_as_passed_over() -> None:
    text = (
        "A ↑: A_y + 0.6 F_AD = 0, with A_y = 15 from the line above: F_AD = −25, i.e. 25 kN pushing"
    )
    verdict = judge(QUAY, A_Y, text, known={"A_y": 15})
    assert verdict.right
    assert not any("A ↑" in remark.text for remark in verdict.remarks)


@pytest.mark.parametrize(
    ("about", "text", "kind"),
    [
        (Fy(joint="L3"), "3-4-5 at L3: L3_y + (4/5)F_{U2L3} = 0", "right"),
        (Fy(joint="L3"), "3-4-5 at L3: L3_y + (3/5)F_{U2L3} = 0", "wrong"),
        (Value("U2-L3"), "From L3, slope triangle 3 : 4 : 5 — F_{U2L3}/5 = -12/4, so F_{U2L3} = 15 kip (C)", "right"),
        (Value("U2-L3"), "From L3, slope triangle 3 : 4 : 5 — F_{U2L3}/5 = -12/3, so F_{U2L3} = 20 kip (C)", "wrong"),
        (Value("L3_y"), "L3y = 12 ki p", "right"),
    ],
)  # fmt: skip
def test_the_same_is_read_of_joints_with_figures(about, text: str, kind: str) -> None:
    assert said(about, text, {"L3_y": 12} if "F_" in text else {"L0_y": 15}, SPAN)[0] == kind


def test_many_small_words_before_a_slope_are_read_through_once() -> None:
    assert said(A_Y, f"β the slope of {'the ' * 110}AD, sin β =")[0] == "unreadable"

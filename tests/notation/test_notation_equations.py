"""What typed equations say: one example for every way of writing in the notation reference."""

from __future__ import annotations

import math

import pytest
from truss_names import CLASHING, LETTERED, NUMBERED

from tutor.model import load_problem
from tutor.notation import Names, Reading, Unreadable, one_equation, read_line
from tutor.shipped import shipped_problems

C30, C37 = math.sqrt(3) / 2, math.cos(math.radians(36.87))

SAYS = [
    # products, from left to right
    ("3/5F_AB = 0", {"AB": 0.6}),
    ("3/5 F_AB + F_AC - 12 = 0", {"AB": 0.6, "AC": 1, None: -12}),
    ("12 = F_AC + 0.6FAB", {"AB": -0.6, "AC": -1, None: 12}),
    ("F_AB/2*3 = 0", {"AB": 1.5}),
    ("F_AB/2/3*6 = 0", {"AB": 1}),
    ("2F_AB(3)/4 = 0", {"AB": 1.5}),
    ("F_AB 3/5 = 0", {"AB": 0.6}),
    ("-F_AB + -2*-3 = --1", {"AB": -1, None: 5}),
    ("-2^2 F_AB = 0", {"AB": -4}),
    ("(-2)^2 F_AB = 0", {"AB": 4}),
    ("2^-1 F_AB = 0", {"AB": 0.5}),
    ("F_AB*2/sqrt(2^2+1.5^2) = 0", {"AB": 0.8}),
    ("F_AB(3^2 + 4^2)^(1/2) = 0", {"AB": 5}),
    ("F_AB(3² + 4²)^0.5 - 2³ ÷ 4 = 0", {"AB": 5, None: -2}),
    ("F_AB × 3 · 2 − √4 = 0", {"AB": 6, None: -2}),
    ("2x3 F_AB = 4 x 5 + 2x3kN", {"AB": 6, None: -26}),
    ("[F_AB + {2 - 1}]*3 = 0", {"AB": 3, None: 3}),
    ("0.6(F_AB + F_AC) = (F_BC - 12)*3/5", {"AB": 0.6, "AC": 0.6, "BC": -0.6, None: 7.2}),
    ("F_AB/2 + (F_AB - F_AC)/2 = 0", {"AB": 1, "AC": -0.5}),
    ("12,5 F_AB = .5", {"AB": 12.5, None: -0.5}),
    ("1.2e3 F_AB = 1.5E+1", {"AB": 1200, None: -15}),
    ("0,125 F_AB = 1234,567", {"AB": 0.125, None: -1234.567}),
    # functions
    ("cos 30 F_AB = 0", {"AB": C30}),
    ("F_AB cos 36.87° = 0", {"AB": C37}),
    ("F_ABcos36.87 = 0", {"AB": C37}),
    ("F_AB*COS(36.87) = 0", {"AB": C37}),
    ("F_AB cos 36.87 deg + F_AC cos(36.87)° = 0", {"AB": C37, "AC": C37}),
    ("2F_ABsin30cos60 = 0", {"AB": 0.5}),
    ("cos 30/2 F_AB = 0", {"AB": C30 / 2}),
    ("√3/2 F_AB = sqrt3/2 F_AC", {"AB": C30, "AC": -C30}),
    ("cos^2 30 F_AB + cos²(30) F_AC + cos(30)^2 F_BC = 0", {"AB": 0.75, "AC": 0.75, "BC": 0.75}),
    ("F_AB cos(sin^-1(0.6)) = F_AC cos(sin⁻¹(0.6))", {"AB": 0.8, "AC": -0.8}),
    ("F_AB cos(atan(3/4)) = F_AC sin(arctan(3/4))", {"AB": 0.8, "AC": -0.6}),
    ("F_AB cos(tan^(-1)(3/4)) = 0", {"AB": 0.8}),
    ("F_AB cos(90° - 60°) = F_AC cos(180/6)", {"AB": C30, "AC": -C30}),
    ("F_AB cos(0.6435 rad) = 0", {"AB": math.cos(0.6435)}),
    ("F_AB cos(pi/6 rad) + F_AC cos(π rad/6) = 0", {"AB": C30, "AC": C30}),
    ("F_AB cos(2 pi/12 rad) = F_AC sin(30*pi/180 rad)", {"AB": C30, "AC": -0.5}),
    ("F_AB sin -30 = 0", {"AB": -0.5}),
    ("F_AB tan 45 + F_AC cos 90 = 0", {"AB": 1, "AC": 0}),
    # units
    ("A_y(9 m) = 12 kN * 3 m", {"A_y": 9, None: -36}),
    ("F_AB = 36 kN m / 3 m", {"AB": 1, None: -12}),
    ("(12 kN/3 kN) F_AB = 12 kN/3 m * 2 m", {"AB": 4, None: -8}),
    ("3/5 m A_y = 12 kN·m", {"A_y": 0.6, None: -12}),
    ("3/5 ft A_y = 0", {"A_y": 0.18288}),
    ("A_y*3/5 ft = 0", {"A_y": 0.18288}),
    ("A_y/5 ft = 0", {"A_y": 1 / 1.524}),
    ("F_AB = 12 kN + 500 N", {"AB": 1, None: -12.5}),
    ("F_AB = 2 lbf", {"AB": 1, None: -2 * 0.0044482216152605}),
    ("A_y*1 m = 12 kNm + 500 N*mm + 2 lb-ft", {"A_y": 1, None: -12.0005 - 0.0027116358966}),
    ("A_y*1 m = 12 kN.m", {"A_y": 1, None: -12}),
    ("3mA_y = 36kNm", {"A_y": 3, None: -36}),
    ("(1 + 2) m A_y = 12kNcos(60)*2 m", {"A_y": 3, None: -12}),
    ("F_AB = 12/sqrt(4) kN", {"AB": 1, None: -6}),
    ("A_y*9 = 12 kN*3 + 4*6", {"A_y": 9, None: -60}),
    ("F_AB*4 m/sqrt((4 m)^2 + (3 m)^2) = 12 kN", {"AB": 0.8, None: -12}),
    ("3 m F_AB = 0 kN", {"AB": 3}),
    # names
    ("F_{AB} - F_BA + FAB + S_AB - N_{BA} + TAB - AB + BA = 0", {"AB": 1 - 1 + 1 + 1 - 1 + 1}),
    ("fab - Ax - A_{x} + rd + R_{D} = 0", {"AB": 1, "A_x": -2, "R_D": 2}),
    ("F_A-B = 0", {"AB": 1}),
    ("IN - 3 sin 30 = 0", {"IN": 1, None: -1.5}),
    # characters that look like others
    ("Ｆ_ＡＢ ＋ А_х ＝ ３", {"AB": 1, "A_x": 1, None: -3}),
    ("F_AB\u00a0=\u20093\t", {"AB": 1, None: -3}),
    ("𝐹_AB = 3 ∗ 2", {"AB": 1, None: -6}),
    ("Aₓ − 2∙F_AB = 0", {"A_x": 1, "AB": -2}),
]


def sums(reading: Reading) -> dict[str | None, float]:
    return {name: reading.coefficient(name)[0] for name in (*reading.names, None)}


def read(text: str, names: Names = LETTERED, **options: str) -> Reading:
    found = one_equation(read_line(text, names, **options))
    assert isinstance(found, Reading), found
    return found


@pytest.mark.parametrize(("text", "says"), SAYS)
def test_an_equation_says(text: str, says: dict[str | None, float]) -> None:
    assert sums(read(text)) == pytest.approx({None: 0.0} | says, abs=1e-12)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("F_{U1-L2} + F_U1U2 = 0", {"U1-L2": 1, "U1-U2": 1}),
        ("F_U1L2 - U1-U2 = 0", {"U1-L2": 1, "U1-U2": -1}),
        ("3 U1L2 + F_{L2U1} + F_{L2 - U1} + l2-u1 = 0", {"U1-L2": 6}),
        ("F_U1-L2-F_L1-L2 = L1x - RL2", {"U1-L2": 1, "L1-L2": -1, "L1_x": -1, "R_L2": 1}),
        ("2 L1_y*12 in = 3 lb*2 ft", {"L1_y": 2, None: -0.006}),
        ("L1_y*12 ft = 40 k-ft + 3 k ft", {"L1_y": 12, None: -43}),
    ],
)
def test_longer_joint_names_are_read(text: str, says: dict[str | None, float]) -> None:
    assert sums(read(text, NUMBERED)) == pytest.approx({None: 0.0} | says, abs=1e-12)


def test_the_underscore_tells_a_reaction_from_a_member() -> None:
    assert sums(read("R_C + 2 F_RC + 3 CR = 0", CLASHING)) == {"R_C": 1, "RC": 5, None: 0}


def test_a_unit_spelled_exactly_is_no_name_in_another_case() -> None:
    assert sums(read("0 = -0.707 CM + 2CM", CLASHING)) == pytest.approx({"CM": -1.293, None: 0})
    assert sums(read("F_CM*3 cm = 0", CLASHING)) == pytest.approx({"CM": 0.03, None: 0})


@pytest.mark.parametrize(
    ("text", "radii"),
    [
        ("12 F_AB = 3/4", [0, 0]),
        ("0.6 F_AB = 120", [0.05, 0.5]),
        ("0.60 F_AB = 1.2e3", [0.005, 50]),
        ("2*0.6 F_AB = 0.6/2", [0.1, 0.025]),
        ("cos 30 F_AB = sqrt(2)", [0, 0]),
        ("F_AB cos 36.9 = 007", [math.sin(math.radians(36.9)) * math.radians(0.05), 0]),
        ("F_AB*1.5*1.5 = (1.5)^2", [0.1525, 0.1525]),
        ("F_AB = sqrt(6.25)", [0, 0.001]),
        ("F_AB = 500 N", [0, 0.0005]),
    ],
)
def test_a_number_stands_for_its_rounding_interval(text: str, radii: list[float]) -> None:
    terms = read(text).terms
    assert [term.radius for term in terms] == pytest.approx(radii, rel=2e-3)
    assert [term.exact for term in terms] == [radius == 0 for radius in radii]


def test_radians_are_taken_where_they_are_asked_about() -> None:
    wrong = read("F_AB cos(30) + F_AC cos(30°) + F_BC sin(atan(3/4)) = 0", angles="radians")
    expected = {"AB": math.cos(30), "AC": C30, "BC": 0.6, None: 0}
    assert sums(wrong) == pytest.approx(expected)


@pytest.mark.parametrize(
    ("text", "spans"),
    [
        ("3/5 F_AB + F_AC - 12 kN = 0", ["3/5 F_AB", "F_AC", "12 kN", "0"]),
        ("-F_ABcos36.87° = -(3 + 4)", ["F_ABcos36.87°", "3", "4"]),
        ("0.6(F_AB + 2F_AC) = 3(3 + 4)", ["F_AB", "2F_AC", "3(3 + 4)"]),
        ("ΣM_A:  А_y*( 9 m ) = 12²", ["А_y*( 9 m )", "12²"]),
    ],
)
def test_a_span_is_the_text_of_its_term(text: str, spans: list[str]) -> None:
    terms = read(text).terms
    assert [text[term.span.start : term.span.end] for term in terms] == spans


@pytest.mark.parametrize(
    ("text", "sides"),
    [
        ("F_AB = -12/0.6 = -20", ["F_AB", "-12/0.6", "-20"]),
        ("F_AB\t-12/0.6 = - 20", ["F_AB", "-12/0.6", "- 20"]),
        ("F_AB = -(3 + 4) = −7 kN", ["F_AB", "-(3 + 4)", "−7 kN"]),
        ("F_AB = --7 = -sqrt(49)", ["F_AB", "--7", "-sqrt(49)"]),
        (r"F_AB = -\frac{12}{0.6} = {-20}", ["F_AB", r"-\frac{12}{0.6}", "{-20}"]),
    ],
)
def test_a_side_is_what_was_typed_of_it_with_its_minus(text: str, sides: list[str]) -> None:
    line = read_line(text, LETTERED)
    assert not isinstance(line, Unreadable)
    assert [step.as_typed(side) for step in line.steps for side in step.sides] == sides


def test_a_term_tells_the_units_typed_in_it() -> None:
    terms = read("A_y(9 m) - 12 kN * 3 ft + 5000 N mm = 3").terms
    assert [term.units for term in terms] == ["m", "kN*ft", "N*mm", None]


@pytest.mark.parametrize(
    ("label", "kind", "point", "degrees"),
    [
        ("ΣF_x:", "x", None, None),
        ("∑Fx :", "x", None, None),
        ("sum Fx:", "x", None, None),
        ("Sum of F_y:", "y", None, None),
        ("Fy:", "y", None, None),
        ("ΣF_{y} = 0:", "y", None, None),
        ("→+ ΣF_x:", "x", None, None),
        ("joint C: ΣF_y:", "y", "C", None),
        ("ΣF_x at C:", "x", "C", None),
        ("forces along x:", "x", None, None),
        ("ΣM_A:", "moment", "A", None),
        ("ΣMA:", "moment", "A", None),
        ("MA:", "moment", "A", None),
        ("↺ ΣM_{D} = 0:", "moment", "D", None),
        ("sum of moments about B:", "moment", "B", None),
        ("ΣM about b:", "moment", "B", None),
        ("ΣF_30:", "along", None, 30.0),
        ("ΣF along 36.87°:", "along", None, 36.87),
        ("along -45:", "along", None, -45.0),
        # the positive sense, as it is marked on paper and on a keyboard
        ("+-> ΣFx = 0:", "x", None, None),
        ("+→ ΣFx:", "x", None, None),
        ("--> + sum Fx = 0:", "x", None, None),
        ("<-+ ΣFx:", "x", None, None),
        ("(+→) ΣFx = 0:", "x", None, None),
        ("ΣFx (→+):", "x", None, None),
        ("ΣFx = 0 ->+:", "x", None, None),
        ("(+ up) sum Fy:", "y", None, None),
        ("+^ ΣFy = 0:", "y", None, None),
        ("⬆+ ΣFy:", "y", None, None),
        ("(+ down) ΣF_y:", "y", None, None),
        ("↺+ ΣM_A:", "moment", "A", None),
        ("+ccw M_A:", "moment", "A", None),
        ("(CCW +) ΣM_A = 0:", "moment", "A", None),
        ("ΣM_A (cw +):", "moment", "A", None),
        ("counter-clockwise + ΣM_A:", "moment", "A", None),
        ("+) ΣM_A:", "moment", "A", None),
        ("ΣM@B = 0:", "moment", "B", None),
        # other names of the axes
        ("sigma F_x:", "x", None, None),
        ("ΣF_h:", "x", None, None),
        ("sum of forces vertical:", "y", None, None),
        ("ΣF in the x direction:", "x", None, None),
        ("C: ΣFx:", "x", "C", None),
        ("ΣF→ = 0:", "x", None, None),
        ("ΣF↑:", "y", None, None),
        ("->:", "x", None, None),
        ("C ↑:", "y", "C", None),
        ("↺A:", "moment", "A", None),
        ("x:", "x", None, None),
    ],
)
def test_a_label_names_its_equation(label, kind, point, degrees) -> None:
    reading = read(label + " F_AB - 12 = 0")
    assert reading.label is not None
    found = (reading.label.kind, reading.label.point, reading.label.degrees)
    assert found == (kind, point, degrees)
    assert sums(reading) == {"AB": 1, None: -12}
    assert reading.text[reading.label.span.start : reading.label.span.end] == label[:-1].rstrip()


def test_a_line_without_label_has_none() -> None:
    assert read("F_AB = 12").label is None


def test_equal_names_share_one_table() -> None:
    first, again = (
        Names.of(iter(LETTERED.members), iter(LETTERED.reactions), iter(LETTERED.joints), "kN", "m")
        for _ in range(2)
    )
    assert again is first


def test_constants_are_exact_in_the_exact_form() -> None:
    import sympy

    form = read("F_AB cos(30) + 0.1 F_AC - 2 ft F_BC = sqrt(8) lb*m").exact_form()
    assert form["AB"] == sympy.sqrt(3) / 2
    assert form["AC"] == sympy.Rational(1, 10)
    assert form["BC"] == -sympy.Rational(3048 * 2, 10000)
    assert form[None] == -2 * sympy.sqrt(2) * sympy.Rational(44482216152605, 10**16)


@pytest.mark.parametrize(
    "text",
    [
        "ΣM_A = 0; 4 A_x = 12",
        "ΣM_A = 0, 4 A_x = 12",
        "(ccw +) ΣM_A = 0 => 4 A_x = 12",
        "↺+ ΣM_A = 0 → 4 A_x = 12",
        "[ΣM_A = 0] 4 A_x = 12",
        "[ΣM_A = 0]: 4 A_x = 12",
        "(+) ΣM_A: 2 x 2 A_x = 6 x 2",
    ],
)
def test_a_heading_may_be_set_off_in_the_ways_books_do(text: str) -> None:
    found = read(text)
    assert sums(found) == {"A_x": 4, None: -12}
    assert found.label is not None
    assert (found.label.kind, found.label.point) == ("moment", "A")


def test_a_function_with_a_figure_stuck_to_it_is_not_guessed_at() -> None:
    for text in ("F_AB*atan2(2) = 500", "sin2(45) F_AB = 3"):
        assert isinstance(one_equation(read_line(text, LETTERED)), Unreadable)


OF_A_JOINT_F = load_problem(next(shipped_problems().glob("*/weigh-house.toml"))).names


@pytest.mark.parametrize("text", ["Fy: A_y + 360 - 540 = 0", "Fy: -240", "F_y : A_y + F_y = 9"])
def test_a_sum_before_a_colon_is_the_heading_though_a_reaction_is_spelled_so(text: str) -> None:
    line = read_line(text, OF_A_JOINT_F)
    assert not isinstance(line, Unreadable)
    assert line.label is not None
    assert line.label.kind == "y"


@pytest.mark.parametrize("text", ["Fy = 360", "F_y = 360", "F_y: 360", "Fy = A_y + 9"])
def test_the_reaction_at_a_joint_f_is_meant_where_no_sum_is_headed(text: str) -> None:
    line = read_line(text, OF_A_JOINT_F)
    assert not isinstance(line, Unreadable)
    assert line.label is None
    assert "F_y" in {term.name for side in line.result.sides for term in side.terms}

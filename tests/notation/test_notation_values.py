"""What stated results and constants of problem files say."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from truss_names import LETTERED, NUMBERED

from tutor.notation import (
    Exact,
    Names,
    Reading,
    ValueReading,
    one_equation,
    read_line,
    read_number,
    value_of,
)

VALUES = [
    ("12", 12, None, None, None, None, 2),
    ("0", 0, None, None, None, None, 1),
    ("-12", -12, None, None, None, None, 2),
    ("−12 kN", -12, None, None, None, "kN", 2),
    ("12 C", 12, "C", None, None, None, 2),
    ("12C", 12, "C", None, None, None, 2),
    ("12kNC", 12, "C", None, None, "kN", 2),
    ("12 c", 12, "C", None, None, None, 2),
    ("12 kN (T)", 12, "T", None, None, "kN", 2),
    ("12 kN[C]", 12, "C", None, None, "kN", 2),
    ("-7.5 kN T", -7.5, "T", None, None, "kN", 2),
    ("F_AB = 12 C", 12, "C", None, "AB", None, 2),
    ("12 kN T = F_CA", 12, "T", None, "AC", "kN", 2),
    ("12 = F_CA", 12, None, None, "AC", None, 2),
    ("A_x = 12 left", 12, None, "left", "A_x", None, 2),
    ("12 compression", 12, "C", None, None, None, 2),
    ("12 kN in tension", 12, "T", None, None, "kN", 2),
    ("707 N, C", 0.707, "C", None, None, "N", 3),
    ("707 N (C)", 0.707, "C", None, None, "N", 3),
    ("12; T", 12, "T", None, None, None, 2),
    ("7,5, C", 7.5, "C", None, None, None, 2),
    ("12 kN – C", 12, "C", None, None, "kN", 2),
    ("12 (comp.)", 12, "C", None, None, None, 2),
    ("F_AB: 12 kN, tension.", 12, "T", None, "AB", "kN", 2),
    ("4x10^1 C", 40, "C", None, None, None, None),
    ("7,5 C", 7.5, "C", None, None, None, 2),
    ("0.050 T", 0.05, "T", None, None, None, 2),
    ("12.50", 12.5, None, None, None, None, 4),
    ("1200 N", 1.2, None, None, None, "N", 4),
    ("15/2 T", 7.5, "T", None, None, None, None),
    ("3 sqrt 2 kN C", 3 * math.sqrt(2), "C", None, None, "kN", None),
    ("12 kN ←", 12, None, "left", None, "kN", 2),
    ("12 to the right", 12, None, "right", None, None, 2),
    ("12 kN to left", 12, None, "left", None, "kN", 2),
    ("A_x = 12 ->", 12, None, "right", "A_x", None, 2),
    ("12 kN <--", 12, None, "left", None, "kN", 2),
    ("A_y = 12 kN, ⬆", 12, None, "up", "A_y", "kN", 2),
    ("12 upwards", 12, None, "up", None, None, 2),
    ("12 kN ↓", 12, None, "down", None, "kN", 2),
    ("R_D = 12 against", 12, None, "against", "R_D", None, 2),
    ("zero", 0, None, None, None, None, 1),
    ("F_AB = zero", 0, None, None, "AB", None, 1),
    ("F_AB: zero kN", 0, None, None, "AB", "kN", 1),
    ("zero-force member", 0, None, None, None, None, 1),
    ("0 (zero-force member)", 0, None, None, None, None, 1),
    ("0 kN, zero-force member", 0, None, None, None, "kN", 1),
    ("F_AB = 0 (ZFM).", 0, None, None, "AB", None, 1),
]


@pytest.mark.parametrize(("text", "value", "letter", "sense", "name", "unit", "figures"), VALUES)
def test_a_result_says(text, value, letter, sense, name, unit, figures) -> None:
    found = value_of(read_line(text, LETTERED))
    assert isinstance(found, ValueReading), found
    assert found.value == pytest.approx(value)
    assert (found.letter, found.sense, found.name) == (letter, sense, name)
    assert (found.unit, found.figures) == (unit, figures)


def test_a_result_stands_for_its_rounding_interval() -> None:
    found = value_of(read_line("1.20 kip T", NUMBERED))
    assert isinstance(found, ValueReading)
    assert (found.radius, found.exact) == (0.005, False)
    found = value_of(read_line("12 C", NUMBERED))
    assert isinstance(found, ValueReading)
    assert (found.radius, found.exact) == (0.0, True)


@pytest.mark.parametrize("text", ["40 k C", "40k (C)", "40kC", "40 K, C", "40 kip C", "40 kips C"])
def test_k_is_the_kip_in_a_problem_in_kips(text: str) -> None:
    found = value_of(read_line(text, NUMBERED))
    assert isinstance(found, ValueReading), found
    assert (found.value, found.letter, found.unit) == (40, "C", "kip")


def test_k_is_not_guessed_at_in_a_problem_in_kilonewtons() -> None:
    assert "perhaps kN or kip is meant" in value_of(read_line("40 k C", LETTERED)).message


@pytest.mark.parametrize("text", ["1500# C", "1500#, C", "1500 # (C)", "1.5k C"])
def test_the_number_sign_is_the_pound_in_a_problem_in_kips(text: str) -> None:
    found = value_of(read_line(text, NUMBERED))
    assert isinstance(found, ValueReading), found
    assert (found.value, found.letter) == (1.5, "C")


def test_a_joint_called_k_leaves_the_kip_its_letter() -> None:
    names = Names.of([("AK", "A", "K")], ["K_y"], "AK", "kip", "ft")
    line = one_equation(read_line("3 AK - 2 k + 28.5k - K_y = 0", names))
    assert isinstance(line, Reading), line
    assert (line.coefficient("AK")[0], line.coefficient("K_y")[0]) == (3, -1)
    assert line.coefficient(None)[0] == 26.5


def test_the_words_for_a_zero_keep_the_columns_of_the_rest() -> None:
    found = value_of(read_line("F_AB = 12 kN, zero-force member", LETTERED))
    assert found.message.startswith("At column 15, “zero-force member” stands beside a number")


def test_the_example_in_a_complaint_suits_the_unknown() -> None:
    assert "12 or 12 left" in value_of(read_line("", LETTERED), reaction=True).message
    assert "12 or 12 C" in value_of(read_line("", LETTERED)).message


@pytest.mark.parametrize(
    ("text", "fraction"),
    [
        ("3/2", Fraction(3, 2)),
        ("-0.1", Fraction(-1, 10)),
        ("1e3", Fraction(1000)),
        ("2**3 + 1", Fraction(9)),
        ("(9/4)^(1/2)", Fraction(3, 2)),
        ("cos(60)", Fraction(1, 2)),
        ("sin 210", Fraction(-1, 2)),
        ("tan(135)", Fraction(-1)),
        ("sqrt(6.25)", Fraction(5, 2)),
        ("5*cos(atan(3/4))", Fraction(4)),
        ("sin(acos(-3/5))", Fraction(4, 5)),
        ("tan(asin(3/5))", Fraction(3, 4)),
    ],
)
def test_a_rational_constant_is_a_fraction(text: str, fraction: Fraction) -> None:
    assert read_number(text) == Exact(text, float(fraction), fraction)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("5*sqrt(3)/2", 5 * math.sqrt(3) / 2),
        ("2*tan(30)", 2 / math.sqrt(3)),
        ("pi", math.pi),
        ("4cos(20°)", 4 * math.cos(math.radians(20))),
        ("sqrt(2)*sqrt(8)", 4.0),
    ],
)
def test_any_other_constant_keeps_its_expression(text: str, value: float) -> None:
    found = read_number(text)
    assert isinstance(found, Exact)
    assert found.fraction is None
    assert found.value == pytest.approx(value)
    assert float(found.sympy()) == pytest.approx(value)


def test_a_constant_is_exact_in_sympy() -> None:
    import sympy

    half_root = read_number("sqrt(3)/2")
    third = read_number("1/3")
    assert isinstance(half_root, Exact)
    assert isinstance(third, Exact)
    assert half_root.sympy() == sympy.sqrt(3) / 2
    assert half_root.minus(third).sympy() == sympy.sqrt(3) / 2 - sympy.Rational(1, 3)
    assert third.minus(third) == Exact("1/3 - (1/3)", 0.0, Fraction(0))


def test_a_member_called_like_a_word_has_its_value_read_after_an_equation() -> None:
    names = Names.of([(pair, *pair) for pair in ("CA", "DA", "NO")], [], "CADNO", "kN", "m")
    for name in ("CA", "DA", "NO", "ca"):
        for between in ("; ", ", ", " → ", " so "):
            steps = read_line(f"0.8 {name} - 4 = 0{between}{name} = 5", names).steps
            assert len(steps) == 2, (name, between)


@pytest.mark.parametrize("does", ["hangs", "holds", "is holding", "keeps", "props"])
@pytest.mark.parametrize("what", ["the load up", "up the load", "it up", "joint B up"])
@pytest.mark.parametrize(("behind", "letter"), [("", None), (" T", "T"), (" (C)", "C")])
def test_what_is_held_up_is_not_which_way_the_force_acts(
    does: str, what: str, behind: str, letter: str | None
) -> None:
    value = value_of(read_line(f"F_AB = 12 kN{behind}; the post {does} {what}", LETTERED))
    assert isinstance(value, ValueReading)
    assert (value.value, value.letter, value.sense) == (12, letter, None)


@pytest.mark.parametrize("said", ["up", "acting up", "it acts up", "the wall pushes up"])
def test_which_way_a_force_acts_is_heard_in_all_other_words(said: str) -> None:
    value = value_of(read_line(f"A_y = 12 kN; {said}", LETTERED))
    assert isinstance(value, ValueReading)
    assert value.sense == "up"

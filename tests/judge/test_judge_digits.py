"""Two digits of a value that changed places, on a truss of our own: A_y = 24, B_y = 12, AC = -30."""

from __future__ import annotations

from dataclasses import replace

import pytest
from families import exact, plain_problem
from hypothesis import given
from hypothesis import strategies as st

from tutor.judge import Value, judge
from tutor.judge.digits import are_exchanged
from tutor.model import Load, Support

BENCH = plain_problem(
    [("A", 0, 0), ("B", 9.6, 0), ("C", 3.2, 2.4)],
    ("AB", "AC", "BC"),
    [Support("A", "pin"), Support("B", "roller")],
    [Load("C", (("down", exact("38.7")),))],
)
"""A_y = 25.8, B_y = 12.9, AC = -43, AB = 34.4, BC = -36.738"""


def named(name: str, text: str) -> list[tuple[str, str | None]]:
    return [(m.code, m.force) for m in judge(BENCH, Value(name), text).mistakes]


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("A_y", "28.5"),
        ("A_y", "A_y = 52.8 kN"),
        ("B_y", "21.9"),
        ("BC", "37.6 C"),
        ("BC", "-36.47"),
        ("BC", "F_BC = -63.74 kN"),
        ("AB", "43.4 T"),
    ],
)
def test_two_neighbouring_digits_that_changed_places_are_named(name: str, text: str) -> None:
    assert named(name, text) == [("digits-exchanged", name)]


@pytest.mark.parametrize(
    ("name", "text", "code"),
    [
        ("A_y", "8.25", "arithmetic"),
        ("BC", "37.6 T", "arithmetic"),
        ("BC", "36.74 T", "tension-compression"),
        ("AB", "34.4 C", "tension-compression"),
        ("B_y", "25.8", "carried"),
    ],
)
def test_digits_further_apart_and_other_slips_are_told_as_before(
    name: str, text: str, code: str
) -> None:
    known = {"A_y": "25.8"} if code == "carried" else {}
    assert judge(BENCH, Value(name), text, known=known).mistakes[0].code == code


@pytest.mark.parametrize("text", ["34 C", "F_AC = 34"])
def test_a_number_of_two_figures_may_be_any_other(text: str) -> None:
    assert "digits-exchanged" not in dict(named("AC", text))


def test_digits_that_changed_places_within_what_is_let_pass_are_right() -> None:
    assert judge(BENCH, Value("BC"), "-36.783").kind == "right"


@pytest.mark.parametrize(
    ("name", "text", "code"),
    [
        ("BC", "-30", "rounding"),
        ("A_y", "20", "arithmetic"),
        ("AB", "40 T", "rounding"),
        ("AC", "50 C", "arithmetic"),
        ("BC", "-36", "rounding"),
        ("AB", "35 T", "arithmetic"),
    ],
)
def test_figures_cut_off_or_rounded_twice_are_rounding_where_they_are_not_a_fifth_off(
    name: str, text: str, code: str
) -> None:
    """36.738 is 30 when its figures are cut, 25.8 is too far from 20; 34.4 may become 40, and 43 not 50."""
    assert named(name, text) == [(code, name)]


def test_a_comma_is_a_point_only_where_thousands_could_be_no_force_here() -> None:
    """All loads together are 38.7: no force is a hundred times that."""
    assert judge(BENCH, Value("A_y"), "25,800").kind == "right"
    assert judge(BENCH, Value("A_y"), "5,000").kind == "wrong"
    assert judge(BENCH, Value("A_y"), "3,000").kind == "unreadable"


@given(st.integers(1000, 99999), st.integers(0, 3), st.integers(0, 2))
def test_exchanged_back_the_number_is_the_true_one(number: int, at: int, places: int) -> None:
    digits = list(str(number))
    at = min(at, len(digits) - 2)
    digits[at], digits[at + 1] = digits[at + 1], digits[at]
    typed, radius = int("".join(digits)), 0.5 * 10.0**-places if places else 0.0
    if len(str(typed)) == len(digits):
        moved = are_exchanged(typed / 10**places, radius, number / 10**places)
        assert moved is (typed != number)


PIER = plain_problem(
    [("A", 0, 0), ("B", 8, 0), ("C", 4, 3)],
    ("AB", "AC", "BC"),
    [Support("A", "pin"), Support("B", "roller")],
    [Load("C", (("down", exact(2100)),))],
)
"""AC = -1750"""


@pytest.mark.parametrize("text", ["1.750 lb C", "F_AC = -1.750 lb", "1.750 C"])
def test_nobody_who_counts_in_pounds_sets_off_thousands_with_a_point(text: str) -> None:
    verdict = judge(replace(PIER, force="lb", length="ft"), Value("AC"), text)
    assert [(m.code, m.force) for m in verdict.mistakes][:1] == [("unit", "AC")]


def test_who_counts_in_newtons_may() -> None:
    assert judge(replace(PIER, force="N"), Value("AC"), "1.750 N C").kind == "right"


@pytest.mark.parametrize(
    "text",
    ["AC = -60 + 17 = 43 kN", "AC = -25.8/0.6 = 43 kN", "A_y = 38.7 - 12.9 = -25.8 kN"],
)
def test_a_sign_that_is_lost_before_the_problems_own_unit_is_no_slip_of_units(text: str) -> None:
    verdict = judge(BENCH, Value(text[: text.index(" ")]), text)
    assert verdict.kind == "wrong"
    assert "unit" not in verdict.text
    assert all(mistake.code != "unit" for mistake in verdict.mistakes)

"""Lines as they are typed off a page: terms put right at once, rounded once more, numbered, with commas of home.

Two rafters of our own in kip: A_x = -1.5, A_y = 14, B_y = 16, AC = -17.5, BC = -20, AB = 12.
"""

from __future__ import annotations

from typing import Any

import pytest
from families import exact, plain_problem

from tutor.judge import Fx, Fy, M, Value, judge
from tutor.model import Load, Problem, Support


def rafters(force: str, load: str) -> Problem:
    return plain_problem(
        [("A", 0, 0), ("B", 6, 0), ("C", 3, 4)],
        ("AB", "AC", "BC"),
        [Support("A", "pin"), Support("B", "roller")],
        [Load("C", (("down", exact(load)),)), Load("C", (("right", exact("1.5")),))],
        force=force,
        length="ft" if force == "kip" else "m",
    )


BENCH = rafters("kip", "30")
KNOWN = {"A_x": -1.5, "A_y": 14, "B_y": 16}


def kind_of(about: Any, text: str, problem: Problem = BENCH, **known: Any) -> str:
    return judge(problem, about, text, known=known or KNOWN).kind


@pytest.mark.parametrize(
    ("about", "text", "kind"),
    [
        (Fy(joint="A"), "14 + 3/5 AC, no, 4/5 AC = 0", "right"),
        (Fy(joint="A"), "12, no wait 14, + 0.8 AC = 0, AC = -17.5", "right"),
        (Fy(joint="A"), "12 (oops, 14) + 0.8 AC = 0", "right"),
        (M("A"), "6 B_y = 30*4, I mean 30*3, + 1.5*4", "right"),
        (M("A"), "6 B_y = 30*4 I mean 3, + 1.5*4", "right"),
        (Fy(joint="A"), "14 + 4/5 AC, no, 3/5 AC = 0", "wrong"),
        (Fy(joint="A"), "14, no wait 12, + 0.8 AC = 0", "wrong"),
        (Fy(joint="A"), "14 (oops, 12) + 0.8 AC = 0", "wrong"),
        (M("A"), "6 B_y = 30*3, I mean 30*4, + 1.5*4", "wrong"),
    ],
)
def test_a_term_put_right_at_once_counts_as_it_is_said_last(
    about: Any, text: str, kind: str
) -> None:
    assert kind_of(about, text) == kind


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("14 + 0.8 AC = 0, no load at A", "right"),
        ("14 + 0.8 AC = 0, no, nothing else acts", "right"),
        ("14 + 0.6 AB, sorry, 0.8 AC = 0", "wrong"),
    ],
)
def test_what_puts_nothing_of_its_shape_right_is_no_term_said_anew(text: str, kind: str) -> None:
    found = kind_of(Fy(joint="A"), text)
    assert found == kind or (kind == "wrong" and found == "unreadable")


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("AC approx 17.5 kip C", "right"),
        ("AC is about 17.5 C", "right"),
        ("AC ~ -17.5", "right"),
        ("AC = 17.49 C approx 17.5 kip", "right"),
        ("AC   17.49   C   approx. 17.5", "right"),
        ("AC approx 17.5 T", "wrong"),
        ("AC = 17.49 T, approx 17.5", "wrong"),
        ("AC about 14 C", "wrong"),
    ],
)
def test_a_value_may_be_said_to_be_near(text: str, kind: str) -> None:
    assert kind_of(Value("AC"), text) == kind


def test_a_value_rounded_to_another_one_is_not_passed_over() -> None:
    assert kind_of(Value("AC"), "AC = 17.5 C approx 15 kip") != "right"


HEAVY = rafters("kip", "30.75")
"""A_y = 14.375, AC = -17.969."""


@pytest.mark.parametrize(
    ("about", "text", "kind"),
    [
        (Fy(joint="A"), "14,375 + 0,8 AC = 0", "right"),
        (Fy(joint="A"), "14,375 + 4/5 AC = 0  ⇒  AC = -17,969 kip", "right"),
        (M("B"), "6 A_y + 1.5*4 - 30.75*3 = 0, A_y = 86.25/6 = 14,375 kip", "right"),
        (Fy(joint="A"), "14,375 + 3/5 AC = 0", "wrong"),
        (Fy(joint="A"), "14,375 lb + 4/5 AC = 0", "right"),
        (Value("A_y"), "A_y = 14,375 lb", "right"),
    ],
)
def test_a_comma_before_three_figures_is_a_decimal_one_where_the_line_is_right_so(
    about: Any, text: str, kind: str
) -> None:
    assert kind_of(about, text, HEAVY, A_y="14.375") == kind


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("3,125 + 4/5 AC = 0", "right"),
        ("3,125 kN + 4/5 AC = 0 ⇒ AC = -3,906 kN", "right"),
        ("3,125 + 3/5 AC = 0", "unreadable"),
        ("-3,125 + 4/5 AC = 0", "unreadable"),
    ],
)
def test_where_units_are_metric_it_is_asked_about_unless_the_line_is_right(
    text: str, kind: str
) -> None:
    light = rafters("kN", "8.25")
    assert kind_of(Fy(joint="A"), text, light, A_y="3.125") == kind


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("2.4)\t14 + 0.8 AC = 0", "right"),
        ("(2.4)\t14 + 0.8 AC = 0", "right"),
        ("•\tΣF_y = 0:  14 + 0.8 AC = 0\t(1)", "right"),
        ("14 + 0.8 AC = 0\t(3)", "right"),
        ("\uf0b7\tΣF_y = 0:\t14 + 0.8 AC = 0", "right"),
        ("▪ Step 2 ▸ ΣF_y = 0:  14 + 0.8 AC = 0", "right"),
        ("Slide 9 │ ΣF_y = 0 ⇒ 14 + 0.8 AC = 0", "right"),
        ("'14 + 0.8 AC = 0", "right"),
        ("£F_y = 0:  14 + 0.8 AC = 0", "right"),
        ("A\tFy\t+0.8*F_AC\t+14\t= 0", "right"),
        ("A\tFy\t0.8 F_AC\t+14 = 0", "right"),
        ("Slide 9 │ ΣF_y = 0 ⇒ 14 - 0.8 AC = 0", "wrong"),
        ("A\tFy\t-0.8*F_AC\t+14\t= 0", "wrong"),
        ("2.4)\t14 + 0.6 AC = 0", "wrong"),
        ("14 - 0.8 AC = 0\t(3)", "wrong"),
    ],
)
def test_what_stands_around_a_line_on_its_page_is_no_part_of_it(text: str, kind: str) -> None:
    assert kind_of(Fy(joint="A"), text) == kind


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("AC = 17.5 kip (pressure)", "right"),
        ("AC = 17.5 pressure", "right"),
        ("AB = 12 kip (pressure)", "wrong"),
        ("AB = 12 kip (traction)", "right"),
        ("AB = 12 T (wind pressure at C)", "right"),
    ],
)
def test_pressure_behind_a_value_is_compression(text: str, kind: str) -> None:
    assert kind_of(Value(text[:2]), text) == kind


def test_a_colon_between_two_equations_parts_them() -> None:
    about = Fx(joint="A")
    assert kind_of(about, "A_x + AB + 0.6 AC = 0 :  -1,5 + AB - 10,5 = 0, we obtain AB = 12") == (
        "right"
    )

"""Are units and loads told in words that can be read aloud and taken one way only?"""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from families import plain_problem

from tutor.judge import Fx, Fy, M, judge
from tutor.judge.called import counted
from tutor.judge.kind import Case
from tutor.judge.mistakes import KINDS
from tutor.model import Load, Support
from tutor.notation import Exact


def push(joint: str, way: str, size: int) -> Load:
    return Load(joint, ((way, Exact.of(size)),))  # type: ignore[arg-type]


FRAME = plain_problem(
    [("A", 0, 0), ("B", 8, 0), ("C", 4, 3)],
    ["AB", "AC", "BC"],
    [Support("A", "pin"), Support("B", "roller")],
    [push("C", "down", 7), push("C", "right", 5)],
)


@pytest.mark.parametrize(("force", "length"), [("lb", "in"), ("kip", "ft"), ("lb", "ft")])
@pytest.mark.parametrize("code", ["unit", "arm-unit"])
def test_american_units_are_words_in_a_sentence(code: str, force: str, length: str) -> None:
    reason = KINDS[code].reason(Case(replace(FRAME, force=force, length=length), M("A")))
    assert not re.search(r"\b(in in|ft|lb)\b", reason)
    assert {"in": "inches", "ft": "feet"}[length] in reason


@pytest.mark.parametrize(
    ("about", "text", "told"),
    [
        (
            Fx(),
            "A_x - 5 = 0",
            "Either one of the loads at C (the horizontal one) or the reaction A_x has the wrong sign",
        ),
        (Fy(), "A_y + B_y + 7 = 0", "One of the loads at C (the vertical one) has the wrong sign"),
        (
            M("A"),
            "8 B_y - 4*7 + 3*5 = 0",
            "One of the loads at C (the horizontal one) has the wrong sign",
        ),
        (M("A"), "8 B_y - 3*5 = 0", "One of the loads at C (the vertical one) is left out"),
    ],
)
def test_loads_of_one_name_are_told_apart_by_their_direction(about, text, told) -> None:
    (mistake,) = judge(FRAME, about, text).mistakes
    assert mistake.place.startswith(told)


def test_loads_of_one_name_in_one_direction_are_not_told_apart() -> None:
    twice = replace(FRAME, loads=(push("C", "down", 7), push("C", "down", 5)))
    (mistake,) = judge(twice, Fy(), "A_y + B_y - 7 + 5 = 0").mistakes
    assert mistake.place.startswith("One of the loads at C has the wrong sign")


def test_loads_of_one_name_with_one_number_are_not_told_apart() -> None:
    alike = replace(FRAME, loads=(push("C", "down", 3), push("C", "right", 4)))
    (mistake,) = judge(alike, M("A"), "8 B_y - 4*3 + 3*4 = 0").mistakes
    assert "vertical" not in mistake.place
    assert "horizontal" not in mistake.place


@pytest.mark.parametrize(
    ("about", "text", "told"),
    [
        (Fx(), "5 = 0*A_x", "The reaction A_x is left out."),
        (Fy("B"), "0.6 F_BC = 0", "The reaction B_y is left out."),
        (Fx("A"), "A_x + F_AB = 0", "The force in AC is left out: it has a horizontal component."),
    ],
)
def test_a_force_along_the_sum_is_left_out_and_no_more_is_said(about, text, told) -> None:
    (mistake,) = judge(FRAME, about, text).mistakes
    assert mistake.place == told


def test_a_mistake_is_counted_in_words() -> None:
    assert counted("sign", 1) == "a sign turned"
    assert counted("sign", 3) == "a sign turned (3 times)"

"""Loads that were added up before they were typed: which mistake was made with all of them, or at which?

The trusses are our own; what is said is what a lecturer would say, common practice, no source.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from families import exact, plain_problem
from paper.measure import problem

from tutor import Fy, M, judge
from tutor.model import Load, Support


def pushed(joint: str, **ways: int | Fraction) -> Load:
    return Load(joint, tuple((way, exact(size)) for way, size in ways.items()))


FRAME = (
    [("A", 0, 0), ("B", 4, 0), ("C", 0, 3), ("D", 4, 3), ("E", 0, 7)],
    ("AB", "AC", "BC", "BD", "CD", "CE", "DE"),
    [Support("A", "pin"), Support("B", "roller")],
)
WINDY = plain_problem(*FRAME, [pushed("C", right=6), pushed("E", right=4)])
LADEN = plain_problem(*FRAME, [pushed("C", right=6), pushed("E", right=4), pushed("D", down=5)])


@pytest.mark.parametrize(
    ("text", "forces"),
    [
        ("4B_y - 10*3 = 0", ["load E"]),
        ("4B_y = 30", ["load E"]),
        ("4B_y - 10*7 = 0", ["load C"]),
        ("4B_y = 70", ["load C"]),
        ("4B_y - 10*5 = 0", ["load C", "load E"]),
        ("4B_y = 10*4", ["load C", "load E"]),
        ("4B_y - 10*10 = 0", ["load C", "load E"]),
    ],
)
def test_level_loads_put_at_one_height_are_named_where_they_are_not(
    text: str, forces: list[str]
) -> None:
    said = judge(WINDY, M("A"), text).mistakes
    assert [(mistake.code, mistake.force) for mistake in said] == [("arm-from", f) for f in forces]


def test_so_it_is_where_the_loads_add_up_to_one() -> None:
    loads = [pushed("C", right=Fraction("0.6")), pushed("E", right=Fraction("0.4"))]
    said = judge(plain_problem(*FRAME, loads), M("A"), "4B_y - 1*5 = 0").mistakes
    assert [(m.code, m.force) for m in said] == [("arm-from", "load C"), ("arm-from", "load E")]


def test_a_load_the_other_way_is_not_taken_together_with_level_ones() -> None:
    said = judge(LADEN, M("A"), "4B_y - 10*7 - 5*4 = 0").mistakes
    assert [(mistake.code, mistake.force) for mistake in said] == [("arm-from", "load C")]
    for text in ("4B_y - 15*3 = 0", "4B_y - 15*7 = 0"):
        assert [m.code for m in judge(LADEN, M("A"), text).mistakes] == ["arithmetic"]


@pytest.mark.parametrize(
    ("rest", "code"),
    [
        ("+ 60", "sign"),
        ("- 60000", "unit"),
        ("- 60*0.8", "needless-component"),
        ("- 120", "double"),
        ("- 2*60", "double"),
    ],
)
def test_a_slip_with_all_loads_is_one_that_was_made_at_each(rest: str, code: str) -> None:
    said = judge(problem("warren"), Fy(), f"L0_y + L4_y {rest} = 0").mistakes
    assert [(m.code, m.force) for m in said] == [(code, f"load L{n}") for n in (1, 2, 3)]


def test_half_of_all_loads_is_the_one_that_stands_there() -> None:
    said = judge(problem("warren"), Fy(), "L0_y + L4_y - 60*0.5 = 0").mistakes
    assert [(m.code, m.force) for m in said] == [("missing", "load L1"), ("missing", "load L3")]


@pytest.mark.parametrize(
    "text",
    [
        "L0_y + L4_y - 20 - 30 - 10 + 0.1 = 0",
        "L0_y + L4_y - 60 - 0.2 = 0",
        "L0_y + L4_y = 60 + 0.3",
        "L0_y + L4_y - 60 - 1 = 0",
        "L0_y + L4_y = 20 + 30 + 10 - 1",
    ],
)
def test_a_small_number_beside_all_loads_stands_for_nothing(text: str) -> None:
    said = judge(problem("warren"), Fy(), text).mistakes
    assert [(mistake.code, mistake.force) for mistake in said] == [("extra", None)]


def test_a_nought_may_stand_anywhere_and_a_sum_may_be_half_a_percent_off() -> None:
    assert judge(problem("warren"), Fy(), "L0_y + L4_y - 60 + 0 = 0").right
    assert judge(problem("warren"), Fy(), "L0_y + L4_y - 60.3 = 0").right
    said = judge(problem("warren"), Fy(), "L0_y + L4_y - 60.4 = 0").mistakes
    assert [mistake.code for mistake in said] == ["arithmetic"]

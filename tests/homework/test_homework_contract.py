"""Does `review` keep what is promised of it: its names, what it takes, and that it takes anything?

The truss: A pinned at the left, B on a roller at the right, C above the middle, 12 down at C.
Slopes are 3 in 4 up to C, so A_x = 0, A_y = B_y = 6, AC = BC = -10 and AB = 8.
"""

from __future__ import annotations

import itertools
from decimal import Decimal
from fractions import Fraction

import pytest
from families import plain_problem
from hypothesis import given, settings
from hypothesis import strategies as st

from tutor import Along, Fx, Fy, M, Mistake, Value, review
from tutor.homework import Review
from tutor.model import Load, Support
from tutor.notation import Exact

ROOF = plain_problem(
    (("A", 0, 0), ("B", 8, 0), ("C", 4, 3)),
    ("AB", "BC", "CA"),
    (Support("A", "pin"), Support("B", "roller")),
    (Load("C", (("down", Exact.of(12)),)),),
)
RIGHT = {
    "reactions": {"A_x": "0", "A_y": "6 up", "B_y": 6.0},
    "forces": {"AB": 8, "BC": "10 C", "CA": -10.0},
    "lines": [(Fy("C"), "-12 - 3/5 F_AC - 3/5 F_BC = 0"), (M("A"), "8 B_y - 48 = 0")],
    "senses": {"A_y": "up"},
    "order": ["C", "A"],
}
STATES = {"right", "wrong", "follows", "unchecked"}


def states(result: Review) -> dict[str | int, str]:
    return {finding.name: finding.state for finding in result.findings}


def test_everything_at_once_is_taken_and_right() -> None:
    result = review(ROOF, RIGHT)
    assert states(result) == dict.fromkeys(("A_x", "A_y", "B_y", "AB", "BC", "CA", 0, 1), "right")
    assert (result.first, result.places, result.refused) == (None, (), ())


@pytest.mark.parametrize("count", range(6))
def test_any_part_may_be_absent(count: int) -> None:
    for kept in itertools.combinations(RIGHT, count):
        result = review(ROOF, {key: RIGHT[key] for key in kept})
        assert set(states(result).values()) <= {"right"}
        assert result.first is None
        assert result.refused == ()


@pytest.mark.parametrize(
    ("written", "state"),
    [
        *(
            ("10 C", "right"),
            ("-10", "right"),
            (-10, "right"),
            (-10.0, "right"),
            ("10 kN (C)", "right"),
        ),
        *((Fraction(-10), "right"), (Decimal("-10.0"), "right"), ("10000 N C", "right")),
        *((" 10 C\n", "right"), ("-9.95", "right"), ("-6*5/3", "right")),
        *((10, "wrong"), ("10 T", "wrong"), ("12 C", "wrong"), (0, "wrong"), ("-10000", "wrong")),
        *(("lots", "unchecked"), (True, "unchecked"), (float("nan"), "unchecked")),
    ],
)
@pytest.mark.parametrize("name", ["BC", "CB", "F_BC", "F_{CB}"])
def test_a_force_may_be_written_in_any_of_these_ways(
    name: str, written: object, state: str
) -> None:
    assert states(review(ROOF, {"forces": {name: written}})) == {"BC": state}


@pytest.mark.parametrize(
    ("written", "state"),
    [
        ("6 up", "right"),
        ("6", "right"),
        (6.0, "right"),
        ("6 down", "wrong"),
        ("12 left", "unchecked"),
    ],
)
@pytest.mark.parametrize("name", ["B_y", "By", "B_{y}"])
def test_a_reaction_may_be_written_in_any_of_these_ways(
    name: str, written: object, state: str
) -> None:
    assert states(review(ROOF, {"reactions": {name: written}})) == {"B_y": state}


def test_a_plain_number_is_read_in_the_sense_drawn_and_a_word_is_not() -> None:
    senses = {"B_y": "down", "BC": "C"}
    work = {"senses": senses, "reactions": {"B_y": -6}, "forces": {"BC": 10}}
    assert review(ROOF, work).right
    work = {"senses": senses, "reactions": {"B_y": "6 up"}, "forces": {"BC": "10 C"}}
    assert review(ROOF, work).right


def test_a_wrong_entry_has_a_mistake_for_its_cause_and_a_place() -> None:
    work = {**RIGHT, "forces": {"AB": 8, "BC": "10 T", "CA": -10.0}, "order": ["A", "C", "B"]}
    result = review(ROOF, work)
    assert result.first == "C"
    assert result.places[0] == "C"
    cause = result.finding["BC"].cause
    assert isinstance(cause, Mistake)
    assert (cause.code, cause.force) == ("tension-compression", "BC")


def test_a_whole_body_error_is_called_whole() -> None:
    result = review(ROOF, {"reactions": {"A_y": 9.0, "B_y": 3.0, "A_x": 0}})
    assert result.first == "whole"
    assert set(states(result).values()) <= STATES


WEIRD = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8) | st.binary(),
    lambda inner: st.lists(inner, max_size=3) | st.tuples(inner, inner) | st.fractions(),
    max_leaves=5,
)
NAMED = st.sampled_from(("A", "C", "Q", None)) | WEIRD
ABOUT = st.one_of(
    WEIRD,
    st.builds(Fx, NAMED, st.tuples(NAMED) | WEIRD),
    st.builds(Fy, NAMED),
    st.builds(M, NAMED | st.tuples(WEIRD, WEIRD), NAMED, st.just(()) | st.tuples(NAMED)),
    st.builds(Along, WEIRD | st.just(10**400), NAMED),
    st.builds(Value, NAMED | st.sampled_from(("AB", "f_ab", "B_y"))),
)


@given(st.lists(st.tuples(ABOUT, st.sampled_from(("F_AB = 3", "AB + BC = 0", "8", "")) | WEIRD)))
@settings(max_examples=26)
def test_no_line_about_anything_makes_it_raise(lines: list[tuple[object, object]]) -> None:
    result = review(ROOF, {"lines": lines, "forces": {"AB": 3}})
    assert set(states(result).values()) <= STATES
    assert all(refused.message for refused in result.refused)


@given(st.dictionaries(st.sampled_from(("AB", "ba", "B_y", "Q", "")) | st.text(max_size=5), WEIRD))
@settings(max_examples=20)
def test_no_value_makes_it_raise(values: dict[str, object]) -> None:
    for part in ("forces", "reactions", "senses"):
        assert set(states(review(ROOF, {part: values})).values()) <= STATES


def test_of_wrong_lines_beside_right_values_the_one_that_comes_first_in_the_work_is_told() -> None:
    lines = [
        (Fy("C"), "-12 + 3/5 F_AC - 3/5 F_BC = 0"),
        (M("A"), "B_y - 2(12) = 0"),
    ]
    of_joints = review(ROOF, {**RIGHT, "lines": lines[:1], "order": ["C", "A", "B"]})
    assert of_joints.first == "C"
    assert review(ROOF, {**RIGHT, "lines": lines, "order": ["C", "A", "B"]}).first == "whole"
    assert review(ROOF, {**RIGHT, "lines": lines, "order": ["C", "whole", "A"]}).first == "C"


def test_a_line_about_a_joint_that_is_no_name_is_left_out() -> None:
    result = review(ROOF, {"lines": [(Fy([]), "F_AB = 3")], "forces": {"AB": 3}})  # type: ignore[arg-type]
    assert [refused.name for refused in result.refused] == ["line 1"]


def test_a_list_without_end_is_cut_off() -> None:
    work = {"order": itertools.repeat("A"), "lines": itertools.repeat((Fx("A"), "x"))}
    assert isinstance(review(ROOF, work), Review)

"""A direction that a heading gives in words: taken where one line can be meant, else asked about, never passed over.

The truss is our own: joint Q of a lean-to, where the rafter PQ-QR goes on at 3 up for 4 across and the strut QS
falls at 3 down for 4 across. Across the rafter at Q by hand: 5 down has 5(4/5) = 4, QS has QS(24/25).
"""

from __future__ import annotations

import pytest
from families import down, plain_problem
from walks import Clock

from tutor.judge import Along, Fx, in_words, judge
from tutor.judge.about import equation_of
from tutor.judge.headings import slants, sum_along
from tutor.lesson import Lesson
from tutor.model import Support

LEAN_TO = plain_problem(
    [("P", 0, 0), ("Q", 4, 3), ("R", 8, 6), ("S", 8, 0)],
    ("PQ", "QR", "PS", "QS", "RS"),
    [Support("P", "pin"), Support("S", "roller")],
    [down("Q", 5), down("R", 7)],
)


@pytest.fixture
def at_q() -> Clock:
    do = Clock(Lesson(LEAN_TO))
    do("show", until="joints")
    do("joint", joint="Q")
    return do


@pytest.mark.parametrize(
    "way",
    [
        "at right angles to the rafter",
        "normal to the rafter",
        "at 90° to the chord",
        "along the rafter’s normal",
        "perpendicular to QR",
    ],
)
def test_the_one_line_that_is_meant_is_taken(at_q: Clock, way: str) -> None:
    reply = at_q("type", text=f"Joint Q, resolving {way}: 4 + 24/25 QS = 0")
    assert reply.accepted
    assert [in_words(each.about) for each in at_q.lesson.state.lines_of("Q")] == [
        "ΣF along 126.9° at joint Q"
    ]
    assert all(say.tone != "remark" or "Passed" not in say.text for say in reply.said)


def test_a_slip_in_such_a_sum_is_told_of_that_sum(at_q: Clock) -> None:
    reply = at_q("type", text="Joint Q, at right angles to the rafter: 3 + 24/25 QS = 0")
    assert "wrong one of its pair" in reply.text


@pytest.mark.parametrize(
    ("joint", "way"),
    [
        ("S", "along the chord"),
        ("P", "perpendicular to the post"),
        ("Q", "along the hip"),
        ("R", "along the bar"),
    ],
)
def test_a_line_that_is_not_clear_is_asked_about(at_q: Clock, joint: str, way: str) -> None:
    at_q("joint", joint=joint)
    tries = at_q.lesson.state.tries
    reply = at_q("type", text=f"Joint {joint}, resolving {way}: 7 + 0.6 QR = 0")
    assert not reply.accepted
    assert [say.tone for say in reply.said] == ["note"]
    assert "name a member, as in along" in reply.text
    assert (at_q.lesson.state.lines_of(joint), at_q.lesson.state.tries) == ((), tries)


@pytest.mark.parametrize(
    "way", ["along the push of the rail", "along the hip", "along the normal to the rail"]
)
def test_where_a_direction_is_chosen_it_is_clear(at_q: Clock, way: str) -> None:
    at_q("choose", about="along 126.87 @ Q")
    right = at_q("type", text=f"At Q, {way}: 4 + 24/25 QS = 0")
    assert right.accepted
    at_q("undo")
    wrong = at_q("type", text=f"At Q, {way}: 4 - 24/25 QS = 0")
    assert not wrong.accepted
    assert "say clearly" not in wrong.text


def test_a_sum_along_something_unclear_is_no_sum_along_an_axis() -> None:
    said = judge(LEAN_TO, Fx(joint="Q"), "along the bar: 0.8 QR + 0.8 QS - 0.8 PQ = 0")
    assert said.kind == "undecided"


def test_no_line_is_right_by_a_number_that_it_does_not_show() -> None:
    said = judge(LEAN_TO, Fx(joint="Q"), "3.333 + 0.8 QS = 0", known={"PQ": -12.5})
    assert not said.right


@pytest.mark.parametrize("off", [-0.055, 0.055, -0.07, 0.07])
def test_a_rounded_direction_is_the_members_own_for_a_heading_and_for_the_judge_alike(
    off: float,
) -> None:
    for own in slants(LEAN_TO, "Q"):
        typed = Along(own + off, joint="Q")
        exact = equation_of(LEAN_TO, Along(own, joint="Q")).linear
        is_own = sum_along(LEAN_TO, typed.degrees, "Q") == Along(own, "Q")
        assert is_own == (abs(off) < 0.06)
        assert (equation_of(LEAN_TO, typed).linear == pytest.approx(exact, abs=1e-9)) == is_own

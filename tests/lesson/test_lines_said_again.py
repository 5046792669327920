"""Is a right line right each time it is typed, also in figures and without a force that does nothing?

The truss is our own. By hand: ΣM_A: 15 B_y = 30*480 + 8*300, B_y = 1120; A_y = -640, A_x = -300 N. At A,
where AD carries nothing: 8/17 AE = 640, AE = 1360 N; AB = 300 - 1200 = -900 N.
"""

from __future__ import annotations

import pytest
from families import down, exact, plain_problem
from walks import Clock

from tutor.judge import Fx, Fy
from tutor.lesson import Lesson
from tutor.model import Load, Problem, Support

LEDGE: Problem = plain_problem(
    [("A", 0, 0), ("B", 15, 0), ("C", 30, 0), ("D", 0, 8), ("E", 15, 8)],
    ("AB", "BC", "AD", "DE", "BE", "AE", "EC"),
    [Support("A", "pin"), Support("B", "roller")],
    [down("C", 480), Load("D", (("right", exact(300)),))],
    force="N",
    length="m",
)
AGAIN = ["8/17 AE - 640 = 0", "640 = 8/17 AE", "8/17(1360) - 640 = 0", "AD + 8/17 AE - 640 = 0"]


@pytest.fixture
def at_a() -> Clock:
    do = Clock(Lesson(LEDGE))
    do("show", until="joints")
    do("joint", joint="A")
    return do


def test_a_sum_without_a_force_that_does_nothing_is_taken_for_the_sum_that_it_is(
    at_a: Clock,
) -> None:
    reply = at_a("type", text="8/17 AE - 640 = 0")
    assert reply.accepted, reply.text
    assert [line.about for line in at_a.lesson.state.lines_of("A")] == [Fy("A")]
    assert "may that be left out here" in reply.text


@pytest.mark.parametrize("first", ["8/17 AE - 640 = 0", "AD + 8/17 AE = 640"])
@pytest.mark.parametrize("asked", ["", "Fx @ A", "Fy @ A"])
@pytest.mark.parametrize("again", AGAIN)
def test_a_sum_that_stands_is_right_again_whichever_is_asked_for(
    at_a: Clock, first: str, asked: str, again: str
) -> None:
    at_a("type", text=f"Fy: {first}")
    if asked:
        at_a("choose", about=asked)
    before = at_a.lesson.state
    reply = at_a("type", text=again)
    assert reply.accepted, reply.text
    assert all(not tried.codes for tried in at_a.lesson.state.tries)
    assert at_a.lesson.state.about in (before.about, Fx("A"))


def test_a_force_left_out_is_asked_about_again_and_not_given_away(at_a: Clock) -> None:
    at_a("type", text="Fy: AD + 8/17 AE = 640")
    reply = at_a("type", text="8/17 AE = 640")
    assert "Without AD: may that be left out here, and why?" in reply.text
    assert "AD = 0" not in reply.text


def test_the_sum_that_is_asked_for_goes_before_one_that_stands(at_a: Clock) -> None:
    at_a("type", text="Fy: 8/17 AE - 640 = 0")
    reply = at_a("type", text="AB + 15/17(1360) - 300 = 0")
    assert reply.accepted, reply.text
    assert at_a.lesson.state.lines_of("A")[-1].about == Fx("A")

"""Is what follows from a student's own slip told as that, and not as one slip more?

The truss is our own (paper/rack.toml). By hand: A_y = 80, A_x = -120; joint A: 0.8 AE + 80 = 0, so
AE = -100 N; AB + 0.6 AE - 120 = 0, so AB = 180 N. With 0.6 for 0.8 AE would be -133.3 and AB 200.
"""

from __future__ import annotations

import pytest
from paper.measure import problem
from walks import Clock

from tutor.lesson import Lesson

RACK = problem("rack")
SLIP = "ΣFy: 80 + 0.6 AE = 0"


@pytest.fixture
def slipped() -> Clock:
    do = Clock(Lesson(RACK))
    do("show", until="joints")
    do("joint", joint="A")
    assert not do("type", text=SLIP).accepted
    return do


@pytest.mark.parametrize("text", ["AE = -133.3", "AE = 133.3 N (C)", "AE = -80/0.6 = -133.3"])
def test_a_value_of_a_refused_line_is_said_to_follow_from_it(slipped: Clock, text: str) -> None:
    reply = slipped("type", text=text)
    assert not reply.accepted
    assert [say.tone for say in reply.said] == ["note"]
    assert "follows from your ΣFy at joint A" in reply.text
    assert "AE" not in slipped.lesson.state.result


@pytest.mark.parametrize("text", ["AE = 133.3 N (T)", "AE = -100", "AE = -120"])
def test_a_value_that_no_refused_line_gives_does_not_follow_from_one(
    slipped: Clock, text: str
) -> None:
    assert "follows from your" not in slipped("type", text=text).text


def test_a_line_with_the_value_of_a_refused_one_is_not_called_wrong(slipped: Clock) -> None:
    reply = slipped("type", text="ΣFx: AB + 0.6*(-133.3) - 120 = 0")
    assert not reply.accepted
    assert [say.tone for say in reply.said] == ["note"]
    assert "AE as your ΣFy at joint A gives it" in reply.text


@pytest.mark.parametrize(
    "text", ["ΣFx: AB - 0.6*(-133.3) - 120 = 0", "ΣFx: AB + 0.8*(-133.3) - 120 = 0"]
)
def test_a_slip_of_its_own_beside_the_value_carried_is_still_wrong(
    slipped: Clock, text: str
) -> None:
    assert "wrong" in [say.tone for say in slipped("type", text=text).said]


def test_once_the_line_is_mended_nothing_follows_from_the_slip(slipped: Clock) -> None:
    assert slipped("type", text="ΣFy: 80 + 0.8 AE = 0").accepted
    assert slipped("type", text="AE = -100").accepted
    reply = slipped("type", text="ΣFx: AB + 0.6*(-133.3) - 120 = 0")
    assert "wrong" in [say.tone for say in reply.said]

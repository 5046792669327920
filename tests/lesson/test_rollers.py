"""A roller only pushes: what is said where the value found means that it would have to pull?"""

from __future__ import annotations

import pytest
from families import down, plain_problem
from walks import ARM, walk_to

from tutor.lesson.rollers import PULLED
from tutor.model import Problem, Support
from tutor.notation import Exact


def bracket(roller: str, pin: str) -> Problem:
    """A bracket on a wall, loaded at its tip; A stands above B."""
    supports = [Support(pin, "pin"), Support(roller, "roller", angle=Exact.of(0))]
    joints = [("A", 0, 1), ("B", 0, 0), ("C", 2, 1)]
    return plain_problem(joints, ["AB", "AC", "BC"], supports, [down("C", 10)])


@pytest.mark.parametrize(("sense", "line", "value"), [
    ("right", "M B: -A_x - 20 = 0", "A_x = -20"),
    ("left", "M B: A_x - 20 = 0", "A_x = 20"),
])  # fmt: skip
def test_a_roller_that_would_have_to_pull_is_told_with_its_right_value(
    sense: str, line: str, value: str
) -> None:
    _, do = walk_to("reactions", bracket(roller="A", pin="B"), A_x=sense)
    assert do("type", text=line).accepted
    reply = do("type", text=value)
    assert reply.accepted
    assert PULLED.format(joint="A") in reply.text


def test_of_a_roller_that_pushes_and_of_a_pin_nothing_is_told() -> None:
    for problem, size in ((bracket(roller="B", pin="A"), 20), (ARM, 360)):
        _, do = walk_to("reactions", problem)
        for line in (f"M A: B_x - {size} = 0", f"B_x = {size}", "Fx: A_x + B_x = 0"):
            assert do("type", text=line).accepted
        assert "would have to pull" not in do("type", text=f"A_x = -{size}").text

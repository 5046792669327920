"""A value taken from the other side "by symmetry": right where all is symmetrical, else told why not.

The truss is our own. By hand, from symmetry about the line through S: the supports carry 9 each of 4 + 10 + 4;
joint P (3 up for 4 across): PQ = -9/0.6 = -15, PT = 0.8(15) = 12.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import pytest
from families import down, exact, plain_problem
from walks import Clock

from tutor.judge.mirror import mirrored
from tutor.lesson import Lesson
from tutor.model import Load, Problem, Support
from tutor.statics import solve


def hall(
    left: float = 4, right: float = 4, top: float = 3, shoulder: float = 12, brace: str = "RT"
) -> Problem:
    """A truss on two supports, with these loads at its shoulders, the right one at 12 m braced by RT."""
    return plain_problem(
        [
            ("P", 0, 0),
            ("Q", 4, 3),
            ("S", 8, top),
            ("R", shoulder, 3),
            ("U", 16, 0),
            ("T", 8, 0),
        ],
        ("PQ", "QS", "SR", "RU", "PT", "TU", "QT", brace, "ST"),
        [Support("P", "pin"), Support("U", "roller")],
        [down("Q", left), down("S", 10), down("R", right)],
    )


def at(step: str, problem: Problem, *texts: str) -> Clock:
    do = Clock(Lesson(problem))
    do("show", until=step)
    for text in texts:
        assert do("type", text=text).accepted
    return do


def values(do: Clock) -> Mapping[str, float]:
    return {name: result.value for name, result in do.lesson.state.result.items()}


@pytest.mark.parametrize(
    "text",
    [
        "By symmetry V_P = V_U = ½ × 18 = 9 kN",
        "P_y = U_y = 9 by symmetry",
        "The loads come to 18 kN and all is symmetrical, so each support carries 9 kN.",
    ],
)
def test_each_of_two_symmetrical_supports_has_half_of_the_loads(text: str) -> None:
    do = at("reactions", hall())
    reply = do("type", text=text)
    assert reply.accepted
    assert "rests on symmetry" in reply.text
    assert values(do) == {"P_y": 9, "U_y": 9}


def test_the_whole_of_the_loads_at_each_support_is_told_from_another_number() -> None:
    do = at("reactions", hall())
    assert "whole of the loads" in do("type", text="By symmetry P_y = U_y = 18").text
    assert "whole" not in do("type", text="By symmetry P_y = U_y = 8").text
    assert not values(do)


JOINT_P = ("Joint P: ΣFy: 9 + 0.6 PQ = 0", "PQ = -15", "ΣFx: PT + 0.8 PQ = 0", "PT = 12")


def test_values_of_one_side_are_those_of_the_other() -> None:
    do = at("joints", hall(), *JOINT_P)
    assert do("type", text="By symmetry RU = PQ = 15 C and TU = PT = 12 kN (tie)").accepted
    assert (values(do)["RU"], values(do)["TU"]) == (-15, 12)


def test_a_value_by_symmetry_in_the_midst_of_a_line_is_used_behind_it() -> None:
    do = at("joints", hall(), *JOINT_P)
    do("type", text="Joint U: ΣFy: 9 + 0.6 RU = 0, and by symmetry TU = PT = 12, so RU = -15 kN")
    assert (values(do)["RU"], values(do)["TU"]) == (-15, 12)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("By symmetry RU = PQ = 15 T", "alike, but PQ is -15"),
        ("By symmetry TU = PQ = -15", "no mirror images"),
        ("By symmetry QT = RT = 4", "have no value yet"),
    ],
)
def test_what_symmetry_does_not_give_is_not_taken(text: str, said: str) -> None:
    do = at("joints", hall(), *JOINT_P)
    before = values(do)
    reply = do("type", text=text)
    assert not reply.accepted
    assert said in reply.text
    assert values(do) == before


@pytest.mark.parametrize(
    ("problem", "why"),
    [
        (hall(shoulder=13), "joint Q has no mirror image"),
        (hall(brace="SU"), "QT has no mirror image"),
        (hall(right=5), "the loads at Q and on the other side are not alike"),
        (
            replace(hall(), loads=(*hall().loads, Load("S", (("right", exact(3)),)))),
            "the loads at S and on the other side are not alike",
        ),
    ],
)
def test_where_it_is_not_symmetrical_it_is_told_why(problem: Problem, why: str) -> None:
    reply = at("reactions", problem)("type", text="By symmetry P_y = U_y = 9")
    assert not reply.accepted
    assert why in reply.text


def test_mirror_images_carry_the_same() -> None:
    problem = hall(left=7, right=7, top=4)
    found = solve(problem).values
    images = mirrored(problem, found).images
    assert images["QS"] == "SR"
    assert all(found[one] == pytest.approx(found[other]) for one, other in images.items())

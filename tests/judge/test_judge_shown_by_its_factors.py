"""Which of two forces of one number is left out, where the number that stands there shows whose it is?

A truss of our own in kN and m: a load of 10.125 to the right at E, where AE = -16.875 pushes to the right
with 3/5 of that, which is 10.125 as well. By hand: A_y = 39 - (45 + 144 + 40.5)/9 = 13.5, AE = -13.5/0.8.
"""

from __future__ import annotations

import pytest
from families import exact, plain_problem

from tutor.judge import Fx, judge
from tutor.model import Load, Support

TWICE = plain_problem(
    [("A", 0, 0), ("B", 3, 0), ("C", 6, 0), ("D", 9, 0), ("E", 3, 4), ("F", 6, 4)],
    ("AB", "BC", "CD", "AE", "BE", "BF", "EF", "CF", "DF"),
    [Support("A", "pin"), Support("D", "roller")],
    [
        Load("B", (("down", exact(15)),)),
        Load("C", (("down", exact(24)),)),
        Load("E", (("right", exact("10.125")),)),
    ],
)


@pytest.mark.parametrize(
    "text",
    [
        "EF + 0.6(16.875) = 0",
        "EF - 3/5 (-16.875) = 0",
        "EF + 16.875 cos 53.13° = 0 so EF = -10.125",
        "EF + 16.88*0.6 = 0",
        "0.6*16.875 + EF = 0",
    ],
)
def test_a_product_that_shows_a_force_leaves_out_the_other(text: str) -> None:
    (mistake,) = judge(TWICE, Fx("E"), text, known={"AE": "-16.875"}).mistakes
    assert (mistake.code, mistake.force) == ("missing", "load E")
    assert "AE" not in mistake.place


def test_a_number_that_may_be_either_force_leaves_out_either() -> None:
    (mistake,) = judge(TWICE, Fx("E"), "EF + 10.125 = 0", known={"AE": "-16.875"}).mistakes
    assert mistake.code == "missing"
    assert "AE" in mistake.place
    assert "load at E" in mistake.place

"""What of a paper does a walk of its first wrong place begin with?"""

from __future__ import annotations

import pytest
from families import plain_problem

from tutor.homework import Paper, review
from tutor.homework.brought import Brought, brought
from tutor.model import Load, Support
from tutor.notation import Exact

MAST = plain_problem(
    (("A", 0, 0), ("B", 8, 0), ("C", 4, 3)),
    ("AB", "BC", "AC"),
    (Support("A", "pin"), Support("B", "roller")),
    (Load("C", (("down", Exact.of(12)), ("right", Exact.of(6)))),),
)
RIGHT = {"A_x": "-6", "A_y": "3.75", "B_y": "8.25", "AB": "11", "BC": "13.75 C", "AC": "6.25"}
"""AC is drawn pushing."""


@pytest.mark.parametrize(
    ("wrong", "joint"),
    [({"AB": "9"}, "A"), ({"AC": "7", "AB": "11.6"}, "C"), ({"BC": "13.75 T", "AC": "20"}, "C")],
)
def test_a_walk_of_a_joint_begins_with_all_that_is_right_as_it_was_written(
    wrong: dict[str, str], joint: str
) -> None:
    right = {name: text for name, text in RIGHT.items() if name not in wrong}
    paper = Paper(values={**right, **wrong}, senses={"AC": "C"}, order=("C", "A", "B"))
    result = review(MAST, paper.work(MAST))
    assert brought(MAST, paper, result) == Brought(right, {"AC": "C"}, joint)


def test_a_walk_of_the_whole_truss_begins_with_nothing_but_the_senses_drawn() -> None:
    values = {"A_x": "-6", "A_y": "8.25", "B_y": "3.75"}
    paper = Paper(values=values, senses={"A_x": "right"})
    assert brought(MAST, paper, review(MAST, paper.work(MAST))) == Brought({}, {"A_x": "right"}, "")

"""What is wrong where a force is said to be zero that is not, with a reason in words or without?

The trusses are our own; what is said of each line is what a lecturer would say, common practice, no
source.
"""

from __future__ import annotations

import pytest
from paper.measure import problem

from tutor import Value, judge


@pytest.mark.parametrize(
    ("truss", "member", "text", "left_out"),
    [
        ("wagon-barnroof", "CF", "CF = 0 (zero force member, no load at F)", ["DF", "FE"]),
        ("wagon-barnroof", "CF", "0", ["DF", "FE"]),
        ("foolscap-wharf", "AB", "AB = 0, no load at B so zero-force member", ["BC"]),
        ("foolscap-wharf", "AB", "AB = 0, only two members at A", ["A_y"]),
        ("foolscap-wharf", "BD", "BD = 0", ["DE"]),
    ],
)
def test_a_force_said_to_be_zero_leaves_out_what_balances_it(
    truss: str, member: str, text: str, left_out: list[str]
) -> None:
    mistakes = judge(problem(f"more/{truss}"), Value(member), text).mistakes
    assert [(m.code, m.force) for m in mistakes] == [("missing", force) for force in left_out]

"""Are the lines that people write judged as a lecturer would judge them?

The counts demanded are those reached when this was written; none may fall. Of the lecturer's right
lines three are steps of a K-truss that follow only from lines above them, which are not given here.
"""

from __future__ import annotations

from typing import NamedTuple

import pytest
from paper.measure import counts, judged


class Least(NamedTuple):
    """How many right lines are right at least, wrong ones named, matters of substance as expected.

    `unsaid` is how many right lines may be called wrong.
    """

    right: int
    named: int
    expected: int = 0
    unsaid: int = 0


LEAST = {
    "own-a": Least(280, 244, 33),
    "typed": Least(238, 96),
    "lecturer": Least(287, 248, unsaid=3),
}


@pytest.mark.parametrize("name", LEAST)
def test_no_fewer_lines_are_judged_as_a_lecturer_would(name: str) -> None:
    found, least = counts(judged(name)), LEAST[name]
    right, wrong = found["right"], found["wrong"]
    assert wrong["accepted"] == wrong["falsely"] == 0
    assert right["wrong"] <= least.unsaid
    assert right["right"] >= least.right
    assert wrong["named"] >= least.named
    assert least.expected == 0 or found["substance"]["expected"] >= least.expected

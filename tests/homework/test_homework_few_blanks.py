"""What does a page with an entry or two left out still tell, and one with nothing that can be read?

The truss is our own; a page is marked as a lecturer would, common practice, no source.
"""

from __future__ import annotations

from collections.abc import Collection
from fractions import Fraction

import pytest
from lines import figures
from test_homework_misdrawn import FRAME, moved

from tutor import review
from tutor.homework import Review
from tutor.model import Problem
from tutor.statics import solve


def page(worked: Problem, without: Collection[str], wrong: str = "") -> Review:
    """A page on FRAME with the values of `worked`, some left out and one of them wrong."""
    values = {
        name: figures(1.3 * value if name == wrong else value, 4)
        for name, value in solve(worked).values.items()
        if name not in without
    }
    return review(
        FRAME,
        {
            "reactions": {n: v for n, v in values.items() if n in FRAME.reaction},
            "forces": {n: v for n, v in values.items() if n in FRAME.member},
        },
    )


def test_numbers_of_another_truss_are_known_though_one_was_not_written() -> None:
    other = moved(FRAME, "D", Fraction(6), Fraction(3))
    assert "fit a truss with D at 6, 3" in page(other, ["CB"]).said


@pytest.mark.parametrize(("wrong", "places"), [("CD", ("C", "D")), ("AE", ("E", "A"))])
def test_where_a_joint_lacks_an_entry_that_was_found_out_of_order_both_ends_may_be_wrong(
    wrong: str, places: tuple[str, ...]
) -> None:
    assert page(FRAME, ["AC", "CB"], wrong).places == places


def test_a_page_without_an_entry_that_can_be_read_holds_nothing_to_check() -> None:
    result = review(FRAME, {"forces": {"AC": "abc"}})
    assert result.said.startswith("There was nothing to check yet.")

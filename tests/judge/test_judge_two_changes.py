"""Do two wrong numbers that are named together make up what a sum is off by, the cheapest pair there is?"""

from __future__ import annotations

from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from tutor.judge.edits import Edit
from tutor.judge.sums import WrongNumber, _two_changes

SLACK = 0.25
CHANGES = st.lists(
    st.tuples(st.integers(-2, 2), st.integers(1, 9), st.integers(0, 3)), min_size=4, max_size=9
).map(lambda found: [WrongNumber(d, c, place, Edit(c, (), 0.0)) for d, c, place in sorted(found)])


@given(CHANGES, st.integers(-3, 3))
def test_the_two_cheapest_at_different_places_that_make_up_the_rest_are_found(
    changes: list[WrongNumber], need: int
) -> None:
    fitting = [
        one.cost + other.cost
        for one, other in combinations(changes, 2)
        if one.place != other.place and abs(one.delta + other.delta - need) <= SLACK
    ]
    found = _two_changes(changes, need, SLACK)
    if found is None:
        assert not fitting
        return
    cost, (one, other) = found
    assert cost == min(fitting)
    assert one.place != other.place
    assert abs(one.delta + other.delta - need) <= SLACK

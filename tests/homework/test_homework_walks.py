"""Are the walks that stories are weighed by walks, and does the likelier place come first?"""

from __future__ import annotations

import pytest
from strategies import make_truss

from tutor.homework.account import Account
from tutor.homework.places import Story, Turn
from tutor.homework.reading import FilledIn
from tutor.homework.sheet import WHOLE, sheets
from tutor.homework.walks import walks, weighed
from tutor.judge import Mistake
from tutor.model import load_problem
from tutor.shipped import shipped_problems

ARM = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")
SIGN = Mistake("sign", "AC", "", "", "")


@pytest.mark.parametrize("seed", range(12))
def test_a_walk_finds_each_unknown_once_and_where_a_body_gives_it(seed: int) -> None:
    problem = make_truss(seed, 4 + seed % 5)
    bodies = sheets(problem, {})
    for walk in walks(bodies):
        known: set[str] = set()
        for name, finds in walk:
            assert known.isdisjoint(finds)
            assert {n for n in bodies[name].part if n not in known} == set(finds)
            assert len(finds) <= (3 if name == WHOLE else 2)
            known.update(finds)
        assert known == set(problem.unknowns)
    assert walks(bodies) == walks(sheets(problem, {}))


def test_of_two_places_that_cost_the_same_the_one_that_more_walks_leave_so_comes_first() -> None:
    """No walk finds BC at A, since that member does not end there; many find both at C."""
    bodies = sheets(ARM, {})
    read = FilledIn(bodies, {}, ("AC", "BC"))
    account = Account("", SIGN, None, 1.0)

    def story(place: str, *values: str) -> Story:
        return Story((Turn(place, values, (account,)),), {}, frozenset())

    pairs = [(story("A", "AC", "BC"), read), (story("C", "AC", "BC"), read)]
    told = weighed(pairs, bodies)
    assert [each.first for each, _ in told] == ["C", "A"]
    assert told[0][0].cost == pairs[1][0].cost
    assert told[1][0].cost > pairs[0][0].cost

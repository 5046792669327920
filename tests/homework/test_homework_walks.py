"""Are the walks that stories are weighed by walks, and does the likelier place come first?"""

from __future__ import annotations

import pytest
from families import plain_problem
from pages import load
from strategies import make_truss

from tutor.homework.account import Account
from tutor.homework.places import Story, Turn
from tutor.homework.reading import FilledIn
from tutor.homework.sheet import WHOLE, sheets
from tutor.homework.walks import walks, weighed
from tutor.judge import Mistake
from tutor.model import Support, load_problem
from tutor.shipped import shipped_problems
from tutor.statics import solve

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


def test_no_walk_leads_through_a_truss_of_which_every_joint_has_three_members() -> None:
    """Each of three joints is joined to each of three others."""
    one, other = (("A", 0, 0), ("C", 7, 1), ("E", 3, 6)), (("B", 4, 0), ("D", 5, 4), ("F", 0, 3))
    names = [f"{a}{b}" for a, *_ in one for b, *_ in other]
    supports = (Support("A", "pin"), Support("B", "roller"))
    truss = plain_problem((*one, *other), names, supports, (load("E", down=6),))
    assert solve(truss).values
    assert walks(sheets(truss, {})) == []


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

"""Is a belief about a load spread along members told, with its reactions or at the joints alone?

The pages come from trusses on which the loads stand at the joints as somebody would have them who holds
the belief: halves and wholes worked out here by hand, solved by statics.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from families import plain_problem
from lines import figures

from tutor import load_problem, review, solve
from tutor.homework import Review
from tutor.model import Load, Problem
from tutor.model.read import read_text
from tutor.notation import Exact
from tutor.shipped import shipped_problems

DECK = load_problem(shipped_problems() / "bridges" / "wagon-bridge.toml")
"""Two panels of 4 m under 7.5 kN/m, 42 kN at the middle joint B."""
LOFT = load_problem(shipped_problems() / "roofs" / "tannery-loft.toml")
"""Rafters of 13 ft over 12 ft of span each, under 35 lb for each foot of span, 130 lb at B."""


def taken(problem: Problem, **down: float) -> Problem:
    """The truss with these loads at its joints instead of what is spread."""
    own = tuple(load for load in problem.given_loads)
    more = tuple(Load(joint, (("down", Exact.of(size)),)) for joint, size in down.items())
    return replace(problem, loads=(*own, *more), spreads=())


def reviewed(problem: Problem, held: Problem) -> Review:
    values = solve(held).values
    reactions = {name: figures(values[name], 4) for name in problem.reaction}
    forces = {name: figures(values[name], 4) for name in problem.member}
    return review(problem, {"reactions": reactions, "forces": forces})


TOWER = read_text(
    """
title = "Wind on the hose tower"
force = "kN"
length = "m"
members = ["AB", "AC", "BC", "BD", "CD", "CE", "DE"]
joints = { A = [0, 0], B = [4, 0], C = [0, 3], D = [4, 3], E = [2, 6] }
supports = { A = "pin", B = "roller" }
spread = [{ on = ["AC"], right = 4 }]
loads = [{ at = "E", down = 10 }]
""",
    "tower.toml",
).problem
"""4 kN/m of wind on 3 m."""
WIND = replace(
    TOWER,
    loads=(*TOWER.given_loads, *(Load(at, (("right", Exact.of(2)),)) for at in "AC")),
    spreads=(),
)

CALM = replace(TOWER, loads=TOWER.given_loads, spreads=())

BOTH_POSTS = read_text(
    """
title = "Wind through the hose tower"
force = "kN"
length = "m"
members = ["AB", "AC", "BC", "BD", "CD", "CE", "DE"]
joints = { A = [0, 0], B = [4, 0], C = [0, 3], D = [4, 3], E = [2, 6] }
supports = { A = "pin", B = "roller" }
spread = [{ on = ["AC", "BD"], right = 4 }]
loads = [{ at = "E", down = 10 }]
""",
    "both.toml",
).problem


@pytest.mark.parametrize("joints", ["AB", "CD"])
@pytest.mark.parametrize("whole", [True, False])
def test_wind_all_at_the_feet_or_all_at_the_heads_of_the_posts_is_told_so(
    joints: str, whole: bool
) -> None:
    """12 kN at each of the two joints, none at the others, in every sum or at the joints alone."""
    at_ends = tuple(Load(at, (("right", Exact.of(12)),)) for at in joints)
    held = replace(BOTH_POSTS, loads=(*BOTH_POSTS.given_loads, *at_ends), spreads=())
    values, true = solve(held).values, solve(BOTH_POSTS).values
    of_sums = values if whole else true
    reactions = {name: figures(of_sums[name], 4) for name in BOTH_POSTS.reaction}
    forces = {name: figures(values[name], 4) for name in BOTH_POSTS.member}
    result = review(BOTH_POSTS, {"reactions": reactions, "forces": forces})
    assert [account.mistake.code for account in result.accounts] == ["spread-end"]
    assert result.places == (("whole",) if whole else ("D", "A"))


# With one panel of the deck forgotten the sums of the whole truss miss as much as lies on B.
BELIEFS = [
    pytest.param(DECK, taken(DECK, A=30, B=30), "spread-end", id="at the left end"),
    pytest.param(DECK, taken(DECK, B=30, C=30), "spread-end", id="at the right end"),
    pytest.param(DECK, taken(DECK, A=3.75, B=7.5, C=3.75), "spread-length", id="so much for all"),
    pytest.param(
        DECK, taken(DECK, A=1.875, B=3.75, C=1.875), "spread-length", id="so much for both"
    ),
    pytest.param(DECK, taken(DECK, A=15, B=15), "missing", id="one panel forgotten"),
    pytest.param(LOFT, taken(LOFT, A=17.5, D=35, C=17.5), "spread-length", id="rafters so much"),
    pytest.param(LOFT, taken(LOFT, A=210, D=210), "spread-neighbour", id="a rafter forgotten"),
    pytest.param(TOWER, WIND, "spread-length", id="wind, so much for all"),
    pytest.param(TOWER, CALM, "spread-neighbour", id="the only loaded member forgotten"),
    pytest.param(LOFT, taken(LOFT, A=227.5, D=455, C=227.5), "spread-slope", id="by the slope"),
]


@pytest.mark.parametrize(("problem", "held", "code"), BELIEFS)
def test_a_spread_load_mistaken_throughout_is_told_so(
    problem: Problem, held: Problem, code: str
) -> None:
    result = reviewed(problem, held)
    assert result.accounts
    assert code in {account.mistake.code for account in result.accounts}, result
    assert result.first == "whole"


def test_the_right_halves_are_right() -> None:
    assert reviewed(DECK, taken(DECK, A=15, B=30, C=15)).right
    assert reviewed(LOFT, taken(LOFT, A=210, D=420, C=210)).right


def test_no_belief_about_spread_loads_is_held_where_nothing_is_spread() -> None:
    joints = (("A", 0, 0), ("B", 8, 0), ("C", 3, 4))
    problem = plain_problem(
        joints,
        ("AB", "BC", "AC"),
        (*DECK.supports[:1], replace(DECK.supports[1], joint="B")),
        (Load("C", (("down", Exact.of(14)),)),),
    )
    other = replace(problem, loads=(Load("C", (("down", Exact.of(7)),)),))
    result = reviewed(problem, other)
    assert not any(a.mistake.code.startswith("spread") for a in result.accounts)

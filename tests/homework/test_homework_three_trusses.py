"""Is what somebody writes of a bracket, a footbridge and a shed told as a teacher beside it would?

The values come from plain sums of forces, three figures written and carried on.
"""

from __future__ import annotations

import pytest
from families import plain_problem, root

from tutor import review
from tutor.model import Load, Support
from tutor.notation import Exact

BRACKET = plain_problem(
    (("A", 0, 0), ("B", 0, 4), ("C", 3, 4), ("D", 6, 4), ("E", 3, 2)),
    ("AB", "BC", "CD", "AE", "ED", "BE", "CE"),
    (Support("B", "pin"), Support("A", "roller", Exact.of(0))),
    (Load("C", (("down", Exact.of(8)),)), Load("D", (("down", Exact.of(14)), ("right", Exact.of(3))))),
)  # fmt: skip
FOOTBRIDGE = plain_problem(
    tuple((n, x, 0) for n, x in zip("ABCD", (0, 4, 8, 12), strict=True))
    + tuple((n, x, root(12)) for n, x in zip("EFG", (2, 6, 10), strict=True)),
    ("AB", "BC", "CD", "AE", "EB", "BF", "FC", "CG", "GD", "EF", "FG"),
    (Support("A", "pin"), Support("D", "roller")),
    (Load("B", (("down", Exact.of(10)),)), Load("C", (("down", Exact.of(26)),)),
     Load("E", (("right", Exact.of(7)),))),
)  # fmt: skip
BOAT_SHED = plain_problem(
    (("A", 0, 0), ("B", 14, 0), ("C", 8, 6), ("D", 4, 3), ("E", 11, 3), ("F", 8, 0)),
    ("AD", "DC", "CE", "EB", "AF", "FB", "DF", "CF", "EF"),
    (Support("A", "pin"), Support("B", "roller", Exact.of(110))),
    (Load("D", (("down", Exact.of(9)), ("right", Exact.of(4)))), Load("C", (("down", Exact.of(12)),)),
     Load("E", (("down", Exact.of(5)),))),
)  # fmt: skip


@pytest.mark.parametrize("factor", [-1.0, 1000.0])
def test_a_page_off_by_one_factor_is_told_so_where_roundings_come_to_much(factor: float) -> None:
    """EF is 3 % off at a flat angle by three figures carried on, and is right as it is."""
    values = {"A_x": 1.17, "A_y": 11.8, "R_B": 15.1, "AD": -19.7, "AF": 14.6, "DC": -14.7,
              "DF": -10.0, "CE": -16.6, "CF": 8.58, "EF": -3.65, "FB": 9.18, "EB": -20.3}  # fmt: skip
    parts = {"reactions": BOAT_SHED.reaction, "forces": BOAT_SHED.member}
    work = {p: {n: f"{factor * values[n]:.10g}" for n in names} for p, names in parts.items()}
    assert review(
        BOAT_SHED, {p: {n: f"{values[n]:g}" for n in ns} for p, ns in parts.items()}
    ).right
    result = review(BOAT_SHED, work)
    assert result.accounts[0].throughout
    assert result.accounts[0].mistake.code == ("unit" if factor > 0 else "tension-compression")


def test_arms_along_the_members_are_told_before_a_lone_distance_in_another_unit() -> None:
    """Moments about A with 5, 10, 14 and the root of 130 for arms; the rest is left blank."""
    reactions = {"A_x": "1.91", "A_y": "9.76", "R_B": "17.3"}
    result = review(BOAT_SHED, {"reactions": reactions})
    assert (result.first, result.accounts[0].mistake.code) == ("whole", "arm")


def test_a_member_flatter_than_45_degrees_with_its_components_exchanged_is_named() -> None:
    """At E, in both sums; AE, BE and AB were worked from it."""
    reactions = {"B_x": "-30", "B_y": "22", "A_x": "27"}
    forces = {"CD": "24", "ED": "-25.2", "BC": "24", "CE": "-8", "AE": "-29.6", "BE": "6.66", "AB": "16.4"}  # fmt: skip
    result = review(BRACKET, {"reactions": reactions, "forces": forces})
    mistake = result.accounts[0].mistake
    assert (result.first, mistake.code, mistake.force) == ("E", "component", "BE")


def test_a_page_of_reversed_members_begins_where_a_walk_may_begin() -> None:
    """D has two members, C three; of the others not all is written."""
    reactions = {"B_x": "-30", "B_y": "22", "A_x": "27"}
    forces = {"CD": "-24", "ED": "25.2", "BC": "-24", "CE": "8"}
    result = review(BRACKET, {"reactions": reactions, "forces": forces})
    assert (result.first, result.accounts[0].throughout) == ("D", True)


def test_one_is_sent_on_from_the_value_that_was_mended_last() -> None:
    """Reactions mended first, then joint A: on to E, although D has a new reaction as well."""
    old = {"A_y": "22", "D_y": "14", "AE": "-25.4", "AB": "19.7", "EB": "25.4", "EF": "-32.4",
           "BF": "-13.9", "BC": "39.3", "FC": "13.9", "FG": "-46.3", "CG": "16.1", "CD": "38.2",
           "GD": "-16.1"}  # fmt: skip
    new = {"A_y": "13.3", "D_y": "22.7", "AE": "-15.4", "AB": "14.7"}
    reactions = {"A_x": "-7", "A_y": new["A_y"], "D_y": new["D_y"]}
    forces = {name: new.get(name, text) for name, text in old.items() if name in FOOTBRIDGE.member}
    result = review(FOOTBRIDGE, {"reactions": reactions, "forces": forces}, {"forces": old})
    assert result.first == "E"
    assert "on your old AE" in result.said


def test_what_joints_give_from_reactions_that_are_taken_for_granted_follows_from_these() -> None:
    """Half of the load to each support: the walk from there closes nowhere at its end."""
    reactions = {"A_x": "-7", "A_y": "18", "D_y": "18"}
    forces = {"AE": "-20.8", "AB": "17.4", "EB": "20.8", "EF": "-27.8", "BF": "-9.25", "BC": "32.4",
              "FC": "9.25", "FG": "-37", "CG": "20.8", "CD": "26.6", "GD": "-20.8"}  # fmt: skip
    result = review(FOOTBRIDGE, {"reactions": reactions, "forces": forces})
    assert (result.first, result.accounts[0].mistake.code) == ("whole", "symmetry")
    assert {result.finding[name].state for name in ("A_y", "D_y")} == {"wrong"}
    assert {result.finding[name].state for name in forces} == {"follows"}


@pytest.mark.parametrize(("share", "code"), [(0.0, "missing"), (-1.0, "sign")])
def test_a_load_with_two_components_that_goes_wrong_as_a_whole_is_named(
    share: float, code: str
) -> None:
    """DC and DF from the two sums at D, by hand: they share what AD and the load leave."""
    across, up = 19.7 * 0.8 + share * 4, 19.7 * 0.6 - share * 9
    forces = {"AD": "-19.7", "AF": "14.6", "DC": f"{-(across / 0.8 + up / 0.6) / 2:.3g}",
              "DF": f"{(up / 0.6 - across / 0.8) / 2:.3g}"}  # fmt: skip
    reactions = {"A_x": "1.17", "A_y": "11.8", "R_B": "15.1"}
    result = review(BOAT_SHED, {"reactions": reactions, "forces": forces})
    assert result.first == "D"
    assert (code, "load D") in {(a.mistake.code, a.mistake.force) for a in result.accounts}


def test_a_force_turned_round_is_named_where_larger_ones_stand_beside_it() -> None:
    """BF, the least force at F, in both sums; EF and FG are rounded by more than it is."""
    reactions = {"A_x": "-7", "A_y": "13.3", "D_y": "22.7"}
    forces = {"AE": "-15.4", "AB": "14.7", "EB": "15.4", "EF": "-22.4", "BF": "-3.85", "BC": "24.3",
              "FC": "-3.85", "FG": "-18.5"}  # fmt: skip
    result = review(FOOTBRIDGE, {"reactions": reactions, "forces": forces})
    mistake = result.accounts[0].mistake
    assert (result.first, mistake.code, mistake.force) == ("F", "tension-compression", "BF")


CRANE = plain_problem(
    (("A", 0, 0), ("B", 4, 0), ("C", 4, 5), ("D", 9, 5)),
    ("AB", "AC", "BC", "BD", "CD"),
    (Support("A", "pin"), Support("B", "roller")),
    (Load("D", (("down", Exact.of(7)), ("right", Exact.of(5)))),),
)


def test_no_belief_about_moments_is_told_that_the_reactions_do_not_show() -> None:
    """A_y is -15 and B_y 22; the members were worked from the tip and leave these as near."""
    reactions = {"A_x": "-5", "A_y": "-15.1", "B_y": "22.1"}
    forces = {"BD": "-9.9", "CD": "12", "AC": "19.2", "BC": "-15", "AB": "-7"}
    result = review(CRANE, {"reactions": reactions, "forces": forces})
    assert result.first == "whole"
    assert not {"symmetry", "arm"} & {account.mistake.code for account in result.accounts}

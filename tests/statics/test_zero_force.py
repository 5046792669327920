"""Laws of members seen to be zero."""

import pytest
from families import down, fink, plain_problem, pratt
from hypothesis import given
from hypothesis import strategies as st
from strategies import trusses, wall_trusses

from tutor.model import Load, Support
from tutor.notation import Exact
from tutor.statics import solve, zero_force

ANY = st.one_of(trusses(), wall_trusses())


def push(joint, way, size=1):
    return Load(joint, ((way, Exact.of(size)),))


def rules(problem, known=()):
    return [(z.member, z.joint, z.rule, z.members) for z in zero_force(problem, known)]


@given(ANY)
def test_every_member_seen_to_be_zero_is_zero(problem):
    answer = solve(problem)
    for seen in zero_force(problem):
        assert answer.value(seen.member) == 0.0


@given(ANY)
def test_members_seen_with_zero_reactions_known_are_zero_too(problem):
    answer = solve(problem)
    known = [r.name for r in problem.reactions if answer.reaction(r.name) == 0.0]
    seen = {z.member for z in zero_force(problem, known)}
    assert seen >= {z.member for z in zero_force(problem)}
    assert all(answer.value(name) == 0.0 for name in seen)


@given(ANY)
def test_each_rule_speaks_of_forces_at_its_joint(problem):
    for seen in zero_force(problem):
        meeting = {m.name for m in problem.meeting[seen.joint]}
        assert {seen.member, *seen.members} <= meeting
        assert seen.member not in seen.others
        assert seen.member in seen.said
        assert seen.joint in seen.said


# A tower A B / C D / E F / G, braced, with G hanging over the side.
TOWER = [("A", 0, 0), ("B", 4, 0), ("C", 0, 3), ("D", 4, 3), ("E", 8, 3)]
TOWER_MEMBERS = ["AB", "AC", "BC", "BD", "CD", "BE", "DE"]
TOWER_SUPPORTS = [Support("A", "pin"), Support("B", "roller")]


def tower(*loads):
    return plain_problem(TOWER, TOWER_MEMBERS, TOWER_SUPPORTS, loads)


def test_two_members_and_no_load_are_both_zero():
    assert ("DE", "E", "two", ("BE",)) in rules(tower(push("C", "right")))
    assert ("BE", "E", "two", ("DE",)) in rules(tower(push("C", "right")))
    assert ("CD", "D", "one", ()) in rules(tower(push("C", "right")))


def test_a_third_member_across_two_in_line_is_zero():
    assert rules(tower(down("E", 6)))[0] == ("BD", "D", "three", ("CD", "DE"))


def test_a_load_along_the_two_in_line_leaves_the_third_zero():
    assert ("BD", "D", "three-along", ("CD", "DE")) in rules(
        tower(push("D", "right"), down("E", 6))
    )


def test_several_loads_along_the_two_in_line_are_told_once():
    problem = tower(push("D", "right"), push("D", "right", 2), down("E", 6))
    (seen,) = [z for z in zero_force(problem) if z.member == "BD"]
    assert seen.said.startswith("At D, CD, DE and the loads at D act along one line; ")


def test_a_load_along_one_of_two_members_leaves_the_other_zero():
    assert ("BE", "E", "two-along", ("DE",)) in rules(tower(push("E", "right")))


def test_a_load_across_hides_the_rule():
    assert "BD" not in [name for name, *_ in rules(tower(down("D", 2), down("E", 6)))]


def test_a_reaction_along_one_of_two_members_leaves_the_other_zero():
    bridge = pratt(4, 4, 3, 10)
    assert ("L0-L1", "L0", "two-along", ()) not in rules(bridge)
    hung = plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 4, 3)],
        ["AB", "BC", "AC"],
        [Support("A", "pin"), Support("B", "roller")],
        [down("C", 5)],
    )
    assert ("AB", "B", "two-along", ("BC",)) in rules(hung)
    (seen,) = [z for z in zero_force(hung) if z.member == "AB"]
    assert seen.others == ("BC", "B_y")


def test_a_zero_reaction_that_is_known_shows_more():
    hung = plain_problem(
        [("A", 0, 0), ("B", 0, 3), ("C", 4, 0)],
        ["AB", "BC", "AC"],
        [Support("A", "pin"), Support("C", "roller")],
        [down("B", 5)],
    )
    assert rules(hung, ["A_x"])[0][:3] == ("AC", "A", "two-along")


def test_loads_that_cancel_do_not_act_and_slanted_ones_act_along_their_resultant():
    cancelled = tower(push("E", "up"), down("E", 1), push("C", "right"))
    assert ("DE", "E", "two", ("BE",)) in rules(cancelled)
    along = tower(Load("E", (("right", Exact.of(4)), ("up", Exact.of(3)))))
    assert ("DE", "E", "two-along", ("BE",)) in rules(along)


def test_a_roof_fully_loaded_has_none():
    assert zero_force(fink(4, 4, 4, 3)) == ()


@pytest.mark.parametrize("name", ["U3-L3"])
def test_the_middle_post_of_a_pratt_truss_loaded_below_is_seen(name):
    assert [z.member for z in zero_force(pratt(6, 4, 3, 10))] == [name]

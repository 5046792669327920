"""Laws of the order of joints."""

import pytest
from families import down, fink, plain_problem, pratt
from hypothesis import given
from hypothesis import strategies as st
from strategies import trusses, wall_trusses

from tutor.model import Support
from tutor.statics import joint_body, joint_order, reactions_from_whole, solve, unknown_at

ANY = st.one_of(trusses(), wall_trusses())


def replay(problem, order, known):
    """Walk the steps as a student would, with only what is known by then."""
    visited = []
    for step in order.steps:
        unknown = unknown_at(problem, step.joint, known)
        if step.across:
            assert len(step.finds) == 1
            assert set(step.finds) < set(unknown)
        else:
            assert step.finds == unknown
            assert len(unknown) <= 2
            visited.append(step.joint)
        if len(step.finds) == 2:
            one, other = (f for f in joint_body(problem, step.joint).forces if f.name in unknown)
            assert abs(one.x * other.y - one.y * other.x) > 1e-9
        known |= set(step.finds)
    return visited, known


@given(ANY)
def test_each_joint_has_at_most_two_unknown_forces_when_its_turn_comes(problem):
    order = joint_order(problem)
    visited, _ = replay(problem, order, set(reactions_from_whole(problem)))
    assert sorted(visited) == sorted(order.joints)
    assert sorted((*order.joints, *order.stuck)) == sorted(problem.joint)


@given(trusses())
def test_an_order_that_is_not_stuck_finds_every_force(problem):
    order = joint_order(problem)
    _, known = replay(problem, order, set(reactions_from_whole(problem)))
    if not order.stuck:
        assert known == set(problem.unknowns)
        assert all(joint not in order.said.split(";")[0].split(", ") for joint in order.checks)


@given(ANY)
def test_joints_called_stuck_have_too_many_unknown_forces_at_the_end(problem):
    order = joint_order(problem)
    _, known = replay(problem, order, set(reactions_from_whole(problem)))
    for joint in order.stuck:
        unknown = unknown_at(problem, joint, known)
        forces = [f for f in joint_body(problem, joint).forces if f.name in unknown]
        in_line = all(abs(forces[0].x * f.y - forces[0].y * f.x) < 1e-9 for f in forces)
        assert len(unknown) > 2 or (len(unknown) == 2 and in_line)


@given(ANY)
def test_with_everything_given_every_joint_is_a_check(problem):
    order = joint_order(problem, given=problem.unknowns)
    assert order.checks == order.joints
    assert len(order.joints) == len(problem.joints)


def test_a_grown_truss_with_nothing_given_begins_where_it_is_free():
    wall = plain_problem(
        [("A", 0, 3), ("B", 0, 0), ("C", 4, 3)],
        ["AC", "BC"],
        [Support("A", "pin"), Support("B", "pin")],
        [down("C", 12)],
    )
    assert joint_order(wall, given=()).joints == ("C", "A", "B")


def test_a_bridge_is_walked_from_one_end_to_the_other():
    order = joint_order(pratt(4, 4, 3, 10))
    assert order.joints[0] == "L0"
    assert order.stuck == ()
    assert order.said.endswith(" checks the work.")


def test_a_roof_of_eight_panels_needs_sums_across_the_rafter():
    problem = fink(8, 4, 4, 3)
    order = joint_order(problem)
    assert order.stuck == ()
    assert [(s.joint, s.finds) for s in order.steps if s.across] == [
        ("L3", ("L3-LN",)),
        ("LN", ("L2-LN",)),
    ]
    assert order.said.endswith("the sum across it gives L3-LN at L3 and L2-LN at LN.")


def test_a_truss_with_three_members_at_every_joint_has_no_order_and_says_so():
    # A hexagon with its long diagonals, uneven so that it is not a critical form.
    points = [("A", 0, 0), ("B", 5, -1), ("C", 8, 3), ("D", 7, 7), ("E", 2, 8), ("F", -2, 4)]
    members = ["AB", "BC", "CD", "DE", "EF", "FA", "AD", "BE", "CF"]
    problem = plain_problem(
        points, members, [Support("A", "pin"), Support("B", "roller")], [down("D", 6)]
    )
    solve(problem)
    order = joint_order(problem)
    assert (order.joints, set(order.stuck)) == ((), set("ABCDEF"))
    assert "A has 3, B has 3, C has 3, D has 3, E has 3 and F has 3" in order.said


@pytest.mark.parametrize(
    ("known", "left"),
    [((), ("L0-L1", "L0-U1", "L0_x", "L0_y")), (("L0_x", "L0-L1"), ("L0-U1", "L0_y"))],
)
def test_unknown_forces_at_a_joint_are_members_then_reactions(known, left):
    assert unknown_at(pratt(4, 4, 3, 10), "L0", known) == left

"""Laws of counting, stability and mechanisms."""

from dataclasses import replace
from math import hypot

import pytest
from families import down, member_name, plain_problem, pratt
from hypothesis import assume, given
from hypothesis import strategies as st
from strategies import trusses, wall_trusses

from tutor.model import Member, Support
from tutor.notation import Exact
from tutor.statics import (
    Unsolvable,
    determinacy,
    reactions_by_whole,
    reactions_from_whole,
    solve,
    stability,
)

ANY = st.one_of(trusses(), wall_trusses())
SQUARE = plain_problem(
    [("A", 0, 0), ("B", 4, 0), ("C", 4, 4), ("D", 0, 4)],
    ["AB", "BC", "CD", "DA"],
    [Support("A", "pin"), Support("B", "roller")],
    [down("C", 5)],
)


def without(problem, member):
    return replace(problem, members=tuple(m for m in problem.members if m.name != member.name))


def with_one_more(problem):
    for one in problem.joints:
        for other in problem.joints:
            if one != other and problem.between(one.name, other.name) is None:
                new = Member(member_name(one.name, other.name), one.name, other.name)
                return replace(problem, members=(*problem.members, new)), new
    return None


def is_a_motion(problem, mechanism):
    """Does it stretch no member, respect the supports and move something by one?"""
    for member in problem.members:
        a, b = problem.joint[member.start].at, problem.joint[member.end].at
        (ax, ay), (bx, by) = mechanism[member.start], mechanism[member.end]
        length = hypot(b[0] - a[0], b[1] - a[1])
        stretch = ((b[0] - a[0]) * (bx - ax) + (b[1] - a[1]) * (by - ay)) / length
        assert stretch == pytest.approx(0, abs=1e-7)
    for reaction in problem.reactions:
        x, y = mechanism[reaction.joint]
        assert x * reaction.direction.x + y * reaction.direction.y == pytest.approx(0, abs=1e-7)
    assert set(mechanism) == set(problem.joint)
    assert max(hypot(x, y) for x, y in mechanism.values()) == pytest.approx(1)
    return True


def unsolvable(problem):
    with pytest.raises(Unsolvable) as caught:
        solve(problem)
    return caught.value


@given(ANY)
def test_a_grown_truss_fits_the_count_and_is_stable(problem):
    count = determinacy(problem)
    assert count.count == "fits"
    assert count.members + count.reactions == count.equations == 2 * len(problem.joints)
    assert stability(problem).stable
    assert stability(problem).mechanism == {}


@given(ANY, st.data())
def test_a_truss_that_lost_a_member_has_too_few_and_moves_without_stretching(problem, data):
    loose = without(problem, data.draw(st.sampled_from(problem.members)))
    error = unsolvable(loose)
    assert error.kind == "too-few"
    assert is_a_motion(loose, error.mechanism)
    assert any(joint in error.how for joint in error.moving) or "whole truss" in error.how


@given(ANY, st.data())
def test_the_motion_of_a_truss_that_lost_a_member_changes_only_that_distance(problem, data):
    lost = data.draw(st.sampled_from(problem.members))
    loose = without(problem, lost)
    mechanism = unsolvable(loose).mechanism
    assert is_a_motion(loose, mechanism)
    a, b = problem.joint[lost.start].at, problem.joint[lost.end].at
    (ax, ay), (bx, by) = mechanism[lost.start], mechanism[lost.end]
    assert abs((b[0] - a[0]) * (bx - ax) + (b[1] - a[1]) * (by - ay)) > 1e-6


@given(ANY)
def test_one_member_more_makes_it_statically_indeterminate(problem):
    more = with_one_more(problem)
    assume(more is not None)
    error = unsolvable(more[0])
    assert (error.kind, error.moving, error.how) == ("too-many", (), "")
    assert "statically indeterminate" in error.reason
    assert ": 1 unknown more than equations, " in determinacy(more[0]).said


@given(ANY, st.data())
def test_a_member_moved_is_a_mechanism_or_another_sound_truss(problem, data):
    more = with_one_more(problem)
    assume(more is not None)
    moved = without(more[0], data.draw(st.sampled_from(problem.members)))
    held = stability(moved)
    assert determinacy(moved).count == "fits"
    if held.stable:
        solve(moved)
    else:
        error = unsolvable(moved)
        assert error.kind == "critical"
        assert is_a_motion(moved, error.mechanism)
        assert set(error.moving) == {n for n, step in error.mechanism.items() if step != (0, 0)}


@given(trusses())
def test_three_parallel_rollers_let_the_whole_truss_slide(problem):
    supports = tuple(Support(joint.name, "roller") for joint in problem.joints[:3])
    error = unsolvable(replace(problem, supports=supports))
    assert error.kind == "critical"
    assert "are parallel" in error.reason
    assert error.how == "The whole truss can slide right."
    assert set(error.moving) == set(problem.joint)


@given(trusses())
def test_three_links_to_one_point_let_the_whole_truss_turn_about_it(problem):
    anchor = (Exact.of(-77), Exact.of(-1234))
    supports = tuple(Support(joint.name, "link", anchor=anchor) for joint in problem.joints[:3])
    error = unsolvable(replace(problem, supports=supports))
    assert error.kind == "critical"
    assert "meet in one point" in error.reason
    assert error.how == "The whole truss can turn about the point (-77, -1234)."


def test_a_square_without_a_diagonal_says_which_joints_sway():
    error = unsolvable(SQUARE)
    assert error.reason == (
        "It is not stable: 4 members and 3 reactions are 7 unknowns, 1 fewer than the 8 equations "
        "of its joints."
    )
    assert error.moving == ("C", "D")
    assert error.mechanism["C"] == pytest.approx((1, 0))
    assert error.how == (
        "Joints C and D can move together (C right, D right), to begin with, with no member "
        "stretched."
    )


def test_a_pin_alone_cannot_hold_a_truss():
    problem = replace(SQUARE, supports=SQUARE.supports[:1])
    assert "2 reactions cannot hold a body in the plane" in unsolvable(problem).reason


def test_a_truss_turning_about_its_pin_says_so():
    roller_at_the_pin_level = Support("B", "roller", angle=Exact.of(0))
    braced = replace(
        SQUARE,
        members=(*SQUARE.members, Member("AC", "A", "C")),
        supports=(SQUARE.supports[0], roller_at_the_pin_level),
    )
    error = unsolvable(braced)
    assert "A_x, A_y and B_x meet in one point" in error.reason
    assert error.how == "The whole truss can turn about joint A."


def test_a_bridge_with_a_panel_open_and_one_crossed_fits_the_count_and_moves():
    bridge = pratt(6, 4, 3, 10)
    moved = without(bridge, bridge.member["U1-L2"])
    moved = replace(moved, members=(*moved.members, Member("L3-U2x", "U3", "L2")))
    error = unsolvable(moved)
    assert error.kind == "critical"
    assert "although 24 unknowns match 24 equations" in error.reason


def test_a_joint_held_by_two_members_in_one_line_moves_across_it():
    problem = plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 2, 0)],
        ["AC", "CB"],
        [Support("A", "pin"), Support("B", "pin")],
        [down("C", 1)],
    )
    error = unsolvable(problem)
    assert (error.kind, error.moving) == ("critical", ("C",))
    assert error.how == "Joint C can move up, to begin with, with no member stretched."


def test_an_indeterminate_truss_that_moves_all_the_same_is_told_both():
    problem = replace(
        SQUARE,
        joints=(*SQUARE.joints, replace(SQUARE.joints[0], name="E", x=Exact.of(9))),
        members=(*(Member(n, *n) for n in ("AB", "BC", "CD", "DA", "AC", "BD", "BE")),),
        supports=(*SQUARE.supports, Support("D", "pin")),
    )
    error = unsolvable(problem)
    assert error.kind == "too-many"
    assert error.reason.endswith("and yet it can move.")
    assert error.moving == ("E",)


@given(trusses())
def test_three_good_reactions_follow_from_the_whole_body(problem):
    assert reactions_by_whole(problem)
    assert reactions_from_whole(problem) == tuple(r.name for r in problem.reactions)


@given(wall_trusses())
def test_four_reactions_do_not_all_follow_from_the_whole_body(problem):
    assert not reactions_by_whole(problem)
    assert len(reactions_from_whole(problem)) < 4


def test_two_pins_on_one_level_give_the_vertical_reactions_only():
    arch = plain_problem(
        [("A", 0, 0), ("B", 8, 0), ("C", 4, 3)],
        ["AC", "BC"],
        [Support("A", "pin"), Support("B", "pin")],
        [down("C", 12)],
    )
    assert reactions_from_whole(arch) == ("A_y", "B_y")
    assert solve(arch).reaction("A_x") == pytest.approx(8)

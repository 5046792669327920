"""Does a section divide the truss, and is each part of it in equilibrium under the forces it cuts?"""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import pytest
from families import pratt
from hypothesis import given
from strategies import trusses

from tutor.model import Joint, Member, Problem, load_problem
from tutor.notation import Exact
from tutor.statics import Moment, joint_order, meetings, part, section_through, sections, solve

PAPER = Path(__file__).parents[1] / "paper"


@given(trusses(min_joints=4))
def test_every_part_of_every_section_is_in_equilibrium(problem: Problem) -> None:
    forces = solve(problem).values
    largest = max([abs(v) for v in forces.values()] + [f.size for f in loads(problem)])
    reach = max(max(map(abs, joint.at)) for joint in problem.joints)
    for found in list(sections(problem, ()))[:20]:
        assert found.divides
        for joints in found.parts:
            body = part(problem, joints)
            cut = {f.name for f in body.forces if f.kind == "member"}
            assert cut == set(found.cut)
            for total in ((1, 0), (0, 1)):
                left = sum(size(f, forces) * (f.x * total[0] + f.y * total[1]) for f in body.forces)
                assert abs(left) <= 1e-8 * largest * len(body.forces)
            turned = sum(size(f, forces) * Moment((0.0, 0.0)).of(f) for f in body.forces)
            assert abs(turned) <= 1e-7 * largest * reach * len(body.forces)


@given(trusses(min_joints=4))
def test_the_parts_hold_all_joints_once_and_no_whole_member_joins_them(problem: Problem) -> None:
    for found in list(sections(problem, ()))[:20]:
        one, other = map(set, found.parts)
        assert one | other == {joint.name for joint in problem.joints}
        assert not one & other
        for member in problem.members:
            assert (member.name in found.cut) == ((member.start in one) != (member.end in one))


def size(force: object, forces: dict[str, float]) -> float:
    given_size = force.size  # type: ignore[attr-defined]
    return forces[force.name] if given_size is None else given_size  # type: ignore[attr-defined]


def loads(problem: Problem) -> list[object]:
    from tutor.statics import load_forces

    return [f for joint in problem.joints for f in load_forces(problem, joint.name)]


def test_members_that_do_not_go_right_through_leave_one_piece() -> None:
    truss = pratt(4, 3, 4, 12)
    some = [member.name for member in truss.members][:1]
    found = section_through(truss, some)
    assert len(found.parts) == 1
    assert not found.divides
    assert found.needless == tuple(some)


def test_a_member_cut_beside_the_section_is_told_as_needless() -> None:
    truss = load_problem(PAPER / "fink.toml")
    found = section_through(truss, ["BC", "FG", "CF", "DE"])
    assert len(found.parts) == 2
    assert found.needless == ("DE",)
    assert not found.divides


def test_a_compound_truss_has_no_order_of_joints_but_a_section_of_three() -> None:
    truss = load_problem(PAPER / "compound.toml")
    assert joint_order(truss).stuck
    (found,) = [each for each in sections(truss, ()) if len(each.parts[1]) == 3]
    assert found.cut == ("AD", "BE", "CF")
    assert set(found.parts) == {("A", "B", "C"), ("D", "E", "F")}


def test_lines_of_members_meet_where_geometry_says() -> None:
    truss = load_problem(PAPER / "compound.toml")
    points = meetings(truss, ["AD", "CF"])
    (point,) = points
    assert point == pytest.approx((6.0, 4.5))
    assert math.isclose(point[1] / point[0], 3 / 4)
    assert meetings(truss, ["AB", "DE"]) == {}
    assert list(meetings(truss, ["AB", "AC"])) == [(0.0, 0.0)]


def test_known_members_are_cut_as_well_and_do_not_count() -> None:
    truss = load_problem(PAPER / "compound.toml")
    found = list(sections(truss, {"AD"}, most=2))
    assert any(set(each.cut) == {"AD", "BE", "CF"} for each in found)


def test_members_that_are_known_and_would_leave_a_joint_by_itself_stay_with_their_part() -> None:
    plain = load_problem(PAPER / "compound.toml")
    tips = (Joint("G", Exact.of(-4), Exact.of(4)), Joint("H", Exact.of(16), Exact.of(4)))
    ends = [("A", "G"), ("C", "G"), ("B", "H"), ("C", "H"), ("D", "T"), ("E", "T")]
    inner = Joint("T", Exact.of(6), Exact.of(2))
    truss = replace(
        plain,
        joints=(*plain.joints, *tips, inner),
        members=(*plain.members, *(Member("".join(pair), *pair) for pair in ends)),
    )
    known = {"".join(pair) for pair in ends}
    found = [each for each in sections(truss, known) if set(each.cut) == {"AD", "BE", "CF"}]
    assert [set(each.parts) for each in found] == [
        {("A", "B", "C", "G", "H"), ("D", "E", "F", "T")}
    ]

"""What is told of a belief that runs through a page: where it began, how sure, and where to go on?

The pages are those of `pages.py`; where one would begin and go on is our own judgement, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import replace
from random import Random
from typing import Any

import pytest
from families import plain_problem
from lines import figures
from pages import PIN, TRUSSES, load, of_members, page_of_belief, pages
from strategies import howe

from tutor import review
from tutor.homework import Review, hint
from tutor.model import Problem, Support
from tutor.notation import Exact
from tutor.statics import solve

PAGES = pages()
AT_JOINTS = ("sine for cosine", "members whole", "radians", "tangent for sine", "3-4-5 everywhere")


def work(page: Mapping[str, Any], **forces: str) -> dict[str, Any]:
    return {"reactions": page["reactions"], "forces": {**page["forces"], **forces}}


def of_belief(truss: str, belief: str) -> dict[str, Any]:
    return next(work(p) for p in PAGES if (p["truss"], p["belief"]) == (truss, belief))


@pytest.mark.parametrize("belief", ["sine for cosine", "members whole", "one slope for all"])
@pytest.mark.parametrize(
    ("truss", "order", "first"),
    [("wind", "ABECD", "B"), ("outrigger", "AECDB", "E"), ("outrigger", "ECABD", "E")],
)
def test_a_belief_about_slopes_began_at_the_first_joint_of_the_order_with_a_slope(
    truss: str, order: str, first: str, belief: str
) -> None:
    """At A a post and a level member end, and nothing more."""
    result = review(TRUSSES[truss], {**of_belief(truss, belief), "order": list(order)})
    assert result.places == (first,)


def test_a_belief_about_slopes_began_at_a_joint_though_the_reactions_came_last() -> None:
    """C: 7 - AC + BC = 0 and -14 - AC - BC = 0; then B and A, with their reactions."""
    forces, reactions = {"AC": -3.5, "BC": -10.5, "AB": 10.5}, {"A_x": -7, "A_y": 3.5, "B_y": 10.5}
    result = review(TRUSSES["trestle"], {"forces": forces, "reactions": reactions})
    assert result.places == ("C",)
    assert [(a.mistake.code, a.throughout) for a in result.accounts] == [("whole-force", True)]


def sure(result: Review) -> set[str]:
    return {finding.sure for finding in result.findings if finding.state != "right"}


@pytest.mark.parametrize("belief", ["one slope for all", "radians"])
def test_a_belief_that_gives_every_number_of_a_whole_page_is_certain(belief: str) -> None:
    told = [sure(review(TRUSSES[str(p["truss"])], work(p))) for p in PAGES if p["belief"] == belief]
    assert told.count({"certain"}) >= len(told) / 2


@pytest.mark.parametrize("belief", ["newtons", "pounds"])
@pytest.mark.parametrize("truss", TRUSSES)
def test_another_unit_is_certain_on_a_whole_page_and_likely_beside_a_blank(
    truss: str, belief: str
) -> None:
    page = of_belief(truss, belief)
    assert sure(review(TRUSSES[truss], page)) == {"certain"}
    for blank in list(page["forces"])[:2]:
        rest = {name: value for name, value in page["forces"].items() if name != blank}
        assert sure(review(TRUSSES[truss], {**page, "forces": rest})) == {"likely"}


def test_the_slope_of_one_member_taken_for_all_is_told_as_that_though_it_is_a_familiar_one() -> (
    None
):
    """3-4-5 is the slope of AC in the rafters and of BD in the lantern."""
    for page in (p for p in PAGES if p["belief"] == "one slope for all"):
        result = review(TRUSSES[str(page["truss"])], work(page))
        told = [a.mistake.text for a in result.accounts if a.throughout]
        assert len(told) == len(result.accounts)
        assert [text[:39] for text in told] == ["All through the page, one slope is used"]


def test_what_runs_through_a_page_is_told_of_no_place() -> None:
    for page in (p for p in PAGES if p["belief"] in ("newtons", "radians", "sine for cosine")):
        result = review(TRUSSES[str(page["truss"])], work(page))
        if len(result.accounts) == 1 and result.accounts[0].throughout:
            assert hint(result, "look") == result.accounts[0].mistake.text


@pytest.mark.parametrize("belief", ["half to each", "pin as roller"])
@pytest.mark.parametrize("order", [False, True])
def test_members_follow_where_the_reactions_alone_were_got_wrong(belief: str, order: bool) -> None:
    for page in (p for p in PAGES if p["belief"] == belief):
        problem = TRUSSES[str(page["truss"])]
        more = {"order": list(problem.joint)} if order else {}
        result = review(problem, {**work(page), **more})
        assert result.places == ("whole",)
        for finding in result.findings:
            member = finding.name in problem.member
            assert finding.state in ("right", "follows" if member else "wrong"), (page, finding)


@pytest.mark.parametrize("order", [[], ["A", "C", "D", "B"]])
def test_a_member_found_with_the_roller_upright_once_more_is_wrong_and_does_not_follow(
    order: list[str],
) -> None:
    """AB follows from the A_x of the whole truss; BD comes from B, where the roller acts."""
    result = review(
        TRUSSES["on-a-ramp"], {**of_belief("on-a-ramp", "roller upright"), "order": order}
    )
    states = {f.name: f.state for f in result.findings if f.state != "right"}
    assert states == {"A_x": "wrong", "R_B": "wrong", "AB": "follows", "BD": "wrong"}


@pytest.mark.parametrize(
    ("truss", "blank", "first"),
    [("bank", "FB", "E"), ("bank", "BD", "E"), ("lantern", "CF", "F"), ("outrigger", "BC", "E")],
)
def test_loads_missing_at_all_joints_are_told_though_a_member_is_left_blank(
    truss: str, blank: str, first: str
) -> None:
    page = of_belief(truss, "loads on no joint")
    forces = {name: value for name, value in page["forces"].items() if name != blank}
    result = review(TRUSSES[truss], {**page, "forces": forces})
    assert result.places == (first,)
    assert [(a.mistake.code, a.throughout) for a in result.accounts] == [("missing", True)]


@pytest.mark.parametrize("places", [0, 1, 2])
@pytest.mark.parametrize("truss", TRUSSES)
def test_angles_from_the_vertical_in_degrees_read_as_radians_are_told_so(
    truss: str, places: int
) -> None:
    def run_rise(ux: float, uy: float) -> tuple[float, float]:
        angle = round(math.degrees(math.atan2(ux, uy)), places)
        return math.sin(angle), math.cos(angle)

    change = of_members(run_rise)
    page = page_of_belief(Random(5), truss, "radians", change, ("angle-mode",))
    if page is not None:
        result = review(TRUSSES[truss], work(page))
        assert list(result.places) == page["places"]
        assert [(a.mistake.code, a.throughout) for a in result.accounts] == [("angle-mode", True)]


@pytest.mark.parametrize(
    ("truss", "belief", "blank"),
    [
        *(("trestle", "one slope for all", name) for name in ("AB", "BC", "AC")),
        ("trestle", "loads on no joint", "AB"),
    ],
)
def test_where_one_member_is_blank_the_joint_that_has_all_of_them_is_clear(
    truss: str, belief: str, blank: str
) -> None:
    page = of_belief(truss, belief)
    forces = {name: value for name, value in page["forces"].items() if name != blank}
    result = review(TRUSSES[truss], {**page, "forces": forces})
    assert result.clear
    assert result.places == ("C",)


WALL = plain_problem(
    (("A", 0, 3), ("B", 0, 0), ("C", 4, 3)),
    ("AB", "BC", "CA"),
    (PIN, Support("B", "roller", Exact.of(0))),
    (load("C", down=12),),
)
"""A is pinned to a wall, B on a roller against it; A_x = -16, B_x = 16, A_y = 12."""


@pytest.mark.parametrize(
    ("reactions", "pin"),
    [({"A_x": "0", "B_x": "16"}, True), ({"A_x": "-16", "B_x": "0"}, False)],
)
def test_only_a_pin_is_told_as_a_pin_taken_for_a_roller(
    reactions: dict[str, str], pin: bool
) -> None:
    result = review(WALL, {"reactions": {**reactions, "A_y": "12"}})
    assert result.places == ("whole",)
    assert ("pinned" in result.accounts[0].mistake.text) == pin


def mended_at_one(truss: str) -> Iterator[tuple[dict[str, Any], dict[str, Any]]]:
    """Pages with a belief, each with one joint after another put right: as it is, and as it was."""
    problem = TRUSSES[truss]
    true = solve(problem).values
    for page in PAGES:
        if page["truss"] != truss or page["belief"] not in AT_JOINTS:
            continue
        for joint in problem.joint:
            here = [m.name for m in problem.members if joint in (m.start, m.end)]
            yield work(page, **{name: figures(true[name], 4) for name in here}), work(page)


def in_one_line(problem: Problem, names: list[str]) -> bool:
    ends = ((problem.member[n].start, problem.member[n].end) for n in names)
    (ax, ay), (bx, by) = (
        (
            problem.joint[q].at[0] - problem.joint[p].at[0],
            problem.joint[q].at[1] - problem.joint[p].at[1],
        )
        for p, q in ends
    )
    return abs(ax * by - ay * bx) < 1e-9


@pytest.mark.parametrize(
    ("truss", "belief", "joint", "first", "code"),
    [
        ("trestle", "half to each", "C", "whole", "symmetry"),
        ("footway", "half to each", "A", "whole", "symmetry"),
        ("wind", "load upright", "E", "whole", "whole-force"),
        ("bank", "radians", "A", "B", "angle-mode"),
    ],
)
def test_a_belief_is_told_though_all_members_of_one_joint_are_right(
    truss: str, belief: str, joint: str, first: str, code: str
) -> None:
    """Somebody may have put them right, and no more."""
    problem, done = TRUSSES[truss], of_belief(truss, belief)
    true = solve(problem).values
    right = [m.name for m in problem.members if joint in (m.start, m.end)]
    forces = {**done["forces"], **{name: figures(true[name], 4) for name in right}}
    result = review(problem, {**done, "forces": forces})
    assert result.places == (first,)
    assert [(a.mistake.code, a.about) for a in result.accounts] == [(code, None)]


@pytest.mark.parametrize("remembered", [True, False])
@pytest.mark.parametrize("truss", ["footway", "jetty", "outrigger"])
def test_one_goes_on_at_a_joint_whose_two_sums_give_all_that_is_wrong_there(
    truss: str, remembered: bool
) -> None:
    """Where more is wrong than a joint gives, some of it was found elsewhere and put in."""
    problem, sent = TRUSSES[truss], 0
    for now, before in mended_at_one(truss):
        result = review(problem, now, before if remembered else None)
        if not result.rests or not set(result.rests) <= set(problem.member):
            continue
        carried = [account.mistake.code == "carried" for account in result.accounts]
        assert [not account.throughout for account in result.accounts] == carried
        (joint, *_), members = result.places, (problem.member[name] for name in result.rests)
        wrong = [m.name for m in members if joint in (m.start, m.end)]
        sent += 1
        assert len(wrong) <= 2, (joint, wrong)
        assert len(wrong) < 2 or not in_one_line(problem, wrong), (joint, wrong)
    assert sent >= 4


@pytest.mark.parametrize("page", ["one slope for all", "3-4-5 everywhere", "tangent for sine"])
@pytest.mark.parametrize("joint", ["A", "B", "C"])
def test_of_a_lone_wrong_value_nothing_is_said_to_have_been_mended(page: str, joint: str) -> None:
    """All else is right: whether a belief ran through it before, nobody can see."""
    true = solve(TRUSSES["trestle"]).values
    here = [name for name in TRUSSES["trestle"].member if joint in name]
    done = of_belief("trestle", page)
    forces = {**done["forces"], **{name: figures(true[name], 4) for name in here}}
    result = review(TRUSSES["trestle"], {**done, "forces": forces})
    wrong = [finding for finding in result.findings if finding.state != "right"]
    assert len(wrong) == 1
    assert not result.rests


@pytest.mark.parametrize(("panels", "told"), [(40, True), (42, False)])
def test_what_runs_through_a_page_is_looked_for_on_trusses_of_eighty_joints_and_no_more(
    panels: int, told: bool
) -> None:
    bridge = howe(panels, 3, 4, 12)
    problem = replace(bridge, loads=(load("L4", down=10),))
    assert (len(problem.joints) <= 80) == told
    result = review(problem, {"reactions": dict.fromkeys(("L0_y", f"L{panels}_y"), "5")})
    codes = [account.mistake.code for account in result.accounts if account.about is None]
    assert codes == (["symmetry"] if told else [])


SLOPING = plain_problem(
    (("A", 0, 3), ("B", 0, 0), ("C", 4, 3)),
    ("AB", "AC", "BC"),
    (PIN, Support("B", "roller", Exact.of(20))),
    (load("C", down=12),),
)
"""B pushes up by 20 degrees: 3 R_B cos 20 = 48, and A_y = 12 - R_B sin 20."""


@pytest.mark.parametrize(
    ("reactions", "code"),
    [
        ({"R_B": "16", "A_x": "-16", "A_y": "12"}, "inclined-support"),
        ({"R_B": "46.8", "A_x": "-16", "A_y": "-32"}, "component"),
    ],
)
def test_an_inclined_roller_taken_for_level_or_with_its_components_exchanged_is_told(
    reactions: dict[str, str], code: str
) -> None:
    """Level it gives 48/3 and A_y = 12; exchanged 3 R_B sin 20 = 48 and A_y = 12 - R_B cos 20."""
    right = review(SLOPING, {"reactions": {"R_B": "17.03", "A_x": "-16", "A_y": "6.18"}})
    assert right.right
    result = review(SLOPING, {"reactions": reactions})
    assert result.places == ("whole",)
    assert code in [account.mistake.code for account in result.accounts]
    assert any(account.about is None for account in result.accounts)


def test_of_a_lone_value_that_rests_on_a_mended_one_it_is_said_so() -> None:
    """AC was 5 C and CB followed; now that AC is right, CB is still as it was."""
    problem = TRUSSES["trestle"]
    reactions = {"A_x": "-7", "A_y": "4", "B_y": "10"}
    before = {"reactions": reactions, "forces": {"AC": "-6.667", "AB": "11", "BC": "-15.56"}}
    now = {"reactions": reactions, "forces": {"AC": "-5", "AB": "10", "BC": "-15.56"}}
    result = review(problem, now, before)
    assert result.rests == ("BC",)
    assert result.accounts[0].mistake.text.startswith("This value still rests")
    both = {"reactions": reactions, "forces": {"AC": "-5", "AB": "11", "BC": "-15.56"}}
    result = review(problem, both, before)
    assert result.rests == ("AB", "BC")
    assert result.accounts[0].mistake.text.startswith("These values still rest")

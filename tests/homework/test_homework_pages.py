"""Is a page with one belief or mistake carried through told as a teacher would tell it?"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from random import Random
from typing import Any

import pytest
from families import plain_problem
from lines import figures
from pages import PIN, ROLLER, TRUSSES, load, pages, slanted
from students_work import Homework, any_problem, do, homework, plan, slip_at

from tutor import review
from tutor.homework import Review
from tutor.model import Load, Problem
from tutor.notation import Exact
from tutor.statics import solve

PAGES = pages()


def reviewed(page: dict[str, object]) -> Review:
    work = {"reactions": page["reactions"], "forces": page["forces"]}
    return review(TRUSSES[str(page["truss"])], work)


def test_there_are_pages_enough_over_trusses_enough() -> None:
    assert len(PAGES) >= 150
    assert len({page["truss"] for page in PAGES}) >= 10


ELSEWHERE = {
    ("trestle", "extra of B_y"),
    ("rafters", "extra of DB"),
    ("rafters", "sign of AD"),
    ("steep", "extra of EB"),
    ("steep", "component of CE"),
    ("on-a-ramp", "long arms"),
    ("on-a-ramp", "component of BC"),
    ("crane", "loads up at joints"),
    ("crane", "sign of AC"),
    ("wind", "load's components exchanged"),
    ("wind", "extra of A_x"),
    ("jetty", "3-4-5 everywhere"),
    ("jetty", "tangent for sine"),
    ("jetty", "extra of load D"),
}
"""Pages that another slip, or the same at another joint, explains as well: a joint or two away at most."""
AS_WELL = {
    ("on-a-ramp", "members whole"): "component",
    ("crane", "extra of A_x"): "no-arm",
}
"""What explains these pages as well."""
FROM_LINE_TO_LINE = frozenset(
    (
        "one slope for all",
        "3-4-5 everywhere",
        "radians",
        "members whole",
        "sine for cosine",
        "newtons",
        "pounds",
        "reversed",
    )
)


def test_a_page_with_one_belief_is_told_with_its_place_and_kind() -> None:
    for page in PAGES:
        result, name = reviewed(page), (str(page["truss"]), str(page["belief"]))
        meant, places = set(page["kinds"]), page["places"]  # type: ignore[call-overload]
        if name not in ELSEWHERE:
            told = {AS_WELL[name]} if name in AS_WELL else meant
            assert (result.accounts[0].mistake.code in told, result.first in places) == (  # type: ignore[operator]
                True,
                True,
            ), name
        for finding in result.findings:
            if finding.state == "wrong" and finding.sure == "certain" and finding.cause:
                assert finding.cause.code in meant, (name, finding.name)


def elsewhere(problem: Problem) -> Problem:
    """The same truss three times as large, its origin somewhere else."""
    moved = [
        replace(j, x=Exact.of(Fraction(3 * j.at[0] + 5)), y=Exact.of(Fraction(3 * j.at[1] - 4)))
        for j in problem.joints
    ]
    return replace(problem, joints=tuple(moved))


def test_where_the_origin_lies_and_how_large_the_truss_is_changes_nothing() -> None:
    """But that an arm left out is of another size beside its force."""
    there = {name: elsewhere(problem) for name, problem in TRUSSES.items()}
    for page in PAGES:
        work = {"reactions": page["reactions"], "forces": page["forces"]}
        here, moved = reviewed(page), review(there[str(page["truss"])], work)
        assert moved.places == here.places, (page["truss"], page["belief"])
        if page["belief"] != "extra of A_x":
            assert [a.mistake.code for a in moved.accounts] == [
                a.mistake.code for a in here.accounts
            ]
        assert [(f.state, f.sure) for f in moved.findings] == [
            (f.state, f.sure) for f in here.findings
        ]


def test_what_runs_from_line_to_line_is_told_so_and_a_belief_about_reactions_is_not() -> None:
    for page in PAGES:
        (account, *_) = reviewed(page).accounts
        if page["belief"] in FROM_LINE_TO_LINE:
            assert account.throughout, (page["truss"], page["belief"])
        if page["belief"] in ("half to each", "pin as roller", "long arms", "load upright"):
            assert not account.throughout, (page["truss"], page["belief"])


@pytest.mark.parametrize("truss", ["footway", "rafters", "steep", "bank"])
@pytest.mark.parametrize("level", [True, False])
def test_a_page_of_components_for_forces_is_told_so(truss: str, level: bool) -> None:
    problem = TRUSSES[truss]
    values = dict(solve(problem).values)
    for member in problem.members:
        (x, y), (far_x, far_y) = (problem.joint[end].at for end in (member.start, member.end))
        run, rise = abs(far_x - x), abs(far_y - y)
        if run and rise:
            values[member.name] *= (run if level else rise) / math.hypot(run, rise)
    parts = {"reactions": problem.reaction, "forces": problem.member}
    work = {part: {n: figures(values[n], 4) for n in names} for part, names in parts.items()}
    result = review(problem, work)
    assert result.accounts[0].mistake.code == "component"
    assert "the value of one component" in result.accounts[0].mistake.text


def half_done(seed: int) -> Homework | None:
    """Reactions and the first joints, with one wrong line."""
    rng = Random(seed)
    problem = any_problem(rng)
    digits = rng.choice((3, 4))
    steps = plan(rng, problem)
    if not steps or steps[0].place != "whole" or len(steps) < 4:
        return None
    part = steps[: rng.randint(2, max(2, len(steps) // 2)) + 1]
    for _ in range(40):
        k = rng.randrange(len(part))
        before = do(problem, part[:k], digits, {})
        slip = slip_at(rng, problem, part[k], before.values) if before is not None else None
        done = do(problem, part, digits, {part[k].place: slip[1]}) if slip else None
        if done is not None and slip and all(abs(v) < 1e6 for v in done.values.values()):
            done.slips = [slip[0]]
            return done
    return None


KINDS_OF_PAGE = ("half to each", "members whole", "pin as roller", "component of AC")


def test_no_load_is_strange_where_it_acts_and_no_force_along_an_axis_has_two_components() -> None:
    """A load put in twice is no load of another joint; a level force was not taken for its other half."""
    for page in pages():
        if page["belief"] not in KINDS_OF_PAGE:
            continue
        problem = TRUSSES[str(page["truss"])]
        for result in as_handed_in(page):
            told = [(a.place, a.mistake) for a in result.accounts]
            told += [("", f.cause) for f in result.findings if f.cause is not None]
            for place, mistake in told:
                if mistake.code == "stray-load":
                    assert place != "whole", (page, mistake)
                    assert not place or mistake.force != f"load {place}", (page, mistake)
                if mistake.code == "component" and mistake.force in problem.member:
                    member = problem.member[mistake.force]
                    one, two = (problem.joint[end].at for end in (member.start, member.end))
                    assert one[0] != two[0], (page, mistake)
                    assert one[1] != two[1], (page, mistake)


def as_handed_in(page: Mapping[str, Any]) -> Iterator[Review]:
    """The page as it is, without reactions, with a blank, from the last joint on, and put right at A."""
    problem, whole = TRUSSES[page["truss"]], {k: page[k] for k in ("reactions", "forces")}
    forces, true = page["forces"], solve(problem).values
    yield review(problem, whole)
    yield review(problem, {"forces": forces})
    for blank in list(forces)[:3]:
        yield review(problem, {**whole, "forces": {n: v for n, v in forces.items() if n != blank}})
    yield review(problem, {**whole, "order": list(problem.joint)[::-1]})
    at_a = {n: figures(true[n], 4) for n in forces if "A" in n}
    yield review(problem, {**whole, "forces": {**forces, **at_a}})


SEEDS = [
    pytest.param(30, id="some"),
    pytest.param(700, id="all", marks=pytest.mark.slow),
]


@pytest.mark.parametrize("seeds", SEEDS)
def test_a_half_done_sheet_is_sent_to_its_mistake_and_to_no_joint_not_reached(seeds: int) -> None:
    count = first = two = 0
    for done in filter(None, map(half_done, range(seeds))):
        result = review(done.problem, done.work())
        (slip,) = done.slips
        count += 1
        first += result.first == slip.place
        two += slip.place in result.places[:2]
        assert set(result.places) <= {"whole", *done.order}
        states = {finding.state for finding in result.findings}
        assert "wrong" in states or "follows" not in states
    assert first >= 0.9 * count, (first, count)
    assert two >= 0.99 * count, (two, count)


@pytest.mark.parametrize("seeds", SEEDS)
def test_after_the_first_place_is_mended_one_is_sent_to_what_still_rests_on_it(seeds: int) -> None:
    count = sent = 0
    for done, right in filter(None, map(homework, range(seeds))):
        (slip,) = done.slips
        changed = {n for n in done.values if done.values[n] != right.values[n]}
        here = changed & set(done.solved[slip.place])
        rest = changed - here
        if not rest or not here:
            continue
        values = {**done.values, **{name: right.values[name] for name in here}}
        mended = Homework(done.problem, digits=done.digits, values=values)
        result = review(done.problem, mended.work(), done.work())
        after = done.order[done.order.index(slip.place) + 1 :]
        goes_on = {place for place in after if rest & set(done.solved[place])}
        count += 1
        sent += bool(goes_on & set(result.places[:2]))
        assert all(result.finding[name].state == "right" for name in here)
    assert sent >= 0.95 * count, (sent, count)


@pytest.mark.parametrize(("a_y", "b_y"), [("32", "7"), ("6", "33")])
def test_arms_all_one_panel_too_short_or_too_long_are_told_as_arms(a_y: str, b_y: str) -> None:
    """About A: 12 B_y = 21*4, and 12 B_y = 18*8 + 21*12."""
    loads = [Load(joint, (("down", Exact.of(size)),)) for joint, size in (("C", 18), ("D", 21))]
    problem = replace(TRUSSES["footway"], loads=tuple(loads))
    for there in (problem, elsewhere(problem)):
        result = review(there, {"reactions": {"A_x": "0", "A_y": a_y, "B_y": b_y}})
        assert result.places == ("whole",)
        assert result.accounts[0].mistake.code == "arm"


def test_who_takes_distances_for_arms_gives_none_to_a_load_that_points_at_the_point() -> None:
    """C pushes at A by 45 degrees; about A: 7 B_y = 7 times √18 and 5 times √29, for 7*3 and 5*5."""
    problem = plain_problem(
        (("A", 0, 0), ("B", 7, 0), ("C", 3, 3), ("D", 5, 2)),
        ("AB", "AC", "CD", "BC", "BD"),
        (PIN, ROLLER),
        (slanted("C", 10, 225), load("C", right=7), load("D", down=5)),
    )
    right = {"A_x": "0.0711", "A_y": "5.500", "B_y": "6.571"}
    assert review(problem, {"reactions": right}).right
    result = review(problem, {"reactions": {**right, "A_y": "3.982", "B_y": "8.089"}})
    assert result.places == ("whole",)
    assert [(a.mistake.code, a.about) for a in result.accounts] == [("arm", None)]


@pytest.mark.parametrize("factor", [1000.0, 0.001])
@pytest.mark.parametrize("truss", TRUSSES)
def test_members_all_in_another_unit_may_be_so_from_each_joint_at_which_one_begins(
    truss: str, factor: float
) -> None:
    """The reactions are right, so that the loads went in otherwise at the first joint: two are named."""
    problem, true = TRUSSES[truss], solve(TRUSSES[truss]).values
    forces = {m.name: figures(factor * true[m.name], 4) for m in problem.members}
    reactions = {r.name: figures(true[r.name], 4) for r in problem.reactions}
    result = review(problem, {"reactions": reactions, "forces": forces})
    assert [(a.mistake.code, a.throughout) for a in result.accounts] == [("unit", True)]
    assert len(result.places) == 2
    assert all(len(problem.meeting[place]) <= 2 for place in result.places)


@pytest.mark.parametrize("truss", ["footway", "bank"])
def test_where_nothing_fits_the_joints_at_which_one_may_begin_are_looked_at(truss: str) -> None:
    rng, problem = Random(1), TRUSSES[truss]
    true = solve(problem).values
    noise = {
        m.name: rng.uniform(0.3, 2) * true[m.name] + rng.uniform(1, 4) for m in problem.members
    }
    work = {
        "reactions": {r.name: figures(true[r.name], 4) for r in problem.reactions},
        "forces": {name: figures(value, 3) for name, value in noise.items()},
    }
    result = review(problem, work)
    assert not result.clear
    assert result.places == ("A", "B")


@pytest.mark.parametrize(("truss", "joint"), [("trestle", "A"), ("crane", "D"), ("jetty", "A")])
def test_beside_all_members_reversed_stands_the_joint_whose_slip_would_leave_the_same(
    truss: str, joint: str
) -> None:
    """The reactions are blank, so that they may have been worked with the other way round."""
    problem = TRUSSES[truss]
    true = solve(problem).values
    result = review(
        problem, {"forces": {m.name: figures(-true[m.name], 4) for m in problem.members}}
    )
    assert result.places == ("whole", joint)

"""Is an entry right exactly as far as its figures and the steps that lead to it allow?"""

from __future__ import annotations

import math
import re
from random import Random

import numpy as np
import pytest
from every_problem import FORCES, problem_of
from families import plain_problem
from lines import figures
from pages import TRUSSES
from students_work import any_problem, homework

from tutor import review
from tutor.homework.two_figures import of_two_figures
from tutor.homework.work import Entry, read_entry
from tutor.judge import judge_of
from tutor.judge.known_values import KnownValues
from tutor.model import Load, Problem, Support
from tutor.notation import Exact
from tutor.statics import joint_body, solve

ALL = [
    pytest.param(30, id="some"),
    pytest.param(2000, id="all", marks=pytest.mark.slow),
]
SHIPPED = [problem_of(path) for path in FORCES]


def letter(value: float) -> str:
    return "T" if value > 0 else "C"


def left_open(problem: Problem, reactions: dict[str, str], name: str, true: float) -> float:
    """How far the reactions as written put a member off at a support's joint of two members.

    101 beside 101 gives nothing where 101.38 - 100.92 is meant: a value between the two is as good as
    its figures, and who marks it cannot say more.
    """
    off = 0.0
    for joint in {reaction.joint for reaction in problem.reactions}:
        forces = joint_body(problem, joint).forces
        members = [f for f in forces if f.kind == "member"]
        if len(members) != 2 or name not in {f.name for f in members}:
            continue
        known = [
            (f, float(reactions[f.name]) if f.name in reactions else f.size or 0.0)
            for f in forces
            if f.kind != "member"
        ]
        right = [-sum(size * way for way, size in pairs) for pairs in (
            [(f.x, size) for f, size in known], [(f.y, size) for f, size in known]
        )]  # fmt: skip
        matrix = np.array([[f.x for f in members], [f.y for f in members]])
        if abs(np.linalg.det(matrix)) < 1e-9:
            continue  # in one line with each other: the joint alone tells neither
        solved = dict(zip((f.name for f in members), np.linalg.solve(matrix, right), strict=True))
        off = max(off, abs(solved[name] - true))
    return off


@pytest.mark.parametrize("count", ALL)
def test_a_lone_value_three_per_cent_off_beside_right_reactions_is_never_right(count: int) -> None:
    made = 0
    for seed in range(3 * count):
        rng = Random(seed)
        problem = any_problem(rng)
        true = solve(problem).values
        largest = max(map(abs, true.values()))
        names = [m.name for m in problem.members if abs(true[m.name]) > 1e-3 * largest]
        if not names or made == count:
            continue
        name = rng.choice(names)
        value = true[name] * (1 + rng.choice((-1, 1)) * rng.uniform(0.03, 0.3))
        text = figures(abs(value), 3)
        if abs(float(text) / abs(true[name]) - 1) < 0.03:
            continue
        reactions = {r.name: figures(true[r.name], 3) for r in problem.reactions}
        off = abs(math.copysign(float(text), value) - true[name])
        if off <= left_open(problem, reactions, name, true[name]):
            continue
        made += 1
        work = {"reactions": reactions, "forces": {name: f"{text} {letter(value)}"}}
        assert review(problem, work).finding[name].state != "right", (seed, name)


@pytest.mark.parametrize("count", ALL)
def test_a_shipped_problems_value_off_by_a_fortieth_is_never_right(count: int) -> None:
    made = 0
    for seed in range(3 * count):
        rng = Random(seed)
        problem = rng.choice(SHIPPED)
        true = solve(problem).values
        name = rng.choice([n for n, v in true.items() if abs(v) > 1e-9])
        digits = rng.choice((3, 4, 5, 6))
        values = {n: figures(v, digits) for n, v in true.items()}
        off = rng.choice((-1, 1)) * rng.uniform(0.025, 0.3)
        values[name] = figures(true[name] * (1 + off), max(digits, 4))
        if made == count or abs(float(values[name]) / true[name] - 1) < 0.025:
            continue
        made += 1
        parts = {"reactions": problem.reaction, "forces": problem.member}
        work = {part: {n: values[n] for n in names} for part, names in parts.items()}
        result = review(problem, work)
        assert result.finding[name].state != "right", (seed, name)
        assert all(f.state == "right" for f in result.findings if f.name != name), seed


@pytest.mark.parametrize("count", [pytest.param(6, id="some"), ALL[1]])
def test_a_right_entry_more_turns_no_wrong_one_right(count: int) -> None:
    for seed in range(count):
        both = homework(seed)
        if both is None:
            continue
        done, _ = both
        rng = Random(seed)
        work = done.work()
        rows = [(part, n, v) for part, all_of in work.items() for n, v in all_of.items()]
        rng.shuffle(rows)
        few: dict[str, dict[str, str]] = {"reactions": {}, "forces": {}}
        wrong: set[str] = set()
        for part, name, text in rows[: rng.randint(2, len(rows))]:
            few[part][name] = text
            states = {str(f.name): f.state for f in review(done.problem, few).findings}
            if states[name] == "right":
                assert not any(states[other] == "right" for other in wrong), (seed, name)
            wrong = {other for other, state in states.items() if state in ("wrong", "follows")}


@pytest.mark.parametrize("seed", range(40))
def test_nothing_is_all_right_while_a_body_with_all_its_entries_does_not_close(seed: int) -> None:
    both = homework(seed)
    if both is None:
        return
    for done in both:
        rng = Random(seed)
        work = {
            part: {n: v for n, v in rows.items() if rng.random() > 0.2}
            for part, rows in done.work().items()
        }
        result = review(done.problem, work)
        open_bodies = [c.name for c in result.closures if c.closes is False]
        assert not (result.right and open_bodies)
        assert not (re.search("all|everything", result.said, re.I) and open_bodies)


def given_at_a_joint(problem: Problem, values: dict[str, float], name: str, half: float) -> bool:
    """Whether one sum of forces at an end gives a member as the values are written, to `half` a step.

    Any sum will do, and the one square to any other force there, so that this force does not come into it.
    """
    for joint in (problem.member[name].start, problem.member[name].end):
        forces = joint_body(problem, joint).forces
        me = next(f for f in forces if f.name == name)
        ways = [(1.0, 0.0), (0.0, 1.0), (me.x, me.y), *((-f.y, f.x) for f in forces)]
        for x, y in ways:
            used = [f for f in forces if f.name != name and abs(f.x * x + f.y * y) > 1e-9]
            share = me.x * x + me.y * y
            if abs(share) < 1e-9 or any(f.size is None and f.name not in values for f in used):
                continue
            sizes = (values[f.name] if f.size is None else f.size for f in used)
            given = -sum(s * (f.x * x + f.y * y) for s, f in zip(sizes, used, strict=True)) / share
            if abs(given - values[name]) <= half:
                return True
    return False


@pytest.mark.parametrize("digits", [2, 3])
@pytest.mark.parametrize("seed", range(12))
def test_nothing_far_off_is_right_but_what_the_values_beside_it_give_as_they_are_written(
    seed: int, digits: int
) -> None:
    """Far is more than 2 %, or 0.5 % of the largest force where the value is none: the usual tolerance."""
    both = homework(seed, digits=digits)
    if both is None:
        return
    for done in both:
        rng = Random(seed)
        work = {
            part: {n: v for n, v in rows.items() if rng.random() > 0.2}
            for part, rows in done.work().items()
        }
        true = solve(done.problem).values
        largest = max(map(abs, true.values()))
        written = {n: done.values[n] for rows in work.values() for n in rows}
        for finding in review(done.problem, work).findings:
            name = str(finding.name)
            size = abs(true[name])
            most = 0.02 * size if size > 1e-5 * largest else 0.005 * largest
            far = abs(written[name] - true[name]) > most + 1e-5 * largest
            if far and finding.state == "right" and name in done.problem.member:
                figures_shown = max(digits, 3)
                half = 0.5 * 10.0 ** (
                    math.floor(math.log10(abs(written[name]))) - figures_shown + 1
                )
                assert given_at_a_joint(done.problem, written, name, 1.001 * half), name


@pytest.mark.parametrize("number", [11.04, -7.125, 0.0625, 1234.5, 12.0])
def test_a_number_is_as_precise_as_the_same_number_written_out(number: float) -> None:
    desk, nothing = judge_of(TRUSSES["trestle"]), KnownValues({}, {})
    read, written = (read_entry(desk, "AB", value, nothing) for value in (number, str(number)))
    assert isinstance(read, Entry)
    assert isinstance(written, Entry)
    assert (read.value, read.radius) == (written.value, written.radius)


@pytest.mark.parametrize(("whole", "so"), [(640.0, True), (987.0, True), (1234.0, False)])
def test_beside_two_figures_a_whole_number_may_have_three_and_no_more(
    whole: float, so: bool
) -> None:
    values = {"AB": 110.0, "BC": -140.0, "AC": whole, "A_x": -60.0, "A_y": 38.0, "B_y": 82.0}
    entries = {name: Entry(name, value, 0.5, "") for name, value in values.items()}
    assert (of_two_figures(TRUSSES["trestle"], entries) is not None) == so


SCISSORS = plain_problem(
    (("A", 0, 0), ("B", 32, 0), ("C", 16, 12), ("D", 8, 6), ("E", 24, 6), ("F", 16, 4)),
    ("AD", "DC", "CE", "EB", "AF", "FB", "DF", "FE", "CF"),
    (Support("A", "pin"), Support("B", "roller", Exact.of(120))),
    (
        Load("D", (("down", Exact.of(4)), ("right", Exact.of(2)))),
        Load("C", (("down", Exact.of(5)),)),
        Load("E", (("down", Exact.of(4)),)),
    ),
)
"""A scissors roof: where members meet at a flat angle, small things left over come to much in each."""
FOUND = {"A_x": "1.97", "A_y": "6.13", "R_B": "7.94"}


def scissors(**forces: str) -> object:
    return review(SCISSORS, {"reactions": FOUND, "forces": forces})


def test_two_values_off_together_at_a_flat_angle_are_not_right_because_of_blanks() -> None:
    """AD is 14.08 C and AF 9.58 T, by numpy from the two sums at A."""
    result = scissors(AD="13.8 C", AF="9.33 T")
    assert {result.finding[name].state for name in ("AD", "AF")} == {"unchecked"}
    assert result.said.startswith("What could be decided is right.")
    assert "Joint A does not quite close." in result.said
    assert scissors(AD="14.1 C", AF="9.58 T").said == "Everything that was checked is right."


def test_a_value_that_rounding_put_far_off_is_right_where_those_beside_it_give_it() -> None:
    """A full sheet, three figures carried on: what is left of two large forces is off by 6 % of itself."""
    both = homework(352, digits=3)
    assert both is not None
    assert solve(both[1].problem).values["EG"] == pytest.approx(-4.553, abs=0.001)
    assert both[1].values["EG"] == -4.26
    work = both[1].work()
    assert review(both[1].problem, work).finding["EG"].state == "right"
    forces = work["forces"]
    assert isinstance(forces, dict)
    result = review(both[1].problem, {**work, "forces": {**forces, "EG": "4.36 C"}})
    assert result.finding["EG"].state != "right"


def test_a_value_that_rounding_may_have_put_off_is_told_to_be_worked_out_again() -> None:
    both = homework(4, digits=2)
    assert both is not None
    result = review(both[1].problem, both[1].work())
    assert result.coarse
    assert result.first is None
    assert result.said.startswith("What could be decided is right.")
    assert "farther off than a right value should be, which rounding may explain" in result.said
    assert "with one figure more" in result.said


def test_nothing_is_given_rightly_by_what_a_blank_only_may_have_put_off() -> None:
    """DF, 3 % too small, is left blank; what was worked out with it is off by more at every flat angle."""
    both = homework(329)
    assert both is not None
    work = both[0].work()
    forces = {n: v for n, v in work["forces"].items() if n != "DF"}  # type: ignore[attr-defined]
    result = review(both[0].problem, {**work, "forces": forces})
    assert not {"BA", "AC", "CE", "FE"} & {f.name for f in result.findings if f.state == "right"}

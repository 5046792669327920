"""Is nothing called certain that is false, on pages whose mistakes the catalogue may not even know?

Beside slips of the catalogue, one, two or three on a page, there are wrong numbers of any size in a line
and values got wrong on the way. What is certain must be the place and the mistake that were made.
"""

from __future__ import annotations

from collections.abc import Iterator
from random import Random

import pytest
from families import plain_problem
from lines import figures, pieces
from students_work import Homework, any_problem, do, homework, names_it, plan, solve_step

from tutor.homework import Review, hint, review
from tutor.judge import Mistake
from tutor.model import Load, Support
from tutor.notation import Exact
from tutor.statics import solve

SOME = [
    pytest.param(range(6), id="some"),
    pytest.param(range(1000), id="all", marks=pytest.mark.slow),
]
FACTORS = (0.5, 2.0, 1.1, 0.9, 1.37, 0.73, 1.2, 1.5, -0.6, 0.3, 1.8)
OTHER_KINDS = frozenset({"sign", "missing", "component", "turning", "extra"})


def with_slips(seed: int) -> Iterator[Homework]:
    for mistakes in (1, 2, 3):
        both = homework(seed, mistakes)
        if both is not None:
            yield both[0]


def with_any_number(seed: int) -> tuple[Homework, str, str] | None:
    """A homework with a wrong factor of any size in one line, its place and the force it stands beside."""
    rng = Random(seed)
    problem = any_problem(rng)
    steps = plan(rng, problem)
    if not steps:
        return None
    step = rng.choice(steps)
    about = rng.choice(step.lines)
    line = pieces(problem, about, {}, {})
    k = rng.randrange(len(line))
    changed = {step.place: (about, k, line[k].coefficient * rng.choice(FACTORS))}
    done = do(problem, steps, 4, changed)
    if done is None or any(abs(value) > 1e5 for value in done.values.values()):
        return None
    return done, step.place, line[k].force


def with_a_wrong_result(seed: int) -> tuple[Homework, str, str] | None:
    """A homework with one value got wrong on the way from a right line and carried on, and its place."""
    rng = Random(seed)
    problem = any_problem(rng)
    steps = plan(rng, problem)
    if not steps:
        return None
    wrong_at = rng.choice(steps)
    name, factor = rng.choice(wrong_at.finds), rng.choice(FACTORS)
    values: dict[str, float] = {}
    for step in steps:
        found = solve_step(problem, step, values)
        if found is None:
            return None
        if step is wrong_at:
            found = {**found, name: found[name] * factor}
        values.update({n: float(figures(v, 4)) for n, v in found.items()})
    if any(abs(value) > 1e5 for value in values.values()):
        return None
    return Homework(problem, digits=4, values=values), wrong_at.place, name


def certain(result: Review) -> list[Mistake | None]:
    return [
        finding.cause
        for finding in result.findings
        if finding.sure == "certain" and finding.state in ("wrong", "follows")
    ]


@pytest.mark.parametrize("seeds", SOME)
def test_what_is_certain_is_the_place_and_the_slip_that_were_made(seeds: range) -> None:
    for seed in seeds:
        for done in with_slips(seed):
            result = review(done.problem, done.work())
            told = certain(result)
            if told and not result.accounts[0].throughout:
                assert result.first in {slip.place for slip in done.slips}, seed
                for cause in filter(None, told):
                    assert any(names_it(done, slip, cause) for slip in done.slips), (seed, cause)


@pytest.mark.parametrize("seeds", SOME)
def test_a_wrong_number_of_any_size_is_never_called_another_mistake_for_certain(
    seeds: range,
) -> None:
    for made in filter(None, map(with_any_number, seeds)):
        done, place, force = made
        result = review(done.problem, done.work())
        told = certain(result)
        assert not told or result.accounts[0].throughout or result.first == place
        for cause in filter(None, told):
            assert cause.force == force or cause.code not in OTHER_KINDS, (done.order, cause)


@pytest.mark.parametrize("seeds", SOME)
def test_a_result_got_wrong_is_never_called_a_slip_in_its_line_for_certain(seeds: range) -> None:
    for seed in seeds:
        made = with_a_wrong_result(seed)
        if made is None:
            continue
        done, place, name = made
        result = review(done.problem, done.work())
        told = certain(result)
        assert not told or result.accounts[0].throughout or result.first == place, seed
        for cause in filter(None, told):
            assert cause.force == name, (seed, cause)


@pytest.mark.parametrize("seed", [98, 139, 625])
def test_a_result_got_wrong_that_a_slip_elsewhere_leaves_as_well_is_no_certain_slip(
    seed: int,
) -> None:
    """98: half of CD leaves at A what a turned A_x would; 139: a rare slip at L3 fits, and nothing else.
    625: ED comes out double, and D_y from it, as if the arms of D_y were half as long."""
    made = with_a_wrong_result(seed)
    assert made is not None
    result = review(made[0].problem, made[0].work())
    assert not certain(result), (seed, result.accounts[0])


def test_two_turned_signs_at_one_joint_are_not_certainly_the_whole_joint_turned_round() -> None:
    both = homework(677, 2)
    assert both is not None
    result = review(both[0].problem, both[0].work())
    assert result.accounts[0].mistake.code == "pull-push"
    assert not certain(result)


def test_two_slips_that_leave_a_sum_about_an_odd_point_true_are_not_certainly_one_slip() -> None:
    """C_x turned would give A_x by moments about E, a joint without a support, and BA from that at A."""
    both = homework(764, 2)
    assert both is not None
    result = review(both[0].problem, both[0].work())
    assert result.first == "whole"
    assert not certain(result)


def test_a_plain_slip_that_nothing_else_explains_is_certain() -> None:
    found = 0
    for seed in range(40):
        both = homework(seed, digits=4)
        if both is None:
            continue
        result = review(both[0].problem, both[0].work())
        found += bool(certain(result))
        if found:
            return
    assert found


@pytest.mark.parametrize("seed", [62, 90, 92, 136])
def test_a_slip_beside_which_no_other_explains_the_place_is_certain(seed: int) -> None:
    both = homework(seed, 1, digits=4, most=6)
    assert both is not None
    assert certain(review(both[0].problem, both[0].work()))


@pytest.mark.parametrize("seed", [9, 51, 95, 97])
def test_of_two_slips_that_explain_a_place_about_as_well_none_is_certain(seed: int) -> None:
    """9: the load at E, or all members there; 51: the other component of CD, or of another triangle;
    95: either of two equal forces at L0; 97: any of three that turn alike about a point."""
    both = homework(seed, 1, digits=4, most=6)
    assert both is not None
    result = review(both[0].problem, both[0].work())
    assert len({(a.mistake.code, a.mistake.force) for a in result.accounts}) > 1
    assert not certain(result)
    first, *others = [a.look for a in result.accounts if a.place == result.first]
    other = next((look for look in others if look != first), None)
    assert ("Or, which fits as well: " in hint(result, "look")) == (other in others[:1])


def test_a_letter_turned_is_named_before_all_members_of_the_joint_turned_round() -> None:
    """The post BE stands on the roller and is all that carries there: 6 kN in compression."""
    truss = plain_problem(
        (("A", 0, 0), ("B", 8, 0), ("C", 4, 3), ("E", 8, -2)),
        ("AB", "AC", "BC", "BE", "AE"),
        (Support("A", "pin"), Support("E", "roller")),
        (Load("C", (("down", Exact.of(12)),)),),
    )
    forces = {"AB": "8", "AC": "-10", "BC": "-10", "BE": "6", "AE": "0"}
    result = review(truss, {"reactions": {"A_x": "0", "A_y": "6", "E_y": "6"}, "forces": forces})
    assert result.places == ("E", "B")
    assert [a.mistake.code for a in result.accounts] == ["sign", "tension-compression", "pull-push"]


@pytest.mark.parametrize(("seed", "most"), [(0, 6), (6, 6), (7, 6), (7, 9), (11, 9)])
def test_of_two_slips_at_two_places_both_are_among_the_places_to_look_at(
    seed: int, most: int
) -> None:
    both = homework(seed, 2, digits=4, most=most)
    assert both is not None
    slips = {slip.place for slip in both[0].slips}
    assert len(slips) == 2
    assert slips <= set(review(both[0].problem, both[0].work()).places)


def test_a_slip_is_not_certain_where_the_figures_leave_much_open_beside_what_it_leaves() -> None:
    both = homework(19, 1, digits=4)
    assert both is not None
    result = review(both[0].problem, both[0].work())
    assert result.places == (both[0].slips[0].place,)
    assert not certain(result)


def test_what_is_wrong_beyond_the_first_wrong_line_is_likely_at_most() -> None:
    """The line of the first place is certain; that of the second is judged with wrong values."""
    beyond = 0
    for seed in range(12):
        both = homework(seed, 2, digits=4, most=6)
        if both is None:
            continue
        done = both[0]
        result = review(done.problem, done.work(lines=done.written_lines(Random(seed))))
        first, second = (slip.place for slip in done.slips)
        wrong = {f.name: f.sure for f in result.findings if f.state == "wrong"}
        values = set(done.solved[second]) & set(wrong) - set(done.solved[first])
        beyond += len(values)
        assert result.places == (first,)
        assert {wrong[name] for name in values} <= {"likely", "unclear"}, seed
    assert beyond


LODGE = plain_problem(
    [("A", 0, 0), ("B", 12, 0), ("C", 3, 4), ("D", 9, 4), ("E", 6, 0)],
    ("AE", "BE", "AC", "CD", "BD", "CE", "DE"),
    (Support("A", "pin"), Support("B", "roller")),
    (Load("C", (("down", Exact.of(6)),)), Load("D", (("down", Exact.of(8)),))),
)


@pytest.mark.parametrize("factor", [0.75, 4 / 3, 0.6, 5 / 3, 2.0, 0.5, -1.0])
@pytest.mark.parametrize("name", LODGE.member)
def test_a_lone_wrong_value_is_never_called_certain_however_well_a_slip_gives_it(
    name: str, factor: float
) -> None:
    """As well it may have been copied wrongly: nothing was worked out with it."""
    values = dict(solve(LODGE).values)
    values[name] *= factor
    reactions, forces = (
        {each: figures(values[each], 4) for each in names}
        for names in (LODGE.reaction, LODGE.member)
    )
    result = review(LODGE, {"reactions": reactions, "forces": forces})
    assert result.finding[name].state == "wrong"
    assert {finding.sure for finding in result.findings if finding.state == "wrong"} == {"likely"}

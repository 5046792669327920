"""How often does the review find the place and the mistake? Over generated homeworks, seeds fixed.

The first few seeds run always, all two thousand with `-m slow`. Which figure is asked of which
kind of homework stands in each test.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from functools import lru_cache
from random import Random
from typing import cast

import pytest
from lines import Piece, pieces
from students_work import Homework, homework, names_it, wrong_coefficients

from tutor.homework import Review, review
from tutor.judge import Fx, Fy, M

ALL = [
    pytest.param(range(30), id="some"),
    pytest.param(range(2150), id="all", marks=pytest.mark.slow),
]
BLANK = [pytest.param(range(70), id="some"), ALL[1]]
"""More of them: a few blanks make each case another."""
MOST = 2000


def homeworks(seeds: range, mistakes: int = 1) -> Iterator[tuple[Homework, Homework, int]]:
    """The homeworks that these seeds come to, at most two thousand: wrong, right, seed."""
    made = 0
    for seed in seeds:
        both = handed_in(seed, mistakes)
        if both is not None and made < MOST:
            made += 1
            yield *both, seed


@lru_cache(maxsize=256)
def handed_in(seed: int, mistakes: int) -> tuple[Homework, Homework] | None:
    """A homework and what it would be without the slips, made once for all that look at it."""
    return homework(seed, mistakes)


def counted(seeds: range, *parts: str) -> Counter[str]:
    """How the reviews came out for homeworks with one wrong line; `parts` are given besides values."""
    count: Counter[str] = Counter()
    for done, right, seed in homeworks(seeds):
        more: dict[str, object] = {}
        if "order" in parts:
            more["order"] = done.order
        if "lines" in parts:
            more["lines"] = done.written_lines(Random(seed))
        result = review(done.problem, done.work(**more))
        (slip,) = done.slips
        count["all"] += 1
        count["two"] += slip.place in result.places[:2]
        count["right called wrong"] += len(right_called_wrong(done, right, result))
        if result.first == slip.place:
            count["first"] += 1
            count["named"] += bool(result.accounts) and names_it(
                done, slip, result.accounts[0].mistake
            )
    return count


def right_called_wrong(done: Homework, right: Homework, result: Review) -> list[object]:
    """The values that the slip did not touch and that are called wrong; blanks may leave some open."""
    return [
        finding.name
        for finding in result.findings
        if isinstance(finding.name, str)
        and done.values[finding.name] == right.values[finding.name]
        and finding.state == "wrong"
    ]


@pytest.mark.parametrize("seeds", ALL)
def test_values_alone_tell_the_place_and_the_mistake(seeds: range) -> None:
    count = counted(seeds)
    assert count["first"] >= 0.93 * count["all"], count
    assert count["two"] >= 0.98 * count["all"], count
    assert count["named"] >= 0.95 * count["first"], count
    assert count["right called wrong"] == 0, count


@pytest.mark.parametrize("seeds", ALL)
def test_the_order_of_joints_settles_the_place(seeds: range) -> None:
    count = counted(seeds, "order")
    assert count["first"] >= 0.99 * count["all"], count
    assert count["right called wrong"] == 0, count


@pytest.mark.parametrize("seeds", ALL)
def test_the_lines_settle_the_place_and_the_mistake(seeds: range) -> None:
    count = counted(seeds, "lines")
    assert count["first"] >= 0.99 * count["all"], count
    least = 0.99 if count["all"] == MOST else 0.98
    assert count["named"] >= least * count["first"], count
    assert count["right called wrong"] == 0, count


@pytest.mark.parametrize("seeds", ALL)
def test_the_lines_settle_the_place_though_no_reaction_is_written(seeds: range) -> None:
    """Nobody is sent to reactions that are blank where a line shows what went wrong."""
    settled = count = 0
    for done, _, seed in homeworks(seeds):
        lines = done.written_lines(Random(seed))
        result = review(done.problem, {**forces_alone(done, Random(seed)), "lines": lines})
        count += 1
        settled += result.places == (done.slips[0].place,)
    assert settled >= 0.99 * count, (settled, count)


@pytest.mark.parametrize("seed", [44, 73])
def test_of_two_wrong_lines_each_is_called_by_its_own_slip(seed: int) -> None:
    """A value found at a later joint is no value that an earlier line was put together with."""
    both = homework(seed, 2)
    assert both is not None
    done = both[0]
    lines = done.written_lines(Random(seed))
    result = review(done.problem, done.work(lines=lines))
    wrong = {
        lines[f.name][0]: f
        for f in result.findings
        if isinstance(f.name, int) and f.state == "wrong"
    }
    for slip in done.slips:
        cause = wrong[slip.about].cause
        assert cause is not None
        assert names_it(done, slip, cause)


@pytest.mark.parametrize("seeds", ALL)
def test_the_second_of_two_mistakes_is_found_once_the_first_is_mended(seeds: range) -> None:
    both = all_of = 0
    for done, _, _ in homeworks(seeds, mistakes=2):
        places = {slip.place for slip in done.slips}
        first = review(done.problem, done.work())
        hit = next((place for place in first.places if place in places), None)
        mended = done.mended(hit) if hit is not None else None
        if hit is not None and mended is None:
            continue
        all_of += 1
        if mended is not None:
            then = review(mended.problem, mended.work())
            both += bool(set(then.places) & (places - {hit}))
    assert both >= 0.95 * all_of, (both, all_of)


@pytest.mark.parametrize("seeds", ALL)
@pytest.mark.parametrize("digits", [3, 4])
def test_nothing_is_called_wrong_in_a_right_homework(seeds: range, digits: int) -> None:
    for seed in seeds:
        both = homework(seed, digits=digits)
        if both is None:
            continue
        right = both[1]
        rng = Random(seed)
        whole_and_less = (
            right.work(),
            right.work(order=right.order),
            forces_alone(right, rng),
            some_blank(right, rng),
        )
        for work in whole_and_less:
            result = review(right.problem, work)
            assert result.right, (seed, result)
            assert result.first is None, (seed, result)
            assert result.places == ()


@pytest.mark.parametrize("seed", [1, 3, 5, 6, 9, 11, 28, 32])
def test_nothing_is_called_wrong_of_two_figures_that_blanks_leave_open(seed: int) -> None:
    """Coarse numbers are off by more than a small value beside them has; a blank hides by how much."""
    both = homework(seed, digits=2)
    assert both is not None
    right = both[1]
    result = review(right.problem, some_blank(right, Random(seed)))
    assert result.first is None
    assert {finding.state for finding in result.findings} <= {"right", "unchecked"}


@pytest.mark.parametrize(
    ("seed", "blank", "asked"), [(74, ("AC", "BA", "DA"), "BA"), (279, ("AD", "B_y"), "B_y")]
)
def test_where_blanks_leave_values_of_two_figures_open_the_next_value_is_asked_for(
    seed: int, blank: tuple[str, ...], asked: str
) -> None:
    """Nobody is sent to work out again what may follow from a value that is not written."""
    both = homework(seed, digits=2)
    assert both is not None
    parts = both[1].work().items()
    work = {part: {n: v for n, v in rows.items() if n not in blank} for part, rows in parts}  # type: ignore[attr-defined]
    result = review(both[1].problem, work)
    assert result.more == asked
    assert not result.coarse


@pytest.mark.parametrize("seed", [1, 4, 5, 6, 10, 12, 13, 16])
def test_no_place_is_named_on_a_right_page_of_two_figures(seed: int) -> None:
    """Two figures carried on put values off by more than 2 %: not right, and no mistake at any joint.

    Some of these pages have whole numbers of three figures beside those of two.
    """
    both = homework(seed, digits=2)
    assert both is not None
    for work in (both[1].work(), forces_alone(both[1], Random(seed))):
        result = review(both[1].problem, work)
        assert result.first is None
        assert {finding.state for finding in result.findings} <= {"right", "unchecked"}
    assert "one figure more" in review(both[1].problem, both[1].work()).said


@pytest.mark.parametrize("seed", [1, 3, 4, 5, 6])
def test_a_slip_on_a_page_of_two_figures_is_wrong_all_the_same(seed: int) -> None:
    both = homework(seed, digits=2)
    assert both is not None
    assert review(both[0].problem, both[0].work()).first is not None


def forces_alone(done: Homework, rng: Random) -> dict[str, object]:
    """Every member force and no reaction."""
    return {"forces": done.work()["forces"]}


def blank_at_the_slip(done: Homework, rng: Random) -> dict[str, object]:
    """All but one member of the joint with the slip, or of any joint where it is the whole truss."""
    work = done.work()
    forces = dict(cast("dict[str, str]", work["forces"]))
    (slip,) = done.slips
    here = [m.name for m in done.problem.members if slip.place in (m.start, m.end)]
    del forces[rng.choice(here or sorted(forces))]
    return {**work, "forces": forces}


def some_blank(done: Homework, rng: Random) -> dict[str, object]:
    """About seven members of ten, and every reaction."""
    work = done.work()
    forces = cast("dict[str, str]", work["forces"])
    return {**work, "forces": {n: v for n, v in forces.items() if rng.random() > 0.3}}


@pytest.mark.parametrize("seeds", BLANK)
@pytest.mark.parametrize(
    ("left", "first", "two", "misled"),
    [
        pytest.param(forces_alone, 0.85, 0.97, 0.015, id="no reaction"),
        pytest.param(blank_at_the_slip, 0.84, 0.96, 0.02, id="a member at the slip"),
        pytest.param(some_blank, 0.78, 0.86, 0.05, id="three members of ten"),
    ],
)
def test_the_place_is_told_with_something_left_blank(
    seeds: range,
    left: Callable[[Homework, Random], dict[str, object]],
    first: float,
    two: float,
    misled: float,
) -> None:
    """Of what still shows: a homework in which nothing wrong was written is right as far as it goes.

    `misled` are those where a place is named as if that were clear, and none named is the one. Without a
    reaction `first` cannot be much more: see the test below.
    """
    count: Counter[str] = Counter()
    for done, right, seed in homeworks(seeds):
        work = left(done, Random(seed))
        result = review(done.problem, work)
        assert not right_called_wrong(done, right, result), seed
        if all(done.values[str(f.name)] == right.values[str(f.name)] for f in result.findings):
            assert result.first is None
            continue
        (slip,) = done.slips
        count["all"] += 1
        count["first"] += result.first == slip.place
        count["two"] += slip.place in result.places[:2]
        count["unclear"] += not result.clear
        count["misled"] += result.clear and slip.place not in result.places
    assert count["first"] >= first * count["all"], count
    assert count["two"] >= two * count["all"], count
    assert count["misled"] <= misled * count["all"], count


@pytest.mark.parametrize("seeds", BLANK)
def test_without_reactions_the_place_is_told_or_what_is_asked_for_leads_to_it(seeds: range) -> None:
    """Or it is told between two places, and a slip at either leaves the very same numbers.

    A walk closes at its last joint: a slip there would have left the same, and with no reaction on the
    page one in the whole truss as well. Nobody can tell these from the values alone, so that in one of
    seven such sheets the place named first is the toss of a coin. That the other place explains the
    numbers is shown here from free bodies alone.
    """
    count: Counter[str] = Counter()
    for done, right, seed in homeworks(seeds):
        work, full = forces_alone(done, Random(seed)), done.work()
        result = review(done.problem, work)
        if all(done.values[str(f.name)] == right.values[str(f.name)] for f in result.findings):
            continue
        (slip,) = done.slips
        reactions: dict[str, object] = {}
        while result.first != slip.place and len(reactions) < 3:
            asked = result.decides or result.more
            if asked is None:
                break
            reactions[asked] = cast("dict[str, str]", full["reactions"])[asked]
            result = review(done.problem, {**work, "reactions": reactions})
        count["all"] += 1
        count["told"] += result.first == slip.place
        tied = slip.place in result.places and might_be_at(done, str(result.first))
        count["tied"] += result.first != slip.place and tied
    assert count["told"] >= 0.9 * count["all"], count
    assert count["told"] + count["tied"] >= 0.97 * count["all"], count


def might_be_at(done: Homework, place: str) -> bool:
    """Whether a slip in one line of a body leaves the numbers that stand on this page."""
    joints = [support.joint for support in done.problem.supports]
    lines = [Fx(), Fy(), *map(M, joints)] if place == "whole" else [Fx(place), Fy(place)]
    for about in lines:
        line = pieces(done.problem, about, {}, {})
        parts = [p.coefficient * size_of(done, p) for p in line]
        slack = 0.005 * sum(map(abs, parts))
        for k, piece in enumerate(line):
            for coefficient in wrong_coefficients(done.problem, about, piece).values():
                for way in (coefficient, -coefficient):
                    changed = way * size_of(done, piece)
                    if abs(sum(parts) - parts[k] + changed) <= slack < abs(sum(parts)):
                        return True
    return False


def size_of(done: Homework, piece: Piece) -> float:
    return done.values[piece.force] if piece.size is None else piece.size

"""Is somebody told whose numbers are those of another truss, and nobody else?"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from random import Random

import pytest
from families import plain_problem
from lines import figures
from strategies import pratt
from students_work import do, homework, plan

from tutor import review
from tutor.homework import Review
from tutor.homework.misdrawn import _printed
from tutor.model import Load, Problem, Support
from tutor.notation import Exact
from tutor.statics import solve

FRAME = plain_problem(
    (("A", 0, 0), ("C", 4, 0), ("B", 9, 0), ("D", 5, 3), ("E", 1, 4)),
    ("AC", "CB", "AE", "CE", "CD", "ED", "BD"),
    (Support("A", "pin"), Support("B", "roller", Exact.of(120))),
    (Load("C", (("down", Exact.of(18)),)), Load("D", (("down", Exact.of(7)),))),
)


def moved(problem: Problem, name: str, x: Fraction, y: Fraction) -> Problem:
    there = [
        replace(j, x=Exact.of(x), y=Exact.of(y)) if j.name == name else j for j in problem.joints
    ]
    return replace(problem, joints=tuple(there))


def loaded(problem: Problem, joint: str, down: int, right: int) -> Problem:
    loads = [load for load in problem.loads if load.joint != joint]
    pushes = tuple((w, Exact.of(n)) for w, n in (("right", right), ("down", down)) if n)
    return replace(problem, loads=(*loads, Load(joint, pushes)))


def worked(problem: Problem, entered: Problem, digits: int = 4, blank: int = 0) -> Review:
    """The right work of one truss, checked against another that was entered for it."""
    true = solve(problem).values
    values = {n: figures(v, digits) for n, v in list(true.items())[blank:]}
    parts = {"reactions": problem.reaction, "forces": problem.member}
    work = {part: {n: values[n] for n in names if n in values} for part, names in parts.items()}
    return review(entered, work)


@pytest.mark.parametrize(
    ("number", "size", "tried"),
    [(2.6, 50, ["3", "5/2", "13/5"]), (2.66, 10, ["5/2", "11/4", "27/10"])],
)
def test_of_the_numbers_that_may_be_printed_the_plainest_is_tried_first(
    number: float, size: float, tried: list[str]
) -> None:
    assert list(_printed(number, size)) == list(map(Fraction, tried))


@pytest.mark.parametrize("digits", [3, 4])
@pytest.mark.parametrize(
    ("printed", "fits"),
    [
        (moved(FRAME, "D", Fraction(6), Fraction(3)), "D at 6, 3"),
        (moved(FRAME, "D", Fraction(5), Fraction(5, 2)), "D at 5, 2.5"),
        (moved(FRAME, "E", Fraction(2), Fraction(4)), "E at 2, 4"),
        (loaded(FRAME, "C", 21, 5), "a load of 5 kN right and 21 kN down at C"),
        (loaded(FRAME, "E", 6, -4), "a load of 4 kN left and 6 kN down at E"),
        (loaded(FRAME, "C", -9, 0), "a load of 9 kN up at C"),
        (moved(FRAME, "E", Fraction(1), Fraction(17, 4)), "E at 1, 4.25"),
        (moved(FRAME, "D", Fraction(27, 5), Fraction(3)), "D at 5.4, 3"),
        (moved(FRAME, "C", Fraction(4), Fraction(-1)), "C at 4, -1"),
    ],
)
def test_numbers_of_a_truss_that_differs_at_one_place_are_told_to_fit_it(
    printed: Problem, fits: str, digits: int
) -> None:
    result = worked(printed, FRAME, digits)
    assert not result.right
    assert f"Your numbers fit a truss with {fits}: compare your drawing" in result.said
    assert all(f.cause is None for f in result.findings)


@pytest.mark.parametrize("seed", [1, 2, 4])
@pytest.mark.parametrize(
    ("printed", "fits"),
    [
        (moved(FRAME, "D", Fraction(6), Fraction(3)), "D at 6, 3"),
        (moved(FRAME, "C", Fraction(4), Fraction(-1)), "C at 4, -1"),
        (loaded(FRAME, "C", 21, 5), "a load of 5 kN right and 21 kN down at C"),
        (moved(FRAME, "E", Fraction(2), Fraction(4)), "E at 2, 4"),
    ],
)
def test_so_they_are_where_each_was_worked_from_three_figures_of_those_before(
    printed: Problem, fits: str, seed: int
) -> None:
    steps = plan(Random(seed), printed)
    assert steps is not None
    done = do(printed, steps, 3, {})
    assert done is not None
    assert f"Your numbers fit a truss with {fits}: compare" in review(FRAME, done.work()).said


@pytest.mark.parametrize("digits", [3, 4])
def test_so_is_a_load_that_was_entered_and_is_not_printed(digits: int) -> None:
    """In two directions, so that no sum has a single slip."""
    result = worked(FRAME, loaded(FRAME, "E", 6, 5), digits)
    assert "Your numbers fit a truss with no load at E: compare" in result.said


def test_a_truss_of_which_little_is_written_is_fitted_to_no_other() -> None:
    result = worked(moved(FRAME, "D", Fraction(6), Fraction(3)), FRAME, blank=5)
    assert not result.right
    assert "fit a truss" not in result.said


def test_a_bridge_a_panel_of_which_is_drawn_too_low_is_told() -> None:
    bridge = pratt(6, 3, 4, 12)
    result = worked(moved(bridge, "U3", Fraction(9), Fraction(5)), bridge)
    assert "U3 at 9, 5" in result.said


@pytest.mark.parametrize("seeds", [range(16), pytest.param(range(400), marks=pytest.mark.slow)])
def test_a_page_with_a_slip_is_no_other_truss(seeds: range) -> None:
    for seed in seeds:
        both = homework(seed)
        if both is not None:
            result = review(both[0].problem, both[0].work())
            assert "fit a truss" not in result.said, seed

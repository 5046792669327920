"""Whoever needs the last hint three times in a row is offered a smaller problem for that mistake."""

from __future__ import annotations

from fractions import Fraction

import pytest
from lines import abouts
from student import Student
from walks import Clock, walk_to

from tutor.judge import M
from tutor.judge.about import equation_of
from tutor.judge.claims import CLAIMS
from tutor.judge.mistakes import KINDS
from tutor.judge.truth import Carried, Given, TrueLine
from tutor.lesson import Lesson
from tutor.lesson.practice import IN_ROW, OFFER, SHAPES, SIZES, practice
from tutor.model import Problem, load_problem, write_problem
from tutor.statics import solve

TURNS = range(len(SIZES))
CODES = (*KINDS, *CLAIMS)


def equations(problem: Problem) -> list:
    return [*abouts(problem), M((1.0, 1.0))]


@pytest.mark.parametrize("turn", TURNS)
@pytest.mark.parametrize("code", CODES)
def test_a_practice_problem_is_small_and_its_results_are_tidy(code: str, turn: int) -> None:
    problem = practice(code, turn)
    assert 3 <= len(problem.members) <= 5
    for value in solve(problem).values.values():
        assert abs(value - float(Fraction(value).limit_denominator(2))) < 1e-9, value


def test_another_turn_has_other_numbers() -> None:
    for code in CODES:
        assert len({repr(solve(practice(code, turn)).values) for turn in TURNS}) == len(SIZES)


@pytest.mark.parametrize(
    "code", [c for c in SHAPES if c in KINDS and KINDS[c].variants is not None]
)
def test_the_mistake_can_be_made_in_the_problem_that_trains_it(code: str) -> None:
    problem = practice(code)
    variants = KINDS[code].variants
    assert variants is not None
    negative = {n: s for n, s in (("A_x", "left"), ("A_y", "down")) if n in problem.reaction}
    made = []
    for about in equations(problem):
        known = {n: v for n, v in solve(problem).values.items() if v < 0}
        own = Given(negative if code == "sense" else {}, {})
        true = TrueLine(problem, about, own)
        spots = [*true.unknowns.values(), *true.loads]
        if code == "minus":
            own = Given({}, {n: Carried(v, 0.0) for n, v in known.items()})
            spots = list(TrueLine(problem, about, own).numbers(frozenset()))
        made += [v for spot in spots for v in variants(spot) if abs(v - spot.per_unit) > 1e-6]
    assert made


def test_the_crate_trestle_has_a_joint_with_two_loads_and_is_not_symmetrical() -> None:
    problem = practice("lost-load")
    joints = [load.joint for load in problem.loads]
    assert len(joints) > len(set(joints))
    values = solve(problem).values
    assert values["A_y"] != pytest.approx(values["C_y"])


@pytest.mark.parametrize("code", ["sign", "slope", "arm", "arm-unit", "reflected", "missing"])
def test_a_practice_problem_can_be_walked_and_kept_as_a_file(code: str, tmp_path) -> None:
    problem = practice(code)
    lesson = Lesson(problem)
    Student(lesson, Clock(lesson)).walk()
    assert lesson.done
    assert equation_of(problem, M("A")).terms
    path = tmp_path / "practice.toml"
    path.write_text(write_problem(problem), "utf-8")
    assert write_problem(load_problem(path)) == write_problem(problem)


def to_the_bottom(do) -> str:
    """Every hint there is at this place; what the last one says."""
    while not (told := do("hint")).text.startswith("For instance"):
        assert told.accepted
    return told.text


def test_the_third_last_hint_in_a_row_offers_a_problem_for_the_mistake() -> None:
    lesson, do = walk_to("reactions")
    for number, (about, wrong) in enumerate(
        (("M A", "B_x - 150*1 = 0"), ("Fx", "A_x - B_x = 0"), ("Fy", "A_y + 150 = 0")), start=1
    ):
        assert lesson.practice is None
        do("choose", about=about)
        do("type", text=wrong)
        told = to_the_bottom(do)
        assert (OFFER in told) == (number == IN_ROW)
        if number < IN_ROW:
            line = told.partition("For instance: ")[2].partition(". Type")[0]
            assert do("type", text=line).accepted
    assert lesson.practice == practice("sign")


def test_a_line_found_without_the_last_hint_breaks_the_row() -> None:
    lesson, do = walk_to("reactions")
    do("choose", about="M A")
    to_the_bottom(do)
    do("type", text="B_x - 150*2.4 = 0")
    do("type", text="ΣFx: A_x + B_x = 0")
    assert lesson.state.in_row == ()


def test_asking_on_at_the_bottom_of_one_place_counts_as_well_and_offers_other_numbers() -> None:
    lesson, do = walk_to("reactions")
    do("choose", about="M A")
    for _ in range(3 + IN_ROW):
        told = do("hint").text
    assert told.endswith(OFFER)
    first = lesson.practice
    for _ in range(IN_ROW):
        do("hint")
    assert first == practice("arm", 0)
    assert lesson.practice == practice("arm", 1)


def test_the_offer_outlives_undo_and_replay() -> None:
    lesson, do = walk_to("reactions")
    do("choose", about="M A")
    for _ in range(3 + IN_ROW):
        do("hint")
    do("undo")
    assert lesson.practice is not None
    assert Lesson(lesson.problem, lesson.events).state == lesson.state

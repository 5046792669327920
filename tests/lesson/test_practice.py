"""Whoever needs the last hint three times in a row is offered a smaller problem for that mistake."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from itertools import chain, product
from random import Random

import pytest
from lines import Style, abouts, pieces, written
from slips import slips
from student import Student
from walks import Clock, walk_to

from tutor.judge import Fx, Fy, M, Mistake, Value, Verdict, judge, right_line
from tutor.judge.about import equation_of
from tutor.judge.claims import CLAIMS, SUPPORTS, ZERO
from tutor.judge.known_values import KnownValue, KnownValues
from tutor.judge.mistakes import KINDS
from tutor.judge.true_equation import TrueEquation
from tutor.lesson import Lesson
from tutor.lesson.practice import IN_ROW, OFFER, SIZES, offered, practice
from tutor.lesson.steps.zero import RULES
from tutor.model import Problem, load_problem, write_problem
from tutor.statics import solve

TURNS = range(len(SIZES))
CODES = (*KINDS, *CLAIMS)
PLAIN = Style(figures=5, trig=False, shuffle=False, move=False)


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


def lines_with(problem: Problem, code: str) -> Iterator[Verdict]:
    """What the judge says of lines of this problem in which just this mistake was made."""
    truth = solve(problem).values
    variants = KINDS[code].variants
    for senses, put_in in product(({}, {"A_y": "down"}), (False, True)):
        own = {n: -v if n in senses else v for n, v in truth.items()} if put_in else {}
        known = {n: f"{v:.6g}" for n, v in own.items()}
        given = KnownValues(senses, {n: KnownValue(v, 0.0) for n, v in own.items()})
        for about in abouts(problem):
            line = tuple(pieces(problem, about, senses, own))
            wrong = [s.line for s in slips(problem, about, line, senses) if s.code == code]
            true = TrueEquation(problem, about, given)
            spots = (*true.unknowns.values(), *true.loads) if variants else ()
            for (i, piece), spot in product(enumerate(line), spots):
                if variants and spot.name == piece.force and spot.force.source is piece.source:
                    made = (replace(piece, coefficient=c) for c in variants(spot))
                    wrong += [(*line[:i], one, *line[i + 1 :]) for one in made]
            for each in wrong:
                text = written(Random(1), problem, each, PLAIN)
                yield judge(problem, about, text, senses=senses, known=known)


def values_with(problem: Problem) -> Iterator[Verdict]:
    """What the judge says of values of this problem that are wrong in the ways of values."""
    half = sum(load.vector[1] for load in problem.loads) / 2
    for name, value in solve(problem).values.items():
        texts = [f"{1.31 * value:.4g}", f"{float(f'{value:.1g}'):g}", f"{half:.6g}"]
        texts.append(re.sub(r"(\d)(?!\1)(\d)", r"\2\1", f"{value:.2f}", count=1))
        if name in problem.member and value:
            texts.append(f"{abs(value):.6g} {'C' if value > 0 else 'T'}")
        for text in texts:
            yield judge(problem, Value(name), text)


def other_lines_with(problem: Problem) -> Iterator[Verdict]:
    """What the judge says of true lines of another name, and of functions of ratios."""
    own = KnownValues({}, {})
    for one, other in product(abouts(problem), repeat=2):
        yield judge(problem, one, right_line(problem, other, own))
    if "AD" in problem.member:
        yield judge(problem, Fy("A"), "A_y + F_AD sin(4/5) = 0")
    yield judge(problem, Fx("A"), "A_x + 0.27 F_AB + 0.11 F_BC - 0.9 = 0")


@pytest.mark.parametrize("code", [c for c in KINDS if c != "dependent"])
def test_the_mistake_can_be_made_and_is_named_in_the_problem_that_trains_it(code: str) -> None:
    problem = practice(code)
    verdicts = chain(lines_with(problem, code), values_with(problem), other_lines_with(problem))
    assert any(v.mistakes and v.mistakes[0].code == code for v in verdicts)


@pytest.mark.parametrize("claim", SUPPORTS, ids=lambda claim: claim.code)
def test_what_goes_wrong_at_a_support_can_go_wrong_in_the_problem_that_trains_it(claim) -> None:
    seen = set()
    for chosen in (["x"], ["y"], ["x", "y"], ["moment"], ["slanting"]):
        lesson, do = walk_to("free body", practice(claim.code))
        for support in lesson.problem.supports:
            do("support", joint=support.joint, acts=chosen)
            seen.update(lesson.state.tries[-1].codes)
    assert claim.code in seen


@pytest.mark.parametrize("claim", ZERO, ids=lambda claim: claim.code)
def test_what_goes_wrong_with_a_zero_member_can_go_wrong_in_the_problem_that_trains_it(
    claim,
) -> None:
    lesson, do = walk_to("joints", practice(claim.code))
    seen = set()
    for member, rule in product(lesson.problem.member, RULES):
        if do("zero", member=member, rule=rule).accepted:
            do("undo")
        seen.update(code for made in lesson.state.tries for code in made.codes)
    assert claim.code in seen


@pytest.mark.parametrize("code", CODES)
def test_three_last_hints_in_a_row_on_a_mistake_offer_the_problem_that_trains_it(code: str) -> None:
    state = walk_to("reactions")[0].state
    mistakes = (Mistake(code, None, "", "", ""),)
    for place, number in ((Fx(), 1), (Fy(), 2), (M("A"), IN_ROW)):
        state, said = offered(state, place, mistakes)
        assert bool(said) == (number == IN_ROW)
    assert state.practice == (code, 0)
    assert practice(*state.practice).title.startswith("Practice: ")


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

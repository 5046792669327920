"""Is everything that is shown at the board right, and every reason given for it true of the truss?"""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from every_problem import FORCES, problem_of
from strategies import make_truss
from student import Student

from tutor.judge import Judge, M
from tutor.judge.about import body_of, equation_of, from_text, point_of
from tutor.lesson import Event, Lesson, Reply
from tutor.lesson.fold import step_once
from tutor.lesson.outcome import Outcome
from tutor.lesson.state import State
from tutor.lesson.watching import Move, next_move
from tutor.lesson.watching.guessing import NOTHING_TO_GUESS
from tutor.lesson.watching.show import NOT_SHOWN, NOTHING_LEFT, THIS_FAR
from tutor.model import Problem, load_problem
from tutor.model.rules import Rules
from tutor.shipped import shipped_problems
from tutor.statics import joint_body, part, solve, zero_force

FILES = [*FORCES[::6], *(path for path in FORCES if path.parent.name == "compound")]
RANDOM = [(seed, 3 + seed % 6, seed % 4 == 3) for seed in range(16)]


def shown(problem: Problem) -> Iterator[tuple[State, Move, Reply, State]]:
    """Each thing shown, from the first to the table: where it stood, what, the reply, what then."""
    lesson = Lesson(problem)
    for now in range(5000):
        move = next_move(lesson.state, lesson.desk)
        if move is None:
            assert lesson.done
            return
        before = lesson.state
        reply = lesson.take("show", now=float(now))
        yield before, move, reply, lesson.state
    raise AssertionError("what is shown does not end")


def problems() -> Iterator[Problem]:
    yield from (problem_of(path) for path in FILES)
    yield from (make_truss(seed, joints, wall=wall) for seed, joints, wall in RANDOM)


@pytest.fixture(scope="module", params=["some", pytest.param("every", marks=pytest.mark.slow)])
def walks(request: pytest.FixtureRequest) -> list[tuple[Problem, list[Any]]]:
    """Whole walks at the board, of some of the problems that come along and of random ones, or of all."""
    every = map(problem_of, FORCES) if request.param == "every" else problems()
    return [(problem, list(shown(problem))) for problem in every]


def test_every_problem_is_shown_to_its_table_and_every_line_is_right(walks: Any) -> None:
    for problem, walk in walks:
        for _, move, reply, _ in walk:
            assert reply.accepted, (problem.title, move, reply)
            assert move.kind != "type" or (reply.verdict is not None and reply.verdict.right)
        truth = solve(problem)
        last = walk[-1][3]
        assert last.step == "table"
        for member in problem.members:
            wanted = truth.force(member.name)
            assert last.signed(member.name) == pytest.approx(wanted, rel=1e-3, abs=1e-6)


def test_what_is_shown_is_no_try_of_the_students(walks: Any) -> None:
    for _, walk in walks:
        last = walk[-1][3]
        assert {made.verdict for made in last.tries} == {"shown"}
        assert len(last.shown) == len(walk)


def test_a_force_said_to_be_left_out_has_no_part_and_one_said_unknown_has_one(walks: Any) -> None:
    for problem, walk in walks:
        for before, move, _, _ in walk:
            if move.kind != "type" or "about" not in move.data:
                continue
            about = from_text(move.data["about"])
            body = body_of(problem, about)
            linear = equation_of(problem, about).linear
            unknown = {n for n in body.unknowns if n not in before.result}
            assert unknown == {*move.reason.absent, *move.reason.open}
            assert all(abs(linear.get(name, 0.0)) < 1e-9 for name in move.reason.absent)
            assert all(abs(linear[name]) > 1e-9 for name in move.reason.open)
            for name in (*move.reason.absent, *move.reason.open):
                assert name in move.reason.text


def test_a_line_of_action_said_to_pass_through_a_point_does(walks: Any) -> None:
    said = 0
    for problem, walk in walks:
        for _, move, _, _ in walk:
            if "through" not in move.reason.text or move.kind != "type":
                continue
            about = from_text(move.data["about"])
            assert isinstance(about, M)
            px, py = point_of(problem, about)
            forces = {force.name: force for force in body_of(problem, about).forces}
            for name in move.reason.absent:
                force = forces[name]
                across = (px - force.at[0]) * force.y - (py - force.at[1]) * force.x
                assert abs(across) <= 1e-9 * max(1.0, math.dist((px, py), force.at))
                said += 1
    assert said > 20


def test_a_member_said_to_pull_or_push_on_a_joint_does(walks: Any) -> None:
    said = 0
    for problem, walk in walks:
        truth = solve(problem)
        for _, move, _, _ in walk:
            assert all(truth.force(name) > 0 for name in move.reason.pull)
            assert all(truth.force(name) < 0 for name in move.reason.push)
            assert ("pull" in move.reason.text) >= bool(move.reason.pull)
            assert ("push" in move.reason.text) >= bool(move.reason.push)
            said += len(move.reason.pull) + len(move.reason.push)
    assert said > 20


def test_a_joint_is_taken_for_what_is_said_of_it(walks: Any) -> None:
    for problem, walk in walks:
        for before, move, _, _ in walk:
            if move.kind != "joint":
                continue
            joint = move.data["joint"]
            open_ones = [n for n in joint_body(problem, joint).unknowns if n not in before.result]
            assert sorted(open_ones) == sorted(move.reason.open)
            if "two equations" in move.reason.text:
                assert len(open_ones) == 2
            if "only" in move.reason.text:
                assert len(open_ones) == 1


def test_a_part_is_kept_for_the_unknown_forces_that_are_said_to_act_on_it(walks: Any) -> None:
    kept = 0
    for problem, walk in walks:
        for before, move, _, after in walk:
            if move.kind == "section" and after.part:
                kept += 1
                unknown = set(part(problem, after.part).unknowns) - before.result.keys()
                assert set(move.reason.open) == unknown
                assert all(name in move.reason.text for name in unknown)
    assert kept >= 4


def test_a_member_said_to_carry_nothing_carries_nothing(walks: Any) -> None:
    seen = 0
    for problem, walk in walks:
        truth = solve(problem)
        for before, move, _, _ in walk:
            if move.kind == "zero":
                seen += 1
                zero = {r.unknown for r in before.results if r.value == 0}
                rules = {z.member for z in zero_force(problem, zero)}
                assert move.data["member"] in rules
                assert truth.force(move.data["member"]) == pytest.approx(0.0, abs=1e-9)
    assert seen > 4


def test_the_good_guesses_are_those_that_are_true_of_the_truss(walks: Any) -> None:
    kinds = set()
    for problem, walk in walks:
        truth = solve(problem).values
        for before, move, _, _ in walk:
            if move.guess is None:
                continue
            keys = [option.key for option in move.guess.options]
            assert move.guess.right <= set(keys)
            if keys == ["T", "C", "0"]:
                kinds.add("sense")
                name = move.reason.open[0]
                letter = "T" if truth[name] > 0 else "C" if truth[name] < 0 else "0"
                assert move.guess.right == {letter}
            elif "joint" in move.guess.question and move.kind == "joint":
                kinds.add("joint")
                few = {k for k in keys if len(before.unknown_at(k)) == 1}
                assert few <= move.guess.right
            elif move.kind == "type" and "equation" in move.guess.question:
                kinds.add("equation")
                counts = {
                    key: sum(
                        1
                        for name in equation_of(problem, from_text(key)).linear
                        if name is not None and name not in before.result
                    )
                    for key in move.guess.right
                }
                assert len(set(counts.values())) == 1
    assert kinds == {"sense", "joint", "equation"}


def guessed(before: State, key: str, desk: Judge) -> tuple[State, Reply]:
    return step_once(before, Event("guess", {"guess": key}, before.last_time), desk)


def unknown_in(before: State, key: str) -> set[str]:
    linear = equation_of(before.problem, from_text(key)).linear
    return {name for name in linear if name is not None and name not in before.result}


def test_every_guess_is_answered_with_what_is_so_of_it_and_writes_nothing(walks: Any) -> None:
    """Every answer that may be given, wherever there is something to guess."""
    kinds = set()
    for problem, walk in walks[::4]:
        desk = Judge(problem)
        for before, move, _, _ in walk:
            for option in move.guess.options if move.guess else ():
                after, reply = guessed(before, option.key, desk)
                good = option.key in move.guess.right
                kinds.add((move.guess.of, good))
                first = reply.said[0].text
                of = f"{move.guess.subject}: " if move.guess.of == "value" else ""
                told = f"Yes, {of}{option.words}. " if good else "Not "
                assert first.startswith(told)
                assert option.words in first
                assert (after.lines, after.results, after.tries, after.shown) == (
                    (before.lines, before.results, before.tries, before.shown)
                )
                if not good:
                    assert (after.about, after.joint) == (before.about, before.joint)
                if move.guess.of in ("equation", "joint") and not good:
                    said = first.partition(" yet. ")[2]
                    named = {n for n in problem.unknowns if n in said.replace(",", "").split()}
                    wanted = (
                        unknown_in(before, option.key)
                        if move.guess.of == "equation"
                        else set(before.unknown_at(option.key))
                    )
                    assert named == wanted or "say again" in said or " more " in said
    assert {of for of, _ in kinds} == {"support", "equation", "joint", "value", "zero"}
    assert {good for _, good in kinds} == {True, False}


def test_a_joint_guessed_well_gives_a_force_and_is_the_one_gone_to(walks: Any) -> None:
    gone = 0
    for problem, walk in walks[1::4]:
        desk = Judge(problem)
        for before, move, _, _ in walk:
            if move.guess is None or move.guess.of != "joint":
                continue
            for key in move.guess.right:
                after, reply = guessed(before, key, desk)
                gone += 1
                assert reply.accepted
                assert after.joint == key
                assert f"At {key} " in reply.text
            alone = {o.key for o in move.guess.options} - move.guess.right
            assert all(len(before.unknown_at(key)) >= 2 for key in alone)
    assert gone > 10


def test_an_equation_guessed_well_is_the_one_that_is_asked_for_then(walks: Any) -> None:
    chosen = 0
    for problem, walk in walks[1::4]:
        desk = Judge(problem)
        for before, move, _, _ in walk:
            if move.guess is None or move.guess.of != "equation":
                continue
            for key in move.guess.right:
                after, reply = guessed(before, key, desk)
                chosen += 1
                assert reply.accepted
                assert after.about is not None
                assert from_text(key) == replace(after.about, part=()) or after.part
    assert chosen > 10


def test_a_sense_guessed_wrong_is_sent_to_the_lines_and_told_nothing_of_the_value(
    lamp: Problem,
) -> None:
    lesson = Lesson(lamp)
    lesson.take("show", until="joints", now=1.0)
    while not (
        (move := next_move(lesson.state, lesson.desk)) and move.guess and move.guess.subject
    ):
        lesson.take("show", now=2.0)
    bad = next(o for o in move.guess.options if o.key not in move.guess.right)
    said = lesson.take("guess", guess=bad.key, now=3.0).text
    assert f"for {move.guess.subject}, and read the sign" in said
    assert not any(option.words in said for option in move.guess.options if option is not bad)
    good = min(move.guess.right)
    assert "Write its value" in lesson.take("guess", guess=good, now=4.0).text
    assert move.guess.subject not in lesson.state.result


def test_where_nothing_is_shown_no_guess_is_answered(lamp: Problem) -> None:
    for rules in (Rules(hints="none"), Rules(mode="check")):
        lesson = Lesson(replace(lamp, rules=rules))
        assert lesson.take("guess", guess="1", now=1.0).text == NOT_SHOWN


@pytest.mark.parametrize("place", ["reactions", "joints", "half", "close"])
def test_the_first_steps_can_stand_and_the_rest_is_the_students(lamp: Problem, place: str) -> None:
    lesson = Lesson(lamp)
    assert lesson.take("show", until=place, now=1.0).accepted
    assert not lesson.done
    if place != "half":
        assert lesson.state.step == place
    Student(lesson, lambda kind, **data: lesson.take(kind, now=3.0, **data)).walk()
    assert lesson.done
    assert {made.verdict for made in lesson.state.tries} >= {"shown", "right"}


@pytest.mark.parametrize("path", FORCES[::16], ids=lambda path: path.stem)
def test_half_is_as_near_to_half_of_the_members_as_whole_joints_allow(path: Path) -> None:
    problem = problem_of(path)
    lesson, at_joints, known = Lesson(problem), set(), 0
    while not lesson.done:
        lesson.take("show", now=1.0)
        if lesson.state.reactions_done and lesson.state.joint is None and not lesson.state.part:
            known = sum(m.name in lesson.state.result for m in problem.members)
            at_joints.add(known)
    lesson = Lesson(problem)
    lesson.take("show", until="half", now=1.0)
    found = sum(m.name in lesson.state.result for m in problem.members)
    half = len(problem.members) / 2
    assert abs(found - half) <= min(abs(each - half) for each in at_joints if each) + 1
    assert 0 < found < len(problem.members) or len(problem.members) < 3


@pytest.mark.parametrize("seed", range(6))
def test_it_can_be_shown_on_from_wherever_a_student_stands(seed: int) -> None:
    """Arrows drawn either way, values rounded: what is shown then is right under them."""
    problem = make_truss(100 + seed, 4 + seed % 3)
    lesson = Lesson(problem)
    desk = Judge(problem)
    desk.values()
    clock = itertools.count(1)
    rng = random.Random(seed)

    def do(kind: str, **data: Any) -> Reply:
        if rng.random() < 0.5 and not lesson.done:
            move = next_move(lesson.state, desk)
            assert move is not None
            after, reply = step_once(lesson.state, Event("show", {}, 0.0), desk)
            assert reply.accepted, (move, reply)
            assert reply.verdict is None or reply.verdict.right
            assert after.shown[-1] == move.written
        return lesson.take(kind, now=float(next(clock)), **data)

    Student(lesson, do).walk()


def test_what_was_shown_can_be_taken_back_and_is_kept_as_any_other(lamp: Problem) -> None:
    lesson = Lesson(lamp)
    start = lesson.state
    for now in range(9):
        before = lesson.state
        reply = lesson.take("show", now=float(now))
        outcome = lesson.outcome(before, lesson.events[-1], reply)
        again = Lesson(lamp, lesson.events[:-1])
        again.restore(lesson.events[-1], Outcome.from_record(outcome.as_record(lesson.events[-1])))
        assert again.state == lesson.state
    for _ in range(9):
        lesson.take("undo", now=20.0)
    assert replace(lesson.state, started=None, last_time=0.0) == replace(
        start, started=None, last_time=0.0
    )


def test_a_set_without_hints_shows_nothing(lamp: Problem) -> None:
    lesson = Lesson(replace(lamp, rules=Rules(hints="none")))
    reply = lesson.take("show", now=1.0)
    assert not reply.accepted
    assert not lesson.state.shown


@pytest.mark.parametrize("data", [{"until": "roof"}, {"until": 3}])
def test_whatever_is_asked_for_is_answered_in_a_sentence(lamp: Problem, data: Any) -> None:
    assert Lesson(lamp).take("show", now=1.0, **data).text


@pytest.mark.parametrize("key", [4, "?", "", None])
def test_a_guess_that_is_none_of_the_answers_is_told_which_there_are(
    lamp: Problem, key: Any
) -> None:
    lesson = Lesson(lamp)
    assert lesson.take("guess", guess=key, now=1.0).text == NOTHING_TO_GUESS
    lesson.take("show", until="reactions", now=2.0)
    assert "ΣFx, ΣFy" in lesson.take("guess", guess=key, now=3.0).text


@pytest.fixture
def lamp() -> Problem:
    return load_problem(Path(shipped_problems()) / "first-steps" / "lamp-arm.toml")


def test_the_table_says_how_much_was_shown_and_counts_only_the_students_answers(
    lamp: Problem,
) -> None:
    lesson = Lesson(lamp)
    lesson.take("show", until="joints", now=1.0)
    shown = lesson.table.shown
    assert shown == len(lesson.state.shown) > 5
    assert lesson.table.tries == 0
    Student(lesson, lambda kind, **data: lesson.take(kind, now=3.0, **data)).walk()
    assert lesson.table.shown == shown
    assert lesson.table.tries > 0


def test_nothing_is_shown_at_a_joint_one_goes_back_to_when_every_force_is_known(
    lamp: Problem,
) -> None:
    lesson = Lesson(lamp)
    lesson.apply(Event("show", {"until": "close"}, 1.0))
    assert lesson.state.step == "close"
    assert lesson.apply(Event("joint", {"joint": "A"}, 2.0)).accepted
    reply = lesson.apply(Event("show", {}, 3.0))
    assert not reply.accepted
    assert "closing check" in reply.text


def test_shown_up_to_a_place_that_was_reached_is_not_said_to_be_the_end(lamp: Problem) -> None:
    lesson = Lesson(lamp)
    lesson.take("show", until="reactions")
    assert lesson.take("show", until="reactions").text == THIS_FAR
    lesson.take("show", until="close")
    while next_move(lesson.state, lesson.desk) is not None:
        lesson.take("show")
    assert lesson.take("show", until="close").text == NOTHING_LEFT

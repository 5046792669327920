"""What must hold of every lesson, whatever is done in it and in whatever order?"""

from __future__ import annotations

import json
import re
import tempfile
from pathlib import Path
from random import Random
from typing import Any

import pytest
from every_problem import SHARED
from hypothesis import given
from hypothesis import strategies as st
from lines import Style, pieces, random_senses, written
from strategies import make_truss
from student import AGAINST, Student
from walks import ARM, START, Clock, random_events, script, walk_to, without_tallies

from tutor.judge import Fx, Fy, M, Value
from tutor.judge.about import as_text, from_text
from tutor.lesson import Event, Lesson
from tutor.lesson.hints import next_hint
from tutor.lesson.lesson import TAKEN_BACK
from tutor.lesson.replay import events_of
from tutor.lesson.solvable import solvable_now
from tutor.model import load_problem
from tutor.records import Journal, Keep
from tutor.statics import solve

SCRIPT = script(ARM)


def kept_and_read(events: list[Event]) -> list[Event]:
    """The events as they come back from a journal."""
    return [Event.from_record(json.loads(json.dumps(e.as_record()))) for e in events]


@given(random_events(SCRIPT))
def test_a_lesson_replayed_from_its_events_is_the_same_lesson(events: list[Event]) -> None:
    lesson = Lesson(ARM)
    for event in events:
        lesson.apply(event)
    again = Lesson(ARM, kept_and_read(lesson.events))
    assert again.state == lesson.state
    assert again.ask == lesson.ask
    assert again.table == lesson.table
    assert again.take("undo", now=2e9) == lesson.take("undo", now=2e9)
    assert again.state == lesson.state


@given(random_events(SCRIPT))
def test_undo_takes_back_exactly_the_last_change(events: list[Event]) -> None:
    lesson = Lesson(ARM)
    standing: list[tuple[Event, Any]] = []
    for event in events:
        before = lesson.state
        reply = lesson.apply(event)
        if event.kind == "undo":
            assert reply.accepted == bool(standing)
            if standing:
                _, back_to = standing.pop()
                assert without_tallies(lesson.state) == without_tallies(back_to)
        elif reply.accepted and event.kind in TAKEN_BACK:
            standing.append((event, before))
        elif not reply.accepted:
            left = {"about", "proposed", "offered", "step", "joint"}
            for name, value in without_tallies(before).items():
                assert name in left or getattr(lesson.state, name) == value, (event, name)


@given(random_events(SCRIPT))
def test_a_wrong_try_stays_counted_when_a_right_one_is_taken_back(events: list[Event]) -> None:
    lesson = Lesson(ARM, events)
    wrong = [t for t in lesson.state.tries if t.verdict == "wrong"]
    hints, used = lesson.state.hints_used, lesson.table.hints
    while lesson.take("undo", now=2e9).accepted:
        pass
    assert [t for t in lesson.state.tries if t.verdict == "wrong"] == wrong
    assert (lesson.state.hints_used, lesson.table.hints) == (hints, used)
    nothing = without_tallies(Lesson(ARM).state)
    for name in nothing.keys() - {"step", "joint", "about", "offered"}:
        assert getattr(lesson.state, name) == nothing[name]


@given(random_events(SCRIPT, most=6), st.randoms(use_true_random=False))
def test_killed_at_any_byte_of_its_journal_it_resumes_at_the_last_whole_event(
    events: list[Event], rng: Random
) -> None:
    with tempfile.TemporaryDirectory() as folder:
        journal = Keep(Path(folder)).start("lamp-arm", "Lamp arm")
        assert journal.path is not None
        ends = [journal.path.stat().st_size]
        for event in events:
            assert journal.append(event.as_record())
            ends.append(journal.path.stat().st_size)
        journal.close()
        raw = journal.path.read_bytes()
        cut = rng.randint(ends[0], ends[-1])
        whole = sum(end - len("\n") <= cut for end in ends[1:])
        journal.path.write_bytes(raw[:cut])
        with Journal.resume(journal.path) as resumed:
            lesson = Lesson(ARM, events_of(resumed.events))
    assert lesson.events == kept_and_read(events[:whole])
    assert lesson.state == Lesson(ARM, events[:whole]).state


def gave_values(lesson: Lesson, do: Clock, truth: dict[str, float]) -> bool:
    """Types every value that the standing lines give; whether there was one."""
    given = False
    while unknown := solvable_now(lesson.state):
        own = truth[unknown] * (-1.0 if lesson.state.senses.get(unknown) in AGAINST else 1.0)
        reply = do("type", text=f"{unknown} = {own + 0.0:.7g}")
        assert reply.accepted, (unknown, own, reply.text)
        given = True
    return given


@given(st.integers(0, 10**6), st.booleans())
def test_every_order_that_is_statically_possible_reaches_the_table(seed: int, wall: bool) -> None:
    rng = Random(seed)
    problem = make_truss(rng.randrange(10**6), rng.randint(3, 6), wall=wall)
    truth = dict(solve(problem).values)
    senses = {n: s for n, s in random_senses(rng, problem).items() if n in problem.reaction}
    lesson, do = walk_to("reactions", problem, **senses)
    whole = [Fx(), Fy(), *(M(joint.name) for joint in problem.joints)]
    abouts = [*whole, *(make(joint.name) for joint in problem.joints for make in (Fx, Fy))]
    rng.shuffle(abouts)
    for about in abouts:
        if lesson.state.step == "close":
            break
        if about.joint is not None:
            assert do("joint", joint=about.joint).accepted
        own = {n: float(f"{r.value:.7g}") for n, r in lesson.state.result.items()}
        line = pieces(problem, about, lesson.state.senses, own if rng.random() < 0.5 else {})
        if not any(piece.symbol and piece.coefficient for piece in line):
            continue
        text = written(rng, problem, line, Style(figures=7))
        reply = do("type", text=text, about=as_text(about))
        assert reply.accepted, (about, text, reply.text)
        gave_values(lesson, do, truth)
    assert lesson.state.step == "close", lesson.ask
    assert not lesson.state.closed
    about = from_text(rng.choice(lesson.ask.options).key)
    assert not isinstance(about, Value)
    own = {n: float(f"{r.value:.7g}") for n, r in lesson.state.result.items()}
    text = written(rng, problem, pieces(problem, about, lesson.state.senses, own), Style(figures=7))
    reply = do("type", text=text, about=as_text(about))
    assert reply.accepted, (about, text, reply.text)
    assert lesson.done


NUMBER = re.compile(r"\d")
NOT_A_VALUE = re.compile(r"\b2j\b|-?\d+(?:\.\d+)?°|the point \(-?[\d.]+, -?[\d.]+\)|and \d+ more")
"""The double of j, directions, the point that moments are asked about, and how many lines."""


@pytest.mark.parametrize("path", SHARED)
def test_the_first_three_levels_hold_no_number_wherever_one_asks(path: Path) -> None:
    lesson = Lesson(load_problem(path))
    joints = "|".join(map(re.escape, sorted(lesson.problem.joint, key=len, reverse=True)))
    names = re.compile(rf"{NOT_A_VALUE.pattern}|(?:{joints})(?![a-z])")
    clock = Clock(lesson)
    told = 0

    def do(kind: str, **data: Any) -> Any:
        nonlocal told
        reply = clock(kind, **data)
        if kind != "hint" and not lesson.done:
            state, levels = lesson.state, lesson.levels
            for n in range(3):
                state, hint = next_hint(state, Event("hint", {}, START + 1e6 + 10 * n), levels)
                if hint.accepted and state.hints_used[-1] < 4:
                    told += 1
                    assert not NUMBER.search(names.sub("", hint.text)), hint.text
        return reply

    Student(lesson, do).walk()
    assert told > 50

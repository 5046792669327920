"""How long does it take to take up what was kept, against doing it anew?"""

from __future__ import annotations

import tomllib
from dataclasses import replace
from pathlib import Path

import pytest
from pairs import turns
from strategies import make_truss
from student import Student

from tutor.check import check
from tutor.lesson import Lesson
from tutor.lesson.replay import replay
from tutor.model import load_problem, load_set, write_problem
from tutor.shipped import shipped_problems

FILES = 400
HARBOUR = shipped_problems() / "first-steps"
pytestmark = pytest.mark.benchmark


def test_taking_up_a_lesson_costs_a_fifth_of_judging_it_anew_at_most(benchmark) -> None:
    problem = load_problem(HARBOUR / "storm-mast.toml")
    lesson, records = Lesson(problem), []

    def do(kind, **data):
        before = lesson.state
        reply = lesson.take(kind, now=1e9 + len(lesson.events), **data)
        event = lesson.events[-1]
        records.extend((event.as_record(), lesson.outcome(before, event, reply).as_record(event)))
        return reply

    Student(lesson, do).walk()
    pair = turns(
        lambda kept: replay(problem, kept),
        lambda events: Lesson(problem, events),
        [(records, lesson.events)] * 5,
    )
    benchmark.pedantic(replay, (problem, records), rounds=1)
    assert pair.told(benchmark) < 0.2


def test_reading_a_set_costs_eight_bare_readings_of_its_files_at_most(benchmark) -> None:
    files = sorted(HARBOUR.glob("*.toml"))

    def bare(_: Path) -> None:
        for file in files:
            tomllib.loads(file.read_text("utf-8"))

    pair = turns(load_set, bare, [(HARBOUR, HARBOUR)] * 15)
    benchmark.pedantic(load_set, (HARBOUR,), rounds=1)
    assert pair.told(benchmark) < 8


def test_a_check_on_two_processors_costs_fifteen_bare_readings_of_its_files_at_most(
    benchmark, tmp_path: Path
) -> None:
    """Fifteen is three seconds for a thousand files where bare readings take a fifth of a second."""
    for seed in range(FILES):
        problem = replace(make_truss(seed, 3 + seed % 8), title=f"Truss {seed}")
        (tmp_path / f"{seed:04}.toml").write_text(write_problem(problem), "utf-8")
    files = sorted(tmp_path.glob("*.toml"))

    def bare(_: Path) -> None:
        for file in files:
            tomllib.loads(file.read_text("utf-8"))

    pair = turns(check, bare, [(tmp_path, tmp_path)] * 5)
    benchmark.pedantic(check, (tmp_path,), rounds=1)
    assert pair.told(benchmark) < 15

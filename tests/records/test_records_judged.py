"""Does a lesson stand whatever a later judge says, and is it told where that one differs?"""

from __future__ import annotations

import json
import shutil
import tempfile
from dataclasses import fields, replace
from functools import cache
from pathlib import Path

import pytest
from keeping import KEPT
from student import Student

from tutor.judge import Judge, Verdict
from tutor.judge import version as version_module
from tutor.lesson import Lesson, State
from tutor.lesson.outcome import OF_THE_EVENT, PARTS, changed
from tutor.lesson.replay import replay
from tutor.model import Problem, Tolerance, load_problem
from tutor.records import Journal, Keep
from tutor.session import Session, open_session
from tutor.shipped import shipped_problems

HARBOUR = shipped_problems() / "first-steps"
FIRST = KEPT / "0.1.0"
EXPECTED = json.loads((FIRST / "expected.json").read_text("utf-8"))["lessons"]
LESSONS = sorted(EXPECTED)


def problem_of(name: str) -> Problem:
    return load_problem(FIRST / "problems" / f"{EXPECTED[name]['problem']}.toml")


@cache
def once_opened(name: str) -> bytes:
    """A lesson of the first version as it is kept once this one has opened it, with its outcomes."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(shutil.copy(FIRST / name, folder))
        opened(problem_of(name), path).close()
        return path.read_bytes()


@pytest.fixture
def kept(tmp_path: Path, name: str) -> Path:
    path = tmp_path / name
    path.write_bytes(once_opened(name))
    return path


def opened(problem: Problem, path: Path) -> Session:
    return open_session(problem, Keep(path.parent), path)


def another_judge(monkeypatch: pytest.MonkeyPatch, kind: str) -> list[str]:
    """From here on the judge is another one, and says the same of every line; what it is asked."""
    asked: list[str] = []

    def judge(self, about, text, *rest, **more):
        asked.append(text)
        return Verdict(kind, "A sentence of the other judge.", about=about, value=1234.5)

    monkeypatch.setattr(Judge, "judge", judge)
    monkeypatch.setattr(version_module, "of_sources", lambda: f"another {kind}")
    return asked


OTHERWISE = ("wrong", "right", "unreadable", "undecided")


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        pytest.param(name, OTHERWISE[(i + k) % 4], marks=[pytest.mark.slow] if k else [])
        for i, name in enumerate(LESSONS)
        for k in range(4)
    ],
)
def test_nothing_of_a_lesson_changes_when_every_verdict_does(kept, name, kind, monkeypatch):
    problem = problem_of(name)
    with Journal.resume(kept) as journal:
        before = replay(problem, journal.events).lesson.state
    another_judge(monkeypatch, kind)
    session = opened(problem, kept)
    assert session.lesson.state == before
    assert session.skipped == 0
    session.close()


@pytest.mark.parametrize("name", LESSONS)
def test_a_judge_that_took_a_lesson_in_is_not_asked_again(kept, name, monkeypatch):
    problem = problem_of(name)
    asked = []
    judge = Judge.judge
    monkeypatch.setattr(Judge, "judge", lambda *a, **k: asked.append(a) or judge(*a, **k))
    opened(problem, kept).close()
    assert asked == []


@pytest.mark.parametrize("name", LESSONS)
def test_a_line_of_which_the_judge_now_says_otherwise_is_told_once_with_the_line(
    kept, name, monkeypatch
):
    problem = problem_of(name)
    another_judge(monkeypatch, "wrong")
    session = opened(problem, kept)
    told = session.news()
    session.close()
    typed = {line.text for line in session.lesson.state.lines}
    typed |= {r.text for r in session.lesson.state.results if r.how == "solved"}
    brought = [r for r in session.lesson.state.results if r.how == "given"]
    typed |= {", ".join(f"{r.unknown} = {r.text}" for r in brought)}
    typed -= {""}
    assert bool(told) == bool(typed)
    for sentence in told[:3]:
        assert any(f"“{text}”" in sentence for text in typed), sentence
    again = opened(problem, kept)
    assert again.news() == ()
    again.close()


@pytest.mark.parametrize("name", LESSONS)
def test_a_narrower_tolerance_loses_nothing_of_a_lesson_kept_without_outcomes(name, tmp_path):
    path = Path(shutil.copy(FIRST / name, tmp_path / name))
    tight = replace(problem_of(name), tolerance=Tolerance(0.0002, 0.0005))
    session = opened(tight, path)
    session.close()
    results = {r.unknown: r.value for r in session.lesson.state.results}
    for unknown, (_, value, *_) in EXPECTED[name]["results"].items():
        assert results.get(unknown) == pytest.approx(value, rel=0.03), unknown


def test_every_part_of_the_state_is_kept_or_follows_from_the_events():
    assert {f.name for f in fields(State)} == PARTS.keys() | OF_THE_EVENT


@pytest.mark.parametrize("name", ["boarding-boom", "storm-mast", "mooring-post-bracket"])
def test_what_an_event_changed_brings_back_the_very_state_it_led_to(name):
    lesson = Lesson(load_problem(HARBOUR / f"{name}.toml"))
    again = Lesson(lesson.problem)

    def do(kind, **data):
        before = lesson.state
        reply = lesson.take(kind, now=1e9 + len(lesson.events), **data)
        event = lesson.events[-1]
        kept = json.loads(json.dumps(lesson.outcome(before, event, reply).changed))
        if event.kind != "undo":
            assert changed(before, event, kept) == lesson.state, event
        again.restore(event, lesson.outcome(before, event, reply))
        return reply

    Student(lesson, do).walk()
    for _ in range(40):
        do("undo")
        assert again.state == lesson.state


@pytest.mark.parametrize(
    "part",
    [
        {"step": "attic"},
        {"joint": "Z"},
        {"lines": {"from": 0, "add": [{"about": "Fx @ Z", "text": "", "adds": True, "closing": False}]}},
        {"lines": {"from": -1, "add": []}},
        {"lines": []},
        {"results": {"from": 0, "add": [{"unknown": "ZZ"}]}},
        {"results": {"from": 0, "add": [{"unknown": "AB", "text": "1", "value": "1", "radius": 0, "how": "solved"}]}},
        {"senses": {"put": {"Z_x": "left"}, "gone": []}},
        {"hints": 3},
        {"tries": {"from": 0, "add": [None]}},
        {"offered": ["value AB", "x"]},
        {"practice": ["sign"]},
        {"ended": float("inf")},
    ],
)  # fmt: skip
def test_an_outcome_that_does_not_fit_is_judged_anew_and_ends_nothing(part, tmp_path):
    problem = load_problem(HARBOUR / "lamp-arm.toml")
    session = open_session(problem, Keep(tmp_path))
    session.do("reasons", chosen=["pins", "joints", "weight"])
    session.close()
    path = session.journal.path
    with Journal.resume(path) as journal:
        events = [dict(event) for event in journal.events]
    events[1]["changed"] = part
    found = replay(problem, events)
    assert found.lesson.state.reasons_done
    assert found.lesson.state == session.lesson.state

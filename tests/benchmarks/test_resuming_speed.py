"""How long does it take to go on with a very long lesson, against bare readings of what was kept?

Two seconds were wanted for 5,000 events; the bounds are ratios, the processor's seconds are printed.
"""

from __future__ import annotations

import json
import sys
import time
from pathlib import Path

import pytest
from pairs import turns

sys.path.insert(0, str(Path(__file__).parents[1] / "screens"))

from resuming import REACTIONS

from tutor.lesson import Event, Lesson
from tutor.model import load_problem
from tutor.records import Keep
from tutor.session import open_session
from tutor.shipped import shipped_problems

LONG, SHORT = 5000, 500
LAMP = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")
pytestmark = pytest.mark.benchmark


def event(number: int) -> tuple[str, dict[str, object]]:
    """What a student without luck does: wrong lines, hints, senses drawn anew, much taken back."""
    match number % 10:
        case 3:
            return "hint", {}
        case 5:
            return "sense", {"unknown": "A_y", "sense": "down" if number % 20 == 5 else "up"}
        case 7:
            return "undo", {}
        case _:
            return "type", {"text": f"M A: B_x - {371 + number * 211 % 401} = 0"}


def kept(folder: Path, count: int) -> Path:
    """The journal of a lesson of that many events."""
    session = open_session(LAMP, Keep(folder))
    lesson = session.lesson
    events = [*REACTIONS, *map(event, range(count - len(REACTIONS)))]
    for number, (kind, data) in enumerate(events):
        before, done = lesson.state, Event(kind, data, 1e9 + number)
        session.journal.append(done.as_record(), sync=False)
        outcome = lesson.outcome(before, done, lesson.apply(done))
        session.journal.append(outcome.as_record(done), sync=False)
    session.close()
    (path,) = folder.rglob("*.jsonl")
    return path


@pytest.fixture(scope="module")
def journals(tmp_path_factory) -> dict[int, Path]:
    return {n: kept(tmp_path_factory.mktemp(f"{n}"), n) for n in (LONG, SHORT)}


def resume(path: Path) -> Lesson:
    session = open_session(LAMP, Keep(path.parent), path)
    session.close()
    return session.lesson


def bare(path: Path) -> None:
    for line in path.read_text("utf-8").splitlines():
        json.loads(line)


def test_five_thousand_events_are_taken_up_in_fifteen_bare_readings_of_their_journal(
    benchmark, journals: dict[int, Path]
) -> None:
    path = journals[LONG]
    assert len(resume(path).events) == LONG
    spent = time.process_time()
    resume(path)
    seconds = time.process_time() - spent
    benchmark.extra_info["cpu_s"] = round(seconds, 3)
    print(f"\n{LONG} events, {path.stat().st_size / 1e6:.1f} MB: {seconds:.2f} s of the processor")
    pair = turns(resume, bare, [(path, path)] * 7)
    benchmark.pedantic(resume, (path,), rounds=1)
    assert pair.told(benchmark) < 15


def test_ten_times_as_many_events_take_fifteen_times_as_long_to_take_up_at_most(
    benchmark, journals: dict[int, Path]
) -> None:
    pair = turns(resume, resume, [(journals[LONG], journals[SHORT])] * 7)
    benchmark.pedantic(resume, (journals[SHORT],), rounds=1)
    assert pair.told(benchmark) < 15

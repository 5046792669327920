"""Is the last line of a long lesson answered as fast as its first, in the lesson and on the screen?"""

from __future__ import annotations

import asyncio
import statistics
import sys
import time
from pathlib import Path

import pytest
from pairs import Pair

sys.path.insert(0, str(Path(__file__).parents[1] / "screens"))

from pressing import enter_line
from resuming import REACTIONS, Resumed

from tutor.lesson import Lesson
from tutor.model import load_problem
from tutor.shipped import shipped_problems

LINES, TIMED = 300, 40
LAMP = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")
pytestmark = pytest.mark.benchmark


def line(number: int) -> str:
    """A wrong line, another for each number; far and near ones mixed, since they cost differently."""
    return f"M A: B_x - {371 + number * 211 % 401} = 0"


def test_the_last_of_three_hundred_lines_is_judged_as_fast_as_the_first(benchmark) -> None:
    lesson = Lesson(LAMP)
    for kind, data in REACTIONS:
        lesson.take(kind, now=1.0, **data)
    lesson.take("type", text="M A: 1 B_x = 1", now=1.0)
    spent = []
    for number in range(LINES):
        start = time.perf_counter()
        lesson.take("type", text=line(number), now=2.0 + number)
        spent.append(time.perf_counter() - start)
    assert len(lesson.state.tries) >= LINES
    pair = Pair(statistics.median(spent[-TIMED:]), statistics.median(spent[:TIMED]))
    benchmark.pedantic(lambda: None, rounds=1)
    assert pair.told(benchmark) < 1.5


def test_the_last_of_three_hundred_lines_is_shown_as_fast_as_the_first(
    benchmark, tmp_path: Path
) -> None:
    async def timed(folder: Path, before: int) -> float:
        typed = tuple(("type", {"text": line(number)}) for number in range(before))
        spent = []
        async with Resumed(folder, REACTIONS) as pilot:
            session = pilot.app.session
            for kind, data in typed:
                session.do(kind, **data)
            for number in range(TIMED):
                start = time.perf_counter()
                await enter_line(pilot, line(before + number))
                spent.append(time.perf_counter() - start)
        return statistics.median(spent[3:])

    first = asyncio.run(timed(tmp_path / "first", 0))
    last = asyncio.run(timed(tmp_path / "last", LINES))
    benchmark.pedantic(lambda: None, rounds=1)
    assert Pair(last, first).told(benchmark) < 1.5

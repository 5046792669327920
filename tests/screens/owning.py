"""How does a test come to the sheet for one's own truss, or to the paper of a homework, by keys?"""

from __future__ import annotations

import contextlib
from collections.abc import AsyncIterator, Iterable, Mapping
from pathlib import Path
from typing import Any

from pressing import FIRST, opened, settle, shows
from textual.pilot import Pilot
from textual.widgets import Input, Static

from tutor.model import Problem, load_problem
from tutor.screens.homework import HomeworkScreen
from tutor.screens.walk import WalkScreen
from tutor.screens.widgets.line_input import LineInput
from tutor.screens.workbench import WorkbenchScreen
from tutor.statics import solve

FOUND = ("found", "found-hints", "found-closing")
TRIANGLE = "A 0 0 B 4 0 C 2 3/2; AB BC CA; A pin B roller; C 12 down"


@contextlib.asynccontextmanager
async def drawing(
    keep: Path, size: tuple[int, int] = (80, 24), **given: Any
) -> AsyncIterator[Pilot[int]]:
    """A running app on the sheet for one's own truss."""
    async with opened(keep, size=size, **given) as pilot:
        await pilot.press("escape", "o")
        await settle(pilot, lambda: shows(pilot, WorkbenchScreen))
        yield pilot


@contextlib.asynccontextmanager
async def checking(
    keep: Path, file: Path | None = None, size: tuple[int, int] = (80, 24), **given: Any
) -> AsyncIterator[Pilot[int]]:
    """A running app on the paper of a homework on one problem."""
    path = FIRST / "lamp-arm.toml" if file is None else file
    async with opened(keep, path, path.parent, size=size, **given) as pilot:
        await pilot.press("escape", "c")
        await settle(pilot, lambda: shows(pilot, HomeworkScreen))
        yield pilot


def bench_of(pilot: Pilot[int]) -> WorkbenchScreen:
    """The sheet, on top or below what lies over it."""
    return next(s for s in reversed(pilot.app.screen_stack) if isinstance(s, WorkbenchScreen))


def paper_of(pilot: Pilot[int]) -> HomeworkScreen:
    """The homework, on top or below what lies over it."""
    return next(s for s in reversed(pilot.app.screen_stack) if isinstance(s, HomeworkScreen))


def text_of(pilot: Pilot[int], part: str) -> str:
    """The words of one part of the screen, however they are broken into rows."""
    content = pilot.app.screen.query_one(f"#{part}", Static).content
    return " ".join(str(content).split())


def found_of(pilot: Pilot[int]) -> str:
    """All that is said of a check, on the paper or below what lies over it."""
    parts = (paper_of(pilot).query_one(f"#{part}", Static) for part in FOUND)
    return " ".join(" ".join(str(part.content).split()) for part in parts)


def walks(pilot: Pilot[int]) -> bool:
    return isinstance(pilot.app.screen, WalkScreen)


async def enter(pilot: Pilot[int], text: str) -> None:
    """Empty the line, put this text in and enter it."""
    line = pilot.app.screen.query_one(LineInput)
    line.focus()
    line.clear()
    line.insert_text_at_cursor(text)
    await pilot.press("enter")
    await pilot.pause()


async def fill(pilot: Pilot[int], values: Iterable[str]) -> None:
    """Enter values into the rows from the first on; "" leaves one blank."""
    paper = paper_of(pilot)
    paper.go(0)
    for text in values:
        await enter(pilot, text)


async def check(pilot: Pilot[int]) -> None:
    """Check, by keys, and wait for the answer."""
    paper = paper_of(pilot)
    before = paper.result
    await by_letter(pilot, "c")
    await settle(pilot, lambda: paper.result is not before)


async def by_letter(pilot: Pilot[int], letter: str) -> None:
    """One deed by its letter, from wherever the focus is."""
    way = ["escape"] if isinstance(pilot.app.focused, Input) else []
    await pilot.press(*way, {"?": "question_mark"}.get(letter, letter))
    await pilot.pause()


def right_values(problem: Problem) -> Mapping[str, float]:
    """The true values, for a test to write on the paper."""
    return solve(problem).values


def load(file: Path) -> Problem:
    return load_problem(file)

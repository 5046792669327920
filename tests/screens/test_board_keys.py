"""Can a student watch, guess, cut a section, and say whether a truss is held, on the screen?"""

from __future__ import annotations

import contextlib
from collections.abc import AsyncIterator
from pathlib import Path
from typing import Any

import pytest
from pressing import (
    deed,
    enter_line,
    finished,
    lesson_of,
    line_of,
    opened,
    pick,
    seen,
    settle,
    walk_of,
    walking,
)
from resuming import JOINTS, REACTIONS, Resumed, said
from textual.pilot import Pilot

from tutor.deeds.board import WATCH_FIRST
from tutor.model import load_problem
from tutor.records import Keep, Settings
from tutor.screens.dialogs.choose import Choose
from tutor.screens.walk import WalkScreen
from tutor.screens.walk_possible import possible
from tutor.session import open_session

COMPOUND = Path(__file__).parents[1] / "paper" / "compound.toml"
FRAME = """\
title = "Frame of a garden gate"
force = "N"
length = "m"
truss = "unstable"
members = ["AB", "BC", "CD", "AD"]
joints = {A = [0, 0], B = [3, 0], C = [3, 2], D = [0, 2]}
supports = {A = "pin", B = "roller"}
[[loads]]
at = "C"
right = 40
"""
CUT = ("section", {"members": ["AD", "BE", "CF"], "keep": "A"})


@contextlib.asynccontextmanager
async def gone_on(
    keep: Path, path: Path, *events: tuple[str, dict[str, Any]], size: tuple[int, int] = (80, 24)
) -> AsyncIterator[Pilot[int]]:
    """The walk on a file, gone on with after these events."""
    session = open_session(load_problem(path), Keep(keep))
    for kind, data in events:
        assert session.do(kind, **data).accepted, (kind, data)
    session.close()
    async with opened(keep, path, size=size) as pilot:
        await settle(pilot, lambda: isinstance(pilot.app.screen, Choose))
        await pilot.press("1")
        await settle(pilot, lambda: isinstance(pilot.app.screen, WalkScreen))
        await pilot.pause()
        yield pilot


@pytest.fixture
def frame(tmp_path: Path) -> Path:
    path = tmp_path / "gate.toml"
    path.write_text(FRAME, encoding="utf-8")
    return path


class TestWatching:
    async def test_is_offered_at_the_first_question_of_a_first_lesson_only(
        self, tmp_path: Path
    ) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            await pilot.pause()
            assert WATCH_FIRST.split(":")[0] in said(pilot)
            assert "type watch" in seen(pilot)
            await deed(pilot, "w")
            assert WATCH_FIRST.split(":")[0] not in said(pilot)
        done = Settings(glyphs="braille", done={"idealise": 1})
        async with walking(tmp_path / "later", "lamp-arm", settings=done) as pilot:
            await pilot.pause()
            assert WATCH_FIRST.split(":")[0] not in said(pilot)

    async def test_writes_the_next_thing_by_a_letter_and_the_line_has_the_focus(
        self, tmp_path: Path
    ) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await deed(pilot, "w")
            assert lesson_of(pilot).state.lines
            assert "shown" in said(pilot)
            assert pilot.app.focused is line_of(pilot)

    async def test_has_a_guess_answered_and_leaves_the_line_to_the_student(
        self, tmp_path: Path
    ) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await deed(pilot, "g")
            assert isinstance(pilot.app.screen, Choose)
            assert "Which equation of the whole truss would you write next?" in seen(pilot)
            await pilot.press("2")
            await settle(pilot, lambda: isinstance(pilot.app.screen, WalkScreen))
            assert lesson_of(pilot).events[-1].data["guess"] == "Fy"
            assert "ΣFy" in said(pilot)
            assert not lesson_of(pilot).state.lines
            assert pilot.app.focused is line_of(pilot)

    async def test_offers_a_guess_only_where_there_is_one_to_make(self, tmp_path: Path) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            await pilot.pause()
            assert "guess" not in possible(walk_of(pilot).session)
            for _ in range(2):
                await deed(pilot, "w")
            assert "guess" in possible(walk_of(pilot).session)

    async def test_goes_on_by_enter_where_counts_are_asked_for(self, tmp_path: Path) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            await enter_line(pilot, "watch")
            assert pilot.app.focused is line_of(pilot)
            await pilot.press("enter")
            await settle(pilot, lambda: len(lesson_of(pilot).state.shown) == 2)

    async def test_asks_for_the_guess_where_its_word_stands_alone(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            before = len(lesson_of(pilot).events)
            await enter_line(pilot, "guess")
            await settle(pilot, lambda: isinstance(pilot.app.screen, Choose))
            await pilot.press("escape")
            assert len(lesson_of(pilot).events) == before


class TestASection:
    @pytest.mark.parametrize("size", [(80, 24), (120, 40)])
    async def test_shows_the_part_kept_with_every_force_and_every_sum_at_once(
        self, tmp_path: Path, size: tuple[int, int]
    ) -> None:
        async with gone_on(tmp_path, COMPOUND, ("show", {"until": "joints"}), size=size) as pilot:
            await enter_line(pilot, "section AD BE CF keep A")
            await pilot.pause()
            shown = seen(pilot)
            assert "The part with A, B and C" in shown
            for name in ("F_AD", "F_BE", "F_CF", "A_x", "A_y", "B_y"):
                assert name in shown
            for option in lesson_of(pilot).ask.options:
                assert option.words in shown
            await enter_line(pilot, "leave section")
            await pilot.pause()
            assert "The part with" not in seen(pilot)


class TestWhetherATrussIsHeld:
    async def test_is_said_by_keys_up_to_an_outcome_without_an_empty_table(
        self, tmp_path: Path, frame: Path
    ) -> None:
        async with gone_on(tmp_path, frame, *SHOWN_TWICE) as pilot:
            await pick(pilot, "determinate")
            assert "fewer unknowns than equations" in said(pilot)
            assert "every joint is held, and statics" in seen(pilot)
            await pick(pilot, "unstable")
            assert lesson_of(pilot).ask.kind == "loose"
            await pick(pilot, "C", "D")
            await settle(pilot, lambda: finished(pilot))
            shown = seen(pilot)
            assert "Outcome" in shown
            assert "something can move" in shown
            assert "member   force" not in shown

    async def test_is_said_by_typing(self, tmp_path: Path, frame: Path) -> None:
        async with gone_on(tmp_path, frame, *SHOWN_TWICE) as pilot:
            await enter_line(pilot, "2")
            await enter_line(pilot, "D and C")
            await settle(pilot, lambda: finished(pilot))

    async def test_is_said_by_the_mouse(self, tmp_path: Path, frame: Path) -> None:
        async with gone_on(tmp_path, frame, *SHOWN_TWICE) as pilot:
            await click(pilot, "something can move")
            for words in ("joint C", "joint D", "d done"):
                await click(pilot, words)
            await settle(pilot, lambda: finished(pilot))


SHOWN_TWICE: tuple[tuple[str, dict[str, Any]], ...] = (("show", {}), ("show", {}))


async def click(pilot: Pilot[int], words: str) -> None:
    """Click on these words where they stand last on the screen."""
    await pilot.pause()
    rows = seen(pilot).split("\n")
    y = max(i for i, row in enumerate(rows) if words in row)
    await pilot.click(offset=(rows[y].index(words) + 1, y))
    await pilot.pause()

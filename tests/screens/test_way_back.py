"""Where does one come to when a walk or a homework is left, and with what did it begin?"""

from __future__ import annotations

from pathlib import Path

import pytest
from owning import TRIANGLE, by_letter, check, drawing, enter, fill, paper_of, text_of, walks
from pressing import FIRST, deed, enter_line, lesson_of, opened, seen, settle, walking
from textual.pilot import Pilot
from textual.widgets import OptionList

from tutor.screens.dialogs.choose import Choose
from tutor.screens.homework import HomeworkScreen
from tutor.screens.sheet import SheetScreen
from tutor.screens.walk import WalkScreen
from tutor.screens.workbench import WorkbenchScreen

DRAWN = """\
title = "Boathouse hoist"
force = "kN"
length = "m"
members = ["AB", "BC", "CA"]
[joints]
A = [0, 0]
B = [4, 0]
C = [2, "3/2"]
[supports]
A = "pin"
B = "roller"
[[loads]]
at = "C"
down = 12
"""


def on(pilot: Pilot[int], screen: type) -> bool:
    return isinstance(pilot.app.screen, screen)


class TestFromOnesOwnTruss:
    async def test_a_homework_is_left_back_to_the_truss(self, tmp_path: Path) -> None:
        async with drawing(tmp_path) as pilot:
            await enter(pilot, TRIANGLE)
            await by_letter(pilot, "c")
            await settle(pilot, lambda: on(pilot, HomeworkScreen))
            await by_letter(pilot, "q")
            assert on(pilot, WorkbenchScreen)
            assert "What you entered is kept" in text_of(pilot, "bench-said")
            await by_letter(pilot, "q")
            assert on(pilot, SheetScreen)

    async def test_a_walk_is_left_back_to_the_truss(self, tmp_path: Path) -> None:
        async with drawing(tmp_path) as pilot:
            await enter(pilot, TRIANGLE)
            await by_letter(pilot, "w")
            await settle(pilot, lambda: walks(pilot))
            await pilot.press("escape", "q")
            await settle(pilot, lambda: on(pilot, WorkbenchScreen))
            assert "Everything you did is kept" in text_of(pilot, "bench-said")

    async def test_a_walk_of_the_first_wrong_joint_is_left_back_to_the_paper(
        self, tmp_path: Path
    ) -> None:
        async with drawing(tmp_path) as pilot:
            await enter(pilot, TRIANGLE)
            await by_letter(pilot, "c")
            await settle(pilot, lambda: on(pilot, HomeworkScreen))
            await fill(pilot, ["0", "6", "6", "-8", "10 C", "10 C"])
            await check(pilot)
            assert paper_of(pilot).result.first is not None  # type: ignore[union-attr]
            await by_letter(pilot, "w")
            await settle(pilot, lambda: walks(pilot))
            assert "of your values stand" in seen(pilot)
            assert "goes back to your paper" in seen(pilot)
            await enter_line(pilot, "Fy")
            await enter_line(pilot, "nonsense = 0")
            events = len(lesson_of(pilot).events)
            await pilot.press("escape", "q")
            await settle(pilot, lambda: on(pilot, HomeworkScreen))
            await by_letter(pilot, "w")
            await settle(pilot, lambda: walks(pilot))
            assert len(lesson_of(pilot).events) == events


class TestDrawingOnAFile:
    @pytest.mark.parametrize("kept", [False, True])
    async def test_opens_with_its_truss_and_undo_brings_back_what_was_kept(
        self, tmp_path: Path, kept: bool
    ) -> None:
        file = tmp_path / "hoist.toml"
        file.write_text(DRAWN, encoding="utf-8")
        if kept:
            async with drawing(tmp_path / "keep") as pilot:
                await enter(pilot, "A 0 0 B 7 0")
        async with opened(tmp_path / "keep", deed="own", drawing=file) as pilot:
            await settle(pilot, lambda: on(pilot, WorkbenchScreen))
            assert "Boathouse hoist" in seen(pilot)
            assert "(ready)" in seen(pilot)
            await by_letter(pilot, "u")
            bench = pilot.app.screen
            assert isinstance(bench, WorkbenchScreen)
            assert set(bench.board.draft.problem.joint) == ({"A", "B"} if kept else set())

    async def test_says_what_is_wrong_with_one_that_cannot_be_read(self, tmp_path: Path) -> None:
        file = tmp_path / "hoist.toml"
        file.write_text(DRAWN.replace('"CA"', '"CX"'), encoding="utf-8")
        async with opened(tmp_path / "keep", deed="own", drawing=file) as pilot:
            await settle(pilot, lambda: on(pilot, WorkbenchScreen))
            assert "hoist.toml cannot be opened: line 4" in text_of(pilot, "bench-said")


class TestAFileOpenedAtOnce:
    async def test_has_its_list_painted_only_once_the_walk_is_left(self, tmp_path: Path) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            sheet = next(s for s in pilot.app.screen_stack if isinstance(s, SheetScreen))
            assert sheet.has_class("-behind")
            await deed(pilot, "q")
            await settle(pilot, lambda: "level 1" in seen(pilot))
            assert isinstance(pilot.app.focused, OptionList)
            await pilot.press("enter")
            await settle(pilot, lambda: isinstance(pilot.app.screen, WalkScreen))

    async def test_has_its_list_painted_where_the_question_before_it_is_left(
        self, tmp_path: Path
    ) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            await deed(pilot, "w")
        async with opened(tmp_path, FIRST / "lamp-arm.toml") as pilot:
            await settle(pilot, lambda: isinstance(pilot.app.screen, Choose))
            await pilot.press("escape")
            await settle(pilot, lambda: "level 1" in seen(pilot))
            assert isinstance(pilot.app.focused, OptionList)

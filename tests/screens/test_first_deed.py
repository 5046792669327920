"""Does the screen begin with what the command line asked for: a homework, a drawing, a lesson?"""

from __future__ import annotations

from pathlib import Path

import pytest
from pressing import FIRST, make_app, settle
from textual import events

from tutor.screens.homework import HomeworkScreen
from tutor.screens.widgets.line_input import LineInput
from tutor.screens.workbench import WorkbenchScreen


@pytest.mark.parametrize(
    ("deed", "screen"), [("homework", HomeworkScreen), ("own", WorkbenchScreen)]
)
async def test_it_begins_with_the_deed_asked_for(deed: str, screen: type, tmp_path: Path) -> None:
    app = make_app(tmp_path, FIRST / "lamp-arm.toml", deed=deed)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot, lambda: isinstance(app.screen, screen))
        await settle(pilot, lambda: isinstance(app.focused, LineInput))


@pytest.mark.parametrize("deed", ["homework", "own"])
async def test_what_is_typed_before_that_stands_is_typed_into_it(deed: str, tmp_path: Path) -> None:
    app = make_app(tmp_path, FIRST / "lamp-arm.toml", deed=deed)
    async with app.run_test(size=(80, 24)) as pilot:
        for key in ("7", "ctrl+j", "A", "B"):  # ctrl+j: enter, before the terminal is set up
            app.post_message(events.Key(key, key if len(key) == 1 else None))
        await settle(pilot, lambda: bool(app.screen.query(LineInput)))
        await settle(pilot, lambda: app.screen.query_one(LineInput).value == "AB")

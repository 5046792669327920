"""Does the screen begin with what the command line asked for: a homework, a drawing, a lesson?"""

from __future__ import annotations

from pathlib import Path

import pytest
from pressing import FIRST, make_app, settle

from tutor.screens.homework import HomeworkScreen
from tutor.screens.workbench import WorkbenchScreen


@pytest.mark.parametrize(
    ("deed", "screen"), [("homework", HomeworkScreen), ("own", WorkbenchScreen)]
)
async def test_it_begins_with_the_deed_asked_for(deed: str, screen: type, tmp_path: Path) -> None:
    app = make_app(tmp_path, FIRST / "lamp-arm.toml", deed=deed)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot, lambda: isinstance(app.screen, screen))

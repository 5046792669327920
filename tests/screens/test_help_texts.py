"""Does every help text stand in its rows at 80 columns, and can it be read to its end by one key?"""

from __future__ import annotations

from pathlib import Path

import pytest
from pressing import lesson_of, settle, walking
from textual.containers import VerticalScroll

from tutor.screens.bench_help import bench_help
from tutor.screens.deeds import CLOSING, SHEET, WALK
from tutor.screens.dialogs.help import WIDE, help_text
from tutor.screens.dialogs.told import Told
from tutor.screens.homework_help import homework_help
from tutor.screens.walk import WalkScreen


@pytest.mark.parametrize(
    "text",
    [
        help_text(WALK),
        help_text((*SHEET, *WALK)),
        help_text(CLOSING),
        bench_help(),
        homework_help(),
    ],
    ids=["walk", "list", "table", "board", "homework"],
)
def test_no_line_of_a_help_text_is_broken_anew_at_80_columns(text: str) -> None:
    assert [line for line in text.splitlines() if len(line) > WIDE] == []


async def test_space_reads_a_help_text_to_its_end_and_leaves_it_there(tmp_path: Path) -> None:
    async with walking(tmp_path, "bell-frame") as pilot:
        await pilot.press("f1")
        await settle(pilot, lambda: isinstance(pilot.app.screen, Told))
        text = pilot.app.screen.query_one("#told-scroll", VerticalScroll)
        assert text.scrollable_content_region.width >= WIDE
        before = len(lesson_of(pilot).events)
        for _ in range(20):
            await pilot.press("space")
            await pilot.pause()
            if isinstance(pilot.app.screen, WalkScreen):
                break
            assert text.scroll_offset.y > 0
        assert isinstance(pilot.app.screen, WalkScreen)
        assert len(lesson_of(pilot).events) == before

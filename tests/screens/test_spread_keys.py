"""What happens on the screen where a load lies on members?"""

from __future__ import annotations

from pathlib import Path

from pressing import SETS, enter_line, lesson_of, line_of, opened, pick, seen, settle, walk_of

from tutor.lesson.steps.spread import HALVES
from tutor.screens.walk import WalkScreen
from tutor.screens.widgets.line_input import LineInput


async def test_shares_are_typed_in_the_line_and_what_does_not_stand_stays_there(
    tmp_path: Path,
) -> None:
    async with opened(tmp_path, SETS / "bridges" / "wagon-bridge.toml") as pilot:
        await settle(pilot, lambda: isinstance(pilot.app.screen, WalkScreen))
        assert "7.5 kN/m" in seen(pilot)
        await pick(pilot, *HALVES)
        assert lesson_of(pilot).ask.kind == "shares"
        assert isinstance(pilot.app.focused, LineInput)
        await enter_line(pilot, "A 30")
        assert line_of(pilot).value == "A 30"
        assert "wrong" in seen(pilot)
        await enter_line(pilot, "A 15, C 15")
        assert line_of(pilot).value == ""
        await enter_line(pilot, "B 15+15")
        assert walk_of(pilot).ask.kind == "reasons"
        assert "7.5 kN/m" not in seen(pilot)

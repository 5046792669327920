"""What do keys do with a hint's picture, a smaller problem and remarks on an easier way?"""

from __future__ import annotations

from pathlib import Path

import pytest
from pressing import deed, enter_line, lesson_of, seen, settle, walk_of
from resuming import REACTIONS, Resumed

from tutor.lesson.hints import PAUSE
from tutor.records import read_settings
from tutor.screens.walk import WalkScreen


@pytest.fixture
def patient(monkeypatch) -> None:
    """A clock that gives every hint its time."""
    ticks = iter(range(2_000_000_000, 3_000_000_000, int(PAUSE) + 2))
    monkeypatch.setattr("tutor.session.time.time", lambda: float(next(ticks)))


@pytest.mark.usefixtures("patient")
class TestAHint:
    async def test_on_an_arm_brings_its_picture_to_the_front(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await enter_line(pilot, "ΣM_A: B_x - 150*1 = 0")
            await deed(pilot, "h")
            assert "Where the arm" not in seen(pilot)
            await deed(pilot, "h")
            assert "Where the arm of the load at C runs" in seen(pilot)
            await enter_line(pilot, "ΣM_A: B_x - 150*2.4 = 0")
            assert "Where the arm" not in seen(pilot)

    async def test_at_the_bottom_for_the_third_time_offers_practice(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            below = walk_of(pilot)
            assert "practice" not in {d.id for d in below.deeds()}
            await enter_line(pilot, "ΣM_A: B_x - 150*1 = 0")
            for _ in range(5):
                await deed(pilot, "h")
            assert "ready under practice" in " ".join(seen(pilot).split())
            lesson = lesson_of(pilot)
            await deed(pilot, "p")
            await settle(pilot, lambda: walk_of(pilot) is not below)
            assert lesson_of(pilot).problem.title == "Practice: the fairway sign"
            await deed(pilot, "q")
            await settle(pilot, lambda: pilot.app.screen is below)
            assert lesson_of(pilot) is lesson
            assert isinstance(pilot.app.screen, WalkScreen)


async def test_remarks_on_an_easier_way_can_be_left_out_for_good(tmp_path: Path) -> None:
    line = "ΣM_C: -2.4 A_y + 1*B_x = 0"
    async with Resumed(tmp_path, REACTIONS) as pilot:
        pilot.app.change_remarks()
        await enter_line(pilot, line)
        assert "This line holds two unknowns" not in seen(pilot)
        await deed(pilot, "u")
        pilot.app.change_remarks()
        await enter_line(pilot, line)
        assert "This line holds two unknowns" in " ".join(seen(pilot).split())
        pilot.app.change_remarks()
    assert not read_settings(tmp_path)[0].remarks

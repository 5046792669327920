"""What does each step, one's own truss and a homework look like, at both sizes? Read the difference before you update a picture."""

from __future__ import annotations

import re
from importlib.metadata import version
from pathlib import Path
from typing import Any

import pytest
from owning import by_letter, check, checking, drawing, enter, fill
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
)
from pytest_textual_snapshot import SVGImageExtension
from resuming import FREE_BODY, JOINTS, REACTIONS, Resumed
from syrupy.assertion import SnapshotAssertion
from textual.pilot import Pilot
from textual.widgets import Input

from tutor.records import Settings
from tutor.screens.card import CardScreen
from tutor.screens.sheet import LEAD

SIZES = ((80, 24), (120, 40))
DRAWN_WITH = "8.2.8"
FONT_LINK = re.compile(r"@font-face\s*\{.*?\}", re.DOTALL)


class Picture(SVGImageExtension):
    """An SVG without the links to fonts elsewhere."""

    def serialize(self, data: Any, **options: Any) -> Any:
        return FONT_LINK.sub("", super().serialize(data, **options))


@pytest.fixture
def picture(snapshot: SnapshotAssertion) -> SnapshotAssertion:
    if version("textual") != DRAWN_WITH:
        pytest.skip(f"the pictures were drawn with textual {DRAWN_WITH}")
    return snapshot.use_extension(Picture)


async def drawn(pilot: Pilot[int]) -> str:
    """The screen as an SVG, its cursors still."""
    for field in pilot.app.screen.query(Input):
        field.cursor_blink = False
    await pilot.pause(0.05)
    return pilot.app.export_screenshot(title="pinjoint", simplify=True)


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
class TestEachStep:
    async def test_idealise(
        self, tmp_path: Path, picture: SnapshotAssertion, size: tuple[int, int]
    ) -> None:
        async with Resumed(tmp_path, (("go", {"step": "free body"}),), size) as pilot:
            await deed(pilot, "s")
            await pilot.press("1", "2", "1", "enter")
            assert await drawn(pilot) == picture

    async def test_free_body(
        self, tmp_path: Path, picture: SnapshotAssertion, size: tuple[int, int]
    ) -> None:
        async with Resumed(tmp_path, FREE_BODY, size) as pilot:
            await pilot.press("left")
            assert await drawn(pilot) == picture

    async def test_reactions(
        self, tmp_path: Path, picture: SnapshotAssertion, size: tuple[int, int]
    ) -> None:
        async with Resumed(tmp_path, REACTIONS, size) as pilot:
            await enter_line(pilot, "M A")
            await enter_line(pilot, "B_x*1 - 150*2,4 + B_q = 0")
            assert await drawn(pilot) == picture

    async def test_joints(
        self, tmp_path: Path, picture: SnapshotAssertion, size: tuple[int, int]
    ) -> None:
        async with Resumed(tmp_path, JOINTS, size) as pilot:
            await pilot.press("B", "enter")
            await enter_line(pilot, "F_BC + 360 = 0")
            assert await drawn(pilot) == picture

    async def test_close_and_table(
        self,
        tmp_path: Path,
        picture: SnapshotAssertion,
        size: tuple[int, int],
        monkeypatch: pytest.MonkeyPatch,
    ) -> None:
        monkeypatch.setattr("tutor.screens.closing.time_in_words", lambda _: "under a minute")
        async with Resumed(tmp_path, JOINTS, size) as pilot:
            await pilot.press("B", "enter")
            await enter_line(pilot, "12/13 F_BC + 360 = 0")
            await enter_line(pilot, "BC = 390 C")
            await enter_line(pilot, "Fy")
            await enter_line(pilot, "AB - 5/13*390 = 0")
            await enter_line(pilot, "AB = 150 T")
            await pick(pilot, "C")
            await enter_line(pilot, "AC = 12/13*390")
            await enter_line(pilot, "AC = 360 T")
            assert lesson_of(pilot).state.step == "close"
            assert line_of(pilot).value == ""
            assert await drawn(pilot) == picture(name="close")
            await pick(pilot, "Fy @ C")
            await enter_line(pilot, "5/13*390 - 150 = 0")
            await settle(pilot, lambda: finished(pilot))
            assert await drawn(pilot) == picture(name="table")

    async def test_before_the_walk(
        self, tmp_path: Path, picture: SnapshotAssertion, size: tuple[int, int]
    ) -> None:
        async with opened(tmp_path, settings=Settings(), size=size) as pilot:
            await settle(pilot, lambda: isinstance(pilot.app.screen, CardScreen))
            assert await drawn(pilot) == picture(name="card")
            await pilot.press("1")
            await settle(pilot, lambda: pilot.app.screen is pilot.app.sheet)  # type: ignore[attr-defined]
            await settle(pilot, lambda: LEAD in seen(pilot))
            assert await drawn(pilot) == picture(name="sheet")

    async def test_ones_own_truss_that_moves(
        self, tmp_path: Path, picture: SnapshotAssertion, size: tuple[int, int]
    ) -> None:
        async with drawing(tmp_path, size) as pilot:
            await enter(pilot, "A 0 0 B 3 0 C 3 3 D 0 3; ABCDA; A pin B roller; C 3 right")
            assert await drawn(pilot) == picture

    async def test_a_homework_that_goes_wrong(
        self, tmp_path: Path, picture: SnapshotAssertion, size: tuple[int, int]
    ) -> None:
        async with checking(tmp_path, size=size) as pilot:
            await fill(pilot, ["-360", "150", "360", "150 C", "360 T", "390 C"])
            await check(pilot)
            await by_letter(pilot, "h")
            assert await drawn(pilot) == picture(name="said")
            await by_letter(pilot, "f")
            assert await drawn(pilot) == picture(name="picture")


async def test_the_light_colours(tmp_path: Path, picture: SnapshotAssertion) -> None:
    async with Resumed(tmp_path, JOINTS, (120, 40)) as pilot:
        pilot.app.theme = "light"
        await pilot.press("B", "enter")
        assert walk_of(pilot).has_class("-two")
        assert await drawn(pilot) == picture

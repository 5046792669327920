"""Is what matters in sight in a small window: the picture, what was said, and the set looked for?"""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
from pressing import (
    SETS,
    deed,
    enter_line,
    lesson_of,
    opened,
    press,
    seen,
    settle,
    walk_of,
    walking,
)
from resuming import JOINTS, Resumed, said
from textual.widgets import OptionList

from tutor.lesson import Say
from tutor.screens.brief import MANY, brief
from tutor.screens.dialogs.large import Large
from tutor.screens.dialogs.told import Told
from tutor.screens.widgets.figure_pane import Drawing
from tutor.screens.widgets.reply_pane import ReplyPane

SOME_SETS = tuple(SETS / name for name in ("components", "held", "compound"))
ROOM_FOR_TITLE = 70
LEAST_ROWS = 8
"""So many rows has a picture at 80 by 24, however long the answers are to choose from."""


class TestAPicture:
    @pytest.mark.parametrize("way", [(), JOINTS], ids=["first question", "joints"])
    async def test_has_room_in_a_small_window(
        self, tmp_path: Path, way: tuple[tuple[str, dict[str, object]], ...]
    ) -> None:
        async with Resumed(tmp_path, way or (("hint", {}),)) as pilot:
            drawing = walk_of(pilot).query_one("#figure Drawing", Drawing)
            assert drawing.size.height >= LEAST_ROWS
            assert drawing.size.width >= 44

    async def test_has_the_whole_window_where_that_is_wanted_and_gives_it_back(
        self, tmp_path: Path
    ) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            await pilot.press("A", "enter")
            await deed(pilot, "v")
            await settle(pilot, lambda: isinstance(pilot.app.screen, Large))
            assert pilot.app.screen.query_one(Drawing).size.height >= 20
            assert "Joint A, cut free (1 of 2)" in seen(pilot)
            await pilot.press("right")
            assert "The whole truss (2 of 2)" in seen(pilot)
            await pilot.press("enter")
            await settle(pilot, lambda: pilot.app.screen is walk_of(pilot))
            assert "The whole truss (2 of 2" in seen(pilot)
            assert pilot.app.focused is walk_of(pilot).line
            await enter_line(pilot, "large")
            await settle(pilot, lambda: isinstance(pilot.app.screen, Large))

    async def test_is_enlarged_by_a_click(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            await pilot.click("#figure")
            await settle(pilot, lambda: isinstance(pilot.app.screen, Large))
            await pilot.click("#large-title")
            await settle(pilot, lambda: pilot.app.screen is walk_of(pilot))


class TestWhatWasSaid:
    def test_is_told_whole_until_much_was_written_at_the_board(self) -> None:
        for count in range(6):
            told = [Say(tone, f"{tone} {n}") for n in range(count) for tone in ("shown", "note")]
            end = Say("note", "what comes next")
            if count < MANY:
                assert brief([*told, end]) == (*told, end)
            else:
                first, *rest = brief([*told, end])
                assert first.tone == "shown"
                assert first.text.startswith(f"{count} things are written")
                assert rest == [end]

    async def test_fits_where_everything_up_to_a_step_is_shown_and_can_be_read_whole(
        self, tmp_path: Path
    ) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            await enter_line(pilot, "show until joints")
            await settle(pilot, lambda: lesson_of(pilot).state.step == "joints")
            reply = walk_of(pilot).query_one("#reply")
            await settle(pilot, lambda: "Next: the joints" in said(pilot))
            await settle(pilot, lambda: reply.max_scroll_y == 0)
            await enter_line(pilot, "again")
            await settle(pilot, lambda: isinstance(pilot.app.screen, Told))
            assert "Two-force members" in pilot.app.screen.text  # type: ignore[attr-defined]
            assert "B_x = 360" in pilot.app.screen.text  # type: ignore[attr-defined]

    async def test_is_said_again_a_hint_with_the_verdict_before_it(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            await enter_line(pilot, "again")
            assert "Nothing was answered yet" in said(pilot)
            await pilot.press("A", "enter")
            await enter_line(pilot, "Fx: AC = 1")
            verdict = said(pilot)
            assert "wrong" in verdict
            await deed(pilot, "h")
            hint = said(pilot)
            await enter_line(pilot, "ask")
            assert said(pilot) not in (verdict, hint)
            await enter_line(pilot, "again")
            for each in (verdict, hint):
                assert " ".join(each.split()) in " ".join(said(pilot).split())


class TestTheList:
    async def test_goes_from_set_to_set(self, tmp_path: Path) -> None:
        async with opened(tmp_path, *SOME_SETS) as pilot:
            rows = pilot.app.screen.query_one(OptionList)
            headings = [i for i in range(rows.option_count) if rows.get_option_at_index(i).disabled]
            assert len(headings) == len(SOME_SETS)
            for heading in headings[1:]:
                await pilot.press("right")
                assert rows.highlighted == heading + 1
            await pilot.press("right")
            assert rows.highlighted == headings[-1] + 1
            await pilot.press("down", "left")
            assert rows.highlighted == headings[-1] + 1
            await pilot.press("left")
            assert rows.highlighted == headings[-2] + 1
            await pilot.pause()
            assert str(rows.get_option_at_index(headings[-2]).prompt)[:20] in seen(pilot)

    async def test_shows_the_title_of_each_set_whole_and_says_of_the_numbers_beside_it(
        self, tmp_path: Path
    ) -> None:
        for file in SETS.glob("*/set.toml"):
            assert len(tomllib.loads(file.read_text("utf-8"))["title"]) <= ROOM_FOR_TITLE
        async with opened(tmp_path, *SOME_SETS) as pilot:
            rows = pilot.app.screen.query_one(OptionList)
            assert rows.scrollable_content_region.width >= ROOM_FOR_TITLE
            for folder in SOME_SETS:
                title = tomllib.loads((folder / "set.toml").read_text("utf-8"))["title"]
                assert title in [str(row.prompt) for row in rows.options]
            detail = pilot.app.screen.query_one("#detail")
            read = [seen(pilot)]
            while "--student" not in read[-1] and len(read) < 9:
                await pilot.press("space")
                read.append(seen(pilot))
            assert "--student" in read[-1]
            while detail.scroll_offset.y and len(read) < 18:
                await pilot.press("space")
                read.append(seen(pilot))
            assert read[-1] == read[0]


async def test_a_reply_that_does_not_fit_says_what_is_below_and_every_row_is_read_by_the_key(
    tmp_path: Path,
) -> None:
    async with walking(tmp_path, "bell-frame") as pilot:
        await deed(pilot, "w")
        await pilot.press("enter")
        await settle(pilot, lambda: "more rows below: page down" in seen(pilot))
        pane = walk_of(pilot).query_one(ReplyPane)
        said = [str(say.text) for say in walk_of(pilot).said]
        read = ""
        for _ in range(20):
            part = pane.region
            rows = seen(pilot).split("\n")[part.y : part.bottom]
            read += " ".join(rows) + " "
            if "the end; what stands above: page up" in read:
                break
            await press(pilot, "pagedown")
            await pilot.pause()
        words = set(read.split())
        assert {word for text in said for word in text.split()} <= words

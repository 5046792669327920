"""Do keys that arrive at once, and lines pasted at once, come to what they would one by one?"""

from __future__ import annotations

import threading
from pathlib import Path
from typing import Any

import pytest
from pressing import (
    FIRST,
    finished,
    lesson_of,
    line_of,
    make_app,
    opened,
    press,
    seen,
    settle,
    walk_of,
)
from resuming import CLOSE, FREE_BODY, JOINTS, REACTIONS, Resumed, said
from textual import events
from textual.pilot import Pilot
from textual.widgets import Input

from tutor.judge import M
from tutor.screens import opening
from tutor.screens.sheet import SheetScreen
from tutor.screens.walk import WalkScreen
from tutor.screens.widgets.action_bar import ActionBar
from tutor.screens.widgets.choices import Choices
from tutor.session import Session, open_session

ENTER = "enter"


def keys(text: str) -> list[str]:
    """The keys of a text; a line end is enter."""
    return [ENTER if char == "\n" else char for char in text]


async def burst(pilot: Pilot[int], *names: str) -> None:
    """Post these keys before any of them can act, as one read of a terminal does."""
    for name in names:
        pilot.app.post_message(events.Key(name, name if len(name) == 1 else None))
    await settle(pilot, lambda: not pilot.app.typed.busy)  # type: ignore[attr-defined]


async def paste(pilot: Pilot[int], text: str, lines: int) -> None:
    """Paste a text and wait until so many lines were taken."""
    before = len(lesson_of(pilot).events)
    pilot.app.post_message(events.Paste(text))
    await settle(pilot, lambda: len(lesson_of(pilot).events) >= before + lines)
    await pilot.pause()


def texts(pilot: Pilot[int]) -> list[str]:
    """The lines typed in the lesson, as they were judged."""
    return [str(e.data["text"]) for e in lesson_of(pilot).events if e.kind == "type"]


class TestKeysWhileAProblemOpens:
    async def test_wait_for_it_and_do_nothing_on_the_list_below(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        typed = threading.Event()

        def slow(*args: Any) -> Session:
            typed.wait(20)
            return open_session(*args)

        monkeypatch.setattr(opening, "open_session", slow)
        app = make_app(tmp_path, FIRST / "lamp-arm.toml")
        async with app.run_test() as pilot:
            await settle(pilot, lambda: isinstance(app.screen, SheetScreen))
            for name in keys("show\n"):  # o would draw a truss of one's own, s show the skills
                pilot.app.post_message(events.Key(name, name if len(name) == 1 else None))
            await pilot.pause(0.1)
            assert isinstance(app.screen, SheetScreen)
            typed.set()
            await settle(pilot, lambda: isinstance(app.screen, WalkScreen))
            await settle(pilot, lambda: bool(lesson_of(pilot).events))
            assert [e.kind for e in lesson_of(pilot).events] == ["show"]
            assert app.screen is walk_of(pilot)


class TestKeysInOneRead:
    async def test_empty_the_line_before_the_text_that_follows(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await burst(pilot, *keys("garbage"))
            await burst(pilot, "ctrl+u", *keys("B_q = 3"))
            assert line_of(pilot).value == "B_q = 3"
            await burst(pilot, "ctrl+u", *keys("Fx: B_x = A_x\n"))
            assert texts(pilot)[-1] == "Fx: B_x = A_x"
            assert line_of(pilot).value == ""

    async def test_are_a_word_where_numbers_are_asked_for(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, FREE_BODY[:1]) as pilot:
            await burst(pilot, *keys("show\n"))
            assert [e.kind for e in lesson_of(pilot).events] == ["reasons", "show"]
            assert line_of(pilot).value == ""

    async def test_are_lines_one_after_the_other(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await burst(pilot, *keys("M A: B_x = 360\nB_x = 360\nFx: A_x = B_x\nA_x = 360\n"))
            assert texts(pilot)[-4:] == [
                "M A: B_x = 360",
                "B_x = 360",
                "Fx: A_x = B_x",
                "A_x = 360",
            ]
            assert set(lesson_of(pilot).state.result) == {"A_x", "B_x"}

    async def test_that_were_typed_ahead_of_a_choice_go_into_the_line(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS[:-1]) as pilot:
            await burst(pilot, *keys("A_y = 150\nB\nFx: B_x + 12/13 F_BC = 0\n"))
            assert lesson_of(pilot).state.joint == "B"
            assert texts(pilot)[-1] == "Fx: B_x + 12/13 F_BC = 0"
            assert lesson_of(pilot).state.tries[-1].verdict == "right"

    async def test_behind_a_word_that_asks_something_go_into_the_line_and_choose_nothing(
        self, tmp_path: Path
    ) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            before = len(lesson_of(pilot).events)
            await burst(pilot, *keys("zero AB\njoint B\nassume\nfx: B_x + 12/13 F_BC = 0\n"))
            await settle(pilot, lambda: pilot.app.screen is walk_of(pilot))
            events_since = lesson_of(pilot).events[before:]
            assert [event.kind for event in events_since if event.kind != "choose"] == [
                "joint",
                "type",
            ]
            assert lesson_of(pilot).state.joint == "B"

    async def test_that_were_typed_before_the_table_was_seen_do_nothing_there(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        monkeypatch.chdir(tmp_path)
        async with Resumed(tmp_path / "kept", CLOSE) as pilot:
            await burst(pilot, *keys("Fx: 360 - 360 = 0\nsin ab = q\n"))
            await settle(pilot, lambda: finished(pilot))
            assert pilot.app.screen_stack[-2] is walk_of(pilot)
            await press(pilot, "b")
            assert pilot.app.screen is walk_of(pilot)
        assert [path.name for path in tmp_path.iterdir()] == ["kept"]

    async def test_of_enters_answer_no_question_that_was_not_seen_when_they_were_pressed(
        self, tmp_path: Path
    ) -> None:
        async with Resumed(tmp_path, FREE_BODY[:1]) as pilot:
            await burst(pilot, *keys("show\n\n\n\n"))
            assert [e.kind for e in lesson_of(pilot).events] == ["reasons", "show"]
            await press(pilot, ENTER)
            assert [e.kind for e in lesson_of(pilot).events] == ["reasons", "show", "show"]
        async with Resumed(tmp_path / "joints", JOINTS[:-1]) as pilot:
            before = len(lesson_of(pilot).events)
            await burst(pilot, *keys("A_y = 150\n\n\n"))
            assert len(lesson_of(pilot).events) == before + 1
            assert lesson_of(pilot).ask.kind == "joint"


class TestPastedLines:
    async def test_go_into_the_line_from_wherever_the_focus_is(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, FREE_BODY[:2]) as pilot:
            assert isinstance(pilot.app.focused, Choices)
            await paste(pilot, "4\n1 2\n", 2)
            assert lesson_of(pilot).state.supports_done == ("A",)
            await pilot.press("escape")
            pilot.app.post_message(events.Paste("2 4"))
            await settle(pilot, lambda: line_of(pilot).value == "2 4")
            assert pilot.app.focused is line_of(pilot)

    async def test_that_a_page_broke_are_taken_as_one(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await paste(pilot, "M A: 1*B_x\n- 2.4*150 = 0\n\nB_x = 360\n", 2)
            assert texts(pilot)[-2:] == ["M A: 1*B_x - 2.4*150 = 0", "B_x = 360"]
            assert [t.verdict for t in lesson_of(pilot).state.tries[-2:]] == ["right", "right"]

    async def test_are_each_answered_in_turn(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await paste(pilot, "M A: B_x = 360\nB_x = 350\r\nB_x = 360\n", 3)
            verdicts = [t.verdict for t in lesson_of(pilot).state.tries[-3:]]
            assert verdicts == ["right", "wrong", "right"]
            answers = said(pilot)
            assert answers.index("B_x = 350") < answers.index("wrong") < answers.rindex("B_x = 360")
            assert "B_x = 360 N" in seen(pilot)

    async def test_begin_behind_what_stands_in_the_line(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await press(pilot, *keys("M_A:"))
            await paste(pilot, " B_x = 360\nB_x = 360\n", 2)
            assert texts(pilot)[-2:] == ["M_A: B_x = 360", "B_x = 360"]

    @pytest.mark.parametrize("end", ["B_x = 350", "B_x = 3\n50"])
    async def test_wait_for_enter_with_the_last_where_it_has_no_end(
        self, tmp_path: Path, end: str
    ) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            before = len(texts(pilot))
            await paste(pilot, f"M A: B_x = 360\n{end}", 1)
            await settle(pilot, lambda: line_of(pilot).value != "")
            last = end.rpartition("\n")[2]
            assert line_of(pilot).value == last
            assert texts(pilot)[before:] == ["M A: B_x = 360", *end.splitlines()[:-1]]
            assert pilot.app.focused is line_of(pilot)
            await press(pilot, "backspace", "backspace", "6", "0", "enter")
            assert texts(pilot)[-1] == last[:-2] + "60"

    async def test_that_are_one_line_broken_by_a_page_wait_as_one(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            before = len(texts(pilot))
            pilot.app.post_message(events.Paste("M A: 1*B_x\n- 2.4*150 = 0"))
            await settle(pilot, lambda: line_of(pilot).value == "M A: 1*B_x - 2.4*150 = 0")
            assert len(texts(pilot)) == before

    async def test_of_one_line_wait_for_enter(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            pilot.app.post_message(events.Paste("B_x = 360\n"))
            await pilot.pause()
            assert line_of(pilot).value == "B_x = 360"


class TestTheBar:
    async def test_takes_no_hint_for_a_space_or_enter(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            for key in ("space", "enter"):
                await press(pilot, "escape")
                assert isinstance(pilot.app.focused, ActionBar)
                await press(pilot, key)
                assert pilot.app.focused is line_of(pilot)
            assert len(lesson_of(pilot).events) == len(REACTIONS)

    async def test_sends_other_characters_back_to_the_line(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await press(pilot, "escape", *keys("B_x = 3"))
            assert line_of(pilot).value == "B_x = 3"
            assert pilot.app.focused is line_of(pilot)

    async def test_gives_the_line_the_focus_after_a_deed(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            await press(pilot, *keys("joint B\n"))
            for letter in ("f", "h"):
                await press(pilot, "escape", letter)
                assert pilot.app.focused is line_of(pilot), letter
            await press(pilot, "escape", "a")
            await pilot.pause(0.1)
            await press(pilot, "escape")
            await pilot.pause(0.1)
            assert pilot.app.focused is line_of(pilot)

    async def test_keeps_its_height_whatever_it_offers(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            heights = {pilot.app.screen.query_one(ActionBar).size.height}
            await press(pilot, *keys("M A: B_x = 360\n"))
            heights.add(pilot.app.screen.query_one(ActionBar).size.height)
            await press(pilot, *keys("B_x = 360\n"), "escape")
            heights.add(pilot.app.screen.query_one(ActionBar).size.height)
            assert len(heights) == 1

    async def test_has_its_rows_below_each_other_and_about_as_long(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            bar = pilot.app.screen.query_one(ActionBar)
            rows = bar.render().plain.split("\n")
            assert [row.startswith("Esc, then  ") for row in rows] == [True, False]
            assert bar.size.height == len(rows)
            assert len(rows[1]) - len(rows[1].lstrip()) == len("Esc, then  ")
            assert abs(len(rows[0]) - len(rows[1])) < 16

    async def test_of_the_list_is_one_row_at_80_columns(self, tmp_path: Path) -> None:
        async with opened(tmp_path) as pilot:
            bar = pilot.app.screen.query_one(ActionBar)
            assert bar.size.height == 1
            assert bar.render().plain.startswith("Esc, then  ")
            assert bar.render().plain.endswith("q leave")


class TestWordsInTheLine:
    async def test_do_their_deed_at_a_question_with_boxes(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, FREE_BODY[:2]) as pilot:
            assert isinstance(pilot.app.focused, Choices)
            await press(pilot, *keys("hint\n"))
            assert lesson_of(pilot).events[-1].kind == "hint"
            assert isinstance(pilot.app.focused, Choices)

    async def test_do_their_deed_from_a_field_for_numbers(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, FREE_BODY[:1]) as pilot:
            assert isinstance(pilot.app.focused, Input)
            await press(pilot, *keys("3hint\n"))
            assert lesson_of(pilot).events[-1].kind == "hint"
            assert walk_of(pilot).query("Counts Input").first(Input).value == "3"

    async def test_are_completed_by_tab(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            await press(pilot, *keys("joi"), "tab", *keys(" B\n"))
            assert lesson_of(pilot).state.joint == "B"

    async def test_choose_the_equation_of_a_number(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await press(pilot, "3", ENTER)
            assert lesson_of(pilot).ask.about == M("A")

    async def test_behind_a_wrong_line_do_their_deed_and_leave_it(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            wrong = "Fx: B_x + A_x = 0"
            await press(pilot, *keys(wrong + "\n"), *keys(" hint\n"))
            assert lesson_of(pilot).events[-1].kind == "hint"
            assert line_of(pilot).value == wrong
            assert texts(pilot)[-1] == wrong

    async def test_bring_a_wrong_line_back_where_a_hint_points_into_it(
        self, tmp_path: Path
    ) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await press(pilot, *keys("Fx: B_x + A_x = 0\n"))
            assert line_of(pilot).value == "Fx: B_x + A_x = 0"
            await press(pilot, "ctrl+u", *keys("hint\n"))
            assert lesson_of(pilot).events[-1].kind == "hint"
            assert pilot.app.focused is line_of(pilot)


class TestTickedBoxes:
    async def test_are_handed_in_by_the_mouse(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, FREE_BODY[:2]) as pilot:
            for mark in ("1", "2"):
                await press(pilot, mark)
            rows = seen(pilot).split("\n")
            y = next(i for i, row in enumerate(rows) if "d done" in row)
            await pilot.click(offset=(rows[y].index("d done") + 2, y))
            await pilot.pause()
            assert lesson_of(pilot).state.supports_done == ("A",)

    async def test_are_ticked_by_numbers_with_spaces_between(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, FREE_BODY[:2]) as pilot:
            await press(pilot, "1", "space", "2", ENTER)
            assert lesson_of(pilot).state.supports_done == ("A",)


@pytest.mark.parametrize("at_once", [True, False])
async def test_a_number_typed_ahead_of_its_question_chooses_there_and_joins_no_line(
    at_once: bool, tmp_path: Path
) -> None:
    async with Resumed(tmp_path, JOINTS[:-1]) as pilot:
        ahead = keys("A_y = 150\n2\n12/13 F_BC + 360 = 0\n")
        await (burst if at_once else press)(pilot, *ahead)
        await settle(pilot, lambda: line_of(pilot).value == "")
        state = lesson_of(pilot).state
        assert state.joint == "B"
        assert state.tries[-1].text == "12/13 F_BC + 360 = 0"

"""What happens to the line being typed, and is it kept before the screen answers?"""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from pressing import (
    enter_line,
    lesson_of,
    line_of,
    press_event,
    seen,
    type_text,
    walking,
)
from resuming import FREE_BODY, JOINTS, REACTIONS, Resumed, said
from textual.pilot import Pilot

from tutor.judge import Fy
from tutor.lesson import Event
from tutor.screens.walk import WalkScreen


def boxes(pilot: Pilot[int]) -> list[str]:
    """The rows of the boxes to be ticked."""
    return [row for row in seen(pilot).split("\n") if "[ ]" in row or "[x]" in row]


class TestTheLine:
    async def test_has_the_focus_where_a_line_is_asked_for(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            assert pilot.app.focused is line_of(pilot)
            await type_text(pilot, "hqzu?")
            assert line_of(pilot).value == "hqzu?"

    async def test_keeps_a_wrong_text_and_the_focus_for_mending(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await enter_line(pilot, "ΣFy: A_y + 150 = 0")
            assert line_of(pilot).value == "ΣFy: A_y + 150 = 0"
            assert pilot.app.focused is line_of(pilot)
            assert "✗ wrong" in seen(pilot)
            await pilot.press("home", *["right"] * 9, "delete", "-", "enter")
            assert line_of(pilot).value == ""
            assert "✓ right" in said(pilot)

    async def test_typed_right_behind_a_refused_one_takes_its_place(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            wrong = "ΣFy: A_y + 150 = 0"
            await enter_line(pilot, wrong)
            await type_text(pilot, "-150 + A_y")
            assert line_of(pilot).value == "-150 + A_y"
            await pilot.press("up", "enter")
            assert lesson_of(pilot).state.tries[-1].text == wrong
            await pilot.press("backspace", "1")
            assert line_of(pilot).value == wrong[:-1] + "1"
            await pilot.press("backspace", "0", "enter", "space", "k", "N")
            assert line_of(pilot).value == wrong + " kN"

    async def test_typed_behind_a_deed_that_lacks_something_takes_its_place(
        self, tmp_path: Path
    ) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            await enter_line(pilot, "section AC BC")
            assert line_of(pilot).value == "section AC BC"
            await type_text(pilot, "section BC")
            assert line_of(pilot).value == "section BC"
            await pilot.press("enter")
            await type_text(pilot, " AC keep C")
            assert line_of(pilot).value == "section BC AC keep C"

    async def test_typed_behind_a_text_that_meant_nothing_hands_in_no_ticked_boxes(
        self, tmp_path: Path
    ) -> None:
        async with Resumed(tmp_path, FREE_BODY[:2]) as pilot:
            await pilot.press("1", "enter")
            tries = lesson_of(pilot).state.tries
            for text in ("left", "k", "down and right"):
                await type_text(pilot, text)
                await pilot.press("enter")
                assert line_of(pilot).value == text
            assert lesson_of(pilot).state.tries == tries

    async def test_that_meant_nothing_goes_with_the_next_answer_though_this_is_wrong(
        self, tmp_path: Path
    ) -> None:
        async with Resumed(tmp_path, FREE_BODY[:2]) as pilot:
            await enter_line(pilot, "1 2 9")
            assert line_of(pilot).value == "1 2 9"
            await press_event(pilot, "support", {"acts": ["moment"]})
            assert lesson_of(pilot).state.tries[-1].verdict == "wrong"
            assert line_of(pilot).value == ""

    async def test_ticks_the_boxes_it_hands_in(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, FREE_BODY[:2]) as pilot:
            await pilot.press("4")
            await enter_line(pilot, "1 3")
            assert [row.split("]")[0][-1] for row in boxes(pilot)] == ["x", " ", "x", " "]

    async def test_that_is_wrong_comes_back_after_a_word_typed_in_its_place(
        self, tmp_path: Path
    ) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            wrong = "ΣFy: A_y + 150 = 0"
            await enter_line(pilot, wrong)
            await type_text(pilot, "hint")
            await pilot.press("enter")
            assert lesson_of(pilot).events[-1].kind == "hint"
            assert line_of(pilot).value == wrong
            assert "◆ hint" in seen(pilot)
            assert "empty line" not in seen(pilot)
            await pilot.press("escape", "h")
            await type_text(pilot, "Fy: A_y = 150")
            assert line_of(pilot).value == "Fy: A_y = 150"

    async def test_points_under_what_cannot_be_read(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await enter_line(pilot, "Fx")
            await enter_line(pilot, "A_x - B_q = 0")
            rows = seen(pilot).split("\n")
            at = next(i for i, row in enumerate(rows) if "B_q" in row and "›" in row)
            start = rows[at].index("B_q")
            assert rows[at + 1][start : start + 3] == "^^^"
            assert rows[at + 1].strip() == "^^^"
            await pilot.press("x")
            assert "^" not in seen(pilot)

    async def test_points_under_a_long_line_where_it_is_scrolled(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await enter_line(pilot, "Fx")
            await enter_line(pilot, "A_x + " * 30 + "B_q = 0")
            await pilot.press("end")
            await pilot.pause()
            rows = seen(pilot).split("\n")
            at = next(i for i, row in enumerate(rows) if "B_q" in row and "›" in row)
            assert rows[at + 1].index("^") == rows[at].index("B_q")

    async def test_points_at_no_mistake_before_a_hint_has_named_its_place(
        self, tmp_path: Path
    ) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await enter_line(pilot, "ΣFy: A_y + 150 = 0")
            assert "^" not in seen(pilot)

    async def test_brings_back_earlier_lines_and_the_draft(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await enter_line(pilot, "A_x = 1")
            await enter_line(pilot, "A_x = 2")
            line = line_of(pilot)
            line.value = "draft"
            await pilot.press("up")
            assert line.value == "A_x = 2"
            await pilot.press("up")
            assert line.value == "A_x = 1"
            await pilot.press("down", "down")
            assert line.value == "draft"

    async def test_has_the_lines_of_the_last_time_in_its_history(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            assert line_of(pilot).past[-1] == "A_y = 150"

    async def test_names_how_to_choose_when_no_equation_is_chosen(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await enter_line(pilot, "7 A_y - 3 B_x - 190 = 0")
            assert "Type the number of the equation" in " ".join(said(pilot).split())
            assert line_of(pilot).value == "7 A_y - 3 B_x - 190 = 0"

    async def test_is_taken_as_the_only_equation_it_can_be(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await enter_line(pilot, "A_y - 150 = 0")
            assert "Taken as ΣFy of the whole truss." in " ".join(said(pilot).split())
            assert line_of(pilot).value == ""

    @pytest.mark.parametrize("heading", ["Fy", "ΣFy:", "sum Fy", "F_y"])
    async def test_with_a_heading_alone_chooses_the_equation(
        self, tmp_path: Path, heading: str
    ) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await enter_line(pilot, heading)
            assert lesson_of(pilot).ask.about == Fy()
            assert line_of(pilot).value == ""

    async def test_is_in_sight_in_every_size(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await type_text(pilot, "A_x")
            for size in ((80, 24), (120, 40), (59, 24), (40, 16), (80, 14), (200, 60)):
                await pilot.resize_terminal(*size)
                await pilot.pause()
                assert "› A_x" in seen(pilot), size


class TestTheJournal:
    async def test_has_an_event_before_the_screen_answers(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            journal = pilot.app.session.journal  # type: ignore[attr-defined]
            seen_by_disk: list[str] = []
            show = WalkScreen.show

            def showing(self: WalkScreen, *said: object) -> None:
                seen_by_disk.append(journal.path.read_text(encoding="utf-8"))
                show(self, *said)  # type: ignore[arg-type]

            monkeypatch.setattr(WalkScreen, "show", showing)
            await enter_line(pilot, "A_x = 77")
            assert seen_by_disk
            written = [json.loads(line)["event"] for line in seen_by_disk[0].splitlines()]
            assert written[-2]["text"] == "A_x = 77"  # and what came of it behind it

    async def test_that_cannot_be_written_is_told_of_once_and_the_lesson_goes_on(
        self, tmp_path: Path
    ) -> None:
        blocked = tmp_path / "file"
        blocked.write_text("in the way")
        async with walking(blocked, "lamp-arm") as pilot:
            assert "not being saved" in " ".join(said(pilot).split())
            assert "not kept" in seen(pilot).split("\n")[0]
            await press_event(pilot, *FREE_BODY[0])
            assert "not being saved" not in said(pilot)
            assert lesson_of(pilot).state.reasons_done

    async def test_of_a_fault_in_the_judging_holds_no_line_in_the_log(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            lesson = lesson_of(pilot)

            def broken(event: Event) -> None:
                raise RuntimeError(f"A_x is 360: {event}")

            monkeypatch.setattr(lesson, "apply", broken)
            await enter_line(pilot, "A_x = 360 secret")
            assert "could not be checked" in said(pilot)
            assert line_of(pilot).value == "A_x = 360 secret"
            log = (tmp_path / "trouble.log").read_text(encoding="utf-8")
            assert "RuntimeError" in log
            assert "360" not in log
            assert "secret" not in log

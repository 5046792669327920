"""What happens on the walk when a student presses keys? A class for each part of the screen."""

from __future__ import annotations

import json
from collections.abc import AsyncIterator
from pathlib import Path

import pytest
from pressing import (
    FIRST,
    deed,
    enter_line,
    lesson_of,
    line_of,
    load,
    pick,
    press_event,
    seen,
    settle,
    type_text,
    walk_of,
    walking,
)
from textual.pilot import Pilot
from textual.widgets import Input

from tutor.lesson import Event
from tutor.records import Keep, Settings
from tutor.screens.dialogs.choose import Choose
from tutor.screens.dialogs.told import Told
from tutor.screens.sheet import SheetScreen
from tutor.screens.walk import WalkScreen
from tutor.screens.widgets.action_bar import ActionBar
from tutor.screens.widgets.choices import Choices
from tutor.screens.widgets.figure_pane import Drawing, FigurePane
from tutor.screens.widgets.sense_picker import SensePicker
from tutor.session import open_session

FREE_BODY = (
    ("reasons", {"chosen": ["pins", "joints", "weight"]}),
    ("count", {"m": 3, "r": 3, "2j": 6}),
    ("support", {"joint": "A", "acts": ["x", "y"]}),
    ("support", {"joint": "B", "acts": ["x"]}),
)
REACTIONS = (
    *FREE_BODY,
    ("sense", {"unknown": "A_x", "sense": "left"}),
    ("sense", {"unknown": "A_y", "sense": "up"}),
    ("sense", {"unknown": "B_x", "sense": "right"}),
    ("turning", {"positive": "counter-clockwise"}),
)
JOINTS = (
    *REACTIONS,
    ("type", {"text": "ΣM_A: B_x - 360 = 0"}),
    ("type", {"text": "B_x = 360"}),
    ("type", {"text": "ΣFx: B_x - A_x = 0"}),
    ("type", {"text": "A_x = 360"}),
    ("type", {"text": "ΣFy: A_y - 150 = 0"}),
    ("type", {"text": "A_y = 150"}),
)


def kept(folder: Path, events: tuple[tuple[str, dict[str, object]], ...]) -> None:
    """A lesson on the lamp arm with these events, as if done before."""
    session = open_session(load("lamp-arm"), Keep(folder))
    for kind, data in events:
        assert session.do(kind, **data).accepted, (kind, data)
    session.close()


class Resumed:
    """The walk gone on with after some events."""

    def __init__(
        self,
        folder: Path,
        events: tuple[tuple[str, dict[str, object]], ...],
        size: tuple[int, int] = (80, 24),
    ) -> None:
        kept(folder, events)
        self.manager = self.open(folder, size)

    @staticmethod
    async def open(folder: Path, size: tuple[int, int]) -> AsyncIterator[Pilot[int]]:
        from pressing import opened

        async with opened(folder, FIRST / "lamp-arm.toml", size=size) as pilot:
            await settle(pilot, lambda: isinstance(pilot.app.screen, Choose))
            await pilot.press("1")
            await settle(pilot, lambda: isinstance(pilot.app.screen, WalkScreen))
            yield pilot

    async def __aenter__(self) -> Pilot[int]:
        return await anext(self.manager)

    async def __aexit__(self, *error: object) -> None:
        async for _ in self.manager:
            pass


def said(pilot: Pilot[int]) -> str:
    """What is said back on the walk."""
    return str(walk_of(pilot).query_one("#said").render())


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
            await enter_line(pilot, "A_y - 150 = 0")
            assert "Escape, then e" in " ".join(said(pilot).split())
            assert line_of(pilot).value == "A_y - 150 = 0"

    @pytest.mark.parametrize("heading", ["Fy", "ΣFy:", "sum Fy", "F_y"])
    async def test_with_a_heading_alone_chooses_the_equation(
        self, tmp_path: Path, heading: str
    ) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await enter_line(pilot, heading)
            assert lesson_of(pilot).ask.about == "Fy"
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

            def showing(self: WalkScreen, said: object) -> None:
                seen_by_disk.append(journal.path.read_text(encoding="utf-8"))
                show(self, said)  # type: ignore[arg-type]

            monkeypatch.setattr(WalkScreen, "show", showing)
            await enter_line(pilot, "A_x = 77")
            assert seen_by_disk
            assert json.loads(seen_by_disk[0].splitlines()[-1])["event"]["text"] == "A_x = 77"

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


class TestTheBar:
    async def test_takes_the_focus_on_escape_and_gives_it_back(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            assert "Esc, then" in seen(pilot)
            await pilot.press("escape")
            assert isinstance(pilot.app.focused, ActionBar)
            assert "Keys:" in seen(pilot)
            await pilot.press("escape")
            assert pilot.app.focused is line_of(pilot)

    async def test_does_the_deed_under_its_cursor(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await pilot.press("escape")
            bar = walk_of(pilot).query_one(ActionBar)
            place = [d.id for d in bar.deeds].index("help")
            await pilot.press(*["right"] * place, "enter")
            assert isinstance(pilot.app.screen, Told)
            assert "WHAT CAN BE TYPED" in seen(pilot)
            await pilot.press("escape")
            assert pilot.app.focused is line_of(pilot)

    async def test_does_a_deed_that_is_clicked(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            rows = seen(pilot).split("\n")
            y = next(i for i, row in enumerate(rows) if "s steps" in row)
            await pilot.click(offset=(rows[y].index("s steps") + 2, y))
            assert isinstance(pilot.app.screen, Choose)

    async def test_offers_only_what_is_possible(self, tmp_path: Path) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            shown = seen(pilot).split("\n")[-1]
            assert "undo" not in shown
            assert "keep" not in shown
            await deed(pilot, "z")
            assert isinstance(pilot.app.screen, WalkScreen)
            assert not lesson_of(pilot).events

    async def test_chords_do_the_same_while_a_line_is_typed(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await type_text(pilot, "A_x")
            await pilot.press("ctrl+t")
            assert lesson_of(pilot).events[-1].kind == "hint"
            assert line_of(pilot).value == "A_x"
            assert pilot.app.focused is line_of(pilot)


class TestChoosing:
    async def test_several_by_number_and_space(self, tmp_path: Path) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            await pilot.press("2", "down", "down", "space", "6")
            assert seen(pilot).count("[x]") == 3
            await pilot.press("enter")
            assert lesson_of(pilot).state.reasons_done

    async def test_nothing_is_no_answer(self, tmp_path: Path) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            await pilot.press("enter")
            assert not lesson_of(pilot).events
            assert "Mark what holds" in said(pilot)

    async def test_by_the_mouse(self, tmp_path: Path) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            rows = seen(pilot).split("\n")
            y = next(i for i, row in enumerate(rows) if "loads and reactions" in row)
            await pilot.click(offset=(20, y))
            assert "[x] loads and reactions" in seen(pilot)

    async def test_leaves_no_mark_for_the_next_question(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, FREE_BODY[:2]) as pilot:
            await pick(pilot, "x", "y")
            assert lesson_of(pilot).ask.subject == "B"
            assert "[x]" not in seen(pilot)

    async def test_a_joint_by_its_name(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            await pilot.press("C")
            assert lesson_of(pilot).state.joint == "C"
            assert pilot.app.focused is line_of(pilot)

    async def test_an_equation_leads_back_to_the_line_with_its_text(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await type_text(pilot, "A_y")
            await deed(pilot, "e")
            assert isinstance(pilot.app.focused, Choices)
            await pilot.press("2")
            assert lesson_of(pilot).ask.about == "Fy"
            assert pilot.app.focused is line_of(pilot)
            assert line_of(pilot).value == "A_y"


class TestCounting:
    async def test_says_what_was_read_where_it_is_no_number(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, FREE_BODY[:1]) as pilot:
            await pilot.press("3", "tab", "x", "tab", "6", "enter")
            assert "“x” was read for r" in said(pilot)
            assert len(lesson_of(pilot).events) == 1
            assert isinstance(pilot.app.focused, Input)
            assert pilot.app.focused.name == "r"

    async def test_keeps_the_numbers_of_a_wrong_count(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, FREE_BODY[:1]) as pilot:
            await pilot.press("3", "tab", "2", "tab", "6", "enter")
            await pilot.pause()
            values = [i.value for i in walk_of(pilot).query("Counts Input").results(Input)]
            assert values == ["3", "2", "6"]
            assert not lesson_of(pilot).state.count_done


class TestArrows:
    async def test_are_drawn_by_arrow_keys_before_they_are_kept(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, FREE_BODY) as pilot:
            assert isinstance(pilot.app.focused, SensePicker)
            await pilot.press("left")
            assert "←" in seen(pilot)
            assert not lesson_of(pilot).state.senses
            await pilot.press("right", "enter")
            assert lesson_of(pilot).state.senses == {"A_x": "right"}

    async def test_that_cannot_point_that_way_are_said_so(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, FREE_BODY) as pilot:
            await pilot.press("up")
            assert "to the right or to the left" in said(pilot)
            await pilot.press("enter")
            assert "Draw the arrow first" in said(pilot)
            assert not lesson_of(pilot).state.senses

    async def test_of_a_slanting_reaction_follow_either_axis(self, tmp_path: Path) -> None:
        events = (
            ("go", {"step": "free body"}),
            ("support", {"joint": "A", "acts": ["x", "y"]}),
        )
        async with walking(tmp_path, "slipway-cradle") as pilot:
            session = pilot.app.session  # type: ignore[attr-defined]
            problem = session.lesson.problem
            slanting = next(r for r in problem.reactions if r.name.startswith("R_"))
            session.do(*events[0][:1], **events[0][1])
            for support in problem.supports:
                from student import what_acts

                acts = what_acts(problem, support)
                session.do("support", joint=support.joint, acts=acts)
            for reaction in problem.reactions:
                if reaction is not slanting:
                    sense = "right" if reaction.direction.x else "up"
                    session.do("sense", unknown=reaction.name, sense=sense)
            walk_of(pilot).show([])
            await pilot.press("up", "enter")
            up = "along" if slanting.direction.y > 0 else "against"
            assert lesson_of(pilot).state.senses[slanting.name] == up


class TestHints:
    async def test_asked_for_too_soon_leave_the_last_one_in_sight(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await deed(pilot, "h")
            first = said(pilot)
            assert "◆ hint" in first
            await deed(pilot, "h")
            assert first.split("hint")[1].strip() in said(pilot)
            assert "Try it with this hint first" in said(pilot)


class TestSteps:
    async def test_can_be_left_and_come_back_to(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            await deed(pilot, "s")
            await pilot.press("3")
            assert lesson_of(pilot).state.step == "reactions"
            await deed(pilot, "s")
            await pilot.press("4")
            assert lesson_of(pilot).state.step == "joints"

    async def test_are_undone_by_a_key(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, FREE_BODY[:2]) as pilot:
            await deed(pilot, "u")
            assert not lesson_of(pilot).state.count_done
            assert lesson_of(pilot).events[-1].kind == "undo"

    async def test_done_right_twice_may_be_skipped(self, tmp_path: Path) -> None:
        settings = Settings(glyphs="braille", done={"idealise": 2})
        async with walking(tmp_path, "bell-frame", settings=settings) as pilot:
            assert "skip this" in seen(pilot)
            await deed(pilot, "n")
            assert lesson_of(pilot).state.step == "free body"


class TestMembers:
    async def test_without_force_are_stated_with_a_rule(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            await deed(pilot, "z")
            await pick(pilot, "AB")
            await pick(pilot, "two")
            assert lesson_of(pilot).events[-1].data == {"member": "AB", "rule": "two"}
            assert "✗ wrong" in said(pilot)

    async def test_are_drawn_pushing_where_the_student_says_so(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            await deed(pilot, "a")
            await pick(pilot, "BC C")
            assert lesson_of(pilot).state.senses["BC"] == "C"


class TestThePicture:
    async def test_is_one_key_away_in_a_narrow_window(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS, size=(50, 24)) as pilot:
            figure = walk_of(pilot).query_one("#figure", FigurePane)
            assert not figure.region
            await deed(pilot, "f")
            await pilot.pause()
            assert figure.region.width == 50
            await deed(pilot, "f")
            await pilot.pause()
            assert not figure.region

    async def test_goes_round_from_the_joint_to_the_truss(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            await pilot.press("A")
            assert "Joint A, cut free" in seen(pilot)
            await deed(pilot, "f")
            assert "The whole truss" in seen(pilot)
            await deed(pilot, "f")
            assert "Joint A, cut free" in seen(pilot)

    async def test_stands_beside_the_truss_in_a_wide_window(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS, size=(120, 40)) as pilot:
            await pilot.press("A")
            await pilot.pause()
            shown = seen(pilot)
            assert "Joint A, cut free" in shown
            assert "The whole truss" in shown

    async def test_in_words_says_the_same(self, tmp_path: Path) -> None:
        settings = Settings(glyphs="words")
        async with walking(tmp_path, "lamp-arm", settings=settings) as pilot:
            drawing = walk_of(pilot).query_one("#figure Drawing", Drawing)
            assert drawing.glyphs == "words"
            assert "The truss has three joints" in " ".join(seen(pilot).split()) or (
                "The truss has 3 joints" in " ".join(seen(pilot).split())
            )


class TestLeaving:
    async def test_says_that_everything_is_kept(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await deed(pilot, "q")
            await settle(pilot, lambda: isinstance(pilot.app.screen, SheetScreen))
            assert "Everything you did is kept" in " ".join(seen(pilot).split())
            await settle(pilot, lambda: "at the reactions" in seen(pilot))

    async def test_by_a_signal_or_ctrl_q_ends_at_once(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await type_text(pilot, "A_x")
            await pilot.press("ctrl+q")
            assert pilot.app.return_value == 0

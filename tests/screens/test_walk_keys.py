"""What happens on the walk when a student presses keys? A class for each part of the screen."""

from __future__ import annotations

from pathlib import Path

import pytest
from pressing import (
    FIRST,
    deed,
    finished,
    lesson_of,
    line_of,
    opened,
    pick,
    seen,
    settle,
    shows,
    type_text,
    walk_of,
    walking,
)
from resuming import FREE_BODY, JOINTS, REACTIONS, Resumed, kept, said
from textual.widgets import Input

from tutor.judge import Fy
from tutor.records import Settings
from tutor.screens.dialogs.choose import Choose
from tutor.screens.dialogs.told import Told
from tutor.screens.sheet import SheetScreen
from tutor.screens.walk import WalkScreen
from tutor.screens.widgets.action_bar import ActionBar
from tutor.screens.widgets.choices import Choices
from tutor.screens.widgets.counts import Count, Counts
from tutor.screens.widgets.figure_pane import Drawing, FigurePane
from tutor.screens.widgets.lines_pane import given_lines
from tutor.screens.widgets.sense_picker import SensePicker

MOST_PRESSES = 8
"""From opening a problem to its first equation, where the steps before it may be skipped."""


class TestTheBar:
    async def test_takes_the_focus_on_escape_and_gives_it_back(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            assert "Esc, then" in seen(pilot)
            await pilot.press("escape")
            assert isinstance(pilot.app.focused, ActionBar)
            assert "Keys:" in seen(pilot)
            await pilot.press("escape")
            assert pilot.app.focused is line_of(pilot)

    async def test_names_escape_wherever_a_letter_alone_goes_into_the_line(
        self, tmp_path: Path
    ) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            assert isinstance(pilot.app.focused, Choices)
            assert "Esc, then" in seen(pilot)
            await pilot.press("h")
            assert line_of(pilot).value == "h"
            assert not lesson_of(pilot).events
        async with walking(tmp_path / "alt", "lamp-arm") as pilot:
            await pilot.press("alt+w")
            assert line_of(pilot).value == ""
            assert [event.kind for event in lesson_of(pilot).events] == ["show"]

    async def test_does_the_deed_under_its_cursor(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await pilot.press("escape")
            bar = walk_of(pilot).query_one(ActionBar)
            place = [d.id for d in bar.deeds].index("help")
            await pilot.press(*["right"] * (place + 1), "enter")
            assert isinstance(pilot.app.screen, Told)
            assert "WHAT CAN BE TYPED" in seen(pilot)
            await pilot.press("escape")
            assert pilot.app.focused is line_of(pilot)

    async def test_gives_a_character_of_no_deed_to_the_line_and_to_no_field_of_numbers(
        self, tmp_path: Path
    ) -> None:
        async with Resumed(tmp_path, FREE_BODY[:1]) as pilot:
            await pilot.press("escape", "g", "2")
            assert line_of(pilot).value == "g2"
            assert not any(field.value for field in walk_of(pilot).query(Count))

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

    async def test_a_letter_typed_fast_behind_escape_does_the_same(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await type_text(pilot, "A_x")
            await pilot.press("alt+s")
            assert isinstance(pilot.app.screen, Choose)
            await pilot.press("escape")
            assert line_of(pilot).value == "A_x"
        async with Resumed(tmp_path / "counts", FREE_BODY[:1]) as pilot:
            await pilot.press("3", "alt+question_mark")
            assert isinstance(pilot.app.screen, Told)
            await pilot.press("escape")
            assert walk_of(pilot).query("Counts Input").first(Input).value == "3"

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
            await pilot.press("2", "down", "down", "down", "space", "6")
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
            await pilot.press("C", "enter")
            assert lesson_of(pilot).state.joint == "C"
            assert pilot.app.focused is line_of(pilot)

    async def test_an_equation_leads_back_to_the_line_with_its_text(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await type_text(pilot, "A_y")
            await deed(pilot, "e")
            assert isinstance(pilot.app.focused, Choices)
            await pilot.press("2")
            assert lesson_of(pilot).ask.about == Fy()
            assert pilot.app.focused is line_of(pilot)
            assert line_of(pilot).value == "A_y"


class TestCounting:
    async def test_says_what_was_read_where_it_is_no_number(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, FREE_BODY[:1]) as pilot:
            await pilot.press("3", "tab", "minus", "tab", "6", "enter")
            assert "“-” was read for r" in said(pilot)
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

    async def test_takes_all_three_typed_into_one_field(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, FREE_BODY[:1]) as pilot:
            await pilot.press("3", "space", "4", "enter")
            assert "“3 4” was read for m" in said(pilot)
            await pilot.press("ctrl+u", "3", "space", "3", "space", "6", "enter")
            assert lesson_of(pilot).state.count_done


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

    async def test_of_a_known_kind_is_eight_presses_from_its_first_equation_at_most(
        self, tmp_path: Path
    ) -> None:
        done = Settings(glyphs="braille", done={"idealise": 2, "free body": 2})
        async with opened(tmp_path, FIRST, settings=done) as pilot:
            pressed = 0

            async def one(key: str) -> None:
                nonlocal pressed
                pressed += 1
                await pilot.press(key)

            await one("enter")
            await settle(pilot, lambda: shows(pilot, WalkScreen))
            assert "k skip" in seen(pilot)
            await one("escape")
            await one("k")
            assert lesson_of(pilot).ask.kind == "line"
            assert pilot.app.focused is line_of(pilot)
            assert pressed <= MOST_PRESSES

    async def test_done_right_twice_may_be_skipped(self, tmp_path: Path) -> None:
        settings = Settings(glyphs="braille", done={"idealise": 2})
        async with walking(tmp_path, "bell-frame", settings=settings) as pilot:
            assert "k skip" in seen(pilot)
            await deed(pilot, "k")
            assert lesson_of(pilot).state.step == "free body"

    async def test_both_first_steps_at_once(self, tmp_path: Path) -> None:
        settings = Settings(glyphs="braille", done={"idealise": 2, "free body": 3})
        async with walking(tmp_path, "bell-frame", settings=settings) as pilot:
            await deed(pilot, "k")
            assert lesson_of(pilot).state.step == "reactions"


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
            await pilot.press("A", "enter")
            assert "Joint A, cut free" in seen(pilot)
            await deed(pilot, "f")
            assert "The whole truss" in seen(pilot)
            await deed(pilot, "f")
            assert "Joint A, cut free" in seen(pilot)

    async def test_stands_beside_the_truss_in_a_wide_window(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS, size=(120, 40)) as pilot:
            await pilot.press("A", "enter")
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


class TestAFinishedWalk:
    async def test_opens_with_its_table(self, tmp_path: Path) -> None:
        events = (
            *JOINTS,
            ("joint", {"joint": "B"}),
            ("type", {"text": "12/13 F_BC + 360 = 0"}),
            ("type", {"text": "BC = 390 C"}),
            ("type", {"text": "ΣFy: AB - 5/13*390 = 0"}),
            ("type", {"text": "AB = 150 T"}),
            ("joint", {"joint": "C"}),
            ("type", {"text": "ΣFx: AC = 12/13*390"}),
            ("type", {"text": "AC = 360 T"}),
            ("choose", {"about": "Fy @ C"}),
            ("type", {"text": "5/13*390 - 150 = 0"}),
        )
        kept(tmp_path, events)
        async with opened(tmp_path, FIRST / "lamp-arm.toml") as pilot:
            await settle(pilot, lambda: "Look at the finished walk" in seen(pilot))
            await pilot.press("1")
            await settle(pilot, lambda: finished(pilot))
            await pilot.press("b", "u")
            await pilot.pause()
            assert lesson_of(pilot).state.step == "close"


class TestTheCounts:
    async def test_are_mended_in_the_field_that_is_wrong_also_after_a_hint(
        self, tmp_path: Path
    ) -> None:
        async with Resumed(tmp_path, FREE_BODY[:1]) as pilot:
            await pilot.press("3", "enter", "4", "enter", "6", "enter")
            wrong = pilot.app.focused
            assert isinstance(wrong, Count)
            assert wrong.name == "r"
            await pilot.press("5")
            assert wrong.value == "5"
            await pilot.press("enter")
            await deed(pilot, "h")
            assert pilot.app.focused is wrong
            await pilot.press("3", "enter")
            assert [t.verdict for t in lesson_of(pilot).state.tries][-3:] == [
                "wrong",
                "wrong",
                "right",
            ]


class TestAWindowOfMembers:
    async def test_goes_to_the_member_that_is_typed_in_either_order(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            await deed(pilot, "z")
            offered = pilot.app.screen.query_one(Choices)
            last = offered.choices[-1].key
            await pilot.press(*last)
            assert offered.choices[offered.cursor].key == last
            first = offered.choices[0].key
            await pilot.press("left", *reversed(first))
            assert offered.choices[offered.cursor].key == first
            await pilot.press("enter")
            assert first in pilot.app.screen.query_one("#box").border_title


class TestADeedOftenRepeated:
    async def test_is_done_once_more_by_enter_on_the_empty_line_until_something_else_is_done(
        self, tmp_path: Path
    ) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            await deed(pilot, "w")
            assert "Press enter to watch the next one." in seen(pilot)
            await pilot.press("enter", "enter")
            assert [event.kind for event in lesson_of(pilot).events] == ["show"] * 3

    @pytest.mark.parametrize("way", ["key", "word"])
    async def test_a_guess_is_followed_by_what_was_guessed_on_enter(
        self, way: str, tmp_path: Path
    ) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            await deed(pilot, "w")
            await pilot.press("enter")
            assert lesson_of(pilot).ask.kind == "support"
            if way == "key":
                await deed(pilot, "g")
                await pilot.press("1")
            else:
                await type_text(pilot, "guess 1")
                await pilot.press("enter")
            assert lesson_of(pilot).events[-1].kind == "guess"
            assert "Press enter to have it written." in seen(pilot)
            await pilot.press("enter")
            assert lesson_of(pilot).events[-1].kind == "show"

    async def test_is_no_longer_done_by_enter_once_it_was_taken_back(self, tmp_path: Path) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            await deed(pilot, "w")
            await deed(pilot, "u")
            done = len(lesson_of(pilot).events)
            line_of(pilot).focus()
            await pilot.press("enter")
            assert len(lesson_of(pilot).events) == done

    async def test_is_done_once_more_by_enter_where_nothing_is_counted_or_marked(
        self, tmp_path: Path
    ) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            await deed(pilot, "w")
            walk_of(pilot).query_one(Counts).start()
            await pilot.press("enter")
            assert [event.kind for event in lesson_of(pilot).events] == ["show"] * 2
            assert walk_of(pilot).ask.kind == "support"
            walk_of(pilot).query_one("#choices").focus()
            await pilot.press("enter")
            assert [event.kind for event in lesson_of(pilot).events] == ["show"] * 3


class TestWhatIsGiven:
    async def test_says_where_each_joint_is_and_what_holds_which_however_small_the_picture(
        self, tmp_path: Path
    ) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            problem = lesson_of(pilot).problem
            pane = given_lines(lesson_of(pilot).state).plain
            await type_text(pilot, "coordinates")
            await pilot.press("enter")
            shown = " ".join(seen(pilot).replace("│", " ").split())
            for joint in problem.joints:
                place = f"{joint.name} ({joint.x.value:g}, {joint.y.value:g})"
                assert place in pane
                assert place in shown
            for support in problem.supports:
                assert f"{support.joint}: {support.kind}" in pane

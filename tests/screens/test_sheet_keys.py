"""What happens on the list of problems, the test card and the closing table?"""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from pressing import (
    FIRST,
    SETS,
    deed,
    lesson_of,
    line_of,
    load,
    make_app,
    opened,
    press,
    press_event,
    seen,
    settle,
    shows,
    walk_of,
    walking,
)
from resuming import JOINTS, REACTIONS, Resumed, kept
from textual.widgets import Input, OptionList

from tutor.lesson import CAUTION
from tutor.model import load_sets
from tutor.records import Keep, Settings, read_settings
from tutor.screens import filling
from tutor.screens.app import TutorApp
from tutor.screens.card import CardScreen
from tutor.screens.closing import ClosingScreen
from tutor.screens.dialogs.choose import Choose
from tutor.screens.dialogs.save import SaveDialog
from tutor.screens.looks import looks_for, speaks_utf8
from tutor.screens.palette import commands
from tutor.screens.seeking import ON_THE_BAR
from tutor.screens.sheet import LEAD, READING, SheetScreen
from tutor.screens.walk import WalkScreen
from tutor.screens.widgets.figure_pane import Drawing
from tutor.screens.widgets.problem_list import ProblemList

BROKEN = 'title = "Broken"\nforce = "kN"\nlength = "m"\nmembers = ["AB"]\ncolour = 3\n'
UNSTABLE = """
title = "A square without a diagonal"
force = "kN"
length = "m"
members = ["AB", "BC", "CD", "DA"]
[joints]
A = [0, 0]
B = [3, 0]
C = [3, 3]
D = [0, 3]
[supports]
A = "pin"
B = "roller"
[[loads]]
at = "C"
right = 3
"""


class TestTheSheet:
    async def test_lists_every_shipped_problem_with_level_and_place(self, tmp_path: Path) -> None:
        async with opened(tmp_path, size=(120, 40)) as pilot:
            sets = load_sets(SETS)
            problems = [p for found in sets for p in found.problems]
            shown = pilot.app.screen.query_one(OptionList)
            await settle(pilot, lambda: shown.option_count == len(problems) + len(sets))
            rows = [str(row.prompt) for row in shown.options]
            for problem in problems:
                place = rf"  level {problem.level}  (?:not begun|for later)"
                assert any(re.search(re.escape(problem.title) + r"\s*" + place, r) for r in rows)
            assert rows[0].startswith("First steps at Wrenhythe harbour")

    async def test_shows_the_first_of_many_at_once_and_keeps_the_row_at_hand_as_the_rest_comes(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        monkeypatch.setattr(filling, "AT_FIRST", 3)
        held: list[TutorApp] = []
        monkeypatch.setattr(filling, "read_all", held.append)
        async with opened(tmp_path, FIRST, size=(120, 40)) as pilot:
            few = list(FIRST.glob("*.toml"))
            assert f"{len(few) - 4} more files are being read" in seen(pilot)
            await pilot.press("down")
            await pilot.pause()
            problems = pilot.app.screen.query_one(OptionList)
            at_hand = problems.highlighted
            monkeypatch.undo()
            filling.read_all(held[0])
            await settle(pilot, lambda: "being read" not in seen(pilot))
            assert problems.highlighted == at_hand
            assert load("storm-mast").title in seen(pilot)

    async def test_says_of_a_kept_file_that_cannot_be_read_that_it_is_left_as_it_is(
        self, tmp_path: Path
    ) -> None:
        (tmp_path / "lamp-arm-2025-09-08-abc.jsonl").write_text("garbage\n", encoding="utf-8")
        async with opened(tmp_path, FIRST, size=(120, 40)) as pilot:
            await settle(pilot, lambda: "The file is left as it is" in seen(pilot))

    async def test_shows_a_broken_file_with_its_lines_and_the_rest_is_usable(
        self, tmp_path: Path
    ) -> None:
        folder = tmp_path / "set"
        folder.mkdir()
        (folder / "a-broken.toml").write_text(BROKEN, encoding="utf-8")
        good = (FIRST / "lamp-arm.toml").read_text(encoding="utf-8")
        (folder / "lamp.toml").write_text(good, encoding="utf-8")
        async with opened(tmp_path / "keep", folder, size=(120, 40)) as pilot:
            await pilot.press("down")
            await pilot.pause()
            shown = " ".join(seen(pilot).split())
            assert "broken a-broken.toml" in shown
            assert "line 1: " in shown
            await pilot.press("enter")
            assert "cannot be worked yet" in seen(pilot)
            await pilot.press("up", "enter")
            await settle(pilot, lambda: isinstance(pilot.app.screen, WalkScreen))
            await settle(pilot, lambda: walk_of(pilot).said)

    async def test_says_of_a_truss_that_moves_that_it_cannot_be_worked(
        self, tmp_path: Path
    ) -> None:
        file = tmp_path / "square.toml"
        file.write_text(UNSTABLE, encoding="utf-8")
        async with opened(tmp_path / "keep", file) as pilot:
            await settle(pilot, lambda: "cannot be worked" in seen(pilot))
            assert isinstance(pilot.app.screen, SheetScreen)
            assert not list((tmp_path / "keep").glob("*.jsonl"))

    async def test_says_where_a_folder_without_problems_is_empty(self, tmp_path: Path) -> None:
        empty = tmp_path / "empty"
        empty.mkdir()
        async with opened(tmp_path / "keep", empty) as pilot:
            await pilot.pause()
            assert "there is no problem file" in " ".join(seen(pilot).split())

    async def test_offers_to_go_on_or_to_start_afresh_and_overwrites_nothing(
        self, tmp_path: Path
    ) -> None:
        kept(tmp_path, REACTIONS)
        (before,) = tmp_path.glob("*.jsonl")
        bytes_before = before.read_bytes()
        async with opened(tmp_path, FIRST / "lamp-arm.toml") as pilot:
            await settle(pilot, lambda: isinstance(pilot.app.screen, Choose))
            assert "Go on at the reactions" in seen(pilot)
            assert "Start afresh" in seen(pilot)
            await pilot.press("2")
            await settle(pilot, lambda: isinstance(pilot.app.screen, WalkScreen))
            assert lesson_of(pilot).state.step == "idealise"
        assert before.read_bytes() == bytes_before
        assert len(list(tmp_path.glob("*.jsonl"))) == 2

    async def test_goes_on_exactly_where_the_student_left(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            state = lesson_of(pilot).state
            assert state.step == "joints"
            assert [r.unknown for r in state.results] == ["B_x", "A_x", "A_y"]

    async def test_opens_read_only_what_is_open_elsewhere(self, tmp_path: Path) -> None:
        kept(tmp_path, REACTIONS)
        (path,) = tmp_path.glob("*.jsonl")
        with Keep(tmp_path).resume(path):
            before = path.read_bytes()
            async with opened(tmp_path, FIRST / "lamp-arm.toml") as pilot:
                await settle(pilot, lambda: isinstance(pilot.app.screen, Choose))
                await pilot.press("1")
                await settle(pilot, lambda: isinstance(pilot.app.screen, WalkScreen))
                shown = " ".join(seen(pilot).split())
                assert "already open in another program" in shown
                assert "read only, not kept" in shown
                await press_event(pilot, "type", {"text": "A_x = 4"})
            assert path.read_bytes() == before

    async def test_changes_between_light_and_dark_for_good(self, tmp_path: Path) -> None:
        async with opened(tmp_path) as pilot:
            await deed(pilot, "l")
            assert pilot.app.theme == "light"
        settings, notice = read_settings(tmp_path)
        assert settings.theme == "light"
        assert not notice

    async def test_is_left_by_escape_and_a_letter(self, tmp_path: Path) -> None:
        async with opened(tmp_path) as pilot:
            await pilot.press("escape", "q")
            assert pilot.app.return_value == 0

    @pytest.mark.parametrize("before", [(), ("escape", "escape"), ("escape", "z")])
    async def test_finds_a_title_by_a_word_typed_and_does_nothing_else(
        self, before: tuple[str, ...], tmp_path: Path
    ) -> None:
        async with opened(tmp_path) as pilot:
            sheet, theme = pilot.app.screen, pilot.app.theme
            await press(pilot, *before, *["backspace"] * before.count("z"), *"slog")
            assert pilot.app.screen is sheet
            assert pilot.app.theme == theme
            assert "No title here has “slog” in it" in seen(pilot)
            await press(pilot, "backspace", "backspace", "i", "p")
            assert sheet.problems.at_hand.title == "Slipway cradle"  # type: ignore[attr-defined]
            assert "Found by “slip”: Slipway cradle" in seen(pilot)
            await press(pilot, "enter")
            await settle(pilot, lambda: isinstance(pilot.app.screen, WalkScreen))

    async def test_says_of_a_letter_alone_how_its_deed_is_done(self, tmp_path: Path) -> None:
        async with opened(tmp_path) as pilot:
            await press(pilot, "q")
            assert "For “leave” press escape, then q." in " ".join(seen(pilot).split())
            await press(pilot, "escape")
            assert ON_THE_BAR in seen(pilot)
            await press(pilot, "enter")
            assert pilot.app.focused is pilot.app.screen.query_one(ProblemList)

    async def test_finds_a_set_by_its_title_too(self, tmp_path: Path) -> None:
        async with opened(tmp_path) as pilot:
            sheet = pilot.app.screen
            problems = sheet.query_one(ProblemList)
            await settle(pilot, lambda: problems.option_count > 50)
            await press(pilot, *"compound")
            at = problems.highlighted or 0
            assert "Compound trusses" in str(problems.get_option_at_index(at - 1).prompt)

    async def test_begins_another_search_once_a_row_was_chosen(self, tmp_path: Path) -> None:
        async with opened(tmp_path) as pilot:
            await press(pilot, *"slip", "down", *"lamp")
            assert "Found by “lamp”: Lamp arm" in seen(pilot)

    async def test_has_its_deeds_in_the_palette(self, tmp_path: Path) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            app = pilot.app
            assert isinstance(app, TutorApp)
            titles = [c.title for c in commands(app, app.screen)]
            assert {"Hint", "Steps", "Help", "Leave"} <= set(titles)
            assert titles[-1] == "End the program"

    async def test_does_nothing_by_enter_alone_in_the_palette(self, tmp_path: Path) -> None:
        async with opened(tmp_path) as pilot:
            sheet, theme = pilot.app.screen, pilot.app.theme
            await pilot.press("ctrl+p")
            await settle(pilot, lambda: "Draw a truss of your own" in seen(pilot))
            await pilot.press("enter")
            await pilot.pause(0.3)
            assert pilot.app.screen is not sheet
            assert pilot.app.return_value is None
            await pilot.press(*"colours")
            await settle(pilot, lambda: "Draw a truss of your own" not in seen(pilot))
            await pilot.press("enter")
            await settle(pilot, lambda: pilot.app.theme != theme)
            assert pilot.app.screen is sheet


class TestTheCard:
    async def test_comes_first_and_its_answer_is_kept(self, tmp_path: Path) -> None:
        async with opened(tmp_path, settings=Settings()) as pilot:
            await settle(pilot, lambda: isinstance(pilot.app.screen, CardScreen))
            assert "○" in seen(pilot)
            await pilot.press("3")
            await settle(pilot, lambda: isinstance(pilot.app.screen, SheetScreen))
        assert read_settings(tmp_path)[0].glyphs == "ascii"

    async def test_shows_all_four_at_once_in_a_small_window(self, tmp_path: Path) -> None:
        async with opened(tmp_path, settings=Settings()) as pilot:
            await settle(pilot, lambda: isinstance(pilot.app.screen, CardScreen))
            await pilot.pause()
            shown = seen(pilot)
            for sign in ("1 fine dots", "2 blocks", "3 plain", "4 words", "⠤", "▄", "/_\\", ">1 "):
                assert sign in shown

    async def test_is_left_out_where_only_ascii_can_be_shown(self, tmp_path: Path) -> None:
        async with walking(tmp_path, "lamp-arm", settings=Settings(), utf8=False) as pilot:
            assert seen(pilot).isascii()
            drawing = pilot.app.screen.query_one("#figure Drawing", Drawing)
            assert drawing.glyphs == "ascii"

    async def test_is_not_asked_for_where_the_command_line_says_it_and_that_is_not_kept(
        self, tmp_path: Path
    ) -> None:
        async with opened(tmp_path, settings=Settings(), glyphs="blocks") as pilot:
            await settle(pilot, lambda: isinstance(pilot.app.screen, SheetScreen))
            assert pilot.app.looks.glyphs == "blocks"  # type: ignore[attr-defined]
            await deed(pilot, "l")
            await settle(pilot, lambda: (tmp_path / "settings.json").exists())
            assert read_settings(tmp_path)[0] == Settings(theme="light")
            await deed(pilot, "g")
            await settle(pilot, lambda: isinstance(pilot.app.screen, CardScreen))
            await pilot.press("3")
            await settle(pilot, lambda: isinstance(pilot.app.screen, SheetScreen))
            assert pilot.app.looks.glyphs == "ascii"  # type: ignore[attr-defined]
        assert read_settings(tmp_path)[0].glyphs == "ascii"

    @pytest.mark.parametrize(
        ("environment", "utf8"),
        [
            ({"LANG": "en_GB.UTF-8"}, True),
            ({"LANG": "de_DE.utf8"}, True),
            ({}, True),
            ({"LANG": "en_US.ISO-8859-1"}, False),
            ({"LANG": "C"}, False),
            ({"LC_ALL": "POSIX", "LANG": "en_GB.UTF-8"}, False),
            ({"LC_CTYPE": "C.UTF-8", "LANG": "C"}, False),
            ({"LC_CTYPE": "C.UTF-8"}, True),
            ({"LC_ALL": "", "LC_CTYPE": "ja_JP.eucJP"}, False),
        ],
    )
    def test_is_answered_by_a_locale_that_is_not_utf8(
        self, environment: dict[str, str], utf8: bool
    ) -> None:
        assert speaks_utf8(environment) is utf8

    @pytest.mark.parametrize("chosen", [None, "braille", "blocks", "nonsense", "[b]"])
    def test_never_lets_more_than_ascii_out_there(self, chosen: str | None) -> None:
        assert looks_for(chosen, utf8=False).glyphs == "ascii"


class TestTheTable:
    async def test_shows_what_is_found_and_goes_back(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            await deed(pilot, "t")
            assert isinstance(pilot.app.screen, ClosingScreen)
            shown = " ".join(seen(pilot).split())
            assert "A_y = 150 N, up" in shown
            assert CAUTION in shown
            await pilot.press("b")
            assert isinstance(pilot.app.screen, WalkScreen)

    async def test_is_saved_as_markdown_and_overwrites_nothing(self, tmp_path: Path) -> None:
        target = tmp_path / "lamp.md"
        async with Resumed(tmp_path, JOINTS) as pilot:
            await deed(pilot, "t")
            await pilot.press("s")
            assert isinstance(pilot.app.screen, SaveDialog)
            pilot.app.screen.query_one(Input).value = str(target)
            await pilot.press("enter")
            await pilot.pause()
            assert "Saved in" in seen(pilot)
            text = target.read_text(encoding="utf-8")
            assert CAUTION in text
            target.write_text("mine", encoding="utf-8")
            await pilot.press("s")
            pilot.app.screen.query_one(Input).value = str(target)
            await pilot.press("enter")
            await pilot.pause()
            assert isinstance(pilot.app.screen, SaveDialog)
            assert "is there already. Write over it?" in " ".join(seen(pilot).split())
            assert target.read_text(encoding="utf-8") == "mine"
            await pilot.press("escape")
            assert isinstance(pilot.app.screen, ClosingScreen)

    async def test_says_why_a_name_cannot_be_used(self, tmp_path: Path) -> None:
        names = ("", "\0", "/nowhere/at/all.md", "~nobody-here/x.md", "a" * 999)
        async with opened(tmp_path) as pilot:
            await pilot.app.push_screen(SaveDialog("text", "x.md"))
            for name in names:
                pilot.app.screen.query_one(Input).value = name
                await press(pilot, "enter")
                assert isinstance(pilot.app.screen, SaveDialog), name
                complaint = str(pilot.app.screen.query_one("#complaint").render())
                assert complaint.endswith("."), name


class TestTheStepsDone:
    async def test_are_counted_only_when_right_at_the_first_try(self, tmp_path: Path) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            await press_event(pilot, "reasons", {"chosen": ["pins"]})
            await press_event(pilot, "reasons", {"chosen": ["pins", "joints", "weight"]})
            await press_event(pilot, "count", {"m": 3, "r": 3, "2j": 6})
        assert not (tmp_path / "settings.json").exists()
        async with walking(tmp_path, "bell-frame") as pilot:
            problem = lesson_of(pilot).problem
            await press_event(pilot, "reasons", {"chosen": ["pins", "joints", "weight"]})
            counts = len(problem.members), len(problem.reactions), 2 * len(problem.joints)
            await press_event(pilot, "count", dict(zip(("m", "r", "2j"), counts, strict=True)))
            await settle(pilot, lambda: (tmp_path / "settings.json").exists())
        found = json.loads((tmp_path / "settings.json").read_text(encoding="utf-8"))
        assert found["done"] == {"idealise": 1}


def test_a_shelf_never_raises_for_what_is_not_there(tmp_path: Path) -> None:
    from tutor.screens.shelf import read_shelf

    shelf = read_shelf([tmp_path / "nothing", SETS])
    assert shelf.groups[0].entries[0].broken
    assert shelf.groups[0].entries[0].defects
    assert any(not entry.broken for entry in shelf.entries)


def test_the_app_starts_with_the_choice_that_was_kept(tmp_path: Path) -> None:
    assert make_app(tmp_path, settings=Settings(theme="light")).theme == "light"
    assert make_app(tmp_path, settings=Settings(theme="pink")).theme == "dark"


async def test_what_is_kept_is_said_to_be_read_until_it_is(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    look = filling.look_where_left
    monkeypatch.setattr(filling, "look_where_left", lambda app: None)
    async with opened(tmp_path, FIRST) as pilot:
        assert READING in seen(pilot)
        look(pilot.app)
        await settle(pilot, lambda: LEAD in seen(pilot))
        assert READING not in seen(pilot)


async def test_the_problem_at_hand_stays_in_sight_when_the_window_gets_smaller(
    tmp_path: Path,
) -> None:
    async with opened(tmp_path, FIRST, size=(120, 40)) as pilot:
        await pilot.press("end")
        await pilot.resize_terminal(80, 24)
        await pilot.pause(0.05)
        problems = pilot.app.screen.query_one(OptionList)
        top = problems.scroll_offset.y
        assert top <= problems.highlighted < top + problems.size.height


async def test_arrows_choose_a_row_though_the_bar_has_the_focus(tmp_path: Path) -> None:
    async with opened(tmp_path) as pilot:
        problems = pilot.app.screen.query_one(ProblemList)
        first = problems.highlighted
        await pilot.press("escape", "down")
        assert problems.has_focus
        assert problems.highlighted != first
        await pilot.press("escape", "up")
        assert problems.highlighted == first


async def test_letters_typed_behind_enter_wait_for_the_walk(tmp_path: Path) -> None:
    async with opened(tmp_path, FIRST / "lamp-arm.toml", FIRST / "bell-frame.toml") as pilot:
        await press(pilot, "enter", "c", "q")
        await settle(pilot, lambda: shows(pilot, WalkScreen))
        await settle(pilot, lambda: line_of(pilot).value == "cq")

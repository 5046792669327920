"""Is everything typed or loaded shown as plain text, whatever is in it?"""

from __future__ import annotations

import re
from collections.abc import AsyncIterator, Callable, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any

import pytest
from pressing import lesson_of, line_of, load, opened, seen, settle, type_text, walking
from resuming import REACTIONS, Resumed, said
from textual.app import App, ComposeResult
from textual.events import Paste
from textual.pilot import Pilot
from textual.widget import Widget
from textual.widgets import OptionList

from tutor.lesson import Lesson, Say
from tutor.lesson.place import Question
from tutor.lesson.state import Try
from tutor.model import Defect
from tutor.screens.closing import table_content
from tutor.screens.deeds import WALK
from tutor.screens.dialogs.choose import Choose
from tutor.screens.dialogs.save import SaveDialog
from tutor.screens.dialogs.told import Told
from tutor.screens.entry import Group, ProblemRow
from tutor.screens.looks import Looks
from tutor.screens.sheet import SheetScreen
from tutor.screens.themes import THEMES
from tutor.screens.widgets.action_bar import ActionBar
from tutor.screens.widgets.choices import Choices, OneOption
from tutor.screens.widgets.counts import Counts
from tutor.screens.widgets.figure_pane import FigurePane
from tutor.screens.widgets.line_input import LineInput
from tutor.screens.widgets.lines_pane import LinesPane
from tutor.screens.widgets.reply_pane import ReplyPane
from tutor.screens.widgets.sense_picker import ArrowWay, SensePicker
from tutor.screens.widgets.trail import Trail

BAD = (
    "ΣF_x [kN]",
    "[/bold]",
    "[bold red]F_AB[/]",
    "[@click=app.quit]here[/]",
    "[link=file:///etc/passwd]x[/link]",
    "[",
    "\\[kN]",
    "$tension {x} %s",
    "\x1b[31mred",
    "\x1b]0;title\x07",
    "\x1bPq\x1b\\",
    "\x9b31m",
    "a\x00b\x08c\x7f",
    "\u202eBA_F\u202c",
    "\u2066x\u2069",
    "F\u200b_\u200dA\ufeffB",
    "e\u0301\u0302",
    "漢字 full ＡＢ",
    "line\u2028break\u0085end",
    "\ud800",
    "",
)
"""What files, pastes and fingers may hold."""
MARKUP = tuple(text for text in BAD if text.isascii() and text.isprintable() and text)
ESCAPES = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u200e\u200f\u202a-\u202e\u2066-\u2069\ud800]")


class Host(App[int]):
    """An app with one widget in it."""

    def __init__(self, make: Callable[[], Widget], *more: Callable[[], Widget]) -> None:
        super().__init__()
        self.make = make
        self.more = more
        for theme in THEMES.values():
            self.register_theme(theme)
        self.theme = "dark"

    def get_theme_variable_defaults(self) -> dict[str, str]:
        return dict(THEMES["dark"].variables)

    def compose(self) -> ComposeResult:
        yield self.make()

    async def one_by_one(self, pilot: Pilot[Any]) -> AsyncIterator[str]:
        """What is seen of the widget, and of each of the others in its place."""
        for make in (None, *self.more):
            if make is not None:
                await self.screen.remove_children()
                await self.screen.mount(make())
            await pilot.press("up")
            yield seen(pilot)


def showing(name: str, texts: Sequence[str]) -> Host:
    """A widget with each of these texts in turn."""
    return Host(*(partial(WIDGETS[name], text) for text in texts))


def choices(text: str) -> Widget:
    widget = Choices()
    widget.offer([OneOption("a", text, True), OneOption("b", f"{text} {text}" * 3)], several=True)
    return widget


def sense(text: str) -> Widget:
    widget = SensePicker()
    widget.offer([ArrowWay("a", text, 1.0, 0.0), ArrowWay("b", text, -1.0, 0.0)])
    return widget


def bar(text: str) -> Widget:
    widget = ActionBar()
    widget.offer([WALK[0]._replace(label=text)], True)
    return widget


def trail(text: str) -> Widget:
    widget = Trail()
    widget.show(text, "joints", text)
    return widget


def line(text: str) -> Widget:
    widget = LineInput()
    widget.recall([text])
    return widget


class Handed(LinesPane):
    """The lines of a state in which everything said is `text`."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.text = text

    def on_mount(self) -> None:
        problem = replace(load("lamp-arm"), title=self.text, story=self.text, force=self.text)
        made = Try("reactions", Question(self.text), self.text, "wrong")
        self.show(replace(Lesson(load("lamp-arm")).state, problem=problem, tries=(made,)), False)


class Replies(ReplyPane):
    def __init__(self, text: str) -> None:
        super().__init__()
        self.text = text

    def on_mount(self) -> None:
        self.show([Say("wrong", self.text), Say("right", self.text)], True)


class Pictures(FigurePane):
    def __init__(self, text: str) -> None:
        super().__init__()
        self.text = text

    def on_mount(self) -> None:
        from tutor.figure import truss_figure

        problem = replace(load("lamp-arm"), title=self.text, force=self.text, length=self.text)
        glyphs = "words" if len(self.text) % 2 else "braille"
        self.show(self.text, truss_figure(problem), glyphs)


WIDGETS: dict[str, Callable[[str], Widget]] = {
    "choices": choices,
    "counts": lambda text: Counts([OneOption("m", text)]),
    "sense": sense,
    "bar": bar,
    "trail": trail,
    "line": line,
    "lines": Handed,
    "reply": Replies,
    "figure": Pictures,
}


@pytest.mark.parametrize("name", WIDGETS)
async def test_no_widget_raises_or_lets_a_control_character_out(name: str) -> None:
    app = showing(name, BAD)
    async with app.run_test(size=(60, 20)) as pilot:
        texts = iter(BAD)
        async for shown in app.one_by_one(pilot):
            assert not ESCAPES.search(shown), (name, next(texts))


@pytest.mark.parametrize("name", ["choices", "sense", "bar", "trail", "lines", "reply", "figure"])
async def test_no_widget_takes_brackets_for_markup(name: str) -> None:
    app = showing(name, MARKUP)
    async with app.run_test(size=(100, 30)) as pilot:
        texts = iter(MARKUP)
        async for shown in app.one_by_one(pilot):
            assert (text := next(texts)) in shown, (name, text)


class TestTheSheet:
    async def test_shows_titles_and_defects_as_they_are(self, tmp_path: Path) -> None:
        everything = " / ".join(BAD)
        worked = replace(load("lamp-arm"), title=everything, story=everything, topics=BAD)
        rows = [ProblemRow(text, replace(worked, title=text)) for text in BAD]
        broken = [
            ProblemRow(text, path=Path("x"), defects=(Defect("x", 3, text, text),)) for text in BAD
        ]
        groups = (Group(everything, (ProblemRow(everything, worked), *rows, *broken)),)
        async with opened(tmp_path, size=(140, 50)) as pilot:
            sheet = SheetScreen(groups, Looks())
            await pilot.app.push_screen(sheet)
            problems = sheet.query_one("#problems", OptionList)
            sheet.show({"": "[bold]\x1b[1m"})
            shown = ""
            for index in (1, len(rows) + 2, len(rows) + 5):
                problems.highlighted = index
                await pilot.pause()
                shown += seen(pilot)
                assert not ESCAPES.search(seen(pilot))
            prompts = "".join(
                str(problems.get_option_at_index(i).prompt) for i in range(problems.option_count)
            )
            assert all(text in prompts for text in MARKUP)

    async def test_shows_a_file_whose_every_text_is_bad(self, tmp_path: Path) -> None:
        file = tmp_path / "[bold]\x1b[31m.toml"
        file.write_text('title = "[/bold] \\u001b[31m"\nmembers = ["[b]"]\n', encoding="utf-8")
        async with opened(tmp_path / "keep", file) as pilot:
            await settle(pilot, lambda: "cannot be used yet" in seen(pilot))
            assert not ESCAPES.search(seen(pilot))


class TestTheDialogs:
    async def test_show_everything_as_it_is(self, tmp_path: Path) -> None:
        async with opened(tmp_path, size=(100, 40)) as pilot:
            everything = " / ".join(BAD)
            for screen in (
                Choose(everything, everything, [OneOption(text, text) for text in BAD]),
                Told(everything, everything),
                SaveDialog(everything, everything),
            ):
                pilot.app.push_screen(screen)
                await pilot.pause()
                assert not ESCAPES.search(seen(pilot)), screen
                pilot.app.pop_screen()

    async def test_show_a_table_of_bad_names(self) -> None:
        lesson = Lesson(load("lamp-arm"))
        for text in BAD:
            problem = replace(lesson.problem, force=text)
            lesson.state = replace(lesson.state, problem=problem)
            assert not ESCAPES.search(table_content(lesson).plain.replace("\n", " "))


class TestAPaste:
    async def test_leaves_its_control_characters_behind_and_says_so(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            line = line_of(pilot)
            line.post_message(Paste("F\x1b_\u202eA\x07C = 2"))
            await settle(pilot, lambda: line.value == "F_AC = 2")
            assert "Left out of the paste: U+001B, U+202E, U+0007." in said(pilot)

    async def test_of_several_lines_leaves_them_behind_and_says_so(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            line_of(pilot).post_message(Paste("ΣM_A:\x1b B_x\u202e - 360 = 0\nB_x =\x07 360\n"))
            await settle(pilot, lambda: "B_x" in lesson_of(pilot).state.result)
            assert "Left out of the paste: U+001B, U+202E, U+0007." in said(pilot)
            typed = [e.data["text"] for e in lesson_of(pilot).events if e.kind == "type"]
            assert typed == ["ΣM_A: B_x - 360 = 0", "B_x = 360"]

    async def test_of_a_mouse_report_is_nothing(self, tmp_path: Path) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            screen = pilot.app.screen
            screen.query_one("#typing").display = True
            line = screen.query_one(LineInput)
            line.focus()
            await type_text(pilot, "[<35;10;12M")
            events = len(pilot.app.session.lesson.events)  # type: ignore[attr-defined]
            await pilot.press("enter")
            await pilot.pause()
            assert line.value == ""
            assert len(pilot.app.session.lesson.events) == events  # type: ignore[attr-defined]
            assert "which nobody typed" in seen(pilot)

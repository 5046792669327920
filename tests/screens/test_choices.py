"""Can every option be chosen by the number that stands before it?"""

from __future__ import annotations

from pathlib import Path

import pytest
from pressing import lesson_of, line_of, press, type_text, walk_of, walking
from resuming import JOINTS, Resumed
from textual.app import App, ComposeResult

from tutor.screens.widgets.choices import Choices, OneOption, Picked


class Offering(App[None]):
    """Nothing but some options."""

    CSS = "Choices { height: auto; }"

    def __init__(self, count: int, several: bool) -> None:
        super().__init__()
        self.count, self.several = count, several
        self.picked: list[tuple[str, ...]] = []

    def compose(self) -> ComposeResult:
        yield Choices()

    def get_theme_variable_defaults(self) -> dict[str, str]:
        return {"strong": "#ffffff", "quiet": "#888888", "ink": "#ffffff"}

    def on_mount(self) -> None:
        choices = self.query_one(Choices)
        options = [OneOption(f"k{n}", f"option k{n}") for n in range(1, self.count + 1)]
        choices.offer(options, several=self.several)
        choices.focus()

    def on_picked(self, message: Picked) -> None:
        self.picked.append(message.keys)


@pytest.mark.parametrize("count", [9, 10, 13])
async def test_each_option_is_picked_by_its_number(count: int) -> None:
    app = Offering(count, several=False)
    async with app.run_test(size=(80, 24)) as pilot:
        shown = app.query_one(Choices).render().plain
        for number in range(1, count + 1):
            assert f"{number} option k{number}" in shown
            app.picked.clear()
            await pilot.press(*str(number))
            if not app.picked:
                assert 10 * number <= count
                await pilot.press("enter")
            await pilot.pause()
            assert app.picked == [(f"k{number}",)]


@pytest.mark.parametrize(
    ("keys", "marked"),
    [
        ("1 4", ("k1", "k4")),
        ("4 1", ("k1", "k4")),
        ("10 1 12", ("k1", "k10", "k12")),
        ("1", ("k1",)),
        ("2 2 3", ("k3",)),
        ("2,4,5", ("k2", "k4", "k5")),
        ("1, 4; 1,12", ("k4", "k12")),
        ("1,10 + 3", ("k1", "k3", "k10")),
    ],
)
async def test_several_are_marked_by_their_numbers(keys: str, marked: tuple[str, ...]) -> None:
    app = Offering(12, several=True)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press(*("space" if key == " " else key for key in keys), "enter")
        await pilot.pause()
        assert app.picked == [marked]


@pytest.mark.parametrize(
    ("keys", "marked"),
    [
        ("2 4 6", ("k2", "k4", "k6")),
        ("1 3", ("k1", "k3")),
        ("4,5", ("k4", "k5")),
        ("10 11", ("k10", "k11")),
        ("12 1 ", ("k1", "k12")),
        ("1", ("k3",)),
        ("5", ("k1", "k3", "k5")),
        ("53", ("k1", "k5")),
        ("1 x5", ("k3", "k5")),
    ],
)
async def test_a_list_typed_after_a_wrong_one_is_that_list_and_one_number_alone_marks_or_unmarks(
    keys: str, marked: tuple[str, ...]
) -> None:
    app = Offering(12, several=True)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("1", "space", "3", "enter")
        choices = app.query_one(Choices)
        choices.offer(choices.choices, several=True, again=True)
        app.picked.clear()
        await pilot.press(*("space" if key == " " else key for key in keys), "enter")
        await pilot.pause()
        assert app.picked == [marked]


class TestBesideALine:
    @pytest.mark.parametrize(
        ("typed", "line"),
        [("2 F_AB", "2 F_AB"), ("2F", "2F"), ("3/5", "3/5"), ("2 + F", "2 + F"), ("1 (", "1 (")],
    )
    async def test_numbers_that_begin_a_line_mark_nothing(
        self, typed: str, line: str, tmp_path: Path
    ) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            choices = walk_of(pilot).query_one(Choices)
            await press(pilot, "6")
            await press(pilot, "down")
            before = choices.marked
            await type_text(pilot, typed)
            assert line_of(pilot).value == line
            assert choices.marked == before

    async def test_a_number_that_marks_stays_marked_behind_a_word(self, tmp_path: Path) -> None:
        async with walking(tmp_path, "lamp-arm") as pilot:
            choices = walk_of(pilot).query_one(Choices)
            await type_text(pilot, "2 4")
            marked = choices.marked
            assert len(marked) == 2
            await press(pilot, *"hint", "enter")
            assert lesson_of(pilot).events[-1].kind == "hint"
            assert choices.marked == marked

    async def test_where_one_is_chosen_a_number_goes_into_the_line_and_chooses_with_enter(
        self, tmp_path: Path
    ) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            assert lesson_of(pilot).ask.kind == "joint"
            events = len(lesson_of(pilot).events)
            await type_text(pilot, "2")
            assert line_of(pilot).value == "2"
            assert len(lesson_of(pilot).events) == events
            await press(pilot, "enter")
            assert lesson_of(pilot).ask.kind == "joint-line"

    async def test_a_line_that_begins_with_a_number_is_judged_whole_there(
        self, tmp_path: Path
    ) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            await type_text(pilot, "2 F_AB = 300")
            await press(pilot, "enter")
            assert lesson_of(pilot).state.tries[-1].text == "2 F_AB = 300"

"""What becomes of a text that means nothing where it was entered, and what is said of it?"""

from __future__ import annotations

from pathlib import Path

import pytest
from pressing import enter_line, line_of, seen, walk_of
from resuming import FREE_BODY, JOINTS, REACTIONS, Resumed, said

from tutor.judge import Fx, Fy
from tutor.lesson import Ask, Option
from tutor.screens.deeds import WALK
from tutor.screens.lost import WOULD_DO, lost
from tutor.screens.widgets.sense_picker import SensePicker

SENSE = Ask(
    "free body", "sense", "Free body", "", (Option("left", "to the left"), Option("up", "up")), "A"
)


def asked(kind: str) -> Ask:
    return Ask("here", kind, "Here", "What?")  # type: ignore[arg-type]


@pytest.mark.parametrize("kind", WOULD_DO)
def test_what_would_be_understood_is_said(kind: str) -> None:
    said = lost(asked(kind), "what is a pin", (), None)
    assert said.startswith("Cannot read: ")
    assert said.endswith(f" {WOULD_DO[kind]}")


def test_the_ways_of_an_arrow_are_named() -> None:
    assert lost(SENSE, "down", (), None).endswith("Type the direction: to the left or up.")


@pytest.mark.parametrize("deed", WALK, ids=lambda deed: deed.id)
def test_the_letter_of_a_deed_typed_as_a_text_is_told_from_it(deed: object) -> None:
    said = lost(asked("soundness"), f" {deed.letter} ", WALK, None)  # type: ignore[attr-defined]
    assert f"escape, then {deed.letter}" in said  # type: ignore[attr-defined]
    assert "no word that does something" not in said


async def test_it_may_be_mended_and_goes_into_the_history_once_something_else_is_done(
    tmp_path: Path,
) -> None:
    async with Resumed(tmp_path, FREE_BODY) as pilot:
        await enter_line(pilot, "what is a pin?")
        assert line_of(pilot).value == "what is a pin?"
        assert "Type the direction" in seen(pilot).replace("\n", "")
        await pilot.press("alt+w")
        await pilot.pause()
        assert walk_of(pilot).ask.subject == "A_y"
        assert line_of(pilot).value == ""
        await enter_line(pilot, "up")
        assert walk_of(pilot).ask.subject == "B_x"
        assert "what is a pin?" in line_of(pilot).past


async def test_a_text_not_entered_yet_stays_whatever_else_is_done(tmp_path: Path) -> None:
    async with Resumed(tmp_path, FREE_BODY) as pilot:
        await pilot.press(*"sum", "alt+w")
        await pilot.pause()
        assert line_of(pilot).value == "sum"


async def test_when_it_is_deleted_the_arrow_keys_draw_again(tmp_path: Path) -> None:
    async with Resumed(tmp_path, FREE_BODY) as pilot:
        await enter_line(pilot, "sideways")
        await pilot.press("ctrl+u")
        await pilot.pause()
        await pilot.press("left", "enter")
        await pilot.pause()
        assert walk_of(pilot).session.lesson.state.senses["A_x"] == "left"
        assert isinstance(pilot.app.focused, SensePicker)


async def test_the_letter_for_a_hint_does_not_choose_the_horizontal_sum(tmp_path: Path) -> None:
    async with Resumed(tmp_path, REACTIONS) as pilot:
        await enter_line(pilot, "h")
        assert walk_of(pilot).ask.about is None
        assert "Type hint; or press escape, then h." in said(pilot)
        await pilot.press("ctrl+u")
        await enter_line(pilot, "horizontal")
        assert walk_of(pilot).ask.about == Fx()


async def test_an_axis_chooses_its_sum_also_where_its_letter_is_that_of_a_deed(
    tmp_path: Path,
) -> None:
    at_a = (("joint", {"joint": "A"}), ("choose", {"about": "Fx @ A"}))
    async with Resumed(tmp_path, (*JOINTS, *at_a)) as pilot:
        await enter_line(pilot, "150 - F_AB = 0")
        assert "You can keep it as ΣFy at joint A." in said(pilot)
        await enter_line(pilot, "y")
        assert walk_of(pilot).ask.about == Fy("A")
        assert line_of(pilot).value == ""

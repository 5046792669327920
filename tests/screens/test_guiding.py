"""Is the student led on the screen: what stands first, what is next and why, and what they can do?"""

from __future__ import annotations

import contextlib
from pathlib import Path

from pressing import FIRST, deed, enter_line, lesson_of, opened, press, seen, settle, walk_of
from student import Student
from textual.widgets import OptionList

from tutor.model import load_problem
from tutor.records import Keep, Settings, read_settings
from tutor.records.settings import ThisTime
from tutor.screens.dialogs.told import Told
from tutor.screens.sheet import SheetScreen
from tutor.screens.walk import WalkScreen
from tutor.session import open_session


def begun(folder: Path, name: str, watched: bool = False, steps: int = 10_000) -> None:
    """A lesson on a problem of the first set: watched, or done by the scripted student for some steps."""
    session = open_session(load_problem(FIRST / f"{name}.toml"), Keep(folder))
    left = iter(range(steps))

    class Enough(Exception):  # noqa: N818 - the student has done enough, nothing failed
        pass

    def do(kind: str, **data: object) -> object:
        if next(left, None) is None:
            raise Enough
        return session.do(kind, **data)

    if watched:
        while session.do("show").accepted:
            pass
    else:
        with contextlib.suppress(Enough):
            Student(session.lesson, do).walk()  # type: ignore[arg-type]
    session.close()


def sheet_of(pilot) -> SheetScreen:
    return next(s for s in pilot.app.screen_stack if isinstance(s, SheetScreen))


async def test_what_was_watched_is_offered_half_and_begin_writes_it(tmp_path: Path) -> None:
    begun(tmp_path, "bell-frame", watched=True)
    async with opened(tmp_path, FIRST) as pilot:
        await settle(pilot, lambda: "watched" in seen(pilot))
        await press(pilot, "enter")
        await settle(pilot, lambda: isinstance(pilot.app.screen, WalkScreen))
        said = " ".join(seen(pilot).split())
        assert "You have watched one of these. Type begin" in said
        assert lesson_of(pilot).events == []
        await deed(pilot, "b")
        await settle(pilot, lambda: lesson_of(pilot).state.step == "joints")
        (event,) = lesson_of(pilot).events
        assert (event.kind, event.data) == ("show", {"until": "half"})
        assert "begin" not in {each.id for each in walk_of(pilot).deeds()}


async def test_the_list_begins_where_the_student_was_and_says_what_they_can_do(
    tmp_path: Path,
) -> None:
    begun(tmp_path, "bell-frame")
    begun(tmp_path, "signal-gantry", steps=30)
    async with opened(tmp_path, FIRST) as pilot:
        await settle(pilot, lambda: "to practise:" in seen(pilot))
        sheet = sheet_of(pilot)
        at = sheet.query_one(OptionList).highlighted
        assert at is not None
        assert sheet.entries[at].title.startswith("Signal gantry")  # type: ignore[union-attr]
        await press(pilot, "escape", "s")
        await settle(pilot, lambda: isinstance(pilot.app.screen, Told))
        assert "What you can do now" in seen(pilot)
        page = pilot.app.screen.text  # type: ignore[attr-defined]
        assert "not for the design of real structures" in page
        assert "wrong: " in page


async def test_all_of_it_can_be_switched_off(tmp_path: Path) -> None:
    begun(tmp_path, "bell-frame", watched=True)
    begun(tmp_path, "lamp-arm")
    off = Settings(glyphs="braille", guide=False)
    async with opened(tmp_path, FIRST, settings=off) as pilot:
        await settle(pilot, lambda: "watched" in seen(pilot))
        assert "to practise" not in seen(pilot)
        await press(pilot, "enter")
        await settle(pilot, lambda: isinstance(pilot.app.screen, WalkScreen))
        assert "Type begin" not in seen(pilot)
        await enter_line(pilot, "guide on")
        await settle(pilot, lambda: read_settings(tmp_path)[0].guide)
    async with opened(tmp_path, FIRST, given=ThisTime(no_guide=True)) as pilot:
        await settle(pilot, lambda: "watched" in seen(pilot))
        assert "to practise" not in seen(pilot)


async def test_a_lesson_begins_as_the_command_line_says(tmp_path: Path) -> None:
    given = ThisTime(begin="joints")
    async with opened(tmp_path, FIRST / "lamp-arm.toml", given=given) as pilot:
        await settle(pilot, lambda: isinstance(pilot.app.screen, WalkScreen))
        await settle(pilot, lambda: lesson_of(pilot).state.step == "joints")
        assert [event.kind for event in lesson_of(pilot).events] == ["show"]

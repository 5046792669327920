"""The list is there before its files are read, says nothing false for longer, and stays where it is."""

from __future__ import annotations

import os
import re
import shutil
import time
from pathlib import Path

import pytest
from pressing import FIRST, load, make_app, press, seen, settle
from textual.pilot import Pilot
from textual.widgets import OptionList

from tutor.progress.where import DONE
from tutor.records import Keep
from tutor.records.listed import FILE_NAME
from tutor.screens import filling
from tutor.screens.app import TutorApp
from tutor.screens.remembering import UNSURE
from tutor.screens.rows import CHANGED
from tutor.screens.sheet import LEAD, READING
from tutor.screens.walk import WalkScreen
from tutor.screens.widgets.line_input import LineInput
from tutor.session import open_session

ARM, BELL = load("lamp-arm"), load("bell-frame")


@pytest.fixture
def sets(tmp_path: Path) -> Path:
    """A set of two problems, written long ago."""
    folder = tmp_path / "set"
    folder.mkdir()
    for name in ("bell-frame", "lamp-arm"):
        shutil.copy(FIRST / f"{name}.toml", folder)
        os.utime(folder / f"{name}.toml", (1e9, 1e9))
    return folder


async def shown_once(keep: Path, folder: Path) -> None:
    """Open the list until it is remembered."""
    app = make_app(keep, folder)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot, lambda: app.guide is not None)
        await settle(pilot, lambda: not app.workers._workers)


def hold(monkeypatch: pytest.MonkeyPatch) -> list[TutorApp]:
    """From here on nothing is read before `filling.read_first` is called; the apps that would read."""
    waiting: list[TutorApp] = []
    monkeypatch.setattr(TutorApp, "read_problems", lambda app: waiting.append(app))
    return waiting


def rows(pilot: Pilot[int]) -> list[str]:
    """What the rows of the list say."""
    shown = pilot.app.screen.query_one(OptionList)
    return [" ".join(str(row.prompt).split()) for row in shown.options]


def watched(keep: Path, name: str, folder: Path) -> None:
    """A finished walk on a problem of the folder."""
    from tutor.model import load_problem

    session = open_session(load_problem(folder / f"{name}.toml"), Keep(keep))
    while session.do("show").accepted:
        pass
    session.close()


async def test_the_list_is_as_it_was_before_any_file_is_read(
    tmp_path: Path, sets: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    watched(tmp_path, "bell-frame", sets)
    await shown_once(tmp_path, sets)
    held = hold(monkeypatch)
    app = make_app(tmp_path, sets)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot, lambda: held and seen(pilot).strip())
        assert app.shelf is None
        before = rows(pilot)
        assert re.fullmatch(f"{re.escape(BELL.title)} level . watched", before[1])
        assert re.fullmatch(f"{re.escape(ARM.title)} level . not begun", before[2])
        assert READING in seen(pilot)
        at = app.sheet.problems.highlighted
        assert at == 2  # the one that was watched is passed by
        assert " ".join(ARM.story.split())[:30] in " ".join(seen(pilot).split())
        filling.read_first(app)
        await settle(pilot, lambda: LEAD in seen(pilot))
        assert rows(pilot) == before
        assert app.sheet.problems.highlighted == at


async def test_what_was_asked_of_a_row_before_its_file_is_read_is_done_then(
    tmp_path: Path, sets: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    await shown_once(tmp_path, sets)
    held = hold(monkeypatch)
    app = make_app(tmp_path, sets)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot, lambda: held and seen(pilot).strip())
        await press(pilot, "down", "enter")
        await settle(pilot, lambda: f"“{ARM.title}” is being read" in seen(pilot))
        filling.read_first(app)
        await settle(pilot, lambda: isinstance(app.screen, WalkScreen))
        assert app.session is not None
        assert app.session.lesson.problem.title == ARM.title


async def test_letters_behind_an_early_enter_are_no_deeds_of_the_list(
    tmp_path: Path, sets: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    await shown_once(tmp_path, sets)
    held = hold(monkeypatch)
    app = make_app(tmp_path, sets)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot, lambda: held and seen(pilot).strip())
        await press(pilot, "enter", "c", "q")
        filling.read_first(app)
        await settle(pilot, lambda: isinstance(app.screen, WalkScreen))
        await settle(pilot, lambda: app.screen.query_one(LineInput).value == "cq")


async def test_a_student_who_moved_on_meanwhile_is_left_where_they_are(
    tmp_path: Path, sets: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    watched(tmp_path, "bell-frame", sets)
    await shown_once(tmp_path, sets)
    held = hold(monkeypatch)
    shutil.copy(FIRST / "storm-mast.toml", sets / "a-first.toml")
    app = make_app(tmp_path, sets)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot, lambda: held and seen(pilot).strip())
        await press(pilot, "enter", "up")
        assert app.sheet.waiting is None
        filling.read_first(app)
        await settle(pilot, lambda: LEAD in seen(pilot))
        assert len(rows(pilot)) == 4  # the new file is there, before the others
        at_hand = app.sheet.problems.at_hand
        assert at_hand is not None
        assert at_hand.title == BELL.title
        assert not isinstance(app.screen, WalkScreen)


async def test_a_changed_file_says_so_and_one_of_the_same_size_and_time_is_right_once_read(
    tmp_path: Path, sets: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    await shown_once(tmp_path, sets)
    held = hold(monkeypatch)
    arm, bell = sets / "lamp-arm.toml", sets / "bell-frame.toml"
    arm.write_text(arm.read_text("utf-8").replace(ARM.title, "Another arm"), "utf-8")
    bell.write_text(bell.read_text("utf-8").replace(BELL.title, BELL.title[::-1]), "utf-8")
    os.utime(bell, (1e9, 1e9))
    app = make_app(tmp_path, sets)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot, lambda: held and seen(pilot).strip())
        assert rows(pilot)[2] == f"{ARM.title} {CHANGED}"
        filling.read_first(app)
        await settle(pilot, lambda: LEAD in seen(pilot))
        assert rows(pilot)[1].startswith(BELL.title[::-1])
        assert rows(pilot)[2].startswith("Another arm level")


async def test_a_file_edited_within_a_second_of_its_reading_is_not_taken_for_the_old_one(
    tmp_path: Path, sets: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    arm = sets / "lamp-arm.toml"
    now = time.time_ns()
    os.utime(arm, ns=(now, now))
    await shown_once(tmp_path, sets)
    arm.write_text(arm.read_text("utf-8").replace(ARM.title, ARM.title[::-1]), "utf-8")
    os.utime(arm, ns=(now, now))
    held = hold(monkeypatch)
    app = make_app(tmp_path, sets)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot, lambda: held and seen(pilot).strip())
        assert rows(pilot)[2] == f"{ARM.title} {CHANGED}"


async def test_a_lesson_done_since_leaves_it_open_where_its_problem_stands(
    tmp_path: Path, sets: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    open_session(load("lamp-arm"), Keep(tmp_path)).close()
    watched(tmp_path, "bell-frame", sets)
    await shown_once(tmp_path, sets)
    held = hold(monkeypatch)
    watched(tmp_path, "lamp-arm", sets)
    app = make_app(tmp_path, sets)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot, lambda: held and seen(pilot).strip())
        assert rows(pilot)[1].endswith("watched")
        assert rows(pilot)[2].endswith(UNSURE)
        filling.read_first(app)
        await settle(pilot, lambda: LEAD in seen(pilot))
        assert [row.endswith("watched") for row in rows(pilot)[1:]] == [True, True]
        assert DONE not in rows(pilot)[1]


def is_remembered(keep: Path) -> bool:
    """Whether the folder holds a list: a check sum, then a line for it."""
    path = keep / FILE_NAME
    return path.exists() and path.read_bytes()[8:9] == b"\n"


@pytest.mark.parametrize("what", ["garbage", "none", "read-only"])
async def test_without_what_is_remembered_the_list_comes_from_its_files(
    tmp_path: Path, sets: Path, what: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    keep = tmp_path / "keep"
    if what == "garbage":
        await shown_once(keep, sets)
        (keep / FILE_NAME).write_bytes(b"\x00garbage")
    elif what == "read-only":

        def refused(*_: object) -> None:
            raise PermissionError(13, "no")

        monkeypatch.setattr("tutor.records.disk.make_folder", refused)
    app = make_app(keep, sets)
    async with app.run_test(size=(80, 24)) as pilot:
        assert app.remembered is None
        await settle(pilot, lambda: LEAD in seen(pilot))
        assert len(rows(pilot)) == 3
        if what != "read-only":
            await settle(pilot, lambda: is_remembered(keep))
    assert is_remembered(keep) == (what != "read-only")


async def test_a_set_that_is_gone_since_is_told_as_such(tmp_path: Path, sets: Path) -> None:
    keep = tmp_path / "keep"
    await shown_once(keep, sets)
    shutil.rmtree(sets)
    app = make_app(keep, sets)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot, lambda: "1 thing to mend" in seen(pilot))

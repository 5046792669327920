"""Are all lessons found again, in a useful order, whatever lies in the folder?"""

from __future__ import annotations

import os
import re
from datetime import UTC, datetime, timedelta
from pathlib import Path

import platformdirs
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tutor.records import Keep, data_folder, disk
from tutor.records.keep import journal_name

START = datetime(2025, 3, 1, 9, 30, tzinfo=UTC)


class Clock:
    """A clock that goes on by a minute whenever it is asked."""

    def __init__(self) -> None:
        self.now = START

    def __call__(self) -> datetime:
        self.now += timedelta(minutes=1)
        return self.now


def test_the_lesson_last_worked_on_comes_first(tmp_path):
    keep = Keep(tmp_path, clock=Clock())
    with keep.start("arm", "Lamp arm", "arm.toml") as arm, keep.start("gate", "Gate") as gate:
        gate.append({"typed": "1"})
        arm.append({"typed": "2"})
        arm.append({"typed": "3"})
    first, second = keep.lessons()
    assert (first.problem, first.title, first.source, first.events) == (
        "arm",
        "Lamp arm",
        "arm.toml",
        2,
    )
    assert (second.problem, second.title, second.source, second.events) == ("gate", "Gate", "", 1)
    assert first.started < second.started < second.last < first.last
    assert first.notice == second.notice == ""
    with keep.resume(second.path) as gate:
        gate.append({"typed": "4"})
    assert [kept.problem for kept in keep.lessons()] == ["gate", "arm"]


def test_a_lesson_just_started_is_listed_with_no_events(tmp_path):
    keep = Keep(tmp_path, clock=Clock())
    with keep.start("arm", "Lamp arm") as journal:
        (kept,) = keep.lessons()
        assert (kept.path, kept.events, kept.last) == (journal.path, 0, kept.started)


def test_a_folder_that_is_not_there_holds_no_lessons_and_is_not_made_by_looking(tmp_path):
    assert Keep(tmp_path / "none").lessons() == ()
    assert list(tmp_path.iterdir()) == []


def test_a_file_in_the_place_of_the_folder_is_listed_with_a_notice(tmp_path):
    letter = tmp_path / "letter"
    letter.write_text("a letter home")
    (kept,) = Keep(letter).lessons()
    assert not kept.readable
    assert "a file stands where the folder should be" in kept.notice


def test_files_that_cannot_be_read_stand_at_the_end_with_their_notice(tmp_path):
    keep = Keep(tmp_path, clock=Clock())
    keep.start("arm", "Lamp arm").close()
    (tmp_path / "a.jsonl").write_bytes(b"\xff\xfe no lesson\n")
    (tmp_path / "b.jsonl").mkdir()
    (tmp_path / "c.jsonl").symlink_to("missing")
    (tmp_path / "d.jsonl").write_bytes(b"")
    (tmp_path / "notes.txt").write_text("not listed")
    first, *rest = keep.lessons()
    assert first.readable
    assert [kept.path.name for kept in rest] == ["a.jsonl", "b.jsonl", "c.jsonl", "d.jsonl"]
    assert all(kept.notice.isprintable() and not kept.readable for kept in rest)
    assert all(kept.notice for kept in rest)


def test_a_damaged_lesson_is_listed_with_what_is_left_of_it_and_not_changed(tmp_path):
    keep = Keep(tmp_path, clock=Clock())
    with keep.start("arm", "Lamp arm") as journal:
        journal.append({"typed": "1"})
        journal.append({"typed": "2"})
    rows = journal.path.read_bytes().splitlines(keepends=True)
    journal.path.write_bytes(rows[0] + b"bad\n" + rows[2])
    (kept,) = keep.lessons()
    assert (kept.title, kept.events) == ("Lamp arm", 1)
    assert "line 2 is damaged" in kept.notice
    assert journal.path.read_bytes() == rows[0] + b"bad\n" + rows[2]
    keep.resume(kept.path).close()
    (mended,) = keep.lessons()
    assert (mended.path, mended.events, mended.notice) == (kept.path, 1, "")


@given(st.lists(st.binary(max_size=300), max_size=4))
def test_listing_never_raises_whatever_the_files_hold(tmp_path_factory, files):
    folder = tmp_path_factory.mktemp("keep")
    for number, data in enumerate(files):
        (folder / f"{number}.jsonl").write_bytes(data)
    found = Keep(folder).lessons()
    assert len(found) == len(files)
    assert not any(kept.readable for kept in found)


@given(st.text(st.characters(), max_size=80))
def test_no_title_makes_a_file_name_with_more_than_letters_figures_and_hyphens(title):
    assert re.fullmatch(
        r"[a-z0-9][a-z0-9-]{0,39}-2025-03-01-[0-9a-f]{8}\.jsonl", journal_name(title, START)
    )


@pytest.mark.parametrize(
    ("title", "begins"),
    [
        ("../../etc/passwd", "etc-passwd-2025"),
        ("Kranausleger über der Mole", "kranausleger-uber-der-mole-2025"),
        ("/", "lesson-2025"),
        ("\x1b[2J\0", "2j-2025"),
        ("船", "lesson-2025"),
        ("CON", "con-2025"),
    ],
)
def test_a_title_stays_in_the_folder_and_legible(tmp_path, title, begins):
    with Keep(tmp_path, clock=Clock()).start("arm", title) as journal:
        assert journal.path.parent == tmp_path
        assert journal.path.name.startswith(begins)
        assert journal.header.title == title
    assert [path.name for path in tmp_path.iterdir()] == [journal.path.name]


def test_two_lessons_on_one_problem_on_one_day_are_two_files(tmp_path):
    keep = Keep(tmp_path)
    with keep.start("arm", "Lamp arm") as one, keep.start("arm", "Lamp arm") as other:
        assert one.path != other.path
        assert one.saved
        assert other.saved


def test_a_name_that_is_taken_is_not_overwritten(tmp_path, monkeypatch):
    monkeypatch.setattr("tutor.records.keep.journal_name", lambda title, started: "taken.jsonl")
    (tmp_path / "taken.jsonl").write_text("a letter home")
    with Keep(tmp_path).start("arm", "Lamp arm") as journal:
        assert not journal.saved
        assert "no free file name" in journal.notice
    assert (tmp_path / "taken.jsonl").read_text() == "a letter home"


def test_the_usual_folder_is_the_one_the_platform_provides(monkeypatch, tmp_path):
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    assert data_folder() == Path(platformdirs.user_data_dir("pinjoint", appauthor=False))
    assert Keep().folder == data_folder()
    assert not os.path.exists(data_folder())


def test_a_file_left_over_from_a_kill_is_taken_away_the_day_after_and_no_other(tmp_path: Path):
    old, new = tmp_path / ".0123456789abcdef.fresh", tmp_path / ".0123456789abcdee.fresh"
    own = tmp_path / ".mine.fresh"
    for path in (old, new, own):
        path.write_text("half")
    for path in (old, own):
        os.utime(path, (1e9, 1e9))
    disk.replace(tmp_path / "settings.json", b"{}")
    assert [path.exists() for path in (old, new, own)] == [False, True, True]


def test_a_lesson_under_a_clock_that_ran_ahead_is_not_the_last_one_for_ever(tmp_path: Path):
    now = datetime(2025, 3, 1, tzinfo=UTC)
    for title, at in (("Ahead", now + timedelta(days=900)), ("Today", now)):
        with Keep(tmp_path, clock=lambda at=at: at).start("x", title) as journal:
            journal.append({"typed": title})
    assert [kept.title for kept in Keep(tmp_path, clock=lambda: now).lessons()] == [
        "Today",
        "Ahead",
    ]


def test_the_list_tells_the_same_of_whole_lessons_by_their_sums_alone(tmp_path: Path):
    with Keep(tmp_path).start("x", "Lamp arm", content='title = "Lamp arm"') as journal:
        for number in range(5):
            journal.append({"number": number})
    (kept,) = Keep(tmp_path).lessons()
    assert (kept.title, kept.events, kept.content) == ("Lamp arm", 5, 'title = "Lamp arm"')
    assert kept.last == journal.times[-1]

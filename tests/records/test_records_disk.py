"""Is a disk that refuses told plainly and once, and does the lesson go on?"""

from __future__ import annotations

import errno
import os
import subprocess
import sys
from datetime import UTC, datetime
from pathlib import Path

import pytest

from tutor.records import Header, Journal, Keep
from tutor.records import disk as disk_module

HEADER = Header(
    "lamp-arm", "Lamp arm over the ferry steps", datetime(2025, 3, 1, 9, 30, tzinfo=UTC)
)
WRITE, SYNC, OPEN = os.write, os.fsync, os.open


def failing(number: int):
    def fail(*args, **kwargs):
        raise OSError(number, os.strerror(number))

    return fail


@pytest.fixture
def journal(tmp_path):
    with Journal.start(tmp_path / "lesson.jsonl", HEADER) as journal:
        assert journal.append({"typed": "first"})
        yield journal


@pytest.mark.parametrize(
    ("number", "words"),
    [
        (errno.ENOSPC, "the disk is full"),
        (errno.EDQUOT, "your share of the disk is used up"),
        (errno.EIO, "the disk reported an error"),
        (errno.EROFS, "the disk can only be read"),
        (errno.ESTALE, os.strerror(errno.ESTALE)),
    ],
)
@pytest.mark.parametrize("call", ["write", "fsync"])
def test_a_refused_write_or_sync_is_said_once_and_never_tried_again(
    journal, monkeypatch, call, number, words
):
    calls = []

    def fail(*args):
        calls.append(args)
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(os, call, fail)
    assert not journal.append({"typed": "second"})
    assert (journal.saved, len(journal.notices), len(calls)) == (False, 1, 1)
    assert words in journal.notice
    monkeypatch.undo()
    before = journal.path.read_bytes()
    assert not journal.append({"typed": "third"})
    assert journal.path.read_bytes() == before
    assert len(journal.notices) == 1
    assert [event["typed"] for event in journal.events] == ["first", "second", "third"]


@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EIO])
@pytest.mark.parametrize("taken", [1, 7, 100])
def test_a_write_that_is_cut_short_by_a_full_disk_leaves_only_whole_lines(
    journal, monkeypatch, taken, number
):
    before = journal.path.read_bytes()
    room = [taken]

    def write(descriptor, data):
        if not room:
            raise OSError(number, os.strerror(number))
        return WRITE(descriptor, data[: room.pop()])

    monkeypatch.setattr(os, "write", write)
    assert not journal.append({"typed": "second", "long": "x" * 200})
    monkeypatch.undo()
    assert journal.path.read_bytes() == before
    journal.close()
    with Journal.resume(journal.path) as again:
        assert again.events == ({"typed": "first"},)
        assert again.notices == ()


def test_half_a_line_that_cannot_be_taken_back_is_torn_and_costs_nothing_else(journal, monkeypatch):
    room = [9]

    def write(descriptor, data):
        if not room:
            raise OSError(errno.EIO, os.strerror(errno.EIO))
        return WRITE(descriptor, data[: room.pop()])

    monkeypatch.setattr(os, "write", write)
    monkeypatch.setattr(os, "ftruncate", failing(errno.EIO))
    assert not journal.append({"typed": "second"})
    assert len(journal.notices) == 1
    monkeypatch.undo()
    journal.close()
    with Journal.resume(journal.path) as again:
        assert again.events == ({"typed": "first"},)
        assert again.append({"typed": "third"})
        assert "half written" in again.notice


def test_a_system_that_takes_one_byte_at_a_time_gets_them_all(journal, monkeypatch):
    monkeypatch.setattr(os, "write", lambda descriptor, data: WRITE(descriptor, data[:1]))
    assert journal.append({"typed": "second"})
    journal.close()
    with Journal.resume(journal.path) as again:
        assert again.events == ({"typed": "first"}, {"typed": "second"})


def test_a_system_that_takes_no_byte_at_all_does_not_hang_the_lesson(journal, monkeypatch):
    monkeypatch.setattr(os, "write", lambda descriptor, data: 0)
    assert not journal.append({"typed": "second"})
    assert not journal.saved


def test_an_event_is_confirmed_only_after_its_bytes_were_written_and_then_synced(
    journal, monkeypatch
):
    steps = []
    monkeypatch.setattr(
        os, "write", lambda descriptor, data: steps.append("write") or WRITE(descriptor, data)
    )
    monkeypatch.setattr(os, "fsync", lambda descriptor: steps.append("sync") or SYNC(descriptor))
    assert journal.append({"typed": "second"})
    assert steps == ["write", "sync"]


def test_a_new_journal_is_synced_with_the_folder_that_names_it(tmp_path, monkeypatch):
    synced = []

    def sync(descriptor):
        synced.append(os.fstat(descriptor).st_ino)
        SYNC(descriptor)

    monkeypatch.setattr(os, "fsync", sync)
    path = tmp_path / "new" / "lesson.jsonl"
    Journal.start(path, HEADER).close()
    assert [tmp_path.stat().st_ino, path.stat().st_ino, path.parent.stat().st_ino] == synced


@pytest.mark.parametrize(
    ("call", "refused"), [("mkdir", 1), ("write", 1), ("fsync", 1), ("fsync", 2), ("fsync", 3)]
)
def test_a_lesson_that_cannot_be_kept_from_its_start_goes_on_unsaved_and_leaves_no_stub(
    tmp_path, monkeypatch, call, refused
):
    usual = getattr(os, call)
    calls = []

    def sometimes(*args):
        calls.append(args)
        if len(calls) == refused:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        return usual(*args)

    monkeypatch.setattr(os, call, sometimes)
    with Keep(tmp_path / "keep").start("lamp-arm", "Lamp arm") as journal:
        assert (journal.saved, len(journal.notices)) == (False, 1)
        assert not journal.append({"typed": "12"})
        assert journal.events == ({"typed": "12"},)
        assert "the disk is full" in journal.notice
    assert len(calls) == refused
    assert list(tmp_path.glob("keep/*")) == []


@pytest.mark.parametrize("number", [errno.EROFS, errno.EACCES])
def test_a_folder_that_can_only_be_read_is_said_once(tmp_path, monkeypatch, number):
    monkeypatch.setattr(os, "open", failing(number))
    with Keep(tmp_path).start("lamp-arm", "Lamp arm") as journal:
        assert not journal.append({"typed": "12"})
        assert not journal.append({"typed": "13"})
        assert len(journal.notices) == 1
        assert "--keep" in journal.notice
    monkeypatch.undo()
    assert list(tmp_path.iterdir()) == []


def test_a_file_where_the_folder_should_be_is_said_and_left_alone(tmp_path):
    letter = tmp_path / "letter"
    letter.write_text("a letter home")
    for folder in (letter, letter / "below"):
        with Keep(folder).start("lamp-arm", "Lamp arm") as journal:
            assert not journal.append({"typed": "12"})
            assert "a file stands where the folder should be" in journal.notice
    assert letter.read_text() == "a letter home"


@pytest.mark.skipif(not os.path.isdir("/proc/self"), reason="the system has no /proc")
def test_a_folder_that_refuses_even_the_administrator_is_said():
    with Keep(Path("/proc/pinjoint")).start("lamp-arm", "Lamp arm") as journal:
        assert not journal.append({"typed": "12"})
        assert len(journal.notices) == 1


@pytest.mark.skipif(not os.path.exists("/dev/full"), reason="the system has no /dev/full")
def test_a_device_in_the_place_of_a_journal_is_not_written_to(tmp_path):
    path = tmp_path / "lesson.jsonl"
    path.symlink_to("/dev/full")
    with Journal.resume(path) as journal:
        assert not journal.append({"typed": "12"})
        assert "not an ordinary file" in journal.notice


def test_a_file_that_can_only_be_read_is_read_and_not_added_to(journal, monkeypatch):
    journal.close()
    before = journal.path.read_bytes()

    def only_reading(path, flags, *mode, **more):
        if flags & os.O_RDWR:
            raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))
        return OPEN(path, flags, *mode, **more)

    monkeypatch.setattr(os, "open", only_reading)
    with Journal.resume(journal.path) as again:
        assert again.events == ({"typed": "first"},)
        assert again.read_only
        assert not again.append({"typed": "second"})
        assert len(again.notices) == 1
        assert "no permission" in again.notice
    assert journal.path.read_bytes() == before


@pytest.mark.parametrize("damage", [b"torn", b"bad\n"], ids=["torn", "elsewhere"])
@pytest.mark.parametrize("call", ["write", "fsync", "ftruncate", "replace"])
def test_damage_that_cannot_be_put_right_leaves_the_file_and_all_its_events(
    journal, monkeypatch, call, damage
):
    journal.close()
    good = journal.path.read_bytes()
    rows = good.splitlines(keepends=True)
    bad = good + damage if damage == b"torn" else rows[0] + damage + rows[1]
    journal.path.write_bytes(bad)
    monkeypatch.setattr(os, call, failing(errno.ENOSPC))
    with Journal.resume(journal.path) as again:
        assert again.events == ({"typed": "first"},)
        untouched = not again.saved
        assert again.append({"typed": "second"}) == (
            not untouched and call not in ("write", "fsync")
        )
    monkeypatch.undo()
    needed = {"torn": {"write", "fsync", "ftruncate"}}.get(damage.decode().strip(), set())
    needed = needed or {"write", "fsync", "replace"}
    assert untouched == (call in needed)
    if untouched:
        assert journal.path.read_bytes() == bad
        with Journal.resume(journal.path) as later:
            assert later.events == ({"typed": "first"},)
            assert later.append({"typed": "third"})


def test_a_second_program_is_told_and_may_read_but_not_write(journal):
    with Journal.resume(journal.path) as second:
        assert second.read_only
        assert "another program" in second.notice
        assert second.events == journal.events
        assert not second.append({"typed": "second"})
        assert len(second.notices) == 1
        assert journal.append({"typed": "third"})
    journal.close()
    with Journal.resume(journal.path) as again:
        assert again.events == ({"typed": "first"}, {"typed": "third"})
        assert not again.read_only


def test_a_second_program_neither_cuts_nor_mends_what_the_first_is_writing(journal):
    with journal.path.open("ab") as file:
        file.write(b'{"line":2,"of"')
    before = journal.path.read_bytes()
    with Journal.resume(journal.path) as second:
        assert second.events == ({"typed": "first"},)
    assert journal.path.read_bytes() == before
    assert len(list(journal.path.parent.iterdir())) == 1


def test_a_program_of_its_own_is_refused_too(journal):
    code = (
        "import sys; from pathlib import Path; from tutor.records import Journal\n"
        "journal = Journal.resume(Path(sys.argv[1]))\n"
        "print(journal.read_only, journal.append({}), len(journal.events))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, str(journal.path)], capture_output=True, text=True, check=True
    )
    assert done.stdout.split() == ["True", "False", "2"]


def test_a_mended_journal_is_locked_like_any_other(journal):
    journal.close()
    rows = journal.path.read_bytes().splitlines(keepends=True)
    journal.path.write_bytes(rows[0] + b"bad\n" + rows[1])
    with Journal.resume(journal.path) as first, Journal.resume(journal.path) as second:
        assert (first.saved, first.read_only) == (True, False)
        assert (second.saved, second.read_only) == (False, True)
        assert second.events == first.events == ({"typed": "first"},)


def test_a_file_replaced_while_its_lock_was_awaited_is_opened_anew(journal, monkeypatch):
    journal.close()
    usual = disk_module.lock
    swaps = []

    def swap_then_lock(descriptor):
        if not swaps:
            swaps.append(journal.path)
            data = journal.path.read_bytes()
            os.rename(journal.path, journal.path.with_name("old"))
            journal.path.write_bytes(data)
        return usual(descriptor)

    monkeypatch.setattr(disk_module, "lock", swap_then_lock)
    with Journal.resume(journal.path) as again:
        assert again.append({"typed": "second"})
    with Journal.resume(journal.path) as later:
        assert later.events == ({"typed": "first"}, {"typed": "second"})


def test_a_disk_without_locks_still_keeps_the_lesson(journal, monkeypatch):
    fcntl = pytest.importorskip("fcntl")
    journal.close()
    monkeypatch.setattr(fcntl, "flock", failing(errno.ENOLCK))
    with Journal.resume(journal.path) as again:
        assert again.append({"typed": "second"})


@pytest.mark.parametrize("change", ["removed", "shortened", "added to"])
def test_an_event_is_not_confirmed_into_a_file_that_another_program_changed(journal, change):
    if change == "removed":
        journal.path.unlink()
    elif change == "shortened":
        os.truncate(journal.path, 10)
    else:
        with journal.path.open("ab") as file:
            file.write(b"x")
    assert not journal.append({"typed": "second"})
    assert "another program changed or removed its file" in journal.notice


def test_a_file_that_would_grow_over_the_limit_of_reading_is_said_to_be_full(journal, monkeypatch):
    monkeypatch.setattr(disk_module, "MAX_BYTES", len(journal.path.read_bytes()) + 10)
    assert not journal.append({"typed": "second"})
    assert "its file has reached" in journal.notice


@pytest.mark.parametrize("call", ["write", "fsync"])
@pytest.mark.parametrize("taken", [0, 20, 10_000])
def test_an_interruption_in_the_midst_of_an_event_leaves_the_journal_as_it_was(
    journal, monkeypatch, call, taken
):
    before = journal.path.read_bytes()

    def interrupted(descriptor, data=b""):
        if data:
            WRITE(descriptor, data[:taken])
        raise KeyboardInterrupt

    monkeypatch.setattr(os, call, interrupted)
    with pytest.raises(KeyboardInterrupt):
        journal.append({"typed": "second"})
    monkeypatch.undo()
    assert journal.path.read_bytes() == before
    assert journal.events == ({"typed": "first"},)
    assert journal.append({"typed": "third"})
    journal.close()
    with Journal.resume(journal.path) as again:
        assert again.events == ({"typed": "first"}, {"typed": "third"})
        assert again.notices == ()

"""Are homeworks and drawings kept as lessons are: nothing lost in silence, nothing written over?"""

from __future__ import annotations

import errno
import os
import subprocess
import sys
from pathlib import Path

import pytest

from tutor.records import Keep
from tutor.records.kept_lines import KeptLines, lines_after
from tutor.shipped import shipped_problems
from tutor.workbook import open_workbook

LINES = ("A_x = 360 left", "A_y = 150", "B_x = 360")
MORE = (*LINES, "AC = 360 C", "BC = 390 C")
IN_ANOTHER = """
import sys, time
from pathlib import Path
from tutor.records.kept_lines import KeptLines

kept = KeptLines(Path(sys.argv[1]), "homework-x", "homework")
kept.write(["A_x = 1"])
print("there", flush=True)
sys.stdin.read()
"""


def fresh(folder: Path) -> KeptLines:
    """The lines as a program that is started anew finds them."""
    return KeptLines(folder, "homework-x", "homework")


def written(folder: Path, *versions: tuple[str, ...]) -> Path:
    kept = fresh(folder)
    for lines in versions:
        assert kept.write(lines) == ""
    kept.close()
    return kept.path


def test_lines_come_up_again_as_they_were_left(tmp_path: Path) -> None:
    path = written(tmp_path, LINES, MORE, LINES[:1], (*LINES[:1], "AB = 0"))
    assert fresh(tmp_path).read() == (*LINES[:1], "AB = 0")
    assert path.suffix == ".jsonl"
    written(tmp_path, ())
    assert fresh(tmp_path).read() == ()


def test_any_number_of_changes_comes_to_the_last_one(tmp_path: Path) -> None:
    lines: tuple[str, ...] = ()
    for number in range(60):
        lines = (*lines[: number % 7], f"line {number}", *lines[number % 7 :])
        written(tmp_path, lines)
    assert fresh(tmp_path).read() == lines


def test_a_text_file_of_an_earlier_version_is_read_and_stays_as_it_is(tmp_path: Path) -> None:
    old = tmp_path / "own" / "homework-old.txt"
    old.parent.mkdir()
    old.write_bytes(b"A_x = 360 left\nA_y \xff= 150\nB_x = 360\n")
    before = old.read_bytes()
    kept = KeptLines(tmp_path, "homework-x", "homework", older=["homework-old"])
    assert kept.read() == ("A_x = 360 left", "B_x = 360")
    (notice,) = kept.news()
    assert "1 line of this homework could not be read" in notice
    assert kept.write(MORE) == ""
    kept.close()
    assert fresh(tmp_path).read() == MORE
    assert old.read_bytes() == before


def test_a_second_program_is_told_and_writes_nothing(tmp_path: Path) -> None:
    command = [sys.executable, "-c", IN_ANOTHER, str(tmp_path)]
    with subprocess.Popen(
        command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as first:
        assert first.stdout is not None
        assert first.stdin is not None
        assert first.stdout.readline() == "there\n"
        second = fresh(tmp_path)
        before = second.path.read_bytes()
        assert second.read() == ("A_x = 1",)
        told = second.write(MORE)
        assert "already open in another program" in told
        assert second.write(LINES) == ""
        assert second.trouble
        assert second.path.read_bytes() == before
        first.stdin.close()
    second.close()
    assert fresh(tmp_path).read() == ("A_x = 1",)


def test_two_that_are_open_in_one_program_are_one(tmp_path: Path) -> None:
    one, other = fresh(tmp_path), fresh(tmp_path)
    one.write(LINES)
    assert other.read() == LINES
    other.write(MORE)
    one.close()
    assert other.read() == fresh(tmp_path).read() == MORE
    assert not other.trouble


def test_every_single_bit_that_flips_is_told_or_costs_nothing(tmp_path: Path) -> None:
    path = written(tmp_path, LINES, MORE)
    whole = path.read_bytes()
    entries = set(MORE)
    for bit in range(0, 8 * len(whole), 61):
        broken = bytearray(whole)
        broken[bit // 8] ^= 1 << bit % 8
        path.write_bytes(bytes(broken))
        kept = fresh(tmp_path)
        lines = kept.read()
        assert set(lines) <= entries, (bit, lines)
        assert lines == MORE or kept.news(), (bit, lines)
        assert kept.write(MORE) is not None
        kept.close()
        assert fresh(tmp_path).read() == MORE
        aside = [each for each in path.parent.iterdir() if each != path]
        assert lines == MORE or any(bytes(broken)[-40:] in each.read_bytes() for each in aside)
        for each in path.parent.iterdir():
            each.unlink()


@pytest.mark.parametrize("step", [1, 7])
def test_a_file_cut_short_anywhere_costs_the_last_change_at_most(tmp_path: Path, step: int) -> None:
    path = written(tmp_path, LINES, MORE)
    whole = path.read_bytes()
    ends = [place for place, byte in enumerate(whole) if byte == ord("\n")]
    for cut in range(0, len(whole), step * 11):
        path.write_bytes(whole[:cut])
        kept = fresh(tmp_path)
        lines = kept.read()
        wanted = MORE if cut >= ends[2] else LINES if cut >= ends[1] else ()
        assert lines == wanted, cut
        assert cut in (0, *ends) or cut - 1 in ends or kept.news(), cut
        assert kept.write(MORE) is not None
        kept.close()
        assert fresh(tmp_path).read() == MORE
        for each in path.parent.iterdir():
            each.unlink()


@pytest.mark.parametrize("call", ["write", "fsync", "open", "replace", "ftruncate"])
@pytest.mark.parametrize("nth", [1, 2, 3, 5])
@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EIO])
def test_a_disk_that_refuses_once_loses_nothing_that_was_confirmed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, call: str, nth: int, number: int
) -> None:
    versions = [LINES[:1], LINES[:2], LINES, MORE[:4], MORE]
    usual, calls = getattr(os, call), []

    def sometimes(*args, **kwargs):
        calls.append(args)
        if len(calls) == nth:
            raise OSError(number, os.strerror(number))
        return usual(*args, **kwargs)

    kept = fresh(tmp_path)
    with monkeypatch.context() as patch:
        patch.setattr(os, call, sometimes)
        confirmed: tuple[str, ...] = ()
        told: list[str] = []
        for lines in versions:
            told += [notice] if (notice := kept.write(lines)) else []
            assert kept.read() == lines
            if not kept.trouble:
                confirmed = lines
        assert kept.trouble or confirmed == MORE
    assert told if kept.trouble else len(told) in (0, 1 if (call, nth) == ("open", 1) else 2)
    kept.close()
    assert fresh(tmp_path).read() in (confirmed, MORE)


def test_a_disk_that_takes_bytes_again_gets_everything(tmp_path: Path, monkeypatch) -> None:
    kept = fresh(tmp_path)
    kept.write(LINES[:1])
    with monkeypatch.context() as patch:
        patch.setattr(os, "fsync", lambda _: (_ for _ in ()).throw(OSError(errno.EIO, "broken")))
        assert "not being saved" in kept.write(LINES)
        assert kept.write(MORE[:4]) == ""
        assert kept.trouble
    assert "kept again" in kept.write(MORE)
    kept.close()
    assert fresh(tmp_path).read() == MORE


def test_entries_that_are_none_are_passed_over() -> None:
    events = [
        {"kind": "lines", "from": 0, "add": ["a", "b"]},
        {"kind": "lines", "from": -1, "add": ["x"]},
        {"kind": "lines", "from": True, "add": ["x"]},
        {"kind": "lines", "from": 1, "add": "x"},
        {"kind": "other", "from": 0, "add": []},
        {"kind": "lines", "from": 1, "add": ["c", 3, None]},
    ]
    assert lines_after(events) == ("a", "c")


def test_the_paper_of_a_homework_tells_what_was_damaged(tmp_path: Path) -> None:
    from tutor.model import load_problem

    problem = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")
    book = open_workbook(problem, Keep(tmp_path))
    for line in LINES:
        book.write(line)
    path = book.kept.path
    book.kept.close()
    raw = bytearray(path.read_bytes())
    raw[len(raw) // 2] ^= 4
    path.write_bytes(bytes(raw))
    again = open_workbook(problem, Keep(tmp_path))
    assert any("damaged" in notice for notice in again.news())
    assert not again.paper.blank

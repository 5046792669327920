"""What is remembered of the list is only ever a picture of it: never trusted, never in the way."""

from __future__ import annotations

import json
import os
import zlib
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tutor.records import listed
from tutor.records.listed import (
    FILE_NAME,
    MOST_LISTS,
    NO_STAMP,
    UNSETTLED,
    SeenGroup,
    SeenLesson,
    SeenList,
    SeenRow,
    list_of,
    read_seen,
    stamp_of,
    stamps_in,
    sure_stamp,
    write_seen,
)

WHICH = list_of([Path("/sets")], None)


def seen_of(folder: Path) -> SeenList:
    """A list of two files that are there."""
    rows = []
    for name in ("arm", "boom"):
        path = folder / f"{name}.toml"
        path.write_text(f'title = "{name}"\n', "utf-8")
        key = f"set/{name}"
        rows.append(SeenRow(str(path), stamp_of(path), name, key, 2, "A story.", 0, False, ()))
    rows[1] = rows[1]._replace(before=(("set/arm", "arm"),))
    return SeenList(
        (SeenGroup("Set", tuple(rows), 3),),
        {"set/arm": "done"},
        (("can do", ("joints",)),),
        "set/arm",
        rows[1].path,
        {"arm-1.jsonl": SeenLesson((10, 20), "set/arm")},
    )


def test_a_list_is_remembered_as_it_was_seen(tmp_path: Path) -> None:
    seen = seen_of(tmp_path)
    write_seen(tmp_path / "keep", WHICH, seen)
    assert read_seen(tmp_path / "keep", WHICH) == seen
    assert read_seen(tmp_path / "keep", list_of([Path("/sets")], "s1")) is None
    assert read_seen(tmp_path / "nowhere", WHICH) is None


def test_a_file_that_changed_is_not_known_and_one_that_is_gone_is_left_out(tmp_path: Path) -> None:
    write_seen(tmp_path, WHICH, seen_of(tmp_path))
    (tmp_path / "arm.toml").write_text('title = "another one"\n', "utf-8")
    (tmp_path / "boom.toml").unlink()
    found = read_seen(tmp_path, WHICH)
    assert found is not None
    (group,) = found.groups
    assert [(row.title, row.stamp) for row in group.rows] == [("arm", NO_STAMP)]


def test_a_file_written_shortly_before_it_was_read_is_not_known_by_its_time(tmp_path: Path) -> None:
    path = tmp_path / "arm.toml"
    path.write_text("one", "utf-8")
    stamp = stamp_of(path)
    assert sure_stamp(stamp, stamp[1] + UNSETTLED // 2) == NO_STAMP
    assert sure_stamp(stamp, stamp[1] + 2 * UNSETTLED) == stamp
    path.write_text("two", "utf-8")  # as long, and at once
    os.utime(path, ns=(stamp[1], stamp[1]))
    assert stamp_of(path) == stamp  # which is why its time says nothing


@settings(max_examples=40)
@given(st.data())
def test_a_file_that_is_torn_or_changed_anywhere_counts_as_nothing(
    tmp_path_factory: pytest.TempPathFactory, data: st.DataObject
) -> None:
    folder = tmp_path_factory.mktemp("torn")
    write_seen(folder, WHICH, seen_of(folder))
    path = folder / FILE_NAME
    whole = path.read_bytes()
    place = int(data.draw(st.floats(0, 1, exclude_max=True)) * len(whole))
    torn = data.draw(st.booleans())
    changed = bytes([whole[place] ^ (1 << data.draw(st.integers(0, 7)))])
    path.write_bytes(whole[:place] if torn else whole[:place] + changed + whole[place + 1 :])
    assert read_seen(folder, WHICH) is None
    write_seen(folder, WHICH, seen_of(folder))
    assert read_seen(folder, WHICH) is not None


@pytest.mark.parametrize(
    "body",
    [
        b"",
        b"[]",
        b"null",
        b'{"form": 2, "by": "", "lists": 3}',
        b"[" * 100_000,
        b'{"form": 99, "by": "%s", "lists": {}}',
    ],
)
def test_a_foreign_file_with_a_right_sum_counts_as_nothing(tmp_path: Path, body: bytes) -> None:
    (tmp_path / FILE_NAME).write_bytes(b"%08x\n%s" % (zlib.crc32(body), body))
    assert read_seen(tmp_path, WHICH) is None


@pytest.mark.parametrize("wrong", [3, [], {"groups": 3}, {"groups": [{"title": 1}]}])
def test_a_list_of_another_shape_counts_as_nothing(tmp_path: Path, wrong: object) -> None:
    record = {"form": listed.FORM, "by": listed.program(), "lists": {WHICH: wrong}}
    body = json.dumps(record).encode()
    (tmp_path / FILE_NAME).write_bytes(b"%08x\n%s" % (zlib.crc32(body), body))
    assert read_seen(tmp_path, WHICH) is None


def test_a_list_of_another_program_counts_as_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_seen(tmp_path, WHICH, seen_of(tmp_path))
    monkeypatch.setattr(listed, "program", lambda: "another")
    assert read_seen(tmp_path, WHICH) is None


def test_compiling_the_program_does_not_make_it_another_one() -> None:
    before = listed.program()
    compiled = Path(listed.__file__).parents[1] / "__pycache__"
    made = not compiled.exists()
    compiled.mkdir(exist_ok=True)
    state = compiled.stat()
    os.utime(compiled, ns=(state.st_atime_ns, state.st_mtime_ns + 1_000_000_000))
    assert listed.program() == before
    if made:
        compiled.rmdir()


def test_a_folder_that_cannot_be_written_to_is_no_trouble(tmp_path: Path) -> None:
    (tmp_path / "keep").write_text("a file where the folder should be", "utf-8")
    write_seen(tmp_path / "keep", WHICH, seen_of(tmp_path))
    assert read_seen(tmp_path / "keep", WHICH) is None


def test_two_programs_that_write_at_once_leave_a_whole_list(tmp_path: Path) -> None:
    seen = seen_of(tmp_path)
    each = [seen._replace(last=str(n)) for n in range(20)]
    with ThreadPoolExecutor(4) as pool:
        list(pool.map(lambda one: write_seen(tmp_path, WHICH, one), each))
        found = read_seen(tmp_path, WHICH)
    assert found in each
    assert {path.name for path in tmp_path.glob("*.json")} == {FILE_NAME}
    assert not list(tmp_path.glob(".*.fresh"))


def test_the_lists_seen_last_are_remembered_and_no_more(tmp_path: Path) -> None:
    seen = seen_of(tmp_path)
    names = [list_of([Path(f"/sets/{n}")], None) for n in range(MOST_LISTS + 1)]
    for name in names:
        write_seen(tmp_path, name, seen)
    assert [read_seen(tmp_path, name) is not None for name in names] == [False] + [True] * 3


def test_a_list_that_is_as_it_was_is_not_written_again(tmp_path: Path) -> None:
    seen = seen_of(tmp_path)
    write_seen(tmp_path, WHICH, seen)
    before = (tmp_path / FILE_NAME).stat()
    write_seen(tmp_path, WHICH, seen)
    assert (tmp_path / FILE_NAME).stat().st_ino == before.st_ino


def test_stamps_are_those_of_the_files_with_the_ending(tmp_path: Path) -> None:
    (tmp_path / "a.jsonl").write_text("x", "utf-8")
    (tmp_path / "b.txt").write_text("x", "utf-8")
    assert stamps_in(tmp_path, ".jsonl") == {"a.jsonl": stamp_of(tmp_path / "a.jsonl")}
    assert stamps_in(tmp_path / "nowhere", ".jsonl") == {}

"""Is any damage to a journal noticed, and does every whole event outlive it?"""

from __future__ import annotations

import os
from datetime import UTC, datetime
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tutor.records import Header, Journal
from tutor.records.contents import read_contents
from tutor.records.disk import MAX_BYTES
from tutor.records.line import END, MARK, check_sum, write_line
from tutor.records.mend import rewritten

HEADER = Header(
    "lamp-arm", "Lamp arm over the ferry steps", datetime(2025, 3, 1, 9, 30, tzinfo=UTC)
)
EVENTS = (
    {"kind": "free body", "joint": "A", "x": "left"},
    {"typed": "3/5 F_AC \u2212 12 = 0\n", "values": [12, 0.5, None, True]},
    {"nested": [{"line": 3, "sum": "0123456789abcdef"}, {"line": 4}]},
    {},
)


def made(path: Path, events=EVENTS, header: Header = HEADER) -> bytes:
    with Journal.start(path, header, clock=lambda: header.started) as journal:
        for event in events:
            assert journal.append(event)
    return path.read_bytes()


def aside(path: Path) -> list[bytes]:
    return [side.read_bytes() for side in sorted(path.parent.glob("*.kept-aside*"))]


def test_cut_at_any_byte_it_resumes_at_the_last_whole_event_and_takes_more(tmp_path):
    data = made(tmp_path / "whole.jsonl")
    ends = [place for place, byte in enumerate(data) if byte == ord("\n")]
    for cut in range(len(data) + 1):
        path = tmp_path / f"cut-{cut}" / "lesson.jsonl"
        path.parent.mkdir()
        path.write_bytes(data[:cut])
        whole = sum(end <= cut for end in ends)
        with Journal.resume(path) as journal:
            assert journal.events == EVENTS[: max(0, whole - 1)]
            assert journal.saved == (whole > 0)
            assert journal.append({"after": cut}) == (whole > 0)
            last = ends[whole - 1] if whole else 0
            torn = data[last:cut].lstrip(b"\n")
            assert bool(journal.notices) == (bool(torn) or not whole)
        if not whole:
            assert path.read_bytes() == data[:cut]
            continue
        assert aside(path) == ([torn] if torn else [])
        with Journal.resume(path) as again:
            assert again.events == (*EVENTS[: whole - 1], {"after": cut})
            assert again.notices == ()


def test_no_changed_byte_goes_unnoticed_or_changes_an_event(tmp_path):
    data = made(tmp_path / "whole.jsonl")
    for place in range(len(data)):
        for other in {data[place] ^ 1, data[place] ^ 0x20, data[place] ^ 0x80, 0, ord("\n")}:
            if other == data[place]:
                continue
            contents = read_contents(data[:place] + bytes([other]) + data[place + 1 :])
            assert contents.faults or contents.torn, (place, other)
            events = [line.event for line in contents.lines]
            assert len(events) >= len(EVENTS) - 1
            assert events == [event for event in EVENTS if event in events]


@given(st.data())
def test_after_any_changed_byte_the_lesson_goes_on_and_the_damaged_bytes_are_kept(
    tmp_path_factory, data
):
    path = tmp_path_factory.mktemp("keep") / "lesson.jsonl"
    good = made(path)
    place = data.draw(st.integers(0, len(good) - 1))
    other = data.draw(st.integers(0, 255).filter(lambda byte: byte != good[place]))
    bad = good[:place] + bytes([other]) + good[place + 1 :]
    path.write_bytes(bad)
    with Journal.resume(path) as journal:
        assert len(journal.notices) == 1
        kept = journal.events
        assert list(kept) == [event for event in EVENTS if event in kept]
        assert len(kept) >= len(EVENTS) - 1
        assert journal.saved
        assert journal.append({"after": place})
        assert journal.header.problem == HEADER.problem
    (side,) = aside(path)
    assert bad == side or bad.rstrip(b"\n").endswith(side.rstrip(b"\n"))
    with Journal.resume(path) as again:
        assert again.events == (*kept, {"after": place})
        assert again.notices == ()


@given(st.binary(max_size=200), st.binary(max_size=200), st.integers(0, 2000))
def test_bytes_of_any_kind_anywhere_in_the_file_never_raise_and_never_cost_a_whole_line(
    tmp_path_factory, first, second, place
):
    path = tmp_path_factory.mktemp("keep") / "lesson.jsonl"
    good = made(path)
    rows = good.splitlines(keepends=True)
    place %= len(rows) + 1
    path.write_bytes(b"".join([*rows[:place], first + b"\n" + second + b"\n", *rows[place:]]))
    with Journal.resume(path) as journal:
        assert journal.events == EVENTS
        assert journal.header.title == HEADER.title
        assert bool(journal.notices) == bool((first + second).strip(b"\n"))


@given(st.binary(max_size=400))
def test_a_file_that_is_no_journal_is_said_to_be_none_and_left_as_it_is(tmp_path_factory, data):
    path = tmp_path_factory.mktemp("keep") / "lesson.jsonl"
    path.write_bytes(data)
    with Journal.resume(path) as journal:
        assert (journal.saved, journal.events, journal.header.problem) == (False, (), "")
        assert not journal.append({"typed": "12"})
        assert journal.notices
    assert path.read_bytes() == data
    assert aside(path) == []


@given(st.permutations(range(1, 5)), st.sets(st.integers(1, 4)))
def test_lost_and_reordered_lines_are_noticed_and_the_rest_stands_in_its_order(order, lost):
    rows = rewritten(HEADER, read_contents(sample()).lines).splitlines(keepends=True)
    here = [number for number in order if number not in lost]
    contents = read_contents(rows[0] + b"".join(rows[number] for number in here))
    assert [line.number for line in contents.lines] == sorted(here)
    assert bool(contents.faults) == (here != list(range(1, len(here) + 1)))


def test_a_line_that_stands_twice_counts_once_and_is_noticed():
    rows = sample().splitlines(keepends=True)
    contents = read_contents(b"".join([*rows, rows[2]]))
    assert tuple(line.event for line in contents.lines) == EVENTS
    assert contents.faults == ("line 6 stands there twice",)


def test_a_line_of_another_lesson_is_noticed_and_left_out():
    alien = write_line(5, "gangway", "", HEADER.started, {"typed": "7"})
    contents = read_contents(sample() + alien + b"\n")
    assert tuple(line.event for line in contents.lines) == EVENTS
    assert contents.faults == ("line 6 belongs to another lesson",)


def test_a_whole_line_put_in_the_place_of_another_is_noticed():
    rows = sample().splitlines(keepends=True)
    rows[2] = write_line(2, HEADER.problem, "0" * 16, HEADER.started, {"typed": "7"}) + b"\n"
    faults = read_contents(b"".join(rows)).faults
    assert "entry 2 does not follow from the one before it" in faults


def test_line_ends_changed_by_an_editor_cost_no_event(tmp_path):
    path = tmp_path / "lesson.jsonl"
    path.write_bytes(made(tmp_path / "whole.jsonl").replace(b"\n", b"\r\n"))
    with Journal.resume(path) as journal:
        assert journal.events == EVENTS
        assert len(journal.notices) == 1


def test_a_lost_title_leaves_the_problem_known(tmp_path):
    path = tmp_path / "lesson.jsonl"
    path.write_bytes(b"?" + made(tmp_path / "whole.jsonl"))
    with Journal.resume(path) as journal:
        assert journal.header.problem == HEADER.problem
        assert journal.events == EVENTS
        assert "line 1 is damaged" in journal.notice


def test_a_mended_journal_says_which_file_it_was_made_from(tmp_path):
    path = tmp_path / "lesson.jsonl"
    rows = made(path).splitlines(keepends=True)
    path.write_bytes(b"".join([rows[0], rows[1], b"{}\n", *rows[3:]]))
    bad = path.read_bytes()
    Journal.resume(path).close()
    with Journal.resume(path) as again:
        assert (tmp_path / again.header.mended).read_bytes() == bad
        assert again.events == (EVENTS[0], *EVENTS[2:])
    assert path.stat().st_mode & 0o777 == 0o600


def test_a_journal_that_others_could_read_is_closed_to_them_when_it_is_gone_on_with(tmp_path):
    path = tmp_path / "lesson.jsonl"
    made(path)
    path.chmod(0o644)
    Journal.resume(path).close()
    assert path.stat().st_mode & 0o777 == 0o600


def test_each_damaged_state_is_kept_under_a_name_of_its_own(tmp_path):
    path = tmp_path / "lesson.jsonl"
    good = made(path)
    for tail in (b"first", b"second"):
        path.write_bytes(good + tail)
        Journal.resume(path).close()
    assert sorted(aside(path)) == [b"first", b"second"]


@pytest.mark.parametrize(
    "number", ["-1", "true", "1e3", '"1"', "null", "1" * 5000, str(10**18)], ids=lambda n: n[:8]
)
def test_a_forged_number_neither_hangs_nor_raises(number):
    body = (
        f'{{"line":{number},"of":"lamp-arm","after":"","at":"2025-03-01T09:30:00+00:00","event":{{}}'
    ).encode()
    forged = body + MARK + check_sum(body).encode() + END
    contents = read_contents(sample() + forged + b"\n" + sample())
    assert contents.faults
    assert tuple(line.event for line in contents.lines)[: len(EVENTS)] == EVENTS


@pytest.mark.parametrize("opening", [b"[", b'{"a":'], ids=["lists", "mappings"])
def test_a_deeply_nested_line_with_a_right_check_sum_is_damaged_and_no_more(opening):
    body = opening * 200_000
    forged = body + MARK + check_sum(body).encode() + END
    assert read_contents(sample() + forged + b"\n" + sample()[:-1]).faults


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="the system has no pipes with names")
def test_a_pipe_a_folder_and_a_missing_file_are_said_to_be_unreadable(tmp_path):
    os.mkfifo(tmp_path / "pipe.jsonl")
    (tmp_path / "folder.jsonl").mkdir()
    for name in ("pipe.jsonl", "folder.jsonl", "missing.jsonl", "nul\0.jsonl", "x" * 300):
        with Journal.resume(tmp_path / name) as journal:
            assert not journal.saved
            assert "cannot be read" in journal.notice
            assert journal.notice.isprintable()


def test_a_file_over_the_limit_is_refused(tmp_path):
    path = tmp_path / "huge.jsonl"
    with path.open("wb") as file:
        file.truncate(MAX_BYTES + 1)
    with Journal.resume(path) as journal:
        assert "too large" in journal.notice


def sample() -> bytes:
    """The bytes of a journal with the four events."""
    rows = [write_line(0, HEADER.problem, "", HEADER.started, HEADER.event())]
    for number, event in enumerate(EVENTS, start=1):
        after = rows[-1].decode()[-18:-2]
        rows.append(write_line(number, HEADER.problem, after, HEADER.started, event))
    return b"".join(row + b"\n" for row in rows)


def test_a_row_that_holds_two_objects_is_no_line_though_its_sum_is_right():
    """A sound journal is read as one text; each row of it has to be one whole line all the same."""
    rows = sample().splitlines()
    tail = len(MARK) + 16 + len(END)
    body = rows[1] + b"," + rows[2][:-tail]
    two = body + MARK + check_sum(body).encode() + END
    for changed in ([rows[0], two, *rows[3:]], [rows[0], two, *rows[2:]]):
        assert read_contents(b"\n".join(changed) + b"\n").faults

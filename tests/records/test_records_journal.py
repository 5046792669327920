"""Does a journal give back what it was given, and only that?"""

from __future__ import annotations

import json
import stat
from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tutor.records import Header, Journal
from tutor.records.contents import VERSION

HEADER = Header(
    "lamp-arm", "Lamp arm over the ferry steps", datetime(2025, 3, 1, 9, 30, tzinfo=UTC)
)
VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(st.characters(codec="utf-8"), max_size=12),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=6), inner, max_size=4),
    max_leaves=12,
)  # fmt: skip
ZONES = st.integers(-1439, 1439).map(lambda minutes: timezone(timedelta(minutes=minutes)))
EVENTS = st.dictionaries(st.text(max_size=8), VALUES, max_size=5)


def exact(events: object) -> str:
    return json.dumps(events, ensure_ascii=False)


@given(st.lists(EVENTS, max_size=6))
def test_events_come_back_exactly_as_they_were_taken_down(tmp_path_factory, events):
    path = tmp_path_factory.mktemp("keep") / "lesson.jsonl"
    with Journal.start(path, HEADER) as journal:
        assert all(journal.append(event) for event in events)
        assert exact(journal.events) == exact(events)
    with Journal.resume(path) as again:
        assert exact(again.events) == exact(events)
        assert (again.header, again.notices, again.saved) == (HEADER, (), True)


@given(st.lists(EVENTS, max_size=6), st.integers(0, 6))
def test_a_lesson_left_and_gone_on_with_is_one_lesson(tmp_path_factory, events, left_after):
    path = tmp_path_factory.mktemp("keep") / "lesson.jsonl"
    with Journal.start(path, HEADER) as journal:
        for event in events[:left_after]:
            journal.append(event)
    first = path.read_bytes()
    with Journal.resume(path) as journal:
        for event in events[left_after:]:
            assert journal.append(event)
    assert path.read_bytes().startswith(first)
    with Journal.resume(path) as again:
        assert exact(again.events) == exact(events)
        assert again.notices == ()


@given(st.text(st.characters(codec="utf-8"), max_size=30))
def test_nothing_typed_puts_a_control_character_or_another_line_into_the_file(
    tmp_path_factory, text
):
    path = tmp_path_factory.mktemp("keep") / "lesson.jsonl"
    header = Header(text, text, HEADER.started, text)
    with Journal.start(path, header) as journal:
        journal.append({"typed": text})
    data = path.read_bytes()
    assert data.count(b"\n") == 2
    assert all(0x20 <= byte < 0x7F for byte in data.replace(b"\n", b""))
    with Journal.resume(path) as again:
        assert again.header == header
        assert again.events == ({"typed": text},)


def test_bytes_a_terminal_could_not_decode_come_back_as_they_were(tmp_path):
    path = tmp_path / "lesson.jsonl"
    typed = b"F_AC = 12 \xff\x1b[2J".decode("utf-8", "surrogateescape")
    with Journal.start(path, HEADER) as journal:
        assert journal.append({"typed": typed})
    with Journal.resume(path) as again:
        assert again.events == ({"typed": typed},)


def test_every_line_of_the_file_is_a_json_object(tmp_path):
    path = tmp_path / "lesson.jsonl"
    with Journal.start(path, HEADER) as journal:
        journal.append({"typed": "3/5 F_AC - 12 = 0"})
    first, second = (json.loads(line) for line in path.read_text("ascii").splitlines())
    assert first["event"]["title"] == HEADER.title
    assert first["of"] == second["of"] == HEADER.problem
    assert second["event"] == {"typed": "3/5 F_AC - 12 = 0"}
    assert second["after"] == first["sum"]


@pytest.mark.parametrize(
    "event",
    [
        {"value": float("nan")},
        {"value": float("inf")},
        {"value": {1, 2}},
        {"value": b"12"},
        {"value": {3: "three"}},
        {"value": 10**5000},
        {"value": json.loads("[" * 80 + "]" * 80)},
        ["not a mapping"],
    ],
    ids=["not a number", "infinite", "set", "bytes", "key", "huge", "deep", "list"],
)
def test_an_event_that_json_cannot_hold_is_refused_and_nothing_else_changes(tmp_path, event):
    path = tmp_path / "lesson.jsonl"
    with Journal.start(path, HEADER) as journal:
        journal.append({"typed": "12"})
        before = path.read_bytes()
        with pytest.raises((TypeError, ValueError)):
            journal.append(event)
        assert path.read_bytes() == before
        assert journal.append({"typed": "13"})
    with Journal.resume(path) as again:
        assert again.events == ({"typed": "12"}, {"typed": "13"})


def test_tuples_are_lists_at_once_and_not_only_after_reading(tmp_path):
    with Journal.start(tmp_path / "lesson.jsonl", HEADER) as journal:
        journal.append({"arrows": ("left", "up")})
        assert journal.events == ({"arrows": ["left", "up"]},)


def test_an_event_is_kept_as_it_was_even_if_the_lesson_changes_it_afterwards(tmp_path):
    event = {"tries": [1]}
    with Journal.start(tmp_path / "lesson.jsonl", HEADER) as journal:
        journal.append(event)
        event["tries"].append(2)
        assert journal.events == ({"tries": [1]},)


def test_the_file_and_the_folders_made_for_it_are_closed_to_other_users(tmp_path):
    path = tmp_path / "one" / "two" / "lesson.jsonl"
    Journal.start(path, HEADER).close()
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    assert stat.S_IMODE(path.parent.stat().st_mode) == 0o700
    assert stat.S_IMODE(path.parent.parent.stat().st_mode) == 0o700


def test_starting_on_a_file_that_is_there_overwrites_nothing(tmp_path):
    path = tmp_path / "lesson.jsonl"
    path.write_text("a letter home")
    with pytest.raises(FileExistsError):
        Journal.start(path, HEADER)
    assert path.read_text() == "a letter home"


def test_the_times_are_those_at_which_the_events_were_taken_down(tmp_path):
    path = tmp_path / "lesson.jsonl"
    ticks = [datetime(2025, 3, 1, 10, minute, tzinfo=UTC) for minute in range(3)]
    with Journal.start(path, HEADER, clock=iter(ticks).__next__) as journal:
        for number in range(3):
            journal.append({"number": number})
    with Journal.resume(path) as again:
        assert list(again.times) == ticks


@given(st.datetimes(timezones=ZONES))
def test_the_time_of_a_start_is_kept_to_its_last_figure(tmp_path_factory, started):
    path = tmp_path_factory.mktemp("keep") / "lesson.jsonl"
    Journal.start(path, Header("lamp-arm", "Lamp arm", started)).close()
    with Journal.resume(path) as again:
        assert again.header.started.replace(tzinfo=None) == started.replace(tzinfo=None)
        assert again.header.started.utcoffset() == started.utcoffset()


def test_a_closed_journal_takes_nothing_more(tmp_path):
    journal = Journal.start(tmp_path / "lesson.jsonl", HEADER)
    journal.close()
    journal.close()
    with pytest.raises(ValueError, match="closed"):
        journal.append({"typed": "12"})


def test_a_journal_of_a_later_version_can_be_read_but_not_added_to(tmp_path: Path):
    path = tmp_path / "lesson.jsonl"
    later = Header("lamp-arm", "Lamp arm", HEADER.started, version=VERSION + 1)
    with Journal.start(path, later) as journal:
        journal.append({"typed": "12"})
    before = path.read_bytes()
    with Journal.resume(path) as again:
        assert again.read_only
        assert not again.append({"typed": "13"})
        assert "later version" in again.notice
    assert path.read_bytes() == before

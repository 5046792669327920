"""What is handed in comes out as it was written, or it is told."""

from __future__ import annotations

from pathlib import Path

import pytest
from classroom import DAY, TRESTLE, handed_in, lesson
from hypothesis import given
from hypothesis import strategies as st

from tutor.cohort.course import course_at
from tutor.cohort.gathering import Way, gather
from tutor.cohort.handed import HandedIn, read_handed_in, written

WAY = Way("seed")


@pytest.fixture(scope="module")
def data(course_folder: Path) -> bytes:
    return handed_in(course_folder, "s1041", most={"eel-trap": 24, "trestle": 16})


@pytest.fixture(scope="module")
def course(course_folder: Path):
    return course_at(course_folder)


def test_a_file_as_it_was_written_has_no_fault(data: bytes, course) -> None:
    handed = read_handed_in(data)
    assert isinstance(handed, HandedIn)
    assert (handed.student, handed.set, handed.faults) == ("s1041", "week-3", ())
    assert [part.whole for part in handed.parts] == [True, True]
    found = gather(course, "a.txt", data, WAY)
    assert found.faults == ()
    assert [work.state for work in found.works] == ["begun", "begun"]


def test_line_ends_and_a_mark_of_another_system_do_no_harm(data: bytes, course) -> None:
    windows = b"\xef\xbb\xbf" + data.replace(b"\n", b"\r\n")
    assert gather(course, "a.txt", windows, WAY) == gather(course, "a.txt", data, WAY)


def told(handed: HandedIn | str) -> tuple[str, ...]:
    """All that is wrong with a file and with the lessons in it."""
    if isinstance(handed, str):
        return (handed,)
    return (*handed.faults, *(fault for part in handed.parts for fault in part.faults))


@given(share=st.floats(0.0, 1.0, exclude_max=True), by=st.integers(1, 255))
def test_no_byte_can_be_changed_without_being_told(data: bytes, share, by) -> None:
    place = int(share * (len(data) - 1))
    changed = bytearray(data)
    changed[place] ^= by
    assert told(read_handed_in(bytes(changed)))


@given(share=st.floats(0.0, 0.999))
def test_a_file_cut_short_anywhere_is_told_and_its_whole_lessons_stay(data: bytes, share) -> None:
    """A line of which only the first characters are there may be one more of the lesson before it."""
    place = int(share * (len(data) - 2))
    cut = read_handed_in(data[:place])
    assert told(cut)
    whole = read_handed_in(data)
    assert isinstance(whole, HandedIn)
    begins = b'{"line":0,'
    if place >= data.index(begins, data.index(b"pinjoint journal")) + len(begins):
        assert isinstance(cut, HandedIn)
        assert cut.parts[0] == whole.parts[0]


def test_a_damaged_lesson_leaves_the_others_as_they_are(data: bytes, course) -> None:
    sound = gather(course, "a.txt", data, WAY)
    place = data.rindex(b'"kind":"type"')
    changed = data[:place] + b'"kind":"tyqe"' + data[place + 13 :]
    found = gather(course, "a.txt", changed, WAY)
    assert found.works[0] == sound.works[0]
    told = " ".join(fault.message for fault in found.faults)
    assert "Trestle" in told
    assert "edited or damaged" in told


@pytest.mark.parametrize(
    "content",
    [b"", b"\n", b"%PDF-1.4", b'{"line":0}', b"\x00" * 100, "id,name\ns1,Ä".encode("latin-1")],
)
def test_a_foreign_file_is_told_and_counts_nothing(content: bytes, course) -> None:
    found = gather(course, "a.pdf", content, WAY)
    assert [fault.file for fault in found.faults] == ["a.pdf"]
    assert found.works == ()


def test_a_journal_by_itself_is_no_file_handed_in(data: bytes, course) -> None:
    journal = data.split(b"\n", 1)[1]
    assert "pinjoint hand-in" in gather(course, "a.txt", journal, WAY).faults[0].message


def test_numbers_of_another_student_do_not_count(data: bytes, course, course_folder: Path) -> None:
    other = next(
        name
        for name in (f"s{n}" for n in range(50))
        if course.of(name).problems["eel-trap"] != course.of("s1041").problems["eel-trap"]
    )
    parts = data.split(b"\n", 1)[1].rsplit(b"\n", 2)[0]
    found = gather(course, "a.txt", written(other, "week-3", "Week 3", DAY, [parts]), WAY)
    assert found.works[0].state == "not begun"
    assert found.works[1].state == "begun"  # everybody has the same trestle
    assert any("numbers" in fault.message for fault in found.faults)


def test_a_lesson_on_another_set_is_told(course, tmp_path: Path) -> None:
    alone = tmp_path / "other" / "mast.toml"
    alone.parent.mkdir()
    alone.write_text(TRESTLE.replace("12", "14").replace("nets", "ropes"), encoding="utf-8")
    data = written("s1", "week-9", "Week 9", DAY, [lesson(alone, "s1", most=8)])
    told = [fault.message for fault in gather(course, "a.txt", data, WAY).faults]
    assert any("no problem of this set" in message for message in told)
    assert any("week-9" in message for message in told)

"""Do the student's choices last, and does a broken file of them cost no more than the choices?"""

from __future__ import annotations

import errno
import json
import os
import stat

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tutor.records import Settings, read_settings, write_settings
from tutor.records.settings import FILE_NAME

WORDS = st.text(st.characters(exclude_categories=("C", "Z")), min_size=1, max_size=20)
CHOICES = st.builds(
    Settings,
    glyphs=st.none() | WORDS,
    theme=st.none() | WORDS,
    remarks=st.booleans(),
    done=st.dictionaries(WORDS, st.integers(0, 1000), max_size=4),
    student=st.none() | st.just("s1041"),
    guide=st.booleans(),
)
JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
    max_leaves=6,
)  # fmt: skip


@given(CHOICES, CHOICES)
def test_the_choices_last_written_are_the_choices_read(tmp_path_factory, first, second):
    folder = tmp_path_factory.mktemp("keep") / "new"
    assert write_settings(folder, first) == ""
    assert write_settings(folder, second) == ""
    assert read_settings(folder) == (second, "")
    assert [path.name for path in folder.iterdir()] == [FILE_NAME]


def test_without_a_file_nothing_is_chosen_and_nothing_is_said(tmp_path):
    assert read_settings(tmp_path) == (Settings(), "")
    assert read_settings(tmp_path / "none") == (Settings(), "")
    assert Settings() == Settings(glyphs=None, theme=None, remarks=True, done={})


def test_a_step_can_be_skipped_once_it_was_done_right_twice():
    once = Settings().done_right("idealise")
    twice = once.done_right("idealise")
    assert [s.skippable("idealise") for s in (Settings(), once, twice)] == [False, False, True]
    assert not twice.skippable("free body")


@given(st.binary(max_size=200))
def test_a_broken_file_means_the_usual_choices_and_is_kept_aside(tmp_path_factory, data):
    folder = tmp_path_factory.mktemp("keep")
    path = folder / FILE_NAME
    path.write_bytes(b"?" + data)
    settings, notice = read_settings(folder)
    assert settings == Settings()
    assert "not a JSON file" in notice
    assert (folder / f"{FILE_NAME}.kept-aside").read_bytes() == b"?" + data
    assert read_settings(folder) == (Settings(), "")


@given(
    JSON
    | st.fixed_dictionaries(
        {}, optional=dict.fromkeys(["glyphs", "theme", "remarks", "done"], JSON)
    )
)
def test_any_json_gives_usable_choices(tmp_path_factory, found):
    folder = tmp_path_factory.mktemp("keep")
    (folder / FILE_NAME).write_text(json.dumps(found))
    settings, notice = read_settings(folder)
    assert notice.isprintable()
    assert isinstance(settings.remarks, bool)
    assert write_settings(folder, settings.done_right("idealise")) == ""
    assert read_settings(folder) == (settings.done_right("idealise"), "")


@pytest.mark.parametrize(
    ("name", "value", "words"),
    [
        ("glyphs", "\x1b[31m", "a short text or null"),
        ("theme", "x" * 1000, "a short text or null"),
        ("remarks", 1, "true or false"),
        ("done", {"idealise": -1}, "whole numbers"),
        ("done", {"idealise": True}, "whole numbers"),
        ("done", {"\n": 1}, "whole numbers"),
        ("student", "a\x1b[2J", "a short text or null"),
    ],
)
def test_one_choice_that_cannot_be_used_costs_only_itself(tmp_path, name, value, words):
    good = {
        "glyphs": "words",
        "theme": "dark",
        "remarks": False,
        "done": {"idealise": 2},
        "student": "s1041",
        "guide": False,
    }
    (tmp_path / FILE_NAME).write_text(json.dumps({**good, name: value}))
    settings, notice = read_settings(tmp_path)
    assert settings._asdict() == {**good, name: getattr(Settings(), name)}
    assert name in notice
    assert words in notice


@pytest.mark.parametrize("data", [b"[" * 60_000, b"9" * 60_000], ids=["deep", "long"])
def test_a_file_made_to_hang_the_reader_is_broken_and_no_more(tmp_path, data):
    (tmp_path / FILE_NAME).write_bytes(data)
    settings, notice = read_settings(tmp_path)
    assert settings == Settings()
    assert "not a JSON file" in notice


def test_a_file_too_large_or_a_folder_is_said_and_left_as_it_is(tmp_path):
    (tmp_path / FILE_NAME).mkdir()
    assert "cannot be read" in read_settings(tmp_path)[1]
    (tmp_path / FILE_NAME).rmdir()
    (tmp_path / FILE_NAME).write_bytes(b" " * 100_000)
    assert "too large" in read_settings(tmp_path)[1]
    assert (tmp_path / FILE_NAME).stat().st_size == 100_000


@pytest.mark.parametrize("call", ["open", "write", "fsync", "replace"])
def test_choices_that_cannot_be_saved_are_said_and_the_old_ones_stay(tmp_path, monkeypatch, call):
    old = Settings(glyphs="braille")
    write_settings(tmp_path, old)

    def fail(*args, **kwargs):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, call, fail)
    notice = write_settings(tmp_path, Settings(glyphs="words"))
    monkeypatch.undo()
    assert "could not be saved: the disk is full" in notice
    assert read_settings(tmp_path) == (old, "")
    assert [path.name for path in tmp_path.iterdir()] == [FILE_NAME]


def test_a_broken_file_that_cannot_be_kept_aside_stays_where_it_is(tmp_path, monkeypatch):
    (tmp_path / FILE_NAME).write_bytes(b"broken")

    def fail(*args, **kwargs):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "write", fail)
    settings, notice = read_settings(tmp_path)
    assert settings == Settings()
    assert "could not be kept aside: the disk is full" in notice
    assert (tmp_path / FILE_NAME).read_bytes() == b"broken"


def test_the_file_is_closed_to_other_users(tmp_path):
    write_settings(tmp_path, Settings())
    assert stat.S_IMODE((tmp_path / FILE_NAME).stat().st_mode) == 0o600

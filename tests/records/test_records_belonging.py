"""Does a lesson stay with its problem when the file's words change, and is a changed truss told?"""

from __future__ import annotations

import io
import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from tutor.model import Problem, load_problem, load_sets, write_problem
from tutor.model.read import read_text
from tutor.plain import run
from tutor.records import Keep
from tutor.records.belonging import (
    belonging,
    content_of,
    differences,
    first_key_of,
    key_of,
    truss_text,
)
from tutor.records.lessons import Lessons
from tutor.session import open_session
from tutor.shipped import shipped_problems
from tutor.workbook import open_file_of_work, open_workbook

HARBOUR = shipped_problems() / "first-steps"
FIRST_KEYS = {
    "bell-frame": "1e5a1b5921212e1e5be21ee8",
    "lamp-arm": "b2cad2b56fc2782da51221a8",
    "boarding-boom": "393913c303bd4c6d7f67f64e",
    "storm-mast": "fce84a906dec8225f611433c",
    "signal-gantry": "cec9db002d0e48a36e964ea9",
    "creek-footbridge": "87e26e86e357bf45ff56717b",
}
"""The keys that version 0.1.0 gave to its problems, of which copies lie in `kept/0.1.0/problems`."""


@pytest.fixture
def file(tmp_path: Path) -> Path:
    folder = tmp_path / "week-3"
    folder.mkdir()
    return Path(shutil.copy(HARBOUR / "lamp-arm.toml", folder))


def begun(problem: Problem, keep: Keep) -> Path:
    session = open_session(problem, keep)
    session.do("reasons", chosen=["pins", "joints", "weight"])
    session.do("count", m=3, r=3, **{"2j": 6})
    session.close()
    assert session.journal.path is not None
    return session.journal.path


def edited(file: Path, *pairs: tuple[str, str]) -> Problem:
    text = file.read_text("utf-8")
    for old, new in pairs:
        assert old in text
        text = text.replace(old, new)
    file.write_text(text, "utf-8")
    return load_problem(file)


@pytest.mark.parametrize(
    "pairs",
    [
        [("ferry steps. The", "ferry stairs. The")],
        [("force =", "# by Ada\nforce =")],
        [('members = ["AB", "AC", "BC"]', 'members = ["CB", "BA", "AC"]')],
        [("C = [2.4, 1]", 'C = ["12/5", 1.0]')],
        [("level = 1", "level = 2\ntolerance = { silent = 0.001, remark = 0.002 }")],
        [('title = "Lamp arm over', 'title = "Lamp on its arm over')],
        [("down = 150", "size = 150\nangle = 270")],
    ],
)
def test_a_file_that_says_the_same_of_the_truss_keeps_its_lessons(file, tmp_path, pairs):
    keep = Keep(tmp_path / "keep")
    path = begun(load_problem(file), keep)
    problem = edited(file, *pairs)
    ((kept, how),) = Lessons(keep.lessons()).of(problem)
    assert kept.path == path
    assert how.changes == ()
    session = open_session(problem, keep, path)
    assert session.lesson.state.count_done
    assert session.lesson.problem.title == problem.title
    assert session.lesson.problem.tolerance == problem.tolerance
    assert not any("changed" in notice for notice in session.news())
    session.close()


def test_another_writer_of_files_keeps_the_lessons(file, tmp_path):
    keep = Keep(tmp_path / "keep")
    begun(load_problem(file), keep)
    file.write_text(write_problem(load_problem(file)), "utf-8")
    assert len(Lessons(keep.lessons()).of(load_problem(file))) == 1


def test_a_changed_truss_is_told_and_the_old_lesson_stays_as_it_was(file, tmp_path):
    keep = Keep(tmp_path / "keep")
    before = load_problem(file)
    path = begun(before, keep)
    problem = edited(file, ("down = 150", "down = 175"), ("B = [0, 0]", "B = [0, -1]"))
    ((_, how),) = Lessons(keep.lessons()).of(problem)
    assert how.changes == (
        "joint B is (0, -1) now, was (0, 0)",
        "the load at C is 175 down now, was 150 down",
    )
    session = open_session(problem, keep, path)
    (notice,) = session.news()
    assert "the load at C is 175 down now, was 150 down" in notice
    assert truss_text(session.lesson.problem) == truss_text(before)
    session.close()
    afresh = open_session(problem, keep)
    assert afresh.news() == ()
    assert truss_text(afresh.lesson.problem) == truss_text(problem)
    afresh.close()


def test_another_problem_under_the_old_name_gets_no_lesson_of_it(file, tmp_path):
    keep = Keep(tmp_path / "keep")
    begun(load_problem(file), keep)
    shutil.copy(HARBOUR / "storm-mast.toml", file)
    assert Lessons(keep.lessons()).of(load_problem(file)) == ()


def test_a_file_under_another_name_is_found_by_what_it_says(file, tmp_path):
    keep = Keep(tmp_path / "keep")
    path = begun(load_problem(file), keep)
    moved = file.rename(tmp_path / "arm.toml")
    ((kept, how),) = Lessons(keep.lessons()).of(load_problem(moved))
    assert (kept.path, how.changes) == (path, ())


def test_an_id_goes_before_the_names_of_files(file):
    problem = load_problem(file)
    assert key_of(problem) == "week-3/lamp-arm"
    assert key_of(replace(problem, id="arm-1")) == "id arm-1"
    drawn = replace(problem, source=None)
    assert key_of(drawn) == key_of(replace(drawn, title="Another", story="")) != key_of(problem)


@pytest.mark.parametrize("name", FIRST_KEYS)
def test_the_keys_of_the_first_version_are_still_found(name):
    path = Path(__file__).parent / "kept" / "0.1.0" / "problems" / f"{name}.toml"
    problem = load_problem(path)
    assert first_key_of(problem) == FIRST_KEYS[name]
    assert belonging(problem, FIRST_KEYS[name], "", "") is not None


@pytest.mark.parametrize("path", sorted(HARBOUR.glob("*-*.toml")), ids=lambda path: path.stem)
def test_the_content_beside_the_key_is_the_whole_truss(path):
    problem = load_problem(path)
    then = read_text(content_of(problem), "text").problem
    assert then is not None
    assert differences(then, problem) == ()


def test_a_homework_stays_with_its_file_and_a_changed_load_is_told(file, tmp_path):
    keep = Keep(tmp_path / "keep")
    book = open_workbook(load_problem(file), keep)
    book.write("A_x = 360 left")
    book.kept.close()
    again = open_workbook(edited(file, ("ferry steps. The", "ferry stairs. The")), keep)
    assert not again.paper.blank
    assert again.news() == ()
    again.kept.close()
    changed = open_workbook(edited(file, ("down = 150", "down = 175")), keep)
    assert not changed.paper.blank
    assert "the load at C is 175 down now, was 150 down" in " ".join(changed.news())


def test_a_homework_of_a_file_under_another_name_is_found_by_what_it_is_of(file, tmp_path):
    keep = Keep(tmp_path / "keep")
    book = open_workbook(load_problem(file), keep)
    book.write("A_x = 360 left")
    book.kept.close()
    checked = open_file_of_work(load_problem(file), tmp_path / "work.txt", keep)
    checked.note_check(checked.paper, checked.review)
    checked.kept.close()
    moved = load_problem(file.rename(tmp_path / "arm.toml"))
    again = open_workbook(moved, keep)
    assert (again.paper.blank, again.news()) == (False, ())
    again.write("A_y = 150")
    again.kept.close()
    assert len(open_workbook(moved, keep).paper.values) == 2


def test_another_problem_under_the_old_name_gets_a_paper_of_its_own(file, tmp_path):
    keep, first = Keep(tmp_path / "keep"), file.read_text("utf-8")
    book = open_workbook(load_problem(file), keep)
    book.write("A_x = 360 left")
    book.kept.close()
    shutil.copy(HARBOUR / "storm-mast.toml", file)
    other = open_workbook(load_problem(file), keep)
    assert other.paper.blank
    other.write("A_x = 9 left")
    other.kept.close()
    assert not open_workbook(load_problem(file), keep).paper.blank
    file.write_text(first, "utf-8")
    assert open_workbook(load_problem(file), keep).paper.values == {"A_x": "360 left"}


def test_line_by_line_a_lesson_goes_on_with_the_truss_it_was_begun_on(file, tmp_path):
    keep = tmp_path / "keep"
    begun(load_problem(file), Keep(keep))
    edited(file, ("down = 150", "down = 175"))
    said = io.StringIO()
    run(load_sets(file), keep=keep, source=io.StringIO("1\nleave\n"), sink=said)
    assert "the load at C is 175 down now, was 150 down" in said.getvalue()
    assert "load 150 N down" in said.getvalue()
    assert "load 175 N down" not in said.getvalue()

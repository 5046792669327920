"""A student hands in by one command, and an instructor sees by another what the class gets wrong."""

from __future__ import annotations

import io
import json
import subprocess
import sys
from pathlib import Path

import pytest
from classroom import HABIT, handed_in, make_set
from walker import Walker

from tutor.cli import main
from tutor.cohort import class_report
from tutor.model import load_set
from tutor.records import Keep
from tutor.session import open_session
from tutor.variants import personal


@pytest.fixture
def worked(tmp_path: Path) -> tuple[Path, Path]:
    """A set, and the folder of a student who has begun the first problem of it in the program."""
    folder, keep = make_set(tmp_path / "my-set"), tmp_path / "keep"
    among = personal(load_set(folder), "s1041")
    session = open_session(among.problems[0], Keep(keep))
    walker = Walker(session.lesson.problem, HABIT["careful"])
    walker.lesson = session.lesson

    def do(kind: str, **data: object):
        if len(session.lesson.events) > 12:
            raise StopIteration
        return session.do(kind, **data)

    walker.do = do
    with pytest.raises(StopIteration):
        walker.walk()
    session.close()
    return folder, keep


def test_what_was_done_in_the_program_is_what_the_instructor_sees(worked, tmp_path, capsys) -> None:
    folder, keep = worked
    to = tmp_path / "handed-in" / "s1041.txt"
    given = ["hand-in", str(folder), "--to", str(to), "--keep", str(keep)]
    assert main([*given, "--student", "s1041"]) == 0
    assert "1 lesson on 1 problem" in capsys.readouterr().out
    report = class_report(to.parent, folder)
    assert report.faults == ()
    (student,) = report.students
    assert student.id == "s1041"
    assert [work.state for work in student.problems] == ["begun", "not begun"]
    assert report.checked.lessons_again == 0
    assert main([*given, "--student", "s1041"]) == 2
    assert "--replace" in capsys.readouterr().err
    assert main([*given, "--student", "s1041", "--replace"]) == 0


def test_an_id_that_was_said_once_is_part_of_what_is_handed_in(worked, tmp_path, capsys) -> None:
    folder, keep = worked
    to = tmp_path / "a.txt"
    assert main(["hand-in", str(folder), "--to", str(to), "--keep", str(keep)]) == 2
    assert "--student ID" in capsys.readouterr().err
    assert not to.exists()
    (keep / "settings.json").write_text('{"student": "s1041"}', encoding="utf-8")
    assert main(["hand-in", str(folder), "--to", str(to), "--keep", str(keep)]) == 0
    assert b'"student":"s1041"' in to.read_bytes()


def test_lessons_on_the_numbers_of_the_file_are_left_out_and_told(tmp_path, capsys) -> None:
    folder, keep = make_set(tmp_path / "my-set"), tmp_path / "keep"
    session = open_session(load_set(folder).problems[0], Keep(keep))
    session.do("reasons", chosen=["pins"])
    session.close()
    other = next(
        name
        for name in (f"s{n}" for n in range(50))
        if personal(load_set(folder), name).problems[0].loads != load_set(folder).problems[0].loads
    )
    given = ["hand-in", str(folder), "--to", str(tmp_path / "a.txt"), "--keep", str(keep)]
    assert main([*given, "--student", other]) == 2
    told = capsys.readouterr()
    assert "other numbers" in told.out
    assert "nothing to hand in" in told.err


def test_several_sets_have_to_be_told_apart(tmp_path, capsys) -> None:
    for name in ("one", "two"):
        make_set(tmp_path / "sets" / name)
    to = str(tmp_path / "a.txt")
    assert main(["hand-in", str(tmp_path / "sets"), "--to", to, "--student", "s1"]) == 2
    assert "one" in capsys.readouterr().err


@pytest.fixture
def class_of_one(course_folder: Path, tmp_path: Path) -> Path:
    folder = tmp_path / "handed-in"
    folder.mkdir()
    data = handed_in(course_folder, "s1", most={"eel-trap": 9, "trestle": 0})
    (folder / "s1.txt").write_bytes(data)
    (tmp_path / "roster.csv").write_text("id,name\ns1,Dov Marle\ns2,Juno Pask\n", encoding="utf-8")
    return folder


def test_the_class_command_writes_what_is_asked_for(
    class_of_one, course_folder, tmp_path, capsys
) -> None:
    outputs = {
        "html": "r.html",
        "csv": "r.csv",
        "json": "r.json",
        "results": "o.json",
        "statements": "x.json",
    }
    given = ["class", str(class_of_one), "--set", str(course_folder)]
    given += ["--for", str(tmp_path / "roster.csv"), "--names", "name", "--text"]
    for option, name in outputs.items():
        given += [f"--{option}", str(tmp_path / name)]
    assert main(given) == 0
    told = capsys.readouterr().out
    assert "1 of 2 students handed in" in told
    for name in (*outputs.values(), "r-students.csv"):
        assert (tmp_path / name).stat().st_size > 10
    assert json.loads((tmp_path / "r.json").read_text(encoding="utf-8"))["handed_in"] == 1
    assert main(given) == 2
    assert "--replace" in capsys.readouterr().err
    assert main([*given, "--replace", "--no-skills"]) == 0
    assert json.loads((tmp_path / "r.json").read_text(encoding="utf-8"))["skills"] == []


def test_without_a_full_terminal_the_report_is_printed(class_of_one, course_folder, capsys) -> None:
    assert main(["class", str(class_of_one), "--set", str(course_folder)]) == 0
    assert "What to explain again" in capsys.readouterr().out


def test_a_set_beside_what_was_handed_in_need_not_be_named(tmp_path, capsys) -> None:
    folder = make_set(tmp_path / "week-3")
    (folder / "handed-in").mkdir()
    data = handed_in(folder, "s1", most={"eel-trap": 4, "trestle": 0})
    (folder / "handed-in" / "s1.txt").write_bytes(data)
    assert main(["class", str(folder / "handed-in")]) == 0
    assert "1 of 1 students" in capsys.readouterr().out


def test_what_cannot_be_used_is_told_with_its_cure(tmp_path, course_folder, capsys) -> None:
    nowhere = str(tmp_path / "nowhere")
    assert main(["class", nowhere, "--set", str(course_folder)]) == 2
    assert "nowhere" in capsys.readouterr().err
    (tmp_path / "in").mkdir()
    assert main(["class", str(tmp_path / "in")]) == 2
    assert "--set" in capsys.readouterr().err
    broken = make_set(tmp_path / "broken")
    (broken / "trestle.toml").write_text("title = 3", encoding="utf-8")
    assert main(["class", str(tmp_path / "in"), "--set", str(broken)]) == 1
    assert "trestle.toml" in capsys.readouterr().err


def test_a_report_cut_off_by_its_reader_ends_quietly(class_of_one, course_folder) -> None:
    command = [
        sys.executable,
        "-m",
        "tutor",
        "class",
        str(class_of_one),
        "--set",
        str(course_folder),
    ]
    with subprocess.Popen(
        [*command, "--text"], stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as running:
        assert running.stdout is not None
        assert running.stderr is not None
        running.stdout.close()
        assert b"Traceback" not in running.stderr.read()


def test_a_scheduler_that_is_not_there_is_told(
    class_of_one, course_folder, capsys, monkeypatch
) -> None:
    monkeypatch.setitem(sys.modules, "distributed", None)
    given = ["class", str(class_of_one), "--set", str(course_folder), "--scheduler", "tcp://x:1"]
    assert main(given) == 2
    assert "pinjoint[cluster]" in capsys.readouterr().err


def test_the_list_line_by_line_says_what_comes_first_until_it_is_finished(tmp_path) -> None:
    from tutor.plain.listing import list_lines, waits
    from tutor.progress.guide import Guide

    folder = make_set(tmp_path / "my-set")
    with (folder / "set.toml").open("a", encoding="utf-8") as file:
        file.write('after = { trestle = ["eel-trap"] }\n')
    among = load_set(folder)
    first, second = list_lines([among], Guide()).__iter__(), among.problems[1]
    lines = list(first)
    assert any(
        line.endswith("Trestle for the nets, best after Hoist for the eel trap") for line in lines
    )
    assert sum("after" in line for line in lines) == 1
    assert among.before(second) == (among.problems[0],)
    assert among.before(among.problems[0]) == ()
    assert waits(Guide(), ()) == ""
    assert ", finished" not in lines[1]


class Terminal(io.StringIO):
    """What is written to a terminal."""

    def isatty(self) -> bool:
        return True


def test_reading_a_class_says_from_the_start_how_far_it_is(tmp_path, monkeypatch) -> None:
    folder = make_set(tmp_path / "my-set")
    for student in ("s1", "s2", "s3"):
        data = handed_in(folder, student, most={"eel-trap": 3, "trestle": 2})
        (tmp_path / f"{student}.txt").write_bytes(data)
    shown = Terminal()
    monkeypatch.setattr("sys.stderr", shown)
    assert main(["class", str(tmp_path), "--set", str(folder), "--text"]) == 0
    drawn = shown.getvalue()
    assert drawn.startswith("\r[")
    told = [f"{done} of 3 files read; Ctrl+C leaves" for done in range(4)]
    assert [drawn.find(each) >= 0 for each in told] == [True] * 4
    assert drawn.endswith("\r")


def test_reading_a_class_can_be_left_and_says_that_nothing_was_written(
    tmp_path, monkeypatch, capsys
) -> None:
    def left(*args: object, **kept: object) -> None:
        raise KeyboardInterrupt

    folder = make_set(tmp_path / "my-set")
    monkeypatch.setattr("tutor.handing_in.class_report", left)
    page = tmp_path / "report.html"
    given = ["class", str(tmp_path), "--set", str(folder), "--html", str(page)]
    assert main(given) == 130
    assert "nothing was written" in capsys.readouterr().err
    assert not page.exists()

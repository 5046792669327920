"""The report follows from the files alone, whoever gathers them and in whatever order."""

from __future__ import annotations

import random
import zipfile
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest
from classroom import DAY, HABIT, handed_in
from habits import Habit

from tutor.cohort import class_report, folder
from tutor.cohort.again import again
from tutor.cohort.course import course_at
from tutor.cohort.facts import AnswerGiven, FileFault, Student, StudentWork
from tutor.cohort.folder import files_in, read, seed_of
from tutor.cohort.gathering import Way, gather
from tutor.cohort.handed import written
from tutor.cohort.naming import named
from tutor.cohort.reporting import report_of

ROSTER = {"s1": "Dov Marle", "S2": "Juno Pask", "s3": "Ilse Rooth", "s4": "Bo Tarn"}


@pytest.fixture(scope="module")
def handed(course_folder: Path, tmp_path_factory) -> Path:
    """Four students: one careful, two blind to geometry, one who stops at the first line."""
    folder = tmp_path_factory.mktemp("handed-in")
    for name, habit, most in (
        ("s1", "careful", {"trestle": 0}),
        ("s2", "geometry-blind", {"trestle": 0}),
        ("s3", "geometry-blind", {"trestle": 0}),
        ("s5", "careful", {"eel-trap": 9, "trestle": 0}),
    ):
        (folder / f"{name}.txt").write_bytes(handed_in(course_folder, name, habit, most=most))
    return folder


@pytest.fixture(scope="module")
def report(handed: Path, course_folder: Path):
    return class_report(handed, course_folder, roster=ROSTER, names="name")


def test_who_did_what_is_counted(report) -> None:
    by_id = {student.id: student for student in report.students}
    assert list(by_id) == ["s1", "S2", "s3", "s4", "s5"]  # the roster's order, then the others
    assert by_id["s4"].problems[0].state == "not begun"
    assert not by_id["s4"].handed_in
    assert {work.of for student in report.students for work in student.problems} == {6}
    assert by_id["s1"].problems[0].state == "finished"
    assert by_id["s1"].finished == 1
    assert by_id["s5"].problems[0].state == "begun"
    assert by_id["S2"].problems[0].slips > by_id["s1"].problems[0].slips
    assert by_id["S2"].problems[0].hints >= by_id["S2"].problems[0].slips > 0
    assert [fault.student for fault in report.faults] == ["s5"]  # not in the roster
    assert report.handed_in == 4


def test_mistakes_are_told_by_kind_problem_and_step_most_students_first(report) -> None:
    assert report.mistakes
    counts = [(m.students, m.times) for m in report.mistakes]
    assert counts == sorted(counts, reverse=True)
    wrong = [
        (code, answer.step, answer.text)
        for student in report.students
        for work in student.problems
        for answer in work.answers
        if answer.verdict == "wrong"
        for code in answer.codes
    ]
    assert sum(m.times for m in report.mistakes) == len(wrong)
    for found in report.mistakes:
        assert sum(found.counts) == sum(
            (code, step) == (found.code, found.step) and text != "" for code, step, text in wrong
        )
        assert list(found.counts) == sorted(found.counts, reverse=True)


def test_the_time_on_task_leaves_pauses_out(course_folder: Path) -> None:
    from tutor.cohort.working import PAUSE, seconds_on_task
    from tutor.lesson import Event

    times = [0.0, 60.0, 100.0, 100_000.0, 99_000.0]
    events = [Event("hint", {}, time) for time in times]
    assert seconds_on_task(events) == 100.0 + PAUSE


def test_what_to_explain_again_follows_from_the_numbers(report) -> None:
    assert len(report.again) == 3
    for sentence in report.again:
        assert " of 4 students" in sentence
    named = [kind for kind in report.kinds if f"“{kind.called}”" in report.again[0]]
    assert named or report.again[0].startswith(("Work", "Show"))


def worked_so(name: str, *codes: str) -> Student:
    """A student who made these mistakes in lines, one after the other."""
    answers = tuple(
        AnswerGiven("joints", f"Fx @ {n}", "…", "wrong", (code,), float(n))
        for n, code in enumerate(codes)
    )
    return Student(
        name, "", (StudentWork("w", "Weir", "finished", answers=answers),), f"{name}.txt"
    )


def test_a_habit_of_few_is_explained_before_a_slip_of_many() -> None:
    class_of_six = [
        *(worked_so(f"a{n}", "component", "component", "component") for n in range(2)),
        *(worked_so(f"b{n}", "sign") for n in range(4)),
    ]
    first, second, rest = again(class_of_six, (), {"w": "Weir"})
    assert "the other component" in first
    assert "2 of 6 students did so, 2 of them 3 times or more, 6 times in all" in first
    assert "4 of 6 students did so, 4 times in all" in second
    assert rest == "Nothing else was met by more than one of the 6."


def test_what_comes_beside_a_worse_habit_of_the_same_students_is_told_behind_the_habits() -> None:
    class_of_nine = [
        *(worked_so(f"a{n}", *["tension-compression"] * 9, *["sign"] * 4) for n in range(4)),
        *(worked_so(f"b{n}", *["no-arm"] * 3) for n in range(2)),
        *(worked_so(f"c{n}", "sign") for n in range(3)),
    ]
    first, second, third = again(class_of_nine, (), {"w": "Weir"})
    assert "tension and compression exchanged" in first
    assert "a force without its arm" in second
    assert "7 of 9 students did so, 4 of them 3 times or more, 19 times in all" in third


def test_a_habit_is_told_where_most_of_those_made_it_who_have_it() -> None:
    joints = worked_so("a", *["sign"] * 3)
    slips = [worked_so(f"b{n}", "sign") for n in range(3)]
    elsewhere = [
        replace(each, problems=(replace(each.problems[0], problem="v", title="Vat"),))
        for each in slips
    ]
    first, _ = again([joints, *elsewhere], (), {"w": "Weir", "v": "Vat"})
    assert "most in Weir (joints)" in first


def test_one_student_alone_is_no_matter_for_a_lecture() -> None:
    alone = [worked_so("a", "sign", "sign", "sign"), worked_so("b")]
    assert again(alone, (), {"w": "Weir"}) == (
        "Nothing was met by more than one of the 2 students who handed in.",
    )
    (said,) = again(alone[:1], (), {"w": "Weir"})
    assert said.startswith("One student alone has handed in")


def test_the_order_of_the_files_does_not_matter(handed: Path, course_folder: Path, report) -> None:
    course, files = course_at(course_folder), list(files_in(handed))
    way = Way(seed_of(files))
    found = [gather(course, lying.name, read(lying), way) for lying in files]
    for turn in range(3):
        random.Random(turn).shuffle(found)
        assert report_of(course, found, ROSTER) == report


def test_a_file_handed_in_twice_counts_once_and_the_later_one_of_a_student(
    handed: Path, course_folder: Path, report
) -> None:
    course = course_at(course_folder)
    data = (handed / "s1.txt").read_bytes()
    earlier = handed_in(
        course_folder, "s1", most={"eel-trap": 5, "trestle": 0}, made=DAY - timedelta(1)
    )
    way = Way("seed")
    found = [
        gather(course, name, content, way)
        for name, content in (("a.txt", data), ("b.txt", data), ("c.txt", earlier))
    ]
    told = report_of(course, found)
    assert [student.problems for student in told.students] == [report.students[0].problems]
    messages = {fault.file: fault.message for fault in told.faults}
    assert "a.txt" in messages["b.txt"]
    assert "later" in messages["c.txt"]
    assert "a.txt" not in messages


def test_a_lesson_handed_in_under_two_ids_is_told_of_both(course_folder: Path) -> None:
    course = course_at(course_folder)
    own = handed_in(course_folder, "s1", most={"eel-trap": 0, "trestle": 9})
    journals = own.split(b"\n", 1)[1].rsplit(b"\n", 2)[0]
    copy = written("s2", "week-3", "Week 3", DAY, [journals])
    found = [gather(course, f"{n}.txt", data, Way("")) for n, data in enumerate((own, copy))]
    told = [fault for fault in report_of(course, found).faults if "same moment" in fault.message]
    assert {fault.file for fault in told} == {"0.txt", "1.txt"}


def test_a_lesson_begun_by_one_and_gone_on_with_by_many_is_told_once_for_each(
    course_folder: Path,
) -> None:
    course = course_at(course_folder)
    lines = handed_in(course_folder, "s0", most={"eel-trap": 0, "trestle": 20}).splitlines()
    found = []
    for n in range(7):
        journal = b"\n".join(lines[2 : len(lines) - 1 - 2 * n])
        data = written(f"s{n}", "week-3", "Week 3", DAY, [b"\n".join([lines[1], journal])])
        found.append(gather(course, f"{n}.txt", data, Way("")))
    told = [fault for fault in report_of(course, found).faults if "same moment" in fault.message]
    assert [fault.file for fault in told] == [f"{n}.txt" for n in range(7)]
    assert "1.txt, 2.txt, 3.txt and 3 more, under other ids" in told[0].message


def test_numbers_tell_no_id_no_name_and_no_file(report) -> None:
    hidden = named(report, "number")
    text = repr(hidden)
    for name in (*ROSTER, *ROSTER.values(), "s5", "s1.txt", "s5.txt"):
        assert f"'{name}'" not in text
        assert name not in " ".join(f.message + f.file for f in hidden.faults)
    assert sorted(s.id for s in hidden.students) == ["1", "2", "3", "4", "5"]
    assert hidden.mistakes == report.mistakes


def test_an_empty_folder_gives_a_report_that_says_so(course_folder: Path, tmp_path: Path) -> None:
    told = class_report(tmp_path, course_folder)
    assert told.students == ()
    assert len(told.again) == 1


def test_a_weakness_planted_in_one_student_is_found_and_in_no_other(
    course_folder: Path, tmp_path: Path, monkeypatch
) -> None:
    """One takes sine for cosine whenever that can be done, one turns signs, one does neither."""
    weak = {"component": frozenset({"component"}), "sign": frozenset({"sign", "sense", "turning"})}
    for name, codes in (*weak.items(), ("steady", frozenset())):
        habit = Habit(name, 1.0 if codes else 0.0, codes, 0.0, (), sees_at=3)
        monkeypatch.setitem(HABIT, name, habit)
        (tmp_path / f"{name}.txt").write_bytes(handed_in(course_folder, name, name))
    by_name = {student.id: student for student in class_report(tmp_path, course_folder).students}
    for code in weak:
        likely = {
            name: next(each.likely for each in student.skills if each.skill == code)
            for name, student in by_name.items()
        }
        assert min(likely, key=lambda name: likely[name]) == code
        assert likely.pop(code) < 0.5 < min(likely.values())
    assert all(work.slips <= 4 for work in by_name["steady"].problems)


def test_each_file_that_is_not_read_is_told_for_itself_and_does_the_rest_no_harm(
    handed: Path, course_folder: Path, tmp_path: Path, report
) -> None:
    for path in handed.iterdir():
        (tmp_path / path.name).write_bytes(path.read_bytes())
    deep = tmp_path / "a" / "b" / "c" / "d" / "e"
    deep.mkdir(parents=True)
    (deep / "s7.txt").write_bytes(b"")
    (tmp_path / "loop").symlink_to(tmp_path, target_is_directory=True)
    for gone in ("gone", "lost"):
        (tmp_path / f"{gone}.txt").symlink_to(tmp_path / "nowhere")
    with zipfile.ZipFile(tmp_path / "all.zip", "w") as archive:
        archive.write(tmp_path / "s1.txt")
    told = class_report(tmp_path, course_folder, roster=ROSTER, names="name")
    new = [f for f in told.faults if f not in report.faults]
    assert [fault.file for fault in new] == [
        *("a/b/c/d/e", "all.zip", "gone.txt", "loop", "lost.txt"),
    ]
    for fault, word in zip(new, ("deep", "unpack", "no such", "link", "no such"), strict=True):
        assert word in fault.message
    assert told.students == report.students


def test_files_beyond_the_most_are_told_of(handed: Path, monkeypatch) -> None:
    monkeypatch.setattr(folder, "MOST_FILES", 2)
    files = files_in(handed)
    assert [bool(each.refused) for each in files] == [False, False, True]
    assert "nothing is read, 2 files in all" in files[2].refused


def test_a_number_in_a_sentence_is_not_taken_for_the_id_that_is_that_number(report) -> None:
    faults = (
        FileFault("3.txt", "it should hold 4 lessons, and holds 3", "3"),
        FileFault("3.txt", "its numbers are not those of 3, or the problem was changed since", "3"),
        FileFault("4.txt", "3.txt, handed in later, is by the same student", "3"),
    )
    students = tuple(Student(str(n), "", (), f"{n}.txt") for n in (3, 4, 8))
    hidden = named(replace(report, students=students, faults=faults), "number")
    three = hidden.faults[0].student
    messages = {fault.message for fault in hidden.faults}
    assert "it should hold 4 lessons, and holds 3" in messages
    assert (
        f"its numbers are not those of student {three}, or the problem was changed since"
        in messages
    )
    assert f"student {three}, handed in later, is by the same student" in messages


def test_a_lesson_that_is_in_a_file_twice_counts_once_as_far_as_it_got(course_folder: Path) -> None:
    course = course_at(course_folder)
    most = {"eel-trap": 0, "trestle": 20}
    whole = handed_in(course_folder, "s1", most=most)
    lines = whole.splitlines()[:-1]
    start = max(n for n, line in enumerate(lines) if line.startswith(b'{"line":0,'))
    journal = lines[start:]
    parts = [b"\n".join(journal[:-6]), b"\n".join(journal), b"\n".join(journal[:-4])]
    twice = written("s1", "week-3", "Week 3", DAY, parts)
    one, other = (gather(course, "a.txt", data, Way("")) for data in (whole, twice))
    assert other.works == one.works
    assert [f.message for f in other.faults] == [
        'the lesson on "Trestle for the nets" is in it more than once; it counts once'
    ] * 2

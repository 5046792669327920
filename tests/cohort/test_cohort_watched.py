"""What was shown to a student is nothing that the student found, in no form of the report."""

from __future__ import annotations

import csv
import io
import json
from datetime import timedelta

import pytest
from classroom import DAY, HABIT, HOIST, Recorder, journal

from tutor.cohort import class_report
from tutor.cohort.as_csv import works_as_csv
from tutor.cohort.as_html import as_html
from tutor.cohort.as_results import as_results
from tutor.cohort.as_statements import as_statements
from tutor.cohort.as_text import as_text
from tutor.cohort.facts import ClassReport, StudentWork
from tutor.cohort.handed import written
from tutor.model import load_set
from tutor.records.journal import utc_now

GIVEN = 'given = ["reactions"]\n'
HELD = 'truss = "unstable"\n'
LOOSE = HOIST.replace('"pin"', "{ roller = 0 }")
FILES = {"given": GIVEN + HOIST, "hoist": HOIST, "loose": HELD + LOOSE}
WAYS = {"alone": None, "watched": "table", "half": "half", "joints": "joints", "twice": "table"}


def records_of(problem, until: str | None) -> list:
    """A lesson with all of it shown up to some place, and the rest walked by a careful student."""
    recorder = Recorder(problem, HABIT["careful"], 1)
    if until == "table":
        while recorder.do("show").accepted:
            pass
    elif until is not None:
        recorder.do("show", until=until)
    recorder.walk()
    return recorder.records


@pytest.fixture(scope="module")
def report(tmp_path_factory) -> ClassReport:
    course, handed = (tmp_path_factory.mktemp(name) for name in ("course", "handed"))
    for name, text in FILES.items():
        (course / f"{name}.toml").write_text(text, encoding="utf-8")
    among = load_set(course)
    for number, (student, until) in enumerate(WAYS.items()):
        begun = DAY + timedelta(hours=number)
        lessons = [journal(p, records_of(p, until), begun) for p in among.problems]
        if student == "twice":
            later = begun + timedelta(minutes=30)
            lessons += [journal(p, records_of(p, None), later) for p in among.problems]
        data = written(student, among.name, among.title, utc_now(), lessons)
        (handed / f"{student}.txt").write_bytes(data)
    return class_report(handed, course)


@pytest.fixture(scope="module")
def works(report: ClassReport) -> dict[tuple[str, str], StudentWork]:
    return {(s.id, w.problem): w for s in report.students for w in s.problems}


@pytest.mark.parametrize("problem", FILES)
def test_a_problem_that_was_only_watched_is_not_finished(works, problem: str) -> None:
    watched = works["watched", problem]
    assert (watched.state, watched.found, watched.share) == ("watched", 0, 0.0)
    assert watched.shown == watched.of


@pytest.mark.parametrize("problem", FILES)
def test_one_who_watched_and_then_did_it_alone_has_done_it_alone(works, problem: str) -> None:
    alone, twice = works["alone", problem], works["twice", problem]
    assert (alone.state, alone.share, alone.shown) == ("finished", 1.0, 0)
    assert (twice.state, twice.share, twice.shown) == ("finished", 1.0, 0)


def test_of_one_who_began_half_what_was_left_counts(works) -> None:
    half, joints = works["half", "hoist"], works["joints", "hoist"]
    assert half.state == joints.state == "finished"
    assert 0 < half.found < joints.found < joints.of == 6
    assert half.found + half.shown == joints.found + joints.shown == 6
    assert joints.shown == 3  # the reactions


def test_forces_that_the_problem_gives_are_asked_of_nobody(works) -> None:
    assert works["alone", "given"].of == works["alone", "given"].found == 3


def test_a_truss_without_forces_counts_by_whether_it_was_answered(works, report) -> None:
    assert works["alone", "loose"].of == 0
    scores = {
        (r["student"]["sourcedId"], r["lineItem"]["sourcedId"].split("/")[1]): r
        for r in json.loads(as_results(report))["results"]
    }
    assert scores["alone", "loose"]["score"] == 1.0
    assert "force" not in scores["alone", "loose"]["comment"]
    assert scores["watched", "loose"]["score"] == 0.0
    assert scores["watched", "hoist"]["scoreStatus"] == "partially graded"
    assert scores["watched", "hoist"]["comment"].startswith("Watched: 0 of 6 forces found, 6 shown")


def test_every_form_tells_watching_from_finishing(report: ClassReport) -> None:
    by_id = {student.id: student for student in report.students}
    assert (by_id["watched"].finished, by_id["half"].finished) == (0, len(FILES) - 1)
    text = " ".join(as_text(report).split())
    assert "hoist 4 1 0 0" in text
    assert "2 of the 4 who finished had forces shown to them" in text
    assert "finished by 4, watched by 1, begun by 0, not begun by 0" in as_html(report)
    rows = csv.DictReader(io.StringIO(works_as_csv(report).removeprefix("\ufeff"), newline=""))
    assert {row["state"] for row in rows if row["id"] == "watched"} == {"watched"}
    ended = [s for s in json.loads(as_statements(report)) if "completion" in s["result"]]
    verbs = {
        s["verb"]["id"].rpartition("/")[2]
        for s in ended
        if s["actor"]["account"]["name"] == "watched"
    }
    assert verbs == {"experienced"}


def test_what_is_shown_is_no_answer_of_the_student(report: ClassReport) -> None:
    student = next(s for s in report.students if s.id == "watched")
    assert not any(work.answers or work.slips for work in student.problems)
    assert student.skills == ()


def test_nobody_who_watched_is_said_to_have_edited_a_file(report: ClassReport) -> None:
    assert report.faults == ()

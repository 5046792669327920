"""Each form of the report says the same, and does no harm where it is opened."""

from __future__ import annotations

import csv
import io
import json
import re
from datetime import datetime
from html.parser import HTMLParser
from pathlib import Path

import pytest
from classroom import handed_in
from hypothesis import given
from hypothesis import strategies as st

from tutor.cohort import class_report
from tutor.cohort.as_csv import RUNS, harmless, students_as_csv, works_as_csv
from tutor.cohort.as_html import as_html
from tutor.cohort.as_json import as_json
from tutor.cohort.as_results import as_results
from tutor.cohort.as_statements import as_statements
from tutor.cohort.as_text import WIDTH, as_text
from tutor.cohort.facts import ClassReport
from tutor.cohort.naming import named
from tutor.cohort.views import views
from tutor.model.caution import CAUTION

ROSTER = {"s1": "=HYPERLINK(1)", "s2": "Juno <b>Pask</b> & \x1b[31mco", "s4": "Bo Tarn"}


@pytest.fixture(scope="module")
def report(course_folder: Path, tmp_path_factory) -> ClassReport:
    folder = tmp_path_factory.mktemp("handed-in")
    for name, habit, most in (("s1", "careful", 10**6), ("s2", "guesser", 40), ("s3", "hasty", 40)):
        data = handed_in(course_folder, name, habit, most={"eel-trap": most, "trestle": 0})
        (folder / f"{name}.txt").write_bytes(data)
    (folder / "x.pdf").write_bytes(b"%PDF")
    return class_report(folder, course_folder, roster=ROSTER, names="name")


def test_the_text_has_every_number_and_fits_a_terminal(report: ClassReport) -> None:
    text = as_text(report)
    assert "3 of 4 students handed in" in text
    for sentence in report.again:
        assert sentence[:40] in " ".join(text.split())
    for kind in report.kinds:
        assert kind.called in text
    assert CAUTION.split(".")[0] in " ".join(text.split())
    assert "x.pdf" in text
    assert max(map(len, text.splitlines())) <= WIDTH


def test_without_anything_handed_in_every_form_can_be_written(course_folder, tmp_path) -> None:
    empty = class_report(tmp_path, course_folder, roster={"s1": ""})
    for write in (as_text, as_html, as_json, as_results, as_statements, works_as_csv):
        assert write(empty)
    assert all(view.rows or view.name for view in views(empty))


def test_json_says_what_the_report_says(report: ClassReport) -> None:
    told = json.loads(as_json(report))
    assert told["form"] == 1
    assert [m["students"] for m in told["mistakes"]] == [m.students for m in report.mistakes]
    assert [s["id"] for s in told["students"]] == [s.id for s in report.students]
    assert told["again"] == list(report.again)
    work = told["students"][0]["problems"][0]
    assert work["state"] == "finished"
    assert datetime.fromisoformat(work["first"]) < datetime.fromisoformat(work["last"])


def rows_of(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text.removeprefix("\ufeff"), newline="")))


def test_the_tables_have_a_row_for_each_student_and_problem_and_one_for_each(report) -> None:
    works, students = rows_of(works_as_csv(report)), rows_of(students_as_csv(report))
    assert [row["id"] for row in students] == [s.id for s in report.students]
    assert len(works) == len(report.students) * len(report.problems)
    assert sum(int(row["slips"]) for row in works) == sum(int(row["slips"]) for row in students)
    assert works[0]["state"] == "finished"
    assert works[0]["found"] == works[0]["of"]


@given(st.text(st.characters(max_codepoint=127), max_size=6))
def test_no_cell_is_taken_for_a_formula(text: str) -> None:
    cell = str(harmless(text))
    assert not cell.startswith(RUNS)
    assert cell.removeprefix("'") == text.removeprefix("'")


def test_a_name_that_is_a_formula_is_made_harmless(report: ClassReport) -> None:
    assert rows_of(works_as_csv(report))[0]["name"] == "'=HYPERLINK(1)"


class Page(HTMLParser):
    """What is on a page: tags, ids, links; every tag is closed."""

    VOID = frozenset({"meta", "br"})

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.words: list[str] = []

    def handle_starttag(self, tag: str, attrs) -> None:
        self.tags.append((tag, dict(attrs)))
        if tag not in self.VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs) -> None:
        self.tags.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        self.words.append(data)


@pytest.fixture(scope="module")
def page(report: ClassReport) -> Page:
    found = Page()
    found.feed(as_html(report))
    found.close()
    return found


def test_the_page_is_whole_and_needs_nothing_beside_it(page: Page) -> None:
    assert page.open == []
    for tag, attributes in page.tags:
        assert tag not in ("script", "img", "link", "iframe", "object", "b\\")
        assert "src" not in attributes
        assert (attributes.get("href") or "#").startswith("#")
        assert not any(name.startswith("on") for name in attributes)


def test_every_link_of_the_page_leads_somewhere(page: Page) -> None:
    ids = [
        attributes["id"]
        for _, attributes in page.tags
        if "id" in attributes and attributes["id"] != "begun"
    ]
    assert len(ids) == len(set(ids))
    links = {a["href"] for _, a in page.tags if a.get("href")}
    assert links <= {f"#{name}" for name in ids}
    assert any(link.startswith("#mistake-") for link in links if link)


def test_the_page_says_the_caution_and_runs_nothing_typed(page: Page, report: ClassReport) -> None:
    words = " ".join(page.words)
    assert CAUTION in words
    assert "Juno <b>Pask</b>" in words
    for sentence in report.again:
        assert sentence in words


def test_plots_say_in_words_what_they_show(page: Page) -> None:
    plots = [attributes for tag, attributes in page.tags if tag == "svg"]
    assert len(plots) >= 3
    assert all(plot["aria-label"] for plot in plots)


def test_views_can_be_sorted_by_each_column_and_lose_no_row(report: ClassReport) -> None:
    for view in views(report):
        for column in range(len(view.heads)):
            for turned in (False, True):
                rows = view.sorted_by(column, turned)
                assert sorted(map(repr, rows)) == sorted(map(repr, view.rows))
                numbers = [row.cells[column] for row in rows if isinstance(row.cells[column], int)]
                assert numbers == sorted(numbers, reverse=turned)


RESULT = {
    "type": "object",
    "required": [
        "sourcedId",
        "status",
        "dateLastModified",
        "lineItem",
        "student",
        "scoreStatus",
        "scoreDate",
    ],
    "additionalProperties": False,
    "properties": {
        "sourcedId": {"type": "string", "minLength": 1, "maxLength": 255},
        "status": {"enum": ["active", "tobedeleted"]},
        "dateLastModified": {
            "type": "string",
            "format": "date-time",
            "pattern": r"^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$",
        },
        "lineItem": {"$ref": "#/definitions/ref"},
        "student": {"$ref": "#/definitions/ref"},
        "scoreStatus": {
            "enum": ["exempt", "fully graded", "not submitted", "partially graded", "submitted"]
        },
        "score": {"type": "number", "minimum": 0, "maximum": 1},
        "scoreDate": {"type": "string", "pattern": r"^\d{4}-\d\d-\d\d$"},
        "comment": {"type": "string"},
    },
    "definitions": {
        "ref": {
            "type": "object",
            "required": ["href", "sourcedId", "type"],
            "additionalProperties": False,
            "properties": {
                "href": {"type": "string", "pattern": r"^[A-Za-z]+/[A-Za-z0-9._~%-]+$"},
                "sourcedId": {"type": "string", "minLength": 1},
                "type": {"enum": ["lineItem", "user"]},
            },
        }
    },
}
"""1EdTech OneRoster 1.2, Gradebook Service, class Result and GUIDRef; from memory."""


def test_results_are_as_oneroster_has_them(report: ClassReport) -> None:
    from jsonschema import Draft7Validator

    told = json.loads(as_results(report))
    assert list(told) == ["results"]
    for result in told["results"]:
        Draft7Validator(RESULT).validate(result)
    assert len({result["sourcedId"] for result in told["results"]}) == len(told["results"])
    by_student = {
        r["student"]["sourcedId"]: r for r in told["results"] if "eel" in r["lineItem"]["sourcedId"]
    }
    assert by_student["s1"]["score"] == 1.0
    assert by_student["s1"]["scoreStatus"] == "fully graded"
    assert by_student["s4"]["scoreStatus"] == "not submitted"
    assert "score" not in by_student["s4"]


def test_one_activity_is_told_alike_of_everyone(report: ClassReport) -> None:
    told: dict[str, object] = {}
    for said in json.loads(as_statements(report)):
        activity = said["object"]
        assert told.setdefault(activity["id"], activity) == activity


def test_by_number_no_form_names_a_student(report: ClassReport) -> None:
    hidden = named(report, "number")
    for write in (
        as_text,
        as_html,
        as_json,
        as_results,
        as_statements,
        works_as_csv,
        students_as_csv,
    ):
        text = write(hidden)
        for name in ("Juno", "HYPERLINK", "Bo Tarn", "s1.txt", "s2.txt", "x.pdf"):
            assert name not in text
        assert not re.search(r"\bs[1-4]\b", text)

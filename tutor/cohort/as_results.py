"""How does a grade book take the results? As the JSON of OneRoster 1.2, gradebook service.

Source: IMS (1EdTech) OneRoster 1.2, Gradebook Service Information Model, the class Result and its JSON
binding; from memory. A result stands for one student and problem: the share of the forces asked for
that the student found, without those that were shown; where none is asked for, whether it was finished.
It is no mark: how much that counts is for whoever takes it over.
"""

from __future__ import annotations

import json
from typing import Any
from urllib.parse import quote
from uuid import NAMESPACE_URL, uuid5

from tutor.cohort.as_text import amount_in_words
from tutor.cohort.facts import ClassReport, Student, StudentWork
from tutor.cohort.times import day, moment

STATUS = {
    "finished": "fully graded",
    "watched": "partially graded",
    "begun": "partially graded",
    "not begun": "not submitted",
}
NEVER = 0.0


def as_results(report: ClassReport) -> str:
    """The payload of all results: an object with the one key `results`."""
    latest = max(
        (work.last for s in report.students for work in s.problems if work.last is not None),
        default=NEVER,
    )
    results = [
        _result(report, student, work, latest)
        for student in report.students
        for work in student.problems
    ]
    return json.dumps({"results": results}, indent=2, ensure_ascii=False) + "\n"


def _result(
    report: ClassReport, student: Student, work: StudentWork, latest: float
) -> dict[str, Any]:
    item, whom = f"{report.set}/{work.problem}", student.id
    at = latest if work.last is None else work.last
    found: dict[str, Any] = {
        "sourcedId": str(uuid5(NAMESPACE_URL, f"pinjoint result\n{item}\n{whom}")),
        "status": "active",
        "dateLastModified": moment(at),
        "lineItem": _reference("lineItems", item, "lineItem"),
        "student": _reference("users", whom, "user"),
        "scoreStatus": STATUS[work.state],
        "scoreDate": day(at),
        "comment": comment(work),
    }
    if work.state != "not begun":
        found["score"] = round(work.share, 4)
    return found


def _reference(collection: str, name: str, kind: str) -> dict[str, str]:
    """A GUIDRef: the address is relative to the service that takes the results."""
    return {"href": f"{collection}/{quote(name, safe='')}", "sourcedId": name, "type": kind}


def comment(work: StudentWork) -> str:
    """How the work went, in one sentence."""
    if work.state == "not begun":
        return "Nothing was handed in."
    watched = "Watched: " if work.state == "watched" else ""
    return (
        f"{watched}{amount_in_words(work)}{work.lines} lines, {work.slips} slips, "
        f"{work.hints} hints, {work.told} lines given, {work.minutes:.0f} minutes."
    )

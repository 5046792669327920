"""How does a learning record store take what the class did? As xAPI statements (IEEE 9274.1.1-2023).

One statement for each answer that was judged, and one for each problem finished or watched to its end,
in the order of time. The same files give the same statements with the same ids, so that none counts
twice where they are sent again. Addresses end in `.invalid`, which by RFC 2606 is nobody's: they name,
and lead nowhere.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from typing import Any
from urllib.parse import quote
from uuid import NAMESPACE_URL, uuid5

from tutor.cohort.facts import AnswerGiven, ClassReport, HowFar, Student, StudentWork
from tutor.cohort.times import moment
from tutor.skills.places import place_in_words

VERSION = "2.0.0"
HOME = "https://pinjoint.invalid"
VERBS = "http://adlnet.gov/expapi/verbs"
QUESTION = "http://adlnet.gov/expapi/activities/question"
ASSESSMENT = "http://adlnet.gov/expapi/activities/assessment"
MISTAKES = f"{HOME}/extensions/mistakes"
STEP = f"{HOME}/extensions/step"
LONGEST = 500
ENDED: Mapping[HowFar, str] = {"finished": "completed", "watched": "experienced"}
"""The verb for a work that came to its end."""


def as_statements(report: ClassReport) -> str:
    """All statements as a JSON list."""
    found = sorted(
        (each for student in report.students for each in _of_student(report, student)),
        key=lambda statement: (statement["timestamp"], statement["id"]),
    )
    return json.dumps(found, indent=1, ensure_ascii=False) + "\n"


def _of_student(report: ClassReport, student: Student) -> Iterator[dict[str, Any]]:
    for work in student.problems:
        for place, answer in enumerate(work.answers):
            yield _answered(report, student, work, place, answer)
        if work.state in ENDED:
            yield _ended(report, student, work)


def _answered(
    report: ClassReport, student: Student, work: StudentWork, place: int, answer: AnswerGiven
) -> dict[str, Any]:
    extensions: dict[str, Any] = {STEP: answer.step}
    if answer.codes:
        extensions[MISTAKES] = list(answer.codes)
    result: dict[str, Any] = {"success": answer.verdict == "right", "extensions": extensions}
    if answer.text:
        result["response"] = answer.text[:LONGEST]
    name = f"{place_in_words(answer.place)} in {work.title}"
    return {
        "id": _id(report, student, work, f"{place} {answer.time!r} {answer.place}"),
        "actor": _actor(student),
        "verb": _verb("answered"),
        "object": _activity(_address(report, work, answer.place), QUESTION, name),
        "result": result,
        "context": _context(report, work),
        "timestamp": moment(answer.time),
        "version": VERSION,
    }


def _ended(report: ClassReport, student: Student, work: StudentWork) -> dict[str, Any]:
    return {
        "id": _id(report, student, work, ENDED[work.state]),
        "actor": _actor(student),
        "verb": _verb(ENDED[work.state]),
        "object": _activity(_address(report, work), ASSESSMENT, work.title),
        "result": {
            "completion": True,
            "score": {"scaled": round(work.share, 4)},
            "duration": f"PT{work.minutes * 60:.0f}S",
        },
        "context": _context(report, None),
        "timestamp": moment(work.last),
        "version": VERSION,
    }


def _id(report: ClassReport, student: Student, work: StudentWork, what: str) -> str:
    name = f"pinjoint statement\n{report.set}\n{student.id}\n{work.problem}\n{what}"
    return str(uuid5(NAMESPACE_URL, name.encode("utf-8", "replace").decode()))


def _actor(student: Student) -> dict[str, Any]:
    actor: dict[str, Any] = {
        "objectType": "Agent",
        "account": {"homePage": HOME, "name": student.id},
    }
    return {**actor, "name": student.name} if student.name else actor


def _verb(word: str) -> dict[str, Any]:
    return {"id": f"{VERBS}/{word}", "display": {"en": word}}


def _activity(address: str, kind: str, name: str) -> dict[str, Any]:
    definition = {"type": kind, "name": {"en": name}}
    return {"objectType": "Activity", "id": address, "definition": definition}


def _context(report: ClassReport, work: StudentWork | None) -> dict[str, Any]:
    """What the activity is a part of: the problem, or the set where it is a problem itself."""
    parent = (
        _activity(_address(report), ASSESSMENT, report.title)
        if work is None
        else _activity(_address(report, work), ASSESSMENT, work.title)
    )
    return {"contextActivities": {"parent": [parent]}, "platform": "pinjoint", "language": "en"}


def _address(report: ClassReport, work: StudentWork | None = None, place: str = "") -> str:
    """The name of a set, of a problem in it, or of a question in that, as an address."""
    parts = [report.set, *([work.problem] if work is not None else []), *([place] if place else [])]
    return "/".join([f"{HOME}/sets", *(quote(part, safe="") for part in parts)])

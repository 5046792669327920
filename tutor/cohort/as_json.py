"""How is the report on a class told to a program? Names and meanings stay; keys may be added."""

from __future__ import annotations

import json
from dataclasses import asdict
from typing import Any

from tutor.cohort.facts import ClassReport, Student, StudentWork
from tutor.cohort.skilled import skilled
from tutor.cohort.times import moment
from tutor.model.caution import CAUTION

FORM = 1


def as_json(report: ClassReport) -> str:
    """The whole report but for the single answers; times in UTC, `form` counts the meanings of keys."""
    content = {
        "form": FORM,
        "set": report.set,
        "title": report.title,
        "handed_in": report.handed_in,
        "again": report.again,
        "problems": [asdict(problem) for problem in report.problems],
        "kinds": [asdict(kind) for kind in report.kinds],
        "mistakes": [
            {
                **{k: v for k, v in asdict(m).items() if k not in ("typed", "counts")},
                "typed": [
                    {"line": line, "times": count}
                    for line, count in zip(m.typed, m.counts, strict=True)
                ],
            }
            for m in report.mistakes
        ],
        "stops": [asdict(stop) for stop in report.stops],
        "skills": [asdict(skill) for skill in skilled(report.students)],
        "students": [_student(student) for student in report.students],
        "faults": [asdict(fault) for fault in report.faults],
        "checked": asdict(report.checked),
        "caution": CAUTION,
    }
    return json.dumps(content, indent=2, ensure_ascii=False) + "\n"


def _student(student: Student) -> dict[str, Any]:
    return {
        "id": student.id,
        "name": student.name,
        "handed_in": student.handed_in,
        "problems": [_work(work) for work in student.problems],
        "skills": [{**asdict(each), "mastered": each.mastered} for each in student.skills],
    }


def _work(work: StudentWork) -> dict[str, Any]:
    plain = {k: v for k, v in vars(work).items() if k not in ("answers", "title")}
    return {**plain, "first": moment(work.first), "last": moment(work.last)}

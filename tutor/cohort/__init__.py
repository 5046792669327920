"""What did a class do with a set, and what does it get wrong? From the files that students hand in.

`handed` is the file, `hand_in` makes one; `believing` replays a lesson, `gathering` a file, `spreading`
the files of a class on cores or a cluster; `reporting` counts. The `as_…` modules write the report.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from tutor.cohort.course import Course, course_at
from tutor.cohort.facts import (
    AnswerGiven,
    ClassReport,
    FileFault,
    KindOverSet,
    Mistaken,
    Stop,
    Student,
    StudentWork,
    VerdictsChecked,
)
from tutor.cohort.folder import files_in, seed_of
from tutor.cohort.gathering import Way
from tutor.cohort.naming import Naming, named
from tutor.cohort.reporting import report_of
from tutor.cohort.sampling import SHARE
from tutor.cohort.spreading import Done, NoCluster, on_cluster, on_cores

__all__ = [
    "AnswerGiven",
    "ClassReport",
    "Course",
    "FileFault",
    "KindOverSet",
    "Mistaken",
    "NoCluster",
    "Stop",
    "Student",
    "StudentWork",
    "VerdictsChecked",
    "class_report",
]


def _nothing(count: int) -> None:
    """Nobody waits for the progress."""


def class_report(
    folder: str | Path,
    problems: str | Path,
    *,
    roster: Mapping[str, str] | None = None,
    names: Naming = "id",
    skills: bool = True,
    in_full: bool = False,
    workers: int = 1,
    scheduler: str = "",
    done: Done = _nothing,
) -> ClassReport:
    """The report on all files handed in that lie in or under `folder`, on the set at `problems`.

    Verdicts are recomputed: `tutor.cohort.believing` says how; `in_full` judges every answer anew.
    `roster` has names by id. `names` is how students are called: "id", "name" (with the id), or
    "number", which leaves both out. `skills` is whether skills are traced. `workers` processes share
    the work, or those of the Dask `scheduler` at this address; the report is the same.

    Raises ProblemError where the set cannot be used, OSError where the folder cannot be listed,
    NoCluster where there is no such scheduler. Whatever a file holds is a fault in the report.
    """
    course = course_at(Path(problems))
    files = files_in(Path(folder))
    way = Way(seed_of(files), 1.0 if in_full else SHARE, skills)
    if scheduler:
        gathered = on_cluster(course, files, way, done, scheduler)
    else:
        gathered = on_cores(course, files, way, done, workers)
    return named(report_of(course, gathered, roster), names)

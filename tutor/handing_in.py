"""What do `pinjoint hand-in` and `pinjoint class` do, and what do they say of it?"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable
from pathlib import Path

from tutor.check.told import Bar
from tutor.cohort import ClassReport, NoCluster, class_report
from tutor.cohort.as_csv import students_as_csv, works_as_csv
from tutor.cohort.as_html import as_html
from tutor.cohort.as_json import as_json
from tutor.cohort.as_results import as_results
from tutor.cohort.as_statements import as_statements
from tutor.cohort.as_text import as_text
from tutor.cohort.folder import files_in
from tutor.cohort.hand_in import handing, told
from tutor.cohort.outlook import outlook
from tutor.cohort.spreading import cores
from tutor.model import ProblemError, ProblemSet, load_set, load_sets
from tutor.model.source import file_name
from tutor.paper.roster import read_roster
from tutor.records import Keep, disk, read_settings
from tutor.records.clock import utc_now
from tutor.shipped import shipped_problems
from tutor.variants import personal

NO_ID = "Say first who you are: pinjoint hand-in --student ID, with the id that your instructor knows you by."
WHICH_SET = "Say which set was handed in: --set and the folder with its problem files."
READ = "files read; Ctrl+C leaves"
LEFT = "You left before all files were read, so there is no report, and nothing was written."
NOTHING = "You have not begun anything in this set yet, so there is nothing to hand in."
WHICH = "There are several sets here; name the folder of one: {names}"
THERE = "{file} is there already, so nothing was written; name another file, or add --replace"


def write_lessons(options: argparse.Namespace) -> int:
    """Write the file that a student hands in; the exit status."""
    keep = Keep(options.keep)
    student = options.student or read_settings(keep.folder)[0].student
    if not student:
        return _refused(NO_ID)
    try:
        among = _one_set(options.path or shipped_problems())
    except ProblemError as refused:
        return _refused(str(refused))
    if isinstance(among, str):
        return _refused(among)
    handed = handing(personal(among, student), keep, student, among.title, utc_now())
    for line in told(handed) if handed.lessons or handed.left_out else ():
        print(line)
    if not handed.lessons:
        return _refused(NOTHING)
    return _written(options.to, handed.data, options.replace)


def is_for_screen(options: argparse.Namespace) -> bool:
    """Whether nothing to write or print is asked for, so that the report is to be looked through."""
    return not options.text and not any(getattr(options, name) for name in WRITERS)


def write_reports(options: argparse.Namespace) -> int:
    """Make the report on a class, and write or print it as asked for; the exit status."""
    report = report_for(options)
    if isinstance(report, int):
        return report
    if is_for_screen(options) or options.text:
        print(as_text(report), end="")
    for name, write in WRITERS.items():
        path: Path | None = getattr(options, name)
        for file, text in ({} if path is None else write(report, path)).items():
            if status := _written(file, text.encode("utf-8"), options.replace):
                return status
    return 0


def report_for(options: argparse.Namespace) -> ClassReport | int:
    """The report that the options ask for; the exit status, after saying why, where there is none."""
    try:
        where = options.set or set_beside(options.folder)
        if where is None:
            return _refused(WHICH_SET)
        _usable(where)
        roster = None
        if options.roster is not None:
            roster = {person.id: person.name for person in read_roster(options.roster)}
        return _counted(options, where, roster)
    except ProblemError as refused:
        print(refused, file=sys.stderr)
        return 1
    except NoCluster as refused:
        return _refused(str(refused))
    except OSError as refused:
        folder = file_name(options.folder)
        return _refused(f"{folder}: it cannot be read: {disk.why_not(refused)}; name a folder")


def set_beside(folder: Path) -> Path | None:
    """The set whose problem files lie in the folder of what was handed in, or in the one above it."""
    near = (folder, folder.absolute().parent)
    return next((each for each in near if any(each.glob("*.toml"))), None)


def _counted(
    options: argparse.Namespace, where: Path, roster: dict[str, str] | None
) -> ClassReport:
    files = files_in(options.folder)
    bar = Bar(sys.stderr, READ, fewest=2)
    try:
        bar(0, len(files))
        if not options.scheduler and (said := outlook(files, options.in_full, cores())):
            bar.clear()
            print(said, file=sys.stderr, flush=True)
            bar(0, len(files))
        return class_report(
            options.folder,
            where,
            roster=roster,
            names=options.names,
            skills=not options.no_skills,
            in_full=options.in_full,
            workers=cores(),
            scheduler=options.scheduler,
            done=lambda count: bar(count, len(files)),
        )
    except KeyboardInterrupt:
        bar.clear()
        print(LEFT, file=sys.stderr)
        raise
    finally:
        bar.clear()


def _usable(path: Path) -> None:
    """ProblemError where a problem of the set cannot be used: its lessons would be missed."""
    among = load_set(path)
    found = [
        defect
        for refused in among.broken.values()
        for defect in refused.problems
        if defect.severity == "error"
    ]
    if found:
        raise ProblemError(found)


def _csv(report: ClassReport, path: Path) -> dict[Path, str]:
    """Two tables: a row for each student and problem, and beside it one for each student."""
    beside = path.with_name(f"{path.stem}-students{path.suffix}")
    return {path: works_as_csv(report), beside: students_as_csv(report)}


WRITERS: dict[str, Callable[[ClassReport, Path], dict[Path, str]]] = {
    "html": lambda report, path: {path: as_html(report)},
    "csv": _csv,
    "json": lambda report, path: {path: as_json(report)},
    "results": lambda report, path: {path: as_results(report)},
    "statements": lambda report, path: {path: as_statements(report)},
}
"""What each option writes: the text of each file."""


def _one_set(path: Path) -> ProblemSet | str:
    """The one set at a path, or what is said where there are several."""
    sets = load_sets(path)
    if len(sets) == 1:
        return sets[0]
    folders = [file_name(each.path) for each in sets if each.path is not None]
    return WHICH.format(names=", ".join(folders))


def _written(path: Path, data: bytes, replace: bool) -> int:
    """Put a file on the disk, and say where; the exit status."""
    try:
        if path.exists() and not replace:
            return _refused(THERE.format(file=file_name(path)))
        path.parent.mkdir(parents=True, exist_ok=True)
        disk.replace(path, data)
    except OSError as refused:
        reason = disk.why_not(refused)
        return _refused(f"{file_name(path)}: it cannot be written: {reason}; name another place")
    print(file_name(path))
    return 0


def _refused(why: str) -> int:
    print(why, file=sys.stderr)
    return 2

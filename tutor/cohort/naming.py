"""How are students called in a report: by id, by name, or by a number that tells neither?"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from typing import Literal, get_args

from tutor.cohort.facts import ClassReport, FileFault

Naming = Literal["id", "name", "number"]
NAMINGS: tuple[Naming, ...] = get_args(Naming)
BEFORE_ID = "(?<=those of )|(?<=the id )"
"""What stands before an id in a sentence; elsewhere "3" is a number, whoever has it as an id."""


def named(report: ClassReport, naming: Naming) -> ClassReport:
    """The report with its students called so; `report` has ids and, from a roster, names.

    With numbers no id, name or file name is left; the numbers follow no order of the class.
    """
    if naming == "name":
        return report
    if naming == "id":
        return replace(report, students=tuple(replace(s, name="") for s in report.students))
    numbers = numbers_of(report)
    hide = _hidden(report, numbers)
    students = (
        replace(s, id=numbers[s.id], name="", file=hide(s.file) if s.file else "")
        for s in report.students
    )
    faults = (
        FileFault(hide(f.file), hide(f.message), numbers.get(f.student, "")) for f in report.faults
    )
    return replace(
        report,
        students=tuple(sorted(students, key=lambda s: int(s.id))),
        faults=tuple(sorted(faults, key=lambda f: (f.file, f.message))),
    )


def numbers_of(report: ClassReport) -> Mapping[str, str]:
    """A number from 1 on for each id, in an order that tells nothing of ids or names."""

    def lot(name: str) -> str:
        return hashlib.sha256(f"{report.set}\n{name}".encode("utf-8", "surrogatepass")).hexdigest()

    ordered = sorted((student.id for student in report.students), key=lot)
    return {name: str(number) for number, name in enumerate(ordered, 1)}


def _hidden(report: ClassReport, numbers: Mapping[str, str]) -> Callable[[str], str]:
    """What puts a number in the place of every file name and id in a sentence."""
    files = sorted({f.file for f in report.faults} | {s.file for s in report.students if s.file})
    of_file = {s.file: f"student {numbers[s.id]}" for s in report.students if s.file}
    called = {file: of_file.get(file, f"file {at}") for at, file in enumerate(files, 1)}
    called |= {s.name: f"student {numbers[s.id]}" for s in report.students if s.name}
    ids = {fault.student: "the student" for fault in report.faults}
    ids |= {name: f"student {number}" for name, number in numbers.items()}
    everywhere, behind = _any_of(called), _any_of(ids)
    pattern = re.compile(rf"(?<!\w)(?:{everywhere}|(?:{BEFORE_ID}){behind})(?!\w)")
    called |= ids
    return lambda text: pattern.sub(lambda found: called[found[0]], text)


def _any_of(names: Iterable[str]) -> str:
    """What matches any of these, the longest first, and nothing where there are none."""
    longest = sorted(filter(None, names), key=len, reverse=True)
    return f"(?:{'|'.join(map(re.escape, longest))})" if longest else r"(?!)"

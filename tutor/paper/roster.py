"""For whom is something handed out: which students does a CSV file list?

One row a student, under a head that names the columns `id` and `name` in any order; others are passed
over. Commas, semicolons or tabs part the columns. An id becomes the name of a file or folder.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from tutor.model import Defect, ProblemError
from tutor.model.source import read_source
from tutor.text import one_line, shown
from tutor.variants.lot import plain_name

MOST = 5000
LONGEST = 100
HEAD = "begin the file with the line id,name"
UNSAFE = re.compile(r"[^\w.-]+")
RESERVED = re.compile(r"(?i)(con|prn|aux|nul|com\d|lpt\d)(\..*)?")


@dataclass(frozen=True)
class Person:
    """One student; `name` may be empty."""

    id: str
    name: str = ""

    @property
    def words(self) -> str:
        """How a sheet names its student."""
        return f"{self.name} ({self.id})" if self.name else self.id

    @property
    def stem(self) -> str:
        """The id as the name of a file that every system takes."""
        stem = UNSAFE.sub("_", self.id).strip(".") or "_"
        return f"_{stem}" if RESERVED.fullmatch(stem) else stem


def read_roster(path: str | Path) -> tuple[Person, ...]:
    """The students of a roster, in its order.

    Raises ProblemError with every defect: no such file, no column `id`, an id that is missing or there
    twice (capitals do not count).
    """
    source = read_source(path)
    if source.text is None or source.defects:
        raise ProblemError(source.defects)
    found: list[Defect] = []
    people: list[Person] = []

    def note(line: int, message: str, cure: str) -> None:
        found.append(Defect(source.file, line, message, cure))

    first, *rest = source.text.splitlines() or [""]
    rows = list(csv.reader([first, *rest], delimiter=_delimiter(first)))
    head = [one_line(cell).casefold() for cell in rows[0]] if rows else []
    if "id" not in head:
        note(1, f"the first line, {shown(first)}, names no column id", HEAD)
        raise ProblemError(found)
    seen: dict[str, int] = {}
    stems: dict[str, str] = {}
    for line, row in enumerate(rows[1:], 2):
        if not any(cell.strip() for cell in row):
            continue
        person = Person(_cell(row, head, "id"), _cell(row, head, "name"))
        if not person.id:
            note(line, "a student has no id", "write one before the comma")
        elif len(person.id) > LONGEST or len(person.name) > LONGEST:
            note(line, f"an id or name has over {LONGEST} characters", "is this a roster?")
        elif plain_name(person.id) in seen:
            first_line = seen[plain_name(person.id)]
            message = f"the id {shown(person.id)} is there already, on line {first_line}"
            note(line, message, "give each student their own")
        elif stems.setdefault(person.stem.casefold(), person.id) != person.id:
            message = f"the id {shown(person.id)} would have the same file as another"
            note(line, message, "use letters, digits, - and _")
        else:
            seen[plain_name(person.id)] = line
            people.append(person)
    if not people and not found:
        note(1, "there is no student in it", "write a line like s1041,Dov Marle for each")
    if len(people) > MOST:
        note(1, f"there are {len(people)} students, more than {MOST}", "split the roster")
    if found:
        raise ProblemError(found)
    return tuple(people)


def _delimiter(first: str) -> str:
    return max(",;\t", key=first.count)


def _cell(row: Sequence[str], head: Sequence[str], name: str) -> str:
    place = head.index(name) if name in head else len(row)
    return one_line(row[place]) if place < len(row) else ""

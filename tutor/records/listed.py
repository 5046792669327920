"""What did the list say when it was last seen? Kept so that it can be there before its files are read.

It is made of the problem files and the journals, which are read again each time right after. So it may
be thrown away at any time, and nothing but the list's first moment rests on it: what is damaged, of
another program or of another list counts as nothing, and a file that has changed since is named so.
"""

from __future__ import annotations

import json
import os
import zlib
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from types import MappingProxyType
from typing import Any, NamedTuple

from tutor.records import disk

FILE_NAME = "list.json"
FORM = 3
MOST_LISTS = 3
"""So many lists are remembered, the latest first."""
MOST_BYTES = 4 * 1024 * 1024
MOST_TEXT = 2000
MOST_ROWS = 200
UNSETTLED = 2_000_000_000
"""A file written so few nanoseconds before it was read may be written once more without its time or its
size telling so: it is not known again."""
NO_STAMP = (-1, -1)
Stamp = tuple[int, int]


class SeenRow(NamedTuple):
    """One row: its file and what marks it as unchanged, and what is shown of it.

    `told` is what stood beside it, `faults` how many defects the file had, `before` the keys and titles
    of what comes first.
    """

    path: str
    stamp: Stamp
    title: str
    key: str = ""
    level: int | None = None
    told: str = ""
    faults: int = 0
    broken: bool = False
    before: tuple[tuple[str, str], ...] = ()


class SeenGroup(NamedTuple):
    """One set: its title, its rows, and how many files more it has."""

    title: str
    rows: tuple[SeenRow, ...]
    unread: int = 0


class SeenLesson(NamedTuple):
    """A journal: what marks it as unchanged, and the key of its problem."""

    stamp: Stamp
    key: str


class _Later(Mapping[str, SeenLesson]):
    """The journals of a list, taken from their text where one of them is asked for."""

    def __init__(self, text: str) -> None:
        self._text = text
        self._found: dict[str, SeenLesson] | None = None

    @property
    def _lessons(self) -> dict[str, SeenLesson]:
        if self._found is None:
            try:
                kept = json.loads(self._text).items()
                self._found = {
                    name: SeenLesson(_stamp(stamp), str(key)) for name, (stamp, key) in kept
                }
            except (ValueError, TypeError, AttributeError, RecursionError):
                self._found = {}
        return self._found

    def __getitem__(self, name: str) -> SeenLesson:
        return self._lessons[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._lessons)

    def __len__(self) -> int:
        return len(self._lessons)


class SeenList(NamedTuple):
    """A list as it was seen: where each problem was left by its key, how skills stood, the problem last
    worked on, the file at hand, and the journals that all this is from, with their stamps in one."""

    groups: tuple[SeenGroup, ...]
    places: Mapping[str, str]
    glance: tuple[tuple[str, tuple[str, ...]], ...] = ()
    last: str = ""
    at: str = ""
    lessons: Mapping[str, SeenLesson] = MappingProxyType({})
    stamped: int = 0


def list_of(paths: Sequence[Path], student: str | None) -> str:
    """Which list this is: the paths as they were asked for, from where, and for whom."""
    from_here = "" if all(path.is_absolute() for path in paths) else os.getcwd()
    return json.dumps([from_here, student, *map(str, paths)])


def stamp_of(path: str | Path) -> Stamp:
    """The size and the time of change of a file, in nanoseconds; NO_STAMP where there is none."""
    try:
        state = os.stat(path)
    except (OSError, ValueError):
        return NO_STAMP
    return state.st_size, state.st_mtime_ns


def sure_stamp(stamp: Stamp, read_at: int) -> Stamp:
    """The stamp of a file whose content was read from `read_at` (nanoseconds) on, if it says for sure
    which content that was; else NO_STAMP."""
    return stamp if stamp[1] < read_at - UNSETTLED else NO_STAMP


def stamps_in(folder: Path, ending: str) -> dict[str, Stamp]:
    """The stamps of all files of a folder with this ending, by name; none where it cannot be read."""
    found = {}
    try:
        with os.scandir(folder) as entries:
            for entry in entries:
                if entry.name.endswith(ending):
                    state = entry.stat()
                    found[entry.name] = (state.st_size, state.st_mtime_ns)
    except OSError:
        return {}
    return found


def all_stamps(stamps: Mapping[str, Stamp]) -> int:
    """One number for the stamps of all files: another one where a file came, went or changed."""
    return zlib.crc32(repr(sorted(stamps.items())).encode())


def program() -> str:
    """Which program this is, told from when its folders were last changed."""
    folder = Path(__file__).resolve().parents[1]
    try:
        rooms = sorted(e.path for e in os.scandir(folder) if e.is_dir() and e.name[0] != "_")
        return f"{zlib.crc32(repr([os.stat(room).st_mtime_ns for room in rooms]).encode()):08x}"
    except OSError:
        return ""


def read_seen(folder: Path, which: str) -> SeenList | None:
    """The list as it was last seen, its changed files marked by NO_STAMP and those that are gone left
    out; None where nothing is remembered of it."""
    record = _read(folder).get(which)
    if record is None:
        return None
    try:
        seen = _from_record(record)
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return None
    return seen._replace(groups=tuple(_as_they_are(group) for group in seen.groups))


def _as_they_are(group: SeenGroup) -> SeenGroup:
    now = [(row, stamp_of(row.path)) for row in group.rows]
    rows = tuple(
        row if row.stamp == stamp else row._replace(stamp=NO_STAMP)
        for row, stamp in now
        if stamp != NO_STAMP
    )
    return group._replace(rows=rows)


def write_seen(folder: Path, which: str, seen: SeenList) -> None:
    """Remember a list; where that cannot be, it is read from its files next time."""
    lessons = json.dumps(dict(seen.lessons))
    record = json.loads(json.dumps((*seen[:-2], lessons, seen.stamped)))
    others = _read(folder)
    if others.get(which) == record and next(iter(others)) == which:
        return
    others.pop(which, None)
    lists = {which: record, **dict(list(others.items())[: MOST_LISTS - 1])}
    body = json.dumps({"form": FORM, "by": program(), "lists": lists}).encode("ascii")
    if len(body) > MOST_BYTES:
        return
    try:
        disk.make_folder(folder)
        disk.replace(folder / FILE_NAME, b"%08x\n%s" % (zlib.crc32(body), body))
    except OSError:
        return


def _read(folder: Path) -> dict[str, Any]:
    """All remembered lists as they were kept; none where the file is not whole or of another program."""
    try:
        head, _, body = disk.read_file(folder / FILE_NAME, MOST_BYTES + 9).partition(b"\n")
        if head != b"%08x" % zlib.crc32(body):
            return {}
        record = json.loads(body)
        if (record["form"], record["by"]) != (FORM, program()):
            return {}
        return dict(record["lists"])
    except (OSError, ValueError, KeyError, TypeError, RecursionError):
        return {}


def _from_record(record: Sequence[Any]) -> SeenList:
    """The list that was kept. ValueError or TypeError where this is none."""
    groups, places, glance, last, at, lessons, stamped = record
    return SeenList(
        tuple(
            SeenGroup(str(t), tuple(map(_row, rows[:MOST_ROWS])), int(n)) for t, rows, n in groups
        ),
        {str(key): str(place) for key, place in places.items()},
        tuple((str(how), tuple(map(str, names))) for how, names in glance),
        str(last),
        str(at),
        _Later(str(lessons)),
        int(stamped),
    )


def _row(record: Sequence[Any]) -> SeenRow:
    path, stamp, title, key, level, told, faults, broken, before = record
    return SeenRow(
        str(path),
        _stamp(stamp),
        str(title),
        str(key),
        None if level is None else int(level),
        str(told)[:MOST_TEXT],
        int(faults),
        bool(broken),
        tuple((str(key), str(title)) for key, title in before),
    )


def _stamp(found: Any) -> Stamp:
    size, time = found
    return int(size), int(time)

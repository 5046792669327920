"""What stands in a file that was handed in, and is it still as it was written?

One text file: a first line that says whose work on which set this is, the journals of the set's
lessons as they lie on the student's disk, and a last line that counts them and bears a digest of all
before it. Each line is framed as those of a journal are. Nothing here raises on what it is given.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime

from tutor.records.contents import Contents, read_contents
from tutor.records.line import JournalLine, whole_line, write_line

FORMAT = "pinjoint hand-in"
VERSION = 1
OF = "hand-in"
FIRST = b'{"line":0,'
OWN = b'"of":"' + OF.encode() + b'"'
BOM = b"\xef\xbb\xbf"
LONGEST = 100
NOT_ONE = "it was not written by pinjoint hand-in; ask for the file that this command writes"
ZIP = b"PK\x03\x04"
ZIPPED = "it is a zip archive: unpack it, and put the files in it here"
LATER = "it was handed in with a later version of pinjoint; update this one"
TORN = "its end is missing, so lessons may be missing too; what is whole is counted"
CHANGED = "it was changed after it was handed in"


@dataclass(frozen=True)
class LessonPart:
    """One lesson of a file: what its journal holds, and whether every line is as it was written."""

    contents: Contents

    @property
    def whole(self) -> bool:
        return self.contents.header is not None and not self.contents.faults + self._torn

    @property
    def begun(self) -> str:
        """What tells lessons apart by how they were begun: the sum of its first line; "" without one."""
        lines = self.contents.lines
        return lines[0].after if lines and lines[0].number == 1 else ""

    @property
    def _torn(self) -> tuple[str, ...]:
        return ("its last line is not whole",) if self.contents.torn else ()

    @property
    def faults(self) -> tuple[str, ...]:
        """What is wrong with its lines, one phrase each."""
        return (*self.contents.faults, *self._torn)


@dataclass(frozen=True)
class HandedIn:
    """Whose work a file is, on which set, when it was made, its lessons, and what is wrong with it."""

    student: str
    set: str
    title: str
    made: datetime
    parts: tuple[LessonPart, ...]
    faults: tuple[str, ...] = ()


def written(
    student: str, set_name: str, title: str, made: datetime, journals: Sequence[bytes]
) -> bytes:
    """The bytes of a file to hand in; each of `journals` is a journal's whole lines."""
    top = write_line(
        0,
        OF,
        "",
        made,
        {
            "format": FORMAT,
            "version": VERSION,
            "student": student,
            "set": set_name,
            "title": title,
            "lessons": len(journals),
        },
    )
    body = top + b"\n" + b"".join(journal.rstrip(b"\n") + b"\n" for journal in journals)
    line = whole_line(top)
    assert line is not None
    end = {"kind": "end", "lessons": len(journals), "digest": digest(body)}
    return body + write_line(1, OF, line.sum, made, end) + b"\n"


def digest(data: bytes) -> str:
    """The SHA-256 of bytes, in hexadecimal figures."""
    return hashlib.sha256(data).hexdigest()


def plain_bytes(data: bytes) -> bytes:
    """The bytes as they were written, where a mail program or an editor gave them other line ends."""
    return data.removeprefix(BOM).replace(b"\r\n", b"\n")


def read_handed_in(data: bytes) -> HandedIn | str:
    """What these bytes hold, or one phrase on why they are no file handed in."""
    if data.startswith(ZIP):
        return ZIPPED
    data = plain_bytes(data)
    top_raw, _, rest = data.partition(b"\n")
    top = whole_line(top_raw)
    if top is None or top.event.get("format") != FORMAT:
        return (
            NOT_ONE if FORMAT.encode() not in top_raw else f"its first line is damaged; {NOT_ONE}"
        )
    version = top.event.get("version")
    if type(version) is not int or version > VERSION:
        return LATER
    student, set_name, title = (
        str(top.event.get(key, ""))[:LONGEST] for key in ("student", "set", "title")
    )
    body, end = _without_end(rest)
    parts = tuple(LessonPart(read_contents(raw)) for raw in _journals(body))
    faults = tuple(_faults(top, end, data[: len(top_raw) + 1 + len(body)], len(parts)))
    return HandedIn(student, set_name, title, top.at, parts, faults)


def _without_end(rest: bytes) -> tuple[bytes, JournalLine | None]:
    """The journals, and the last line of the file where it is whole."""
    trimmed = rest.rstrip(b"\n")
    start = trimmed.rfind(b"\n") + 1
    last = whole_line(trimmed[start:])
    if last is not None and last.problem == OF and last.event.get("kind") == "end":
        return trimmed[:start], last
    is_ours = OWN in trimmed[start : start + 40]
    return (trimmed[:start] if is_ours else rest), None


def _journals(body: bytes) -> Iterator[bytes]:
    """The stretches of lines that each begin with the first line of a journal."""
    start = 0
    while start < len(body):
        after = body.find(b"\n" + FIRST, start)
        stop = len(body) if after < 0 else after + 1
        yield body[start:stop]
        start = stop


def _faults(top: JournalLine, end: JournalLine | None, before: bytes, count: int) -> Iterator[str]:
    if end is None:
        yield TORN
    elif end.after != top.sum or end.event.get("digest") != digest(before):
        yield CHANGED
    said = top.event.get("lessons")
    if said != count:
        yield f"it should hold {said} lessons, and holds {count}"

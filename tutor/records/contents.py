"""What does the file of a journal still hold, and what has been done to it?

Nothing here touches a disk or raises on what it is given: bytes in, whole lines and faults out.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import islice, pairwise

from tutor.records.line import Event, JournalLine, read_sound, whole_line

FORMAT = "pinjoint journal"
VERSION = 2
SEAM = re.compile(rb'(?<=,"sum":"[0-9a-f]{16}"\}).(?=\{"line":)', re.DOTALL)
MAX_SEAMS = 8


@dataclass(frozen=True)
class Header:
    """The first line: which problem (its key), its title, when the lesson was started.

    `content` is the problem as it was then, as a file; version 1 had none. `source` may name the problem's file; `mended` names the damaged file this one was made from.
    """

    problem: str
    title: str
    started: datetime
    source: str = ""
    mended: str = ""
    version: int = VERSION
    content: str = ""

    def event(self) -> Event:
        """The header as the event of line 0."""
        return {
            "format": FORMAT,
            "version": self.version,
            "title": self.title,
            "source": self.source,
            "mended": self.mended,
            "content": self.content,
        }


@dataclass(frozen=True)
class Contents:
    """The whole lines of a journal in their order, and what is wrong with its file.

    `faults` are sentences about damage before the last line. Without any, the first `whole` bytes
    are good lines and `torn` is what is left of a last one that was not written to its end.
    """

    header: Header | None
    lines: tuple[JournalLine, ...]
    faults: tuple[str, ...]
    whole: int
    torn: bytes
    last_sum: str


@dataclass(frozen=True)
class Stretch:
    """The bytes between two line ends: its row in the file from 1, where it starts, what it holds."""

    row: int
    start: int
    raw: bytes


def read_contents(data: bytes) -> Contents:
    """What these bytes hold; a last line that is not whole is torn, any other one is a fault."""
    sound = _sound(data)
    return _looked_over(data) if sound is None else sound


def _sound(data: bytes) -> Contents | None:
    """What a journal holds of which every byte is as it was written; None for any other."""
    *rows, rest = data.split(b"\n")
    lines = None if rest or not rows else read_sound(rows)
    header = None if lines is None else header_of(lines[0])
    if lines is None or header is None:
        return None
    return Contents(header, tuple(lines[1:]), (), len(data), b"", lines[-1].sum)


def _looked_over(data: bytes) -> Contents:
    """What any bytes hold, stretch by stretch."""
    found: list[tuple[int, JournalLine]] = []
    faults: list[str] = []
    whole, torn = len(data), b""
    stretches = tuple(stretches_of(data))
    for stretch in stretches:
        line = whole_line(stretch.raw)
        if line is not None:
            found.append((stretch.row, line))
            continue
        saved = whole_lines_in(stretch.raw)
        found.extend((stretch.row, piece) for piece in saved)
        stray = len(saved) == 1 and whole_line(stretch.raw[:-1]) is not None
        if stretch is stretches[-1] and (not saved or stray):
            whole = stretch.start + (len(stretch.raw) - 1 if stray else 0)
            torn = data[whole:]
        else:
            faults.append(f"line {stretch.row} is damaged")
    header, lines, misplaced = in_order(found)
    last = lines[-1].sum if lines else next((x.sum for _, x in found if x.number == 0), "")
    return Contents(header, lines, (*faults, *misplaced), whole, torn, last)


def stretches_of(data: bytes) -> Iterator[Stretch]:
    """Every stretch that is not empty, with or without a line end after it."""
    start = 0
    for row, raw in enumerate(data.split(b"\n"), start=1):
        if raw:
            yield Stretch(row, start, raw)
        start += len(raw) + 1


def whole_lines_in(raw: bytes) -> tuple[JournalLine, ...]:
    """The whole lines in a damaged stretch.

    Two lines may run together where the line end between them was changed, and one may have a byte
    too many behind it; both cases leave whole lines, which prove themselves by their sums.
    """
    for seam in islice(SEAM.finditer(raw), MAX_SEAMS):
        sides = whole_line(raw[: seam.start()]), whole_line(raw[seam.end() :])
        if any(sides):
            return tuple(side for side in sides if side is not None)
    line = whole_line(raw[:-1])
    return () if line is None else (line,)


def in_order(
    found: Sequence[tuple[int, JournalLine]],
) -> tuple[Header | None, tuple[JournalLine, ...], list[str]]:
    """The header, the events by number, and a sentence for everything that is not in its place."""
    faults: list[str] = []
    top = next((line for _, line in found if line.number == 0), None)
    header = header_of(top)
    problem = top.problem if top else found[0][1].problem if found else ""
    lines: list[JournalLine] = []
    seen: set[str] = set()
    for row, line in found:
        if line is top:
            continue
        if line.number == 0 or line.problem != problem:
            faults.append(f"line {row} belongs to another lesson")
        elif line.sum in seen:
            faults.append(f"line {row} stands there twice")
        else:
            if lines and line.number <= lines[-1].number:
                faults.append(f"line {row} is out of its place")
            seen.add(line.sum)
            lines.append(line)
    lines.sort(key=lambda line: line.number)
    faults += missing_lines(top, lines)
    if header is None and lines:
        header = Header(problem, "", lines[0].at)
        faults.append("the line with the title is missing")
    return header, tuple(lines), faults


def header_of(line: JournalLine | None) -> Header | None:
    """The header a line 0 holds, or None; one of a later version is read for what it shares."""
    if line is None or line.event.get("format") != FORMAT:
        return None
    version = line.event.get("version")
    if type(version) is not int:
        return None
    title, source, mended, content = (
        str(line.event.get(key, "")) for key in ("title", "source", "mended", "content")
    )
    return Header(line.problem, title, line.at, source, mended, version, content)


def missing_lines(top: JournalLine | None, lines: Sequence[JournalLine]) -> list[str]:
    """A sentence for every place where lines are missing or do not follow from each other."""
    faults = []
    if top is None and lines and lines[0].number > 1:
        faults.append(missing(1, lines[0].number - 1))
    for before, line in pairwise([*([top] if top else []), *lines]):
        if line.number > before.number + 1:
            faults.append(missing(before.number + 1, line.number - 1))
        elif line.after != before.sum:
            faults.append(f"entry {line.number} does not follow from the one before it")
    return faults


def missing(first: int, last: int) -> str:
    """Which entries are not there, in words."""
    if first == last:
        return f"entry {first} is missing"
    return f"entries {first} to {last} are missing"

"""What does a journal's file say of its lesson? Enough to list it, without locking or changing it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from tutor.records import disk, told
from tutor.records.contents import VERSION, header_of, read_contents
from tutor.records.line import bears_its_sum, whole_line

AHEAD = 24 * 3600.0
"""How far ahead, in seconds, a time may be that another clock gave."""


@dataclass(frozen=True)
class Kept:
    """A lesson in the folder: enough to offer going on with it.

    A file that cannot be read has a `notice` and no times; a damaged one has both. `title` and
    `source` are as they were written: a screen shows them as plain text.
    """

    path: Path
    problem: str = ""
    title: str = ""
    source: str = ""
    started: datetime | None = None
    last: datetime | None = None
    events: int = 0
    notice: str = ""
    content: str = ""

    @property
    def readable(self) -> bool:
        """Whether there is a lesson in it that can be gone on with or looked at."""
        return self.started is not None


def in_their_order(found: Iterable[Kept], now: datetime) -> tuple[Kept, ...]:
    """Lessons as they are listed: the one last worked on first, those that cannot be read at the end."""
    every = tuple(found)
    readable = (kept for kept in every if kept.readable)
    return (
        *sorted(readable, key=lambda kept: last_of(kept, now), reverse=True),
        *(kept for kept in every if not kept.readable),
    )


def whole_by_its_sums(path: Path, data: bytes) -> Kept | None:
    """What the first and the last line say, where every line is whole and none is missing; else None.

    A list of a thousand lessons need not know what each line between them holds.
    """
    *rows, rest = data.split(b"\n")
    if not rows or rest or not all(map(bears_its_sum, rows)):
        return None
    top, end = whole_line(rows[0]), whole_line(rows[-1])
    if top is None or end is None:
        return None
    header = header_of(top)
    if header is None or header.version > VERSION or end.problem != header.problem:
        return None
    if end.number != len(rows) - 1:
        return None
    return Kept(
        path,
        header.problem,
        header.title,
        header.source,
        header.started,
        end.at,
        end.number,
        "",
        header.content,
    )


def look_at(path: Path) -> Kept:
    """What a journal's file says of its lesson, without locking or changing it."""
    try:
        data = disk.read_file(path)
    except OSError as error:
        return Kept(path, notice=told.cannot_read(path, error))
    return look_at_bytes(path, data)


def look_at_bytes(path: Path, data: bytes) -> Kept:
    """What these bytes of a journal's file say of its lesson."""
    if (quick := whole_by_its_sums(path, data)) is not None:
        return quick
    contents = read_contents(data)
    notices = [told.unusable(contents, path), *told.damage(contents.faults)]
    notice = " ".join(text for text in notices if text)
    header = contents.header
    if header is None:
        return Kept(path, notice=notice)
    last = contents.lines[-1].at if contents.lines else header.started
    return Kept(
        path,
        header.problem,
        header.title,
        header.source,
        header.started,
        last,
        len(contents.lines),
        notice,
        header.content,
    )


def last_of(kept: Kept, now: datetime) -> float:
    """When a lesson was last worked on, in seconds, for sorting.

    One that was last worked on in the future was so under a clock that ran ahead: it goes by when
    it was begun, and to the end where that is in the future as well.
    """
    ahead = now.timestamp() + AHEAD
    times = [time.timestamp() for time in (kept.last, kept.started) if time is not None]
    return next((time for time in times if time <= ahead), 0.0)

"""How is a damaged journal put right, so that no whole line and no damaged byte is lost?

A last line that was only half written is copied aside and cut off. Any other damage leaves the file
as it is under a name aside, and a new file with the whole lines takes its place. Both happen under
the lock of the file. Every function raises OSError when the disk refuses; no whole line is lost then.
"""

from __future__ import annotations

import contextlib
import os
from dataclasses import replace
from pathlib import Path

from tutor.records import disk
from tutor.records.contents import Contents, Header
from tutor.records.line import JournalLine, whole_line, write_line


def cut_torn_line(path: Path, descriptor: int, contents: Contents) -> Path:
    """Copy the torn bytes to a file beside the journal, cut them off, and return that file."""
    side = disk.keep_aside(path, contents.torn)
    os.ftruncate(descriptor, contents.whole)
    os.fsync(descriptor)
    return side


def end_last_line(descriptor: int, data: bytes) -> bytes:
    """The good bytes, with the line end that a whole last line may lack written behind them."""
    if data.endswith(b"\n"):
        return data
    disk.write_whole(descriptor, b"\n")
    os.fsync(descriptor)
    return data + b"\n"


def put_in_place(
    path: Path, data: bytes, header: Header, lines: tuple[JournalLine, ...]
) -> tuple[int, bytes, Path]:
    """Keep the damaged file aside and put one with the whole lines in its place, already locked.

    Returns the new descriptor, the new bytes and the name of the damaged file. Where the system
    does not let an open file be replaced (Windows), this raises OSError.
    """
    side = disk.keep_aside(path, data)
    fresh_data = rewritten(replace(header, mended=side.name), lines)
    fresh = disk.fresh_name(path)
    descriptor = disk.create_whole(fresh, fresh_data)
    try:
        os.replace(fresh, path)
        disk.sync_folder(path.parent)
    except BaseException:
        os.close(descriptor)
        with contextlib.suppress(OSError):
            os.unlink(fresh)
        raise
    return descriptor, fresh_data, side


def rewritten(header: Header, lines: tuple[JournalLine, ...]) -> bytes:
    """A journal of these events, numbered anew, each with the time it had."""
    rows = [write_line(0, header.problem, "", header.started, header.event())]
    for number, line in enumerate(lines, start=1):
        after = check_sum_in(rows[-1])
        rows.append(write_line(number, header.problem, after, line.at, line.event))
    return b"".join(row + b"\n" for row in rows)


def check_sum_in(row: bytes) -> str:
    """The check sum a line carries that was just written."""
    line = whole_line(row)
    if line is None:
        raise ValueError("a line that was just written cannot be read")
    return line.sum

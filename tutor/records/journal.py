"""What of a lesson is on the disk? One append-only file of events, and the truth about its state.

The journal knows nothing of what an event means. `append` answers only once the event is on the
disk; when it cannot get there the journal says so once, in `notices`, and takes later events
unsaved, so that the lesson goes on. It never tries a failed write or sync again: after a failed
sync the system may have thrown the bytes away and report success the next time.

A journal is used from one thread at a time. A cut between two lines leaves a shorter, whole journal.
"""

from __future__ import annotations

import contextlib
import os
from collections.abc import Mapping, Sequence
from datetime import datetime
from pathlib import Path
from types import TracebackType

from tutor.records import disk, mend, told
from tutor.records.clock import Clock, utc_now
from tutor.records.contents import Contents, Header, read_contents
from tutor.records.line import Event, JournalLine, whole_line, write_line


class Journal:
    """The journal of one lesson; made by `start`, `resume` or `unsaved`, never directly."""

    def __init__(
        self,
        path: Path | None,
        header: Header,
        lines: Sequence[JournalLine] = (),
        *,
        last_sum: str = "",
        read_only: bool = False,
        notices: Sequence[str] = (),
        clock: Clock = utc_now,
        what: str = told.LESSON,
    ) -> None:
        self.path = path
        self.header = header
        self.read_only = read_only
        self._lines = list(lines)
        self._last_sum = last_sum
        self._notices = list(notices)
        self._clock = clock
        self._what = what
        self._descriptor: int | None = None
        self._size = 0
        self._saved = False
        self._closed = False

    @classmethod
    def start(
        cls, path: Path, header: Header, *, clock: Clock = utc_now, what: str = told.LESSON
    ) -> Journal:
        """A new journal, its header on the disk; unsaved, with a notice, if the disk refuses.

        `what` it is of is for the notices: "lesson", "homework" or "drawing".

        Raises FileExistsError if there is such a file already: nothing is overwritten.
        """
        raw = write_line(0, header.problem, "", header.started, header.event()) + b"\n"
        try:
            disk.make_folder(path.parent)
            descriptor = disk.create_whole(path, raw)
        except FileExistsError:
            raise
        except OSError as error:
            notice = told.not_saved(disk.why_not(error), path, what)
            return cls.unsaved(header, notice, clock=clock, what=what)
        first = whole_line(raw[:-1])
        journal = cls(path, header, last_sum=first.sum if first else "", clock=clock, what=what)
        journal._write_to(descriptor, len(raw))
        return journal

    @classmethod
    def resume(cls, path: Path, *, clock: Clock = utc_now, what: str = told.LESSON) -> Journal:
        """The journal in this file, ready for more; never raises for what the file is or holds.

        A torn last line is cut off and kept aside; other damage leaves the file aside and goes on
        in a new one of the same name with all whole events. With nothing whole in it, or no file
        at all, the journal is unsaved and its header names no problem.
        """
        try:
            descriptor, why = open_file(path, what)
        except (OSError, ValueError) as error:
            return cls.unsaved(
                no_problem(clock), told.cannot_read(path, error), clock=clock, what=what
            )
        try:
            data = disk.read_whole(descriptor)
        except OSError as error:
            os.close(descriptor)
            return cls.unsaved(
                no_problem(clock), told.cannot_read(path, error), clock=clock, what=what
            )
        contents = read_contents(data)
        journal = cls(
            path,
            contents.header or no_problem(clock),
            contents.lines,
            last_sum=contents.last_sum,
            clock=clock,
            what=what,
        )
        why = why or told.unusable(contents, path, what)
        if why:
            os.close(descriptor)
            journal.read_only = True
            journal._notices += [why, *told.damage(contents.faults, what)]
        else:
            journal._take_over(descriptor, data, contents)
        return journal

    @classmethod
    def unsaved(
        cls, header: Header, notice: str, *, clock: Clock = utc_now, what: str = told.LESSON
    ) -> Journal:
        """A journal that keeps its events in memory only, and says why."""
        return cls(None, header, notices=[notice], clock=clock, what=what)

    @property
    def saved(self) -> bool:
        """Whether every event so far is on the disk and the next one may get there."""
        return self._saved

    @property
    def notices(self) -> tuple[str, ...]:
        """All that the student should be told about the keeping of this lesson, oldest first."""
        return tuple(self._notices)

    @property
    def notice(self) -> str:
        """The latest of the notices, or an empty text."""
        return self._notices[-1] if self._notices else ""

    @property
    def events(self) -> tuple[Event, ...]:
        """All events in their order, saved or not, as they are read back from a file."""
        return tuple(line.event for line in self._lines)

    @property
    def times(self) -> tuple[datetime, ...]:
        """When each of the events was taken down."""
        return tuple(line.at for line in self._lines)

    def append(self, event: Event, *, sync: bool = True) -> bool:
        """Take an event down: True once it is on the disk, False if it is kept in memory only.

        Without `sync` it is handed to the system, which brings it to the disk in its own time and
        at the latest with the next event: for what can be worked out again from the others.

        Raises TypeError or ValueError for an event that JSON cannot hold, and ValueError after
        `close`; the journal is then as it was before.
        """
        if self._closed:
            raise ValueError("this journal is closed")
        if not isinstance(event, Mapping):
            raise TypeError(f"an event is a mapping, not {event!r}")
        number = self._lines[-1].number + 1 if self._lines else 1
        raw = write_line(number, self.header.problem, self._last_sum, self._clock(), event)
        line = whole_line(raw)
        if line is None:
            raise ValueError("this event cannot be read back from its line")
        before = len(self._lines), self._last_sum, self._size
        try:
            if self._saved and self._descriptor is not None:
                self._put(self._descriptor, raw + b"\n", sync)
            self._lines.append(line)
            self._last_sum = line.sum
        except BaseException:
            self._undo(*before)
            raise
        return self._saved

    def close(self) -> None:
        """Let go of the file and its lock; a second call does nothing."""
        self._closed = True
        if self._descriptor is not None:
            descriptor, self._descriptor = self._descriptor, None
            with contextlib.suppress(OSError):
                os.close(descriptor)

    def __enter__(self) -> Journal:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def _write_to(self, descriptor: int, size: int) -> None:
        """From here on events go to this file, which is `size` bytes long and locked."""
        self._descriptor, self._size, self._saved = descriptor, size, True

    def _take_over(self, descriptor: int, data: bytes, contents: Contents) -> None:
        """Put the locked file right where it needs it, and go on in it."""
        assert self.path is not None
        try:
            disk.make_private(descriptor)
            if contents.faults:
                old = descriptor
                descriptor, data, side = mend.put_in_place(
                    self.path, data, self.header, contents.lines
                )
                os.close(old)
                self._reread(data)
                self._notices.append(told.mended(contents, side, self._what))
            else:
                if contents.torn:
                    side = mend.cut_torn_line(self.path, descriptor, contents)
                    self._notices.append(told.torn(side, self._what))
                data = mend.end_last_line(descriptor, data[: contents.whole])
        except OSError as error:
            os.close(descriptor)
            self._notices += [
                *told.damage(contents.faults, self._what),
                told.not_saved(disk.why_not(error), self.path, self._what),
            ]
            return
        self._write_to(descriptor, len(data))

    def _reread(self, data: bytes) -> None:
        contents = read_contents(data)
        assert contents.header is not None
        self.header, self._last_sum = contents.header, contents.last_sum
        self._lines = list(contents.lines)

    def _put(self, descriptor: int, row: bytes, sync: bool) -> None:
        """Bring one line to the disk, or turn to unsaved and say why."""
        if self._size + len(row) > disk.MAX_BYTES:
            return self._give_up(told.FULL)
        try:
            state = os.fstat(descriptor)
            if state.st_nlink == 0 or state.st_size != self._size:
                return self._give_up(told.CHANGED)
            disk.write_whole(descriptor, row)
        except OSError as error:
            self._cut_back(descriptor)
            return self._give_up(disk.why_not(error))
        try:
            if sync:
                os.fsync(descriptor)
        except OSError as error:
            return self._give_up(disk.why_not(error))
        self._size += len(row)
        return None

    def _undo(self, count: int, last_sum: str, size: int) -> None:
        """After an interruption (Ctrl+C) in the midst of `append`: as if it had not been called."""
        del self._lines[count:]
        self._last_sum, self._size = last_sum, size
        if self._saved and self._descriptor is not None:
            self._cut_back(self._descriptor)

    def _cut_back(self, descriptor: int) -> None:
        """Take half a line off the file again; if that fails, reading will find it torn."""
        try:
            os.ftruncate(descriptor, self._size)
        except OSError as error:
            self._give_up(disk.why_not(error))

    def _give_up(self, why: str) -> None:
        if self._saved:
            self._saved = False
            self._notices.append(told.not_saved(why, self.path, self._what))


def open_file(path: Path, what: str = told.LESSON) -> tuple[int, str]:
    """A descriptor, and why it may only be read: empty if it may be written and is locked.

    The name is looked at again after locking, since another program may have put a mended file in
    the place of the one that was opened.
    """
    while True:
        try:
            descriptor = os.open(path, disk.APPEND)
        except OSError as error:
            return os.open(path, disk.READ), told.not_saved(disk.why_not(error), path, what)
        if not disk.lock(descriptor):
            return descriptor, told.in_use(what)
        if disk.is_at(descriptor, path):
            return descriptor, ""
        os.close(descriptor)


def no_problem(clock: Clock) -> Header:
    """The header of a journal that could not be read: it names no problem."""
    return Header("", "", clock())

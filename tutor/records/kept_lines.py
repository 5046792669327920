"""How are the lines of a drawing or a homework kept from one time to the next?

One journal each beside the lessons, as those are kept: an entry for every change, with check sums,
under a lock, brought to the disk before anything is said of it. Whoever opens the same lines in this
program shares one journal; another program can read them, and is told so.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import weakref
from collections.abc import Mapping, Sequence
from itertools import count
from pathlib import Path
from typing import Any

from tutor.records import disk, told
from tutor.records.clock import utc_now
from tutor.records.contents import Header
from tutor.records.journal import Journal
from tutor.records.keep import slug

LARGEST = 1_000_000
FOLDER = "own"
TRUSS = "truss"
WHOLE_EVERY = 16
"""After how many entries all lines are written again, so that a lost entry costs little."""


def homework_name(key: str) -> str:
    """The name under which the homework on the problem of this key is kept."""
    return f"homework-{slug(key)}-{hashlib.sha256(key.encode()).hexdigest()[:10]}"


_open: weakref.WeakValueDictionary[Path, _Log] = weakref.WeakValueDictionary()


class KeptLines:
    """The lines kept under one name in the folder of the lessons.

    `what` they are is for people: "homework" or "drawing". `older` are names under which an earlier
    version kept them, in a text file. `about` goes into the first line of a new journal.
    """

    def __init__(
        self,
        folder: Path,
        name: str,
        what: str = "drawing",
        older: Sequence[str] = (),
        about: Header | None = None,
    ) -> None:
        self.path = folder / FOLDER / f"{name}.jsonl"
        self._older = [folder / FOLDER / f"{old}.txt" for old in (name, *older)]
        self._what = what
        self._about = about or Header(name, what, utc_now())
        self._log: _Log | None = None
        self._told = 0

    def read(self) -> tuple[str, ...]:
        """The lines that are there; what is damaged among them is put aside, and in `news`."""
        return self._opened().lines

    def write(self, lines: Sequence[str]) -> str:
        """Keep these lines. What is to be told of the keeping and was not yet told; else ""."""
        self._opened().put(tuple(" ".join(line.split()) for line in lines if line.strip()))
        return " ".join(self.news())

    def note(self, kind: str, **data: Any) -> str:
        """Keep an entry beside the lines; what `write` would tell."""
        self._opened().note({"kind": kind, **data})
        return " ".join(self.news())

    @property
    def noted(self) -> tuple[Mapping[str, Any], ...]:
        """The entries beside the lines, in the order in which they were noted."""
        return tuple(self._opened().noted)

    def news(self) -> tuple[str, ...]:
        """What is to be told of the keeping and was not yet told; each notice comes once."""
        notices = self._opened().notices
        fresh = tuple(notices[self._told :])
        self._told = len(notices)
        return fresh

    @property
    def header(self) -> Header:
        """The first line of the journal: what the lines were about when they were begun."""
        journal = self._opened().journal
        return self._about if journal is None else journal.header

    @property
    def trouble(self) -> bool:
        """Whether what is written does not stay."""
        journal = self._opened().journal
        return journal is not None and not journal.saved

    def close(self) -> None:
        """Let go of the lines; the last of those who share them lets go of the file."""
        self._log = None

    def _opened(self) -> _Log:
        if self._log is None:
            key = self.path.absolute()
            log = _open.get(key)
            if log is None or log.is_gone:
                log = _open[key] = _Log(self.path, self._older, self._what, self._about)
            self._log = log
        return self._log


class _Log:
    """The journal of some lines, and the lines as they are now."""

    def __init__(self, path: Path, older: Sequence[Path], what: str, about: Header) -> None:
        self.path = path
        self.what = what
        self.about = about
        self.lines: tuple[str, ...] = ()
        self.noted: list[Mapping[str, Any]] = []
        self.notices: list[str] = []
        self.journal: Journal | None = None
        self._since_whole = WHOLE_EVERY
        self._told = 0
        if path.exists() or path.is_symlink():
            self._resume()
        else:
            self.lines = self._read_older(older)

    def __del__(self) -> None:
        if self.journal is not None:
            self.journal.close()

    @property
    def is_gone(self) -> bool:
        """Whether the file was taken away, so that whoever opens the lines anew begins anew."""
        return self.journal is not None and self.journal.saved and not self.path.exists()

    def put(self, lines: tuple[str, ...]) -> None:
        """Have these lines kept."""
        again = False
        if self.journal is None and not lines:
            return
        if self.journal is None:
            self._start()
        elif again := not self.journal.saved and not self.journal.read_only:
            self._try_again()
        assert self.journal is not None
        if lines != self.lines or self._since_whole >= WHOLE_EVERY:
            self.journal.append(self._entry(lines))
        self.lines = lines
        if again and self.journal.saved:
            self.notices.append(told.kept_again(self.what))
        elif again and not self.journal.read_only:
            self._told = len(self.journal.notices)
        self._listen()

    def note(self, entry: Mapping[str, Any]) -> None:
        """Have an entry kept that is none of the lines."""
        if self.journal is None:
            self._start()
        assert self.journal is not None
        self.journal.append(entry)
        self.noted.append(entry)
        self._listen()

    def _entry(self, lines: tuple[str, ...]) -> Mapping[str, Any]:
        start = 0
        if self._since_whole < WHOLE_EVERY:
            for one, other in zip(self.lines, lines, strict=False):
                if one != other:
                    break
                start += 1
        self._since_whole = 0 if start == 0 else self._since_whole + 1
        return {"kind": "lines", "from": start, "add": list(lines[start:])}

    def _start(self) -> None:
        try:
            self.journal = Journal.start(self.path, self.about, what=self.what)
        except FileExistsError:
            self._resume()
        self._since_whole = WHOLE_EVERY

    def _resume(self) -> None:
        self.journal = Journal.resume(self.path, what=self.what)
        if self.journal.header.problem == "" and self.journal.path is not None:
            self._put_aside()
            return
        self.lines = lines_after(self.journal.events)
        self.noted = [event for event in self.journal.events if event.get("kind") != "lines"]
        self._since_whole = WHOLE_EVERY
        self._listen()

    def _try_again(self) -> None:
        """After a refusal of the disk: with a journal opened anew, where that can be had now."""
        assert self.journal is not None
        self.journal.close()
        if self.path.exists():
            self.journal = Journal.resume(self.path, what=self.what)
        else:
            self.journal = Journal.start(self.path, self.about, what=self.what)
        self._since_whole = WHOLE_EVERY
        self._told = 0

    def _put_aside(self) -> None:
        """A file with nothing whole in it gets another name, and a new one is begun when needed."""
        assert self.journal is not None
        if self.journal.read_only and told.in_use(self.what) in self.journal.notices:
            self._listen()
            return
        self.journal.close()
        side = next(
            path
            for number in count(1)
            if not (path := self.path.with_name(f"{self.path.name}.kept-aside-{number}")).exists()
        )
        try:
            os.rename(self.path, side)
        except OSError:
            self._listen()
            return
        self.journal = None
        self.notices.append(told.nothing_whole(self.what, side))

    def _read_older(self, older: Sequence[Path]) -> tuple[str, ...]:
        """The lines that an earlier version kept as plain text; that file stays as it is."""
        for path in older:
            with contextlib.suppress(FileNotFoundError):
                try:
                    raw = disk.read_file(path, LARGEST)
                except FileNotFoundError:
                    raise
                except OSError as error:
                    self.notices.append(told.cannot_read(path, error))
                    return ()
                rows = raw.split(b"\n")
                read = [decoded(row) for row in rows]
                if None in read:
                    self.notices.append(told.damaged_text(self.what, path, read.count(None)))
                return tuple(line for line in read if line and line.strip())
        return ()

    def _listen(self) -> None:
        """Take up what the journal has to tell."""
        assert self.journal is not None
        self.notices += self.journal.notices[self._told :]
        self._told = len(self.journal.notices)


def decoded(row: bytes) -> str | None:
    """A line of text, or None where its bytes are none."""
    try:
        text = row.decode("utf-8")
    except UnicodeDecodeError:
        return None
    return text.strip("\r")


def lines_after(events: Sequence[Mapping[str, Any]]) -> tuple[str, ...]:
    """The lines that all changes together come to; an entry that is none is passed over."""
    lines: tuple[str, ...] = ()
    for event in events:
        start, add = event.get("from"), event.get("add")
        if event.get("kind") != "lines" or type(start) is not int or not isinstance(add, list):
            continue
        if start >= 0:
            lines = (*lines[:start], *(line for line in add if isinstance(line, str)))
    return lines

"""What do all kept lessons come to? Each is gone through once; what it came to is kept beside them.

A journal is known again by its size and the digest of its bytes, so that one that was added to, or
damaged, is gone through anew. What is kept of it is of one version of the rooms that decide it.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime
from functools import lru_cache
from pathlib import Path
from typing import Any

from tutor.judge.version import digest_of
from tutor.lesson.replay import replay
from tutor.model import Problem
from tutor.progress.account import LessonAccount, account_of, as_record, from_record
from tutor.records import Keep, Kept, disk, told
from tutor.records.belonging import problem_in
from tutor.records.contents import read_contents
from tutor.records.kept import in_their_order, look_at_bytes
from tutor.statics import Unsolvable

FILE_NAME = "accounts.json"
FORM = 1
ROOMS = ("judge", "lesson", "model", "notation", "skills", "statics", "progress")
AT_ONCE = 40
"""So many lessons are gone through anew at once; the rest of a large folder when it is looked at next."""
MOST_BYTES = 64 * 1024 * 1024


@dataclass(frozen=True)
class Summary:
    """A kept lesson, and what it came to; no account where it was not gone through or cannot be."""

    kept: Kept
    account: LessonAccount | None = None


@dataclass(frozen=True)
class Known:
    """What is kept of one journal: its size and digest, and its summary."""

    size: int
    digest: str
    summary: Summary


class Summaries:
    """All lessons of a folder with their accounts, as far as they were gone through.

    It lives as long as the folder is looked at: `look` reads what has changed, `accounted` goes
    through lessons, `put_down` keeps what was found.
    """

    def __init__(self, keep: Keep) -> None:
        self.keep = keep
        self._known = _read(keep.folder / FILE_NAME)
        self._changed = False

    def look(self) -> tuple[Summary, ...]:
        """All lessons as they are now, in the order of `Keep.lessons`; accounts only where known."""
        try:
            found = {path: self._seen(path) for path in self.keep.journals()}
        except OSError as error:
            folder = self.keep.folder
            return (Summary(Kept(folder, notice=told.cannot_read(folder, error))),)
        gone = self._known.keys() - {path.name for path in found}
        for name in gone:
            del self._known[name]
        self._changed = self._changed or bool(gone)
        order = in_their_order((each.kept for each in found.values()), self.keep.now())
        return tuple(found[kept.path] for kept in order)

    def _seen(self, path: Path) -> Summary:
        try:
            data = disk.read_file(path)
        except OSError as error:
            return Summary(Kept(path, notice=told.cannot_read(path, error)))
        known = self._known.get(path.name)
        digest = hashlib.sha256(data).hexdigest()[:24]
        if known is not None and (known.size, known.digest) == (len(data), digest):
            return known.summary
        summary = Summary(look_at_bytes(path, data))
        if summary.kept.readable and not summary.kept.notice:
            self._known[path.name] = Known(len(data), digest, summary)
            self._changed = True
        return summary

    def accounted(self, summary: Summary) -> Summary:
        """The same lesson with its account; without, where it cannot be gone through."""
        if summary.account is not None:
            return summary
        account = account_in(summary.kept)
        if account is None:
            return summary
        made = replace(summary, account=account)
        name = summary.kept.path.name
        if name in self._known:
            self._known[name] = replace(self._known[name], summary=made)
            self._changed = True
        return made

    def go_through(self, lessons: Iterable[Summary]) -> list[Summary]:
        """These lessons with their accounts, as many as may be gone through at once."""
        found, left = [], AT_ONCE
        for each in lessons:
            left -= each.account is None
            found.append(self.accounted(each) if left >= 0 else each)
        return found

    def put_down(self) -> None:
        """Keep what was found; where that cannot be, it is found anew next time."""
        if not self._changed:
            return
        record = {
            "form": FORM,
            "by": version(),
            "lessons": {name: _as_record(known) for name, known in self._known.items()},
        }
        try:
            disk.make_folder(self.keep.folder)
            disk.replace(self.keep.folder / FILE_NAME, json.dumps(record).encode("ascii"))
        except OSError:
            return
        self._changed = False


def account_in(kept: Kept, problem: Problem | None = None) -> LessonAccount | None:
    """What a kept lesson came to, on the problem as it was then; None where that cannot be told.

    `problem` is taken where it is not kept with the lesson, as in version 0.1.0.
    """
    problem = problem_in(kept.content) or problem
    if problem is None:
        return None
    try:
        lines = read_contents(disk.read_file(kept.path)).lines
        lesson = replay(problem, (line.event for line in lines), compare=False).lesson
    except (OSError, Unsolvable):
        return None
    return account_of(lesson.state)


@lru_cache(maxsize=1)
def version() -> str:
    """Which rooms decided what is kept, told from their sources."""
    return digest_of(ROOMS)


def _read(path: Path) -> dict[str, Known]:
    """What was kept of the lessons; nothing where it cannot be read or is of other rooms."""
    try:
        record = json.loads(disk.read_file(path, MOST_BYTES))
        if record["form"] != FORM or record["by"] != version():
            return {}
        return {
            name: _from_record(path.parent / name, each) for name, each in record["lessons"].items()
        }
    except (OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return {}


def _as_record(known: Known) -> dict[str, Any]:
    kept, account = known.summary.kept, known.summary.account
    return {
        "size": known.size,
        "digest": known.digest,
        "problem": kept.problem,
        "title": kept.title,
        "source": kept.source,
        "started": None if kept.started is None else kept.started.isoformat(),
        "last": None if kept.last is None else kept.last.isoformat(),
        "events": kept.events,
        "content": kept.content,
        "account": None if account is None else as_record(account),
    }


def _from_record(path: Path, record: Mapping[str, Any]) -> Known:
    started, last = (_time(record[key]) for key in ("started", "last"))
    account = None if record["account"] is None else from_record(record["account"])
    problem, title, source, content = (
        str(record[key]) for key in ("problem", "title", "source", "content")
    )
    events = int(record["events"])
    kept = Kept(path, problem, title, source, started, last, events, "", content)
    return Known(int(record["size"]), str(record["digest"]), Summary(kept, account))


def _time(text: object) -> datetime | None:
    return None if text is None else datetime.fromisoformat(str(text))

"""What does the student do, and is it kept? Each event goes to the journal first, then to the lesson.

A bug of ours must not end a lesson: what cannot be folded in is said to be unchecked, the session
goes on, and the log beside the lessons names the place in our code, never what was typed.
"""

from __future__ import annotations

import hashlib
import time
import traceback
from dataclasses import replace
from pathlib import Path

from tutor.lesson import Event, Lesson, Reply, Say
from tutor.lesson.replay import replay, told_in_short
from tutor.model import Problem, write_problem
from tutor.records import Journal, Keep

NOT_CHECKED = (
    "This could not be checked: the fault is in the program, not in what you did. It is kept; go on "
    "another way, or take it back."
)
LOG = "trouble.log"


class Session:
    """One walk through one problem: the lesson, its journal, and what is still to be told.

    `remarks` is whether a right line may be followed by a remark that teaches an easier way;
    `skippable` are the steps that may be passed over.
    """

    def __init__(self, lesson: Lesson, journal: Journal, log: Path | None = None) -> None:
        self.lesson = lesson
        self.journal = journal
        self.log = log
        self.remarks = True
        self.skippable: frozenset[str] = frozenset()
        self._told = 0
        self._differing: tuple[str, ...] = ()
        self.skipped = 0
        self._replay()

    def do(self, kind: str, **data: object) -> Reply:
        """Keep one event, then fold it in; the answer is there once the event is kept."""
        if kind == "skip":
            data = {"steps": sorted(self.skippable), **data}
        event, before = Event(kind, data, time.time()), self.lesson.state
        self.journal.append(event.as_record())
        try:
            reply = self.lesson.apply(event)
        except Exception as fault:
            note_fault(self.log, fault)
            reply = Reply((Say("undecided", NOT_CHECKED),))
        self.journal.append(self.lesson.outcome(before, event, reply).as_record(event), sync=False)
        if self.remarks:
            return reply
        return replace(reply, said=tuple(say for say in reply.said if not say.teaches))

    def news(self) -> tuple[str, ...]:
        """What the journal has to tell and was not yet told; each notice comes once."""
        told = self.journal.notices[self._told :]
        self._told += len(told)
        differing, self._differing = self._differing, ()
        return (*told, *differing)

    @property
    def standing(self) -> str:
        """Whether what is done here is kept, in a few words."""
        if self.journal.saved:
            return "kept"
        return "read only, not kept" if self.journal.read_only else "not kept"

    def close(self) -> None:
        """Let go of the journal; everything kept stays kept."""
        self.journal.close()

    def _replay(self) -> None:
        """Take up what the journal holds, and keep what was found out on the way."""
        found = replay(self.lesson.problem, self.journal.events, self._note)
        self.lesson, self.skipped = found.lesson, found.skipped
        self._differing = told_in_short(found.told)
        for record in found.to_keep:
            self.journal.append(record)

    def _note(self, fault: Exception) -> None:
        note_fault(self.log, fault)


def open_session(problem: Problem, keep: Keep, path: Path | None = None) -> Session:
    """A session on `problem`: a new one, or the one kept at `path`.

    Unsolvable is raised by a problem that is not statically determinate and stable.
    """
    lesson = Lesson(problem)
    if path is not None:
        journal = keep.resume(path)
    else:
        source = "" if problem.source is None else str(problem.source)
        journal = keep.start(key_of(problem), problem.title, source)
    return Session(lesson, journal, keep.folder / LOG)


def key_of(problem: Problem) -> str:
    """What tells this problem from every other: a digest of all it says.

    A changed file is another problem, since lines kept under the old numbers would be misjudged.
    """
    return hashlib.sha256(write_problem(problem, schema="").encode()).hexdigest()[:24]


def note_fault(log: Path | None, fault: BaseException) -> None:
    """Write where in our code a fault arose: no message and no values, which may hold answers."""
    if log is None:
        return
    places = (
        f"{Path(frame.filename).name}:{frame.lineno} {frame.name}"
        for frame in traceback.extract_tb(fault.__traceback__)
    )
    stamp = time.strftime("%Y-%m-%d %H:%M:%S")
    try:
        log.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        with log.open("a", encoding="utf-8") as file:
            file.write(f"{stamp} {type(fault).__name__}: {' > '.join(places)}\n")
    except OSError:
        return

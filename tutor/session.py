"""What does the student do, and is it kept? Each event goes to the journal first, then to the lesson.

A bug of ours must not end a lesson: what cannot be folded in is said to be unchecked, the session
goes on, and the log beside the lessons names the place in our code, never what was typed.
"""

from __future__ import annotations

import time
import traceback
from dataclasses import replace
from pathlib import Path

from tutor.lesson import Event, Lesson, Reply, Say
from tutor.lesson.replay import replay, told_in_short
from tutor.model import Problem
from tutor.progress.stages import ALONE, StageName
from tutor.records import Journal, Keep
from tutor.records.belonging import belonging, changes_in_short, content_of
from tutor.records.belonging import key_of as key_of
from tutor.records.disk import path_shown

NOT_CHECKED = (
    "This could not be checked: the fault is in the program, not in what you did. It is kept; go on "
    "another way, or take it back."
)
AS_IT_WAS = (
    "The problem has been changed since this lesson was begun: {changes}. The lesson goes on with the "
    "truss as it was; a new one takes it as it is now."
)
AS_BEGUN = "This lesson goes on with the numbers with which it was begun: {changes}."
LOG = "trouble.log"


class Session:
    """One walk through one problem: the lesson, its journal, and what is still to be told.

    `remarks` is whether a right line may be followed by a remark that teaches an easier way;
    `skippable` are the steps that may be passed over; `stage` is what is offered to be left to the
    student, the rest being written first, and `offer` says so in a sentence.
    """

    def __init__(self, lesson: Lesson, journal: Journal, log: Path | None = None) -> None:
        self.lesson = lesson
        self.journal = journal
        self.log = log
        self.remarks = True
        self.skippable: frozenset[str] = frozenset()
        self.stage: StageName = ALONE
        self.offer = ""
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

    def tell(self, notice: str) -> None:
        """Have this among the news."""
        self._differing = (notice, *self._differing)

    @property
    def keeping(self) -> str:
        """Whether what is done here is kept, in a few words."""
        if self.journal.saved:
            return "kept"
        return "read only, not kept" if self.journal.read_only else "not kept"

    @property
    def gone(self) -> str:
        """That what was kept is no longer where it was, "" where it is; for when a lesson is left."""
        path = self.journal.path
        if not self.journal.saved or path is None or path.exists():
            return ""
        return (
            f"What you did was kept in {path_shown(path)}, but it is not there now: its folder was moved or "
            "removed. To go on from it, put it back."
        )

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
    if path is None:
        source = "" if problem.source is None else str(problem.source)
        lesson = Lesson(problem)
        journal = keep.start(key_of(problem), problem.title, source, content_of(problem))
        return Session(lesson, journal, keep.folder / LOG)
    journal = keep.resume(path)
    header = journal.header
    how = belonging(problem, header.problem, header.content, header.title)
    session = Session(Lesson(how.problem if how else problem), journal, keep.folder / LOG)
    if how is not None and how.changes:
        told = AS_IT_WAS if problem.vary is None else AS_BEGUN
        session.tell(told.format(changes=changes_in_short(how.changes)))
    return session


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

"""What did the student enter of a homework, and is it kept? Lines, checks and hints, in order.

As in a lesson, each thing goes to the journal first and is folded in then, so that going on, undo and
every test are replays. Homeworks are kept in a folder of their own beside the lessons.
"""

from __future__ import annotations

import time
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from tutor.homework import (
    LEVELS,
    Paper,
    Review,
    Written,
    hint,
    markdown,
    review,
    right_lines,
    write_line,
)
from tutor.model import Problem
from tutor.records import Journal, Keep, Kept
from tutor.session import key_of

FOLDER = "homework"


@dataclass(frozen=True)
class Hint:
    """One hint on the first wrong place: its level from 1 (reason) to 3 (line), and its sentences."""

    level: int
    lines: tuple[str, ...]


class Workbook:
    """One homework on one problem: the paper, and how far the hints for its first wrong place went.

    Nothing here raises on what was typed or kept: `Written.refused` tells what cannot be read.
    """

    def __init__(self, problem: Problem, journal: Journal) -> None:
        self.problem = problem
        self.journal = journal
        self.review: Review | None = None
        self._papers = [Paper()]
        self._hinted: dict[tuple[object, ...], int] = {}
        self._told = 0
        for event in journal.events:
            self._fold(event)

    @property
    def paper(self) -> Paper:
        """What is entered now."""
        return self._papers[-1]

    def write(self, text: str) -> Written:
        """Enter one typed line."""
        return self._written(self._keep("write", text=text))

    def undo(self) -> bool:
        """Take the last line that changed the paper back; whether there was one."""
        before = len(self._papers)
        self._fold(self._keep("undo"))
        return len(self._papers) < before

    def check(self) -> Review:
        """Review what is entered; the review holds until the paper changes."""
        self._fold(self._keep("check"))
        return self.checked

    @property
    def checked(self) -> Review:
        """The review of the paper as it stands."""
        if self.review is None:
            self.review = review(self.problem, self.paper.work(self.problem))
        return self.review

    def hint(self) -> Hint | None:
        """The next hint for the first wrong place, the line itself at last; None where all is right.

        The first level, look, comes with the review.
        """
        if self.checked.first is None:
            return None
        self._fold(self._keep("hint"))
        level = self._hinted[self._place()]
        if level < len(LEVELS):
            return Hint(level, (hint(self.checked, LEVELS[level]),))
        lines = right_lines(self.problem, self.paper.work(self.problem), self.checked)
        return Hint(level, tuple(f"{heading}: {line}" for heading, line in lines))

    def report(self, when: datetime) -> str:
        """The report of the check of the paper as it stands."""
        return markdown(self.problem, self.checked, when)

    def news(self) -> tuple[str, ...]:
        """What the journal has to tell and was not yet told; each notice comes once."""
        told = self.journal.notices[self._told :]
        self._told += len(told)
        return told

    def close(self) -> None:
        """Let go of the journal; everything kept stays kept."""
        self.journal.close()

    def _keep(self, kind: str, **data: str) -> Mapping[str, Any]:
        event = {**data, "kind": kind, "time": time.time()}
        self.journal.append(event)
        return event

    def _fold(self, event: Mapping[str, Any]) -> None:
        """What one kept event does; one that is of no known kind does nothing."""
        kind = event.get("kind")
        if kind == "write":
            self._written(event)
        elif kind == "undo" and len(self._papers) > 1:
            self._papers.pop()
            self.review = None
        elif kind == "hint" and self.checked.first is not None:
            place = self._place()
            self._hinted[place] = min(self._hinted.get(place, 0) + 1, len(LEVELS))

    def _written(self, event: Mapping[str, Any]) -> Written:
        text = event.get("text")
        written = write_line(self.problem, self.paper, text if isinstance(text, str) else "")
        if written.paper != self.paper:
            self._papers.append(written.paper)
            self.review = None
        return written

    def _place(self) -> tuple[object, ...]:
        """What the hints given belong to: the place, and what explains it."""
        accounts = self.checked.accounts[:1]
        return (self.checked.first, *((a.mistake.code, a.mistake.force) for a in accounts))


def homeworks(keep: Keep) -> Keep:
    """Where homeworks are kept."""
    return Keep(keep.folder / FOLDER)


def earlier(problem: Problem, keep: Keep) -> Kept | None:
    """The homework on this problem that was last worked on, or None; empty ones are passed over."""
    key = key_of(problem)
    kept = (kept for kept in homeworks(keep).lessons() if kept.readable and kept.events)
    return next((found for found in kept if found.problem == key), None)


def open_workbook(problem: Problem, keep: Keep, kept: Kept | None = None) -> Workbook:
    """A homework on `problem`: a new one, or one that was kept."""
    if kept is not None:
        return Workbook(problem, homeworks(keep).resume(kept.path))
    source = "" if problem.source is None else str(problem.source)
    return Workbook(problem, homeworks(keep).start(key_of(problem), problem.title, source))

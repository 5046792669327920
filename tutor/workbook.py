"""What did the student enter of a homework, and is it kept? The paper, its review, and the hints given.

The paper is kept as typed lines after every change, before anything is said of it, where every front
end finds it again; beside it, which entries were wrong at a check, and how many hints were given. Undo
lasts as long as the workbook.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any
from urllib.parse import quote

from tutor.figure import to_svg, to_words, truss_figure
from tutor.homework import (
    LEVELS,
    Paper,
    Review,
    Written,
    hint,
    lines_of,
    markdown,
    read_paper,
    review,
    right_lines,
    write_line,
)
from tutor.homework.brought import Brought
from tutor.homework.report import BesideCheck
from tutor.lesson import Say
from tutor.model import Problem
from tutor.records import Header, Keep
from tutor.records.belonging import belonging, changes_in_short, content_of, first_key_of, key_of
from tutor.records.clock import utc_now
from tutor.records.kept_lines import KeptLines, homework_name
from tutor.records.papers import name_of_paper
from tutor.session import Session, open_session
from tutor.truss_file import NO_NAME, Saved, path_named, write_all

CHANGED = (
    "The problem has been changed since you began this paper: {changes}. What you entered stays; look "
    "whether it still holds."
)


@dataclass(frozen=True)
class Hint:
    """One hint on the first wrong place: its level from 1 (reason) to 3 (line), and its sentences."""

    level: int
    lines: tuple[str, ...]


class Workbook:
    """One homework on one problem.

    Nothing here raises on what was typed or kept: `Written.refused` tells what cannot be read.
    """

    def __init__(self, problem: Problem, kept: KeptLines) -> None:
        self.problem = problem
        self.kept = kept
        self._review: Review | None = None
        self._were_wrong = _were_wrong(kept.noted)
        self.hints_given = _hints_given(kept.noted)
        self._hinted: dict[tuple[object, ...], int] = {}
        self._news: list[str] = []
        self.walks: list[tuple[Brought, Path]] = []
        read = read_paper(problem, "\n".join(kept.read()))
        self._papers = [read.paper]
        self._news += kept.news()

    @property
    def paper(self) -> Paper:
        """What is entered now."""
        return self._papers[-1]

    def write(self, text: str) -> Written:
        """Enter one typed line."""
        written = write_line(self.problem, self.paper, text)
        self.put(written.paper)
        return written

    def put(self, paper: Paper) -> None:
        """Take this paper in the place of the one there is; undo brings the old one back."""
        if paper != self.paper:
            self._papers.append(paper)
            self._keep()

    def clear(self) -> None:
        """A blank paper; undo brings the old one back."""
        self.put(Paper())

    def undo(self) -> bool:
        """Take the last change of the paper back; whether there was one."""
        if len(self._papers) == 1:
            return False
        self._papers.pop()
        self._keep()
        return True

    @property
    def review(self) -> Review:
        """The review of the paper as it stands."""
        if self._review is None:
            self._review = review(self.problem, self.paper.work(self.problem), self.before)
            self.note_check(self.paper, self._review)
        return self._review

    @property
    def before(self) -> Mapping[str, object]:
        """What was wrong at the checks so far, as `review` takes it: the longest mended first."""
        return self.before_of(self.paper)

    def before_of(self, paper: Paper) -> Mapping[str, object]:
        """The same for a paper that is not kept here: its senses are those of now."""
        return {"forces": dict(self._were_wrong), "senses": dict(paper.senses)}

    def note_check(self, paper: Paper, checked: Review) -> None:
        """Keep which entries of a paper were wrong at its check."""
        wrong = {
            str(f.name): paper.values[str(f.name)]
            for f in checked.findings
            if f.state in ("wrong", "follows") and f.name in paper.values
        }
        if not wrong or list(self._were_wrong.items())[-len(wrong) :] == list(wrong.items()):
            return
        self._were_wrong = _later(self._were_wrong, wrong)
        if notice := self.kept.note("checked", wrong=wrong):
            self._news.append(notice)

    def hint(self) -> Hint | None:
        """The next hint for the first wrong place, the line itself at last; None where all is right.

        The first level, look, comes with the review.
        """
        if self.review.first is None:
            return None
        place = self._place()
        level = self._hinted[place] = min(self._hinted.get(place, 0) + 1, len(LEVELS))
        self.note_hint(level)
        if level < len(LEVELS):
            return Hint(level, (hint(self.review, LEVELS[level]),))
        lines = right_lines(self.problem, self.paper.work(self.problem), self.review)
        return Hint(level, tuple(f"{heading}: {line}" for heading, line in lines))

    def report(self, when: datetime, picture: str = "", checked: Review | None = None) -> str:
        """The report of the check of the paper as it stands; `picture` is the file of the truss."""
        beside = BesideCheck(
            to_words(truss_figure(self.problem))[1:],
            picture,
            [about for about, _ in self.paper.lines],
            hints=tuple(self.hints_given),
        )
        return markdown(self.problem, checked or self.review, when, beside)

    def save_report(
        self, name: str, when: datetime, checked: Review | None = None, *, over: bool = False
    ) -> Saved:
        """Write the report into the file of this name, and the picture of the truss beside it."""
        path = path_named(name)
        if path is None:
            return Saved(NO_NAME)
        picture = path.with_name(f"{path.stem}{'-truss' if path.suffix == '.svg' else ''}.svg")
        report = self.report(when, quote(picture.name), checked)
        drawn = to_svg(truss_figure(self.problem), paper=True)
        return write_all({path: report, picture: drawn}, over=over)

    def note_hint(self, level: int) -> None:
        """Count a hint that was given: 1 for the reason, 2 for the place, 3 for the line."""
        self.hints_given[level - 1] += 1
        if notice := self.kept.note("hinted", level=level):
            self._news.append(notice)

    @property
    def saved(self) -> bool:
        """Whether all that is entered is kept."""
        return not self.kept.trouble

    def tell(self, notice: str) -> None:
        """Have this among the news."""
        self._news.append(notice)

    def news(self) -> tuple[str, ...]:
        """What there is to tell of the keeping and was not yet told; each notice comes once."""
        told, self._news = tuple(self._news), []
        return told

    def _keep(self) -> None:
        self._review = None
        if notice := self.kept.write(lines_of(self.problem, self.paper)):
            self._news.append(notice)

    def _place(self) -> tuple[object, ...]:
        """What the hints given belong to: the place, and what explains it."""
        accounts = self.review.accounts[:1]
        return (self.review.first, *((a.mistake.code, a.mistake.force) for a in accounts))


def _were_wrong(noted: Iterable[Mapping[str, Any]]) -> dict[str, str]:
    """Which entries were wrong at a check, and how they were written at the last such check.

    Those that were wrong at a later check stand behind those that were not.
    """
    found: dict[str, str] = {}
    for event in noted:
        wrong = event.get("wrong")
        if event.get("kind") == "checked" and isinstance(wrong, dict):
            read = {name: text for name, text in wrong.items() if isinstance(text, str)}
            found = _later(found, read)
    return found


def _later(were: Mapping[str, str], wrong: Mapping[str, str]) -> dict[str, str]:
    return {name: text for name, text in were.items() if name not in wrong} | dict(wrong)


def _hints_given(noted: Iterable[Mapping[str, Any]]) -> list[int]:
    """How many hints of each level were given."""
    levels = [event.get("level") for event in noted if event.get("kind") == "hinted"]
    return [levels.count(level) for level in range(1, len(LEVELS) + 1)]


def open_walk(book: Workbook, given: Brought, keep: Keep) -> tuple[Session, tuple[Say, ...]]:
    """A lesson that begins with what is right on a paper, and what is said at its beginning.

    One that was begun with the very same, since the workbook was opened, goes on where it was left.
    """
    for was, path in book.walks:
        if was == given and path.exists():
            return open_session(book.problem, keep, path), ()
    session = open_session(book.problem, keep)
    values, senses = dict(given.values), dict(given.senses)
    reply = session.do("bring", values=values, senses=senses, joint=given.joint)
    if session.journal.saved and session.journal.path is not None:
        book.walks.append((given, session.journal.path))
    return session, reply.said


def open_workbook(problem: Problem, keep: Keep) -> Workbook:
    """The homework on `problem`, with what was entered before.

    Where the truss was changed since, that is in the news; what was entered stays.
    """
    older = [f"homework-{first_key_of(problem)}"]
    kept = KeptLines(keep.folder, name_of_paper(problem, keep), "homework", older, _about(problem))
    book = Workbook(problem, kept)
    then = kept.header
    how = belonging(problem, then.problem, then.content, then.title)
    if how is not None and how.changes and not book.paper.blank:
        book.tell(CHANGED.format(changes=changes_in_short(how.changes)))
    return book


def open_file_of_work(problem: Problem, file: Path, keep: Keep) -> Workbook:
    """What was wrong in a file of work on `problem` at the checks so far; its lines stay in the file."""
    name = homework_name(f"{key_of(problem)} {file.absolute()}")
    return Workbook(problem, KeptLines(keep.folder, name, "homework", (), _about(problem)))


def _about(problem: Problem) -> Header:
    source = "" if problem.source is None else str(problem.source)
    return Header(key_of(problem), problem.title, utc_now(), source, content=content_of(problem))

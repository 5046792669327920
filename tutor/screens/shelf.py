"""Which problems are there, which files are broken, and where was each problem left?"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from tutor.model import Defect, Problem, ProblemError, ProblemSet, load_sets
from tutor.model.sets import FirstFew, one_by_one
from tutor.progress.where import DONE as DONE
from tutor.progress.where import FINISHED
from tutor.records import Keep, Kept
from tutor.records.belonging import key_of
from tutor.variants import personal

if TYPE_CHECKING:
    from tutor.progress.guide import Guide

MOST = 99
"""So many kept lessons on a problem are offered to be gone on with."""


@dataclass(frozen=True)
class Entry:
    """One row of the sheet: a problem, or a file that cannot be used, with what is wrong in it.

    `before` has the keys and titles of the problems that come first, `note` what there is to say of
    its numbers.
    """

    title: str
    problem: Problem | None = None
    key: str = ""
    path: Path | None = None
    defects: tuple[Defect, ...] = ()
    before: tuple[tuple[str, str], ...] = ()
    note: str = ""

    def waits_for(self, left: Mapping[str, str]) -> tuple[str, ...]:
        """The titles of what comes first and is not done; `left` says where each problem stands."""
        return tuple(title for key, title in self.before if left.get(key) not in FINISHED)

    @property
    def broken(self) -> bool:
        return self.problem is None


@dataclass(frozen=True)
class Group:
    """One set: its title and its rows in their order, broken files last, and how many are to come."""

    title: str
    entries: tuple[Entry, ...]
    unread: int = 0


@dataclass(frozen=True)
class Shelf:
    """All sets that were asked for."""

    groups: tuple[Group, ...]

    @property
    def entries(self) -> tuple[Entry, ...]:
        return tuple(entry for group in self.groups for entry in group.entries)

    @property
    def unread(self) -> int:
        """How many files are still to be read."""
        return sum(group.unread for group in self.groups)

    @property
    def lone(self) -> Entry | None:
        """The one problem there is, where there is nothing else."""
        if self.unread:
            return None
        return self.entries[0] if len(self.entries) == 1 and not self.entries[0].broken else None


@dataclass(frozen=True)
class Left:
    """A kept lesson, where it stands, and what there is to say of its truss where that is another now."""

    kept: Kept
    where: str
    then: str = ""


def read_shelf(paths: Iterable[Path], student: str | None = None, most: int | None = None) -> Shelf:
    """All sets at `paths`, as this student has them, or their first files up to `most`.

    Nothing is raised: what cannot be read is a row that says so.
    """
    groups: list[Group] = []
    read = one_by_one if most is None else FirstFew(most)
    for path in paths:
        try:
            groups += [_group(personal(found, student)) for found in load_sets(path, read)]
        except ProblemError as refused:
            entry = Entry(path.name or str(path), path=path, defects=refused.problems)
            groups.append(Group(str(path), (entry,)))
    return Shelf(tuple(groups))


def _group(found: ProblemSet) -> Group:
    entries = [
        Entry(
            problem.title,
            problem,
            key_of(problem),
            problem.source,
            () if problem.source is None else found.warnings.get(problem.source, ()),
            tuple((key_of(each), each.title) for each in found.before(problem)),
            found.note if problem.vary is not None else "",
        )
        for problem in found.problems
    ]
    broken = [
        Entry(path.name, path=path, defects=refused.problems)
        for path, refused in found.broken.items()
    ]
    return Group(found.title, (*entries, *broken), found.unread)


def lessons_on(entry: Entry, keep: Keep) -> tuple[Left, ...]:
    """The kept lessons on a problem with anything in them, the latest first."""
    from tutor.progress.guide import where_left  # here: the list is shown before it is needed
    from tutor.progress.kept import Summaries
    from tutor.records.anew import then_told
    from tutor.records.lessons import Lessons

    problem = entry.problem
    if problem is None:
        return ()
    summaries = Summaries(keep)
    found = {each.kept.path: each for each in summaries.look()}
    lessons = Lessons(each.kept for each in found.values()).of(problem)
    begun = [(kept, how) for kept, how in lessons if kept.events]
    left = tuple(
        Left(kept, where_left(found[kept.path], how, summaries), then_told(problem, how))
        for kept, how in begun[:MOST]
    )
    summaries.put_down()
    return left


def unreadable(notices: Sequence[str]) -> str:
    """What is to be told of kept lessons that cannot be read, "" where all can."""
    if len(notices) > 1:
        return f"{notices[0]} {len(notices) - 1} more kept files cannot be read."
    return notices[0] if notices else ""


def guide_on(shelf: Shelf, keep: Keep) -> Guide:
    """Where the student stands among the problems of the shelf."""
    from tutor.progress.guide import (  # here: the list is shown before it is needed
        Listed,
        guide_for,
    )
    from tutor.progress.kept import Summaries

    rows = (
        Listed(entry.problem, group.title, tuple(key for key, _ in entry.before))
        for group in shelf.groups
        for entry in group.entries
        if entry.problem is not None
    )
    return guide_for(rows, Summaries(keep)).prepare()

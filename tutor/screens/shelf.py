"""Which problems are there, which files are broken, and where was each problem left?"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

from tutor.model import Defect, Problem, ProblemError, ProblemSet, load_sets
from tutor.model.sets import FirstFew, one_by_one
from tutor.records import Keep, Kept
from tutor.records.belonging import key_of
from tutor.records.keep import Lessons
from tutor.session import WHERE, where_left
from tutor.statics import Unsolvable
from tutor.variants import personal

DONE = WHERE["table"]
BEGUN = "begun"
CHANGED = "begun, and changed since"


@dataclass(frozen=True)
class Entry:
    """One row of the sheet: a problem, or a file that cannot be used, with what is wrong in it.

    `before` has the keys and titles of the problems that come first.
    """

    title: str
    problem: Problem | None = None
    key: str = ""
    path: Path | None = None
    defects: tuple[Defect, ...] = ()
    before: tuple[tuple[str, str], ...] = ()

    def waits_for(self, left: Mapping[str, str]) -> tuple[str, ...]:
        """The titles of what comes first and is not done; `left` says where each problem stands."""
        return tuple(title for key, title in self.before if left.get(key) != WHERE["table"])

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
    """A kept lesson, where it stands, and whether the truss has been changed since it was begun."""

    kept: Kept
    where: str
    changed: bool = False


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
        )
        for problem in found.problems
    ]
    broken = [
        Entry(path.name, path=path, defects=refused.problems)
        for path, refused in found.broken.items()
    ]
    return Group(found.title, (*entries, *broken), found.unread)


def lessons_on(entry: Entry, keep: Keep) -> tuple[Left, ...]:
    """The kept lessons on a problem with anything in them, the one last worked on first.

    Unsolvable as of `Lesson`.
    """
    if entry.problem is None:
        return ()
    return tuple(
        Left(kept, where_left(how.problem, kept), bool(how.changes))
        for kept, how in Lessons(keep.lessons()).of(entry.problem)
        if kept.events
    )


def unreadable(keep: Keep) -> str:
    """What is to be told of kept lessons that cannot be read, "" where all can."""
    notices = [kept.notice for kept in keep.lessons() if not kept.readable]
    if len(notices) > 1:
        return f"{notices[0]} {len(notices) - 1} more kept files cannot be read."
    return "".join(notices)


def places(shelf: Shelf, keep: Keep) -> Mapping[str, str]:
    """By problem, where the lesson last worked on stands; problems not begun are not in it.

    A lesson on the truss as it was before it was changed counts only where there is no other.
    """
    kept = [kept for kept in keep.lessons() if kept.events]
    if not kept:
        return {}
    lessons = Lessons(kept)
    found: dict[str, str] = {}
    for entry in shelf.entries:
        if entry.problem is None or entry.key in found:
            continue
        belonging = lessons.of(entry.problem)
        now = next((each for each in belonging if not each[1].changes), None)
        if now is not None:
            try:
                found[entry.key] = where_left(now[1].problem, now[0])
            except (OSError, Unsolvable):
                found[entry.key] = BEGUN
        elif belonging:
            found[entry.key] = CHANGED
    return found

"""Which problems are there, which files are broken, and where was each problem left?"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from tutor.model import ProblemError, ProblemSet, load_sets
from tutor.model.sets import FirstFew, one_by_one
from tutor.records import Keep, Kept
from tutor.records.belonging import key_of
from tutor.screens.entry import Group, ProblemRow, Shelf
from tutor.variants import personal

if TYPE_CHECKING:
    from tutor.progress.guide import Guide

MOST = 99
"""So many kept lessons on a problem are offered to be gone on with."""


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
            entry = ProblemRow(path.name or str(path), path=path, defects=refused.problems)
            groups.append(Group(str(path), (entry,)))
    return Shelf(tuple(groups))


def _group(found: ProblemSet) -> Group:
    entries = [
        ProblemRow(
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
        ProblemRow(path.name, path=path, defects=refused.problems)
        for path, refused in found.broken.items()
    ]
    return Group(found.title, (*entries, *broken), found.unread)


def lessons_on(entry: ProblemRow, keep: Keep) -> tuple[Left, ...]:
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

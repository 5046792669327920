"""What does the list say before its files are read, and what is kept of it for the next time?

What is remembered is only ever shown: a row is worked, and a picture drawn, once its file was read.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from tutor.records.keep import SUFFIX, Keep
from tutor.records.listed import (
    MOST_TEXT,
    NO_STAMP,
    SeenGroup,
    SeenLesson,
    SeenList,
    SeenRow,
    Stamp,
    all_stamps,
    list_of,
    read_seen,
    stamp_of,
    stamps_in,
    sure_stamp,
    write_seen,
)
from tutor.screens.background import beside
from tutor.screens.entry import Group, ProblemRow, Remembered

if TYPE_CHECKING:
    from tutor.progress.guide import Guide
    from tutor.screens.app import TutorApp
    from tutor.screens.sheet import SheetScreen

UNSURE = "…"
"""Where a problem was left, for as long as its lessons are read again."""


class Glimpse(NamedTuple):
    """The list as it was: its sets, where each problem was left as far as that is sure, how skills stood
    and the file at hand."""

    groups: tuple[Group, ...]
    left: Mapping[str, str]
    glance: tuple[tuple[str, tuple[str, ...]], ...]
    last: str
    at: Path | None


def remembered(paths: Sequence[Path], student: str | None, keep: Keep) -> Glimpse | None:
    """What is remembered of this list; None where that is nothing, or no list."""
    seen = read_seen(keep.folder, list_of(paths, student))
    if seen is None:
        return None
    groups = tuple(
        Group(group.title, tuple(map(_entry, group.rows)), group.unread)
        for group in seen.groups
        if group.rows or group.unread
    )
    if sum(len(group.entries) + group.unread for group in groups) < 2:
        return None
    sure = _sure(seen, stamps_in(keep.folder, SUFFIX))
    left = {**seen.places, **dict.fromkeys(_keys(groups) - sure, UNSURE)}
    return Glimpse(groups, left, seen.glance, seen.last, Path(seen.at) if seen.at else None)


def _entry(row: SeenRow) -> ProblemRow:
    path = Path(row.path)
    if row.stamp == NO_STAMP:
        return ProblemRow(row.title, None, row.key, path, remembered=Remembered(changed=True))
    said = Remembered(row.level, row.told, row.faults, row.broken)
    return ProblemRow(row.title, None, row.key, path, before=row.before, remembered=said)


def _keys(groups: Sequence[Group]) -> set[str]:
    return {entry.key for group in groups for entry in group.entries if entry.key}


def _sure(seen: SeenList, now: Mapping[str, Stamp]) -> set[str]:
    """The keys of the rows that stand as they did: no journal on them, or on what comes before them, is
    another one, and where there are new ones, they were begun already."""
    if seen.stamped == all_stamps(now):
        return {row.key for group in seen.groups for row in group.rows}
    changed = {each.key for name, each in seen.lessons.items() if now.get(name) != each.stamp}
    rows = [row for group in seen.groups for row in group.rows]
    known = set(seen.places) if now.keys() - seen.lessons.keys() else {row.key for row in rows}
    sure = known - changed
    return {row.key for row in rows if row.key in sure and all(k in sure for k, _ in row.before)}


def remembered_sheet(app: TutorApp) -> SheetScreen | None:
    """The list with what is remembered of it; None where that is nothing."""
    from tutor.screens.sheet import (
        SheetScreen,
    )  # here: the widgets of the list are not always needed

    app.remembered = remembered(app.paths, app.settings.student, app.keep)
    if app.remembered is None:
        return None
    if not app.guided:
        app.remembered = app.remembered._replace(glance=())
    app.typed.let_go()
    app.sheet = SheetScreen(app.remembered.groups, app.looks, glimpse=app.remembered)
    for path in app.sheet.css_path:
        app.stylesheet.read(path)
    return app.sheet


def remember(app: TutorApp, guide: Guide, stamps: Mapping[str, Stamp]) -> None:
    """Keep beside the screen what the list says now, by the guide; `stamps` are those of the journals
    as they were before it was made."""
    from tutor.progress.page import at_a_glance  # here: the list is shown before it is needed

    shown, read_at = app.first_rows, app.read_at
    at = app.sheet.problems.entry(app.sheet.row_to_go_on)
    if shown is None or shown.lone is not None:
        return
    which, folder = list_of(app.paths, app.settings.student), app.keep.folder
    keys = _keys(shown.groups)

    def keep_it() -> None:
        seen = SeenList(
            tuple(
                SeenGroup(group.title, tuple(_row(e, read_at) for e in group.entries), group.unread)
                for group in shown.groups
            ),
            {key: place for key, place in guide.places.items() if key in keys},
            at_a_glance(guide.attained),
            guide.last,
            "" if at is None else str(at.path),
            {name: SeenLesson(each, guide.lessons.get(name, "")) for name, each in stamps.items()},
            all_stamps(stamps),
        )
        write_seen(folder, which, seen)

    beside(app, keep_it, lambda _: None, lambda fault: None)


def _row(entry: ProblemRow, read_at: int) -> SeenRow:
    from tutor.screens.rows import told_below  # here: it is not needed for what is remembered

    path = "" if entry.path is None else str(entry.path)
    return SeenRow(
        path,
        sure_stamp(stamp_of(path), read_at),
        entry.title,
        entry.key,
        entry.level,
        told_below(entry)[:MOST_TEXT],
        entry.faults,
        entry.broken,
        entry.before,
    )

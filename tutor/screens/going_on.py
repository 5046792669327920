"""At which row does the student go on? Where they were last, or at the next that is not finished."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from tutor.progress.where import FINISHED
from tutor.screens.entry import ProblemRow
from tutor.screens.onward import Onward, next_open, onward

if TYPE_CHECKING:
    from tutor.progress.guide import Guide
    from tutor.screens.sheet import SheetScreen
    from tutor.session import Session

Entries = Sequence[ProblemRow | None]


def row_to_go_on(entries: Entries, last: str, left: Mapping[str, str], guide: Guide | None) -> int:
    """The row at hand when the list is opened: by the key of the problem `last` worked on, where each
    problem was `left`, and what the guide has next."""
    rows = [i for i, entry in enumerate(entries) if entry]
    worked_on = (i for i in rows if entries[i].key == last)  # type: ignore[union-attr]
    return row_ahead(entries, next(worked_on, rows[0] if rows else 0), left, guide)


def row_ahead(entries: Entries, place: int, left: Mapping[str, str], guide: Guide | None) -> int:
    """This row, or where its problem is finished that of the next which is not."""
    here = entries[place] if place < len(entries) else None
    finished = {key for key, where in left.items() if where in FINISHED}
    if here is None or here.key not in finished:
        return place
    rows = [entry for entry in (*entries[place:], *entries[:place]) if entry]
    ahead = _chosen(rows, here, guide) or next_open(rows, finished)
    return place if ahead is None else entries.index(ahead)


def go_on(sheet: SheetScreen) -> None:
    """To where the student goes on, unless they chose a row themselves since."""
    stood_at, sheet.stood_at = sheet.stood_at, sheet.last
    if sheet.problems.chosen_by_hand:
        return
    row = sheet.row_to_go_on
    if sheet.last == stood_at:
        here = sheet.problems.highlighted or 0
        row = row_ahead(sheet.entries, here, sheet.left, sheet.guide)
    sheet.problems.put(row)


def onward_from(sheet: SheetScreen, entry: ProblemRow, session: Session) -> Onward | None:
    """What comes once this problem is finished, as a lesson on it stands."""
    entries = [each for each in sheet.entries if each]
    if sheet.guide is None:
        return onward(entries, sheet.left, entry)
    guide = sheet.guide.after(session.lesson.state, session.journal.path)
    return onward(entries, guide.places, entry, guide.next())


def _chosen(rows: Sequence[ProblemRow], here: ProblemRow, guide: Guide | None) -> ProblemRow | None:
    """The problem that the guide has next after this one."""
    ahead = None if guide is None else guide.next(here.key)
    return next((each for each in rows if ahead and each.key == ahead.key), None)

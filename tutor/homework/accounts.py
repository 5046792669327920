"""Which mistakes of the catalogue explain what is left over at one body?

A wrong line that was solved holds with the student's own numbers, while the true one does not. So a
slip that turns one coefficient of the true equation into another explains the body if the change
makes up exactly for what is left over. No line need be known for this.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from tutor.homework.account import Account, Draft, put_in_words
from tutor.homework.one_force import of_both_lines, of_one_force
from tutor.homework.one_line import Match, of_one_line
from tutor.homework.other_row import of_two_rows
from tutor.homework.sheet import WHOLE, Sheet
from tutor.homework.work import Entry
from tutor.model import Problem

UNEXPLAINED = 4.0
WITHIN = 1.5
"""How far above the cheapest account another may cost and still be kept."""


def _a_residue(draft: Draft, found: Collection[tuple[str, str | None]]) -> bool:
    """Whether a factor of units leaves so little of a force that it is as good as left out."""
    return draft.code == "unit" and ("missing", draft.force) in found


def accounts(
    problem: Problem,
    sheet: Sheet,
    solved: Sequence[str],
    entries: Mapping[str, Entry],
    matched: Sequence[Match],
) -> tuple[Account, ...]:
    """Every account of a body that does not close, best first.

    `solved` are the wrong values found at the body, `matched` its `one_line.matches`.
    """
    if sheet.missing:
        return ()
    found = list(of_one_line(sheet, solved, matched))
    found += of_one_force(sheet, solved, entries)
    found += of_two_rows(sheet, solved, entries)
    if sheet.name != WHOLE:
        found += of_both_lines(sheet)
    best: dict[tuple[str, str | None], Draft] = {}
    for draft in sorted(found, key=lambda d: d.cost):
        best.setdefault((draft.code, draft.force), draft)
    drafts = [draft for draft in best.values() if not _a_residue(draft, best)]
    joint = None if sheet.name == WHOLE else sheet.name
    return tuple(
        put_in_words(problem, sheet.name, joint, draft)
        for draft in drafts
        if draft.cost <= drafts[0].cost + WITHIN
    )

"""Which mistakes of the catalogue explain what is left over at one body?

A wrong line that was solved holds with the student's own numbers, while the true one does not. So a
slip that turns one coefficient of the true equation into another explains the body if the change
makes up exactly for what is left over. No line need be known for this.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from functools import lru_cache

from tutor.homework.account import Account, AccountDraft, put_in_words
from tutor.homework.one_force import of_both_lines, of_one_force
from tutor.homework.one_line import Match, Usual, matches, of_one_line, usual_lines
from tutor.homework.other_row import of_two_rows
from tutor.homework.sheet import WHOLE, Sheet
from tutor.homework.work import Entry
from tutor.judge.about import Same
from tutor.model import Problem

UNEXPLAINED = 4.0
WITHIN = 1.5
"""How far above the cheapest account another may cost and still be kept."""


def _a_residue(draft: AccountDraft, found: Collection[tuple[str, str | None]]) -> bool:
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
    best: dict[tuple[str, str | None], AccountDraft] = {}
    for draft in sorted(found, key=lambda d: d.cost):
        best.setdefault((draft.code, draft.force), draft)
    drafts = [draft for draft in best.values() if not _a_residue(draft, best)]
    joint = None if sheet.name == WHOLE else sheet.name
    return tuple(
        put_in_words(problem, sheet.name, joint, draft)
        for draft in drafts
        if draft.cost <= drafts[0].cost + WITHIN
    )


@lru_cache(maxsize=8)
def _usual_of(same: Same) -> dict[str, list[Usual]]:
    """The lines that one writes at each body of a truss, as far as was asked; those of the last few are kept."""
    return {}


class Explained:
    """The accounts of the bodies of one homework, each asked for once while its numbers are the same."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self._usual = _usual_of(Same(problem))
        self._matches: dict[int, tuple[Sheet, tuple[Match, ...]]] = {}
        self._accounts: dict[tuple[int, tuple[str, ...]], tuple[Account, ...]] = {}

    def accounts(
        self, sheet: Sheet, values: Sequence[str], entries: Mapping[str, Entry]
    ) -> tuple[Account, ...]:
        """What explains a body, where these wrong values were found at it.

        `entries` are the numbers that stand on it.
        """
        key = (id(sheet), tuple(values))
        if key not in self._accounts:
            matched = self._matched(sheet, entries)
            self._accounts[key] = accounts(self.problem, sheet, values, entries, matched)
        return self._accounts[key]

    def usual(self, sheet: Sheet) -> Sequence[Usual]:
        """The lines that students write at this body."""
        if sheet.name not in self._usual:
            self._usual[sheet.name] = usual_lines(self.problem, sheet)
        return self._usual[sheet.name]

    def _matched(self, sheet: Sheet, entries: Mapping[str, Entry]) -> tuple[Match, ...]:
        """The slips in one line of a body; the body is kept with them, so that its id stays its own."""
        kept = self._matches.get(id(sheet))
        if kept is None:
            found = matches(self.usual(sheet), sheet, entries)
            kept = self._matches[id(sheet)] = (sheet, found)
        return kept[1]

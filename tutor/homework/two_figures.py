"""Was a page worked with two figures throughout, so that nothing on it shows more than rounding?

Two figures are not enough: what is off by more than 2 % is not right, however it was rounded. But it is
no mistake of statics either, and no place is to be named where none was made.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from tutor.homework.work import Entry, half_step
from tutor.model import Problem

FIGURES = 2


def of_two_figures(problem: Problem, entries: Mapping[str, Entry]) -> dict[str, Entry] | None:
    """The entries as numbers rounded to two figures; None where one shows more.

    None as well where less than half of the unknowns is there: a few short numbers are no habit.
    """
    if 2 * len(entries) < len(problem.unknowns):
        return None
    if any(float(f"{entry.value:.{FIGURES - 1}e}") != entry.value for entry in entries.values()):
        return None
    return {
        name: replace(entry, radius=max(entry.radius, half_step(entry.value, FIGURES)))
        for name, entry in entries.items()
    }

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
MOST_WHOLE = 1000.0


def of_two_figures(problem: Problem, entries: Mapping[str, Entry]) -> dict[str, Entry] | None:
    """The entries as numbers rounded to two figures; None where one shows more.

    From a hundred on somebody who rounds so may well write the whole number. None as well where less
    than half of the unknowns are there with two figures: a few short numbers are no habit.
    """
    short = sum(map(_of_two, entries.values()))
    if 2 * short < len(problem.unknowns):
        return None
    if not all(_of_two(entry) or _whole(entry) for entry in entries.values()):
        return None
    return {
        name: replace(entry, radius=max(entry.radius, half_step(entry.value, FIGURES)))
        if _of_two(entry)
        else entry
        for name, entry in entries.items()
    }


def _of_two(entry: Entry) -> bool:
    return float(f"{entry.value:.{FIGURES - 1}e}") == entry.value


def _whole(entry: Entry) -> bool:
    return entry.value.is_integer() and abs(entry.value) < MOST_WHOLE

"""What comes after a problem? The next one that is not finished, and how many are."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from tutor.screens.shelf import DONE, Entry


@dataclass(frozen=True)
class Onward:
    """What to do once a problem is finished; without an entry nothing is left to do."""

    said: str
    entry: Entry | None


def onward(entries: Sequence[Entry], left: Mapping[str, str], here: Entry) -> Onward | None:
    """What comes after `here` is finished; `left` says by problem where each was left.

    None where `here` is not among the entries, or alone.
    """
    usable = [entry for entry in entries if not entry.broken]
    if here not in usable or len(usable) < 2:
        return None
    place = usable.index(here)
    finished = {entry.key for entry in usable if left.get(entry.key) == DONE} | {here.key}
    count = sum(entry.key in finished for entry in usable)
    told = f"{count} of {len(usable)} problems finished."
    ahead = next_open((*usable[place + 1 :], *usable[:place]), finished)
    if ahead is None:
        return Onward(f"{told} That was the last one.", None)
    begun = left.get(ahead.key)
    return Onward(f"{told} Next: {ahead.title}{f' ({begun})' if begun else ''}; n opens it.", ahead)


def next_open(entries: Sequence[Entry], finished: set[str]) -> Entry | None:
    """The first that can be worked and is not finished."""
    return next((each for each in entries if not each.broken and each.key not in finished), None)

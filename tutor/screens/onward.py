"""What comes after a problem? The next one that is not finished, and how many are."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import TYPE_CHECKING, NamedTuple

from tutor.progress.where import DONE, FINISHED, WATCHED
from tutor.screens.entry import ProblemRow

if TYPE_CHECKING:
    from tutor.progress.choosing import Next


class Onward(NamedTuple):
    """What to do once a problem is finished; without an entry nothing is left to do. `skill` is the one
    that the entry trains, if any."""

    said: str
    entry: ProblemRow | None
    skill: str = ""


def onward(
    entries: Sequence[ProblemRow],
    left: Mapping[str, str],
    here: ProblemRow,
    ahead: Next | None = None,
) -> Onward | None:
    """What comes after `here` is finished; `left` says by problem where each was left.

    `ahead` is the problem that was chosen, with its reason; without, it is the next in order. None
    where `here` is not among the entries, or alone.
    """
    usable = [entry for entry in entries if not entry.broken]
    if here not in usable or len(usable) < 2:
        return None
    place = usable.index(here)
    gone = {entry.key for entry in usable if left.get(entry.key) in FINISHED} | {here.key}
    own = left.get(here.key) != WATCHED
    done = sum(left.get(entry.key) == DONE for entry in usable if entry is not here) + own
    watched = len(gone) - done
    told = f"{done} of {len(usable)} problems finished{f', {watched} watched' if watched else ''}."
    found = next((entry for entry in usable if ahead and entry.key == ahead.key), None)
    found = found or next_open((*usable[place + 1 :], *usable[:place]), gone)
    if found is None:
        return Onward(f"{told} That was the last one.", None)
    begun = left.get(found.key)
    chosen = ahead if ahead is not None and ahead.key == found.key else None
    why = "" if chosen is None else f" {chosen.why}"
    named = f"{found.title}{f' ({begun})' if begun else ''}"
    return Onward(
        f"{told} Next: {named}; n opens it.{why}", found, "" if chosen is None else chosen.skill
    )


def next_open(entries: Sequence[ProblemRow], finished: Collection[str]) -> ProblemRow | None:
    """The first that can be worked and is not finished."""
    return next((each for each in entries if not each.broken and each.key not in finished), None)

"""May slips that are named one by one be the same one, made again at each force?"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from tutor.judge.costs import ONCE_MORE
from tutor.judge.edits import Edit
from tutor.judge.mistakes import KINDS

Again = Callable[[int, str], Edit | None]


def made_alike(found: Iterable[Edit], again: Again) -> list[Edit]:
    """The edits, each taken as a mistake that another of them shows too, where that is more plausible.

    `again` gives the edit at a place that is this mistake and no other, if it can be.
    """
    edits = list(found)
    if len({edit.codes for edit in edits if edit.codes}) < 2:
        return edits
    for code in dict.fromkeys(edit.codes[0] for edit in edits if edit.codes):
        if not KINDS[code].runs_through:
            continue
        for place, edit in enumerate(edits):
            if not edit.codes or code in edit.codes:
                continue
            other = again(place, code)
            if other is not None and other.cost - _saved_on(code) < edit.cost:
                edits[place] = other
    return edits


def _saved_on(code: str) -> float:
    """What a mistake costs less where it was made before in the line."""
    return (1.0 - ONCE_MORE) * KINDS[code].cost

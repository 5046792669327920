"""Which blank would settle what is open, if the student entered it?

Each story of what went wrong has every blank filled in its own way. A blank that two stories fill
differently tells them apart; one that they fill alike tells nothing. Only its name is ever shown.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from tutor.homework.places import EQUALLY
from tutor.homework.sheet import Sheet
from tutor.homework.stories import Told
from tutor.homework.work import Entry


def separating(pairs: Sequence[Told], blank: Collection[str]) -> tuple[str, bool] | None:
    """The blank that best tells the first story from those that begin elsewhere and cost as little.

    And whether it tells it from all of them; None where no blank does from any.
    """
    if not pairs:
        return None
    best, read = pairs[0]
    others = [
        (story.first, other)
        for story, other in pairs[1:]
        if story.first != best.first and story.cost <= best.cost + EQUALLY
    ]
    told = {
        name: {first for first, _ in others}
        - {
            first
            for first, other in others
            if not _differ(read.entries.get(name), other.entries.get(name))
        }
        for name in blank
    }
    name = max(told, key=lambda each: len(told[each]), default=None)
    if name is None or not told[name]:
        return None
    return name, told[name] == {first for first, _ in others}


def _differ(one: Entry | None, other: Entry | None) -> bool:
    """Whether two values of a blank are apart by more than both may be rounded."""
    if one is None or other is None:
        return False
    return abs(one.value - other.value) > one.radius + other.radius


def closing(handed_in: Mapping[str, Sheet], undecided: Collection[str]) -> str | None:
    """The one blank of a body that does not give an undecided value without it; None where there is none."""
    return next(
        (
            sheet.missing[0]
            for sheet in handed_in.values()
            if len(sheet.missing) == 1
            and any(
                name in sheet.part and not sheet.equations(name, sheet.missing)
                for name in undecided
            )
        ),
        None,
    )


def fewest(sheets: Collection[Sheet]) -> str | None:
    """A blank of the body that lacks the fewest."""
    blank = [sheet.missing for sheet in sheets if sheet.missing]
    return min(blank, key=len)[0] if blank else None

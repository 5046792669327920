"""Did two results at a body change places on their way to the paper?

Where they did, the row of each holds the value of the other. Nothing here tells a student which rows
those are, since both right values could then be read off: a hint only asks to compare one row.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence

from tutor.homework.account import AccountDraft
from tutor.homework.sheet import Sheet
from tutor.homework.slips import cost_of
from tutor.homework.work import Entry

CODE = "magnitude"
EXCHANGED = cost_of(CODE) - 0.3
"""Two lines of a body hold at once; it is more plausible than figures that fit one line."""
LOOK = "A number here may stand in the wrong row."
REASON = (
    "A result goes from its line to the list of results, and from there into the next line; on the "
    "way it can get into the row of another force."
)
PLACE = "Compare the row of {name} with your work: is it the value of another row?"


def of_two_rows(
    sheet: Sheet, solved: Sequence[str], entries: Mapping[str, Entry]
) -> Iterator[AccountDraft]:
    """The two values found at a body, each in the row of the other, with or without its sign."""
    if len(solved) != 2 or not all(name in entries and entries[name].text for name in solved):
        return
    one, two = (sheet.part[name] for name in solved)
    a, b = one.number, two.number
    for factor in {1.0, math.copysign(1.0, a * b)}:
        changes = ((one, factor * b - a), (two, factor * a - b))
        if all(
            abs(left + sum(part.vector[k] * by for part, by in changes)) <= slack
            for k, (left, slack) in enumerate(zip(sheet.lefts, sheet.slacks, strict=True))
        ):
            yield AccountDraft(
                CODE, None, EXCHANGED, words=(LOOK, REASON, PLACE.format(name=one.name))
            )
            return

"""What is said of letters typed on the list? The title they find, and how a deed is done."""

from __future__ import annotations

from tutor.screens.clean import one_line
from tutor.screens.deeds import SHEET
from tutor.screens.entry import ProblemRow

ON_THE_BAR = "Now a letter does what stands beside it below; escape leads back to the list."
FOUND = "Found by “{sought}”: {title}; enter opens it, backspace takes a letter back."
NOT_FOUND = "No title here has “{sought}” in it; backspace takes a letter back."
A_DEED = "For “{label}” press escape, then {letter}."


def said_of(sought: str, found: ProblemRow | None) -> str:
    """What was found by these letters; of one that could have been meant for the bar, how that is done."""
    letters = one_line(sought)
    said = NOT_FOUND.format(sought=letters)
    if found is not None:
        said = FOUND.format(sought=letters, title=one_line(found.title))
    meant = [A_DEED.format(label=d.label, letter=d.letter) for d in SHEET if d.letter == letters]
    return " ".join((said, *meant))

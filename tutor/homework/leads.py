"""Which words before values only say where they were found: `Joint A: FAB = 1500 lb (T), FAD = …`?"""

from __future__ import annotations

import re
from dataclasses import dataclass

from tutor.notation import Label, Line, Names, Unreadable, heading_begun, read_line
from tutor.notation.places import place_named

KIND = re.compile(
    r"(?P<whole>reactions?|supports?)|(?:members?|bars?|forces?|values?|results?)", re.IGNORECASE
)
MEMBER = re.compile(
    r"(?:member|bar|force\s+in|force)\s+(?P<rest>[A-Za-z]\S*\s*[:=\s].*)", re.IGNORECASE
)
MARK = re.compile(r"\s*[:.]\s*(?=\S)")


@dataclass(frozen=True)
class Led:
    """What stands behind such words, and the joint that they name; `of` says whether any place is named.

    `place` is None for the whole truss.
    """

    rest: str
    of: bool = False
    place: str | None = None


def sum_named(names: Names, text: str, line: Line | Unreadable) -> Label | None:
    """The heading of a sum with which a text begins, read as `line` or not readable behind it."""
    label = line.label if isinstance(line, Line) else heading_begun(text, names)
    return None if label is None or label.kind is None else label


def led(names: Names, text: str) -> Led | None:
    """The line without the words that lead it, or None where none do, or an equation follows them."""
    mark = MARK.search(text)
    lead = "" if mark is None else text[: mark.start()].strip()
    words = KIND.fullmatch(lead)
    place = place_named(names, lead) if words is None else None
    if mark is None or (words is None and place is None):
        member = MEMBER.fullmatch(text)
        return None if member is None else Led(member["rest"])
    rest = text[mark.end() :]
    if sum_named(names, rest, read_line(rest, names)) is not None:
        return None
    if place is None:
        return Led(rest, of=words is not None and words["whole"] is not None)
    return Led(rest, True, place.joint)

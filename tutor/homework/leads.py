"""Which words before values only say where they were found: `Joint A: FAB = 1500 lb (T), FAD = …`?"""

from __future__ import annotations

import re
from dataclasses import dataclass

from tutor.notation import Line, Names, Unreadable, heading_begun, read_line
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

    `place` is None for the whole truss. `missing` is a joint's name that the truss has not.
    """

    rest: str
    of: bool = False
    place: str | None = None
    missing: str = ""


def names_sum(names: Names, text: str, line: Line | Unreadable) -> bool:
    """Whether a text, read as `line`, begins with the heading of a sum, also where it cannot be read."""
    if isinstance(line, Line):
        return line.label is not None and line.label.kind is not None
    label = heading_begun(text, names)
    return label is not None and label.kind is not None


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
    if ":" in rest or names_sum(names, rest, read_line(rest, names)):
        return None
    if place is None:
        return Led(rest, of=words is not None and words["whole"] is not None)
    return Led(rest, True, place.joint, place.missing)

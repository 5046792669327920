"""Which words before values only say where they were found: `Joint A: FAB = 1500 lb (T), FAD = …`?"""

from __future__ import annotations

import re
from dataclasses import dataclass

from tutor.judge import Judge

LEAD = re.compile(
    r"(?:at\s+)?(?:(?:joint|node|point|support|pin|roller|at)\s+(?P<joint>[A-Za-z]\w*)"
    r"|(?P<whole>(?:the\s+)?whole(?:\s+(?:truss|body))?|reactions?|supports?)"
    r"|(?:members?|bars?|forces?|values?|results?))\s*[:.]\s*(?P<rest>\S.*)",
    re.IGNORECASE,
)
MEMBER = re.compile(
    r"(?:member|bar|force\s+in|force)\s+(?P<rest>[A-Za-z]\S*\s*[:=\s].*)", re.IGNORECASE
)
SUM = re.compile(r"\s*(?:[ΣΔ+↑→↺(]|sum\b|moments?\b|resolv)", re.IGNORECASE)


@dataclass(frozen=True)
class Led:
    """What stands behind such words, and the joint that they name; `of` says whether any place is named.

    `place` is None for the whole truss. `missing` is a joint's name that the truss has not.
    """

    rest: str
    of: bool = False
    place: str | None = None
    missing: str = ""


def led(desk: Judge, text: str) -> Led | None:
    """The line without the words that lead it, or None where none do, or an equation follows them."""
    found = LEAD.fullmatch(text)
    if found is None:
        member = MEMBER.fullmatch(text)
        return None if member is None else Led(member["rest"])
    rest = found["rest"]
    if SUM.match(rest) or ":" in rest:
        return None
    if found["whole"]:
        return Led(rest, of=True)
    if not found["joint"]:
        return Led(rest)
    joint = desk.names.joint(found["joint"])
    return Led(rest, of=True, place=joint, missing="" if joint else found["joint"])

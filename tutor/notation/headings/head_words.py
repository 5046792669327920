"""What does each word and each short form of a heading say of it: F_x, M_A, about, horizontally?"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from itertools import pairwise
from typing import Any

from tutor.notation.elements.label import Between
from tutor.notation.elements.lexicon import Meaning, says
from tutor.notation.elements.unreadable import Broken
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import NAME

NUMBER = r"[-+]?(?:[0-9]+(?:[.,][0-9]+)?|\.[0-9]+)"
AXIS_OF = {"x": "x", "h": "x", "y": "y", "v": "y"}
FORCE = re.compile(r"[FfPR]_?\{?\(?(x|y|h|v|hor|horiz|ver|vert)[')}]*", re.IGNORECASE)
SUM_BEFORE_COLON = re.compile(r"F_?[xy] *:")
"""What heads a line, also where it spells a reaction at a joint F."""
ALONG = re.compile(r"[Ff]_?\{?(-?[0-9]+)\}?")
MOMENT = re.compile(r"[Mm]_?(?P<point>\{[^{}]+\}|[^{}]+)")
PLACED = re.compile(
    r"[FR]_?\{(?:(?P<axis>[xyhv]),? ?(?P<joint>[A-Z]\d?)|(?P<place>[A-Z]\d?),? ?_?\{?(?P<way>[xyhv]))\}+"
)
_AXIS_AT = re.compile(r"(?P<axis>[HVXY])_\{?(?P<joint>[A-Z]\w?)\}?(?P<place>)(?P<way>)")
ADDED = re.compile(r" *[-+] *[^ ]")
_SUMMED = re.compile(r"(?:sum|sigma)_?(?=[FMfmXYHV])(?P<rest>.*)")
_E_FOR_SIGMA = re.compile(r"[EeSs](?P<rest>[Ff]_?\{?[xyhvXYHV]\}?|[Mm]_?(?P<point>.+))")
_BEHIND_AXIS = re.compile(r" +[^ =]")
_SUM_FOLLOWS = re.compile(r" *(?:Σ|[Ss]um\b)")
JOINT_AND_WAY = re.compile(r"[ ,;:]*(?:[+] *)?[←→↑↓↖↗↘↙↺↻][ +]*[)\]]")
"""What stands behind a joint in the brackets of a heading: (C, ↑)."""
WAY_IN_BRACKETS = re.compile(
    r"[(\[{] *(?:[-+←→↑↓↺↻^]|about|at|a?c?cw|taking|positive|up\b|down\b|left\b|right\b)"
)
AXIS_SAID = re.compile(r"(?<=^[xyXY])-(?:dir|direction|axis)$")
_SHORTENED = re.compile(r"\b(?:hor|horiz|ver|vert|mom|jt|pt|dir)$", re.IGNORECASE)
"""A word of a heading that a full stop shortens."""
BARE_JOINT = re.compile(r"[^\W\d_]['\d]*")


def heading_goes_on(text: str, start: int, stop: int) -> bool:
    """Whether a heading that may end before a mark goes on behind it: the stop of horiz., the plus of A + ΣF_y."""
    if text[start] == ".":
        return _SHORTENED.search(text, 0, start) is not None
    return text[start] == "+" and _SUM_FOLLOWS.match(text, stop) is not None


def coordinates(point: str) -> list[str]:
    """The two numbers of "(4, 0)", "(4,5; 0)" or "(4 m, 0)"."""
    halves = point.split(";") if ";" in point else point.rsplit(",", 1)
    return [found[0] for half in halves if (found := re.search(NUMBER, half)) is not None]


def summed(word: str, names: Names, before_colon: bool = False) -> str | None:
    """What is summed in a word that begins with "sum", or with an E or S typed for Σ; None for another.

    Before a colon no component of a force can stand, so that EFx is a sum there even beside a member EF.
    """
    if (found := _SUMMED.fullmatch(word)) is not None:
        return None if says(word, "sum") else found["rest"]
    found = _E_FOR_SIGMA.fullmatch(word)
    if found is None:
        return None
    if not before_colon and (names.meanings(word) or names.two_joints(word[:2])):
        return None
    return found["rest"] if found["point"] is None or names.joint(found["point"]) else None


def axis_leads(axis: str, rest: str, names: Names) -> bool:
    """Whether an x or y alone heads the formula `rest`: no force goes by it, and one stands behind it."""
    if axis not in "xyXY" or names.meanings(axis) or _BEHIND_AXIS.match(rest) is None:
        return False
    words = NAME.findall(rest)
    return any(names.meanings(part) for word in words for part in (word, *word.split("-")))


def axis_at(word: str, names: Names) -> tuple[str, str] | None:
    """The axis and the joint of F_{y,A}, F_{Ay} and V_A behind a Σ; None for any other word."""
    found = PLACED.fullmatch(word) or _AXIS_AT.fullmatch(word)
    if found is None:
        return None
    joint = names.joint(found["joint"] or found["place"])
    return None if joint is None else (AXIS_OF[(found["axis"] or found["way"]).lower()], joint)


def direction(word: str, names: Names, turn: float) -> tuple[float | None, Between | None] | None:
    """The direction of the force or between the joints that `word` names, turned; else None."""
    filler = word.islower() and says(word, "filler")
    found = names.plainly(word) or (names.links if word.lower() == "link" else ())
    if len(found) == 1 and not filler:
        slant = names.slant.get(found[0])
        if slant is None:
            return None, None
        return (math.degrees(math.atan2(slant.y, slant.x)) + turn) % 180.0, None
    pair = None if found or says(word, "filler") else names.two_joints(word) or _ends(word, names)
    return None if pair is None or pair[0] == pair[1] else (None, Between(*pair, turn))


def _ends(word: str, names: Names) -> tuple[str, str] | None:
    """The first and the last of joints side by side that lie in one line of members: BDE; else None."""
    joints = [names.joint(letter) for letter in re.findall(r"[A-Z][0-9]?", word)]
    if len(joints) < 3 or "".join(map(str, joints)) != word or None in joints:
        return None
    ways = [
        names.slant.get(name)
        for one in pairwise(joints)
        for name in names.meant("".join(map(str, one)))
    ]
    if len(ways) != len(joints) - 1 or None in ways:
        return None
    first, *others = (way for way in ways if way is not None)
    straight = all(abs(first.x * way.y - first.y * way.x) < 1e-9 for way in others)
    return (str(joints[0]), str(joints[-1])) if straight else None


def no_joint(names: Names, start: int, end: int) -> Broken:
    """The complaint about a sum at something that is no joint."""
    listed = ", ".join(names.joints[:12]) + (" and so on" if len(names.joints) > 12 else "")
    return Broken("label/joint", start, end, joints=listed)


SAYS: Mapping[Meaning, Mapping[str, Any]] = {
    "sum": {"summed": True, "settled": False},
    "force": {"summed": True, "settled": False},
    "resolve": {},
    "moment": {"kind": "moment", "summed": True, "pending": "point", "settled": False},
    "about": {"pending": "point"},
    "joint": {"pending": "joint"},
    "x": {"kind": "x", "summed": True, "pending": "", "settled": True},
    "y": {"kind": "y", "summed": True, "pending": "", "settled": True},
    "along": {"kind": "along", "summed": True, "pending": "angle"},
    "across": {"kind": "along", "summed": True, "pending": "across"},
    "whole": {"whole": True},
    "number": {"numbered": True},
}
"""What each word of the lexicon says of a heading."""
IN_ORDER: tuple[Meaning, ...] = (
    "moment", "sum", "force", "about", "resolve", "joint", "x", "y", "along", "across", "whole",
    "number", "body", "turn", "positive", "up", "down", "left", "right", "filler", "is",
)  # fmt: skip


_IN_TURN = frozenset(
    ("now", "next", "then", "first", "finally", "also", "again", "still", "back", "nun", "dann")
)
_INSTEAD = re.compile(r" *(?:[:,;]|$)")


def in_turn(word: str, text: str, stop: int) -> bool:
    """Whether a word says when a joint is looked at, and nothing of the sum; instead, where nothing is named behind it."""
    low = word.lower()
    return low in _IN_TURN or (low == "instead" and _INSTEAD.match(text, stop) is not None)


_SIGNED = re.compile(r"[ (][-+]$")
"""What stands before a word that is a term and no line that forces are added along: its sign."""
_DROPS_OUT = re.compile(
    r" +(?:drops?|falls?|goes|vanish(?:es)?|disappears?|cancels?|has +no|plays +no|does(?: +not|n['’]?t))\b"
)
"""What is said behind a force that has no part in a sum: it is no line along which forces are added."""


def is_no_line(text: str, start: int, stop: int) -> bool:
    """Whether a word is a term of a sum or drops out of it, and no line that forces are added along."""
    return bool(_SIGNED.search(text, 0, start) or _DROPS_OUT.match(text, stop))

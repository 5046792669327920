"""Which point is O where lines of members meet: "DE and AB produced meet at O", "O, 8 m to the left of A"?

Moments about such a point are taken about its coordinates. Where two ways to say where it lies do not
agree, it stays a letter, and the line is not read.
"""

from __future__ import annotations

import math
import re

from tutor.notation.elements.source import Source
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import NAME

Point = tuple[float, float]
_MEET = re.compile(
    r"\b(?:produced|extended|prolonged|continued|meets?|meeting|intersects?|intersecting|intersection|crosses|cross|"
    r"concurrent|verlängert\w*|schneiden|prolong[ée]e?s?)\b",
    re.IGNORECASE,
)
_POINT = re.compile(
    r"\b(?:at|in|point|is|be|called|call)[ (]+(?:the +)?(?:point +)?(?P<point>[A-Z])\b[)]?"
    r"(?P<beside>,? *(?:(?:which|that) +(?:is|lies) +|lying +|i\.e\.,? +)?(?P<size>[0-9]+(?:\.[0-9]+)?) *(?:mm|cm|m|ft|in)?(?![\w/]) *(?:to the +)?"
    r"(?P<way>left|right|above|below|over|under) +(?:of +)?(?:the +)?(?:joint +|support +)?(?P<joint>[A-Z]\w?)\b)?"
    r" *[.,;:]?(?= |$)"
)
_BREAK = re.compile(r"[=:;]")
NEARLY = 1e-6
_WAYS = {
    "left": (-1.0, 0.0), "right": (1.0, 0.0), "above": (0.0, 1.0), "over": (0.0, 1.0), "below": (0.0, -1.0),
    "under": (0.0, -1.0),
}  # fmt: skip


def about_meetings(source: Source, names: Names) -> Source:
    """The source with moments about a point where lines meet taken about its coordinates."""
    if not names.places or _MEET.search(source.text) is None:
        return source
    for found in list(_POINT.finditer(source.text)):
        letter = found["point"]
        start = max(
            (mark.end() for mark in _BREAK.finditer(source.text, 0, found.start())), default=0
        )
        lines = source.text[start : found.start()]
        if names.joint(letter) is not None or _MEET.search(lines) is None:
            continue
        point = _where(found, lines, names)
        if point is not None:
            source = _put_in(source, re.escape(lines + found[0]), letter, point)
            break
    return source


def _put_in(source: Source, said: str, letter: str, point: Point) -> Source:
    """The source without the words that say where a point lies, and with moments about it."""
    x, y = (f"{part:.9g}" for part in point)
    about = re.compile(
        rf"(?P<lead>M ?_?\{{?|\b(?:about|um|abt|round) +(?:the +)?(?:point +)?){letter}\b\}}?"
    )
    source = source.rewritten(re.compile(said), " ")
    return source.rewritten(about, lambda each: f"{each['lead'].rstrip('{_ ')} ({x}, {y})")


def _where(found: re.Match[str], lines: str, names: Names) -> Point | None:
    """The point that words say lines meet at, or how far it lies from a joint; None where they disagree."""
    met, beside = _met(lines, names), _beside(found, names)
    if met is not None and beside is not None and math.dist(met, beside) > NEARLY * _size(names):
        return None
    return met or beside


def _met(text: str, names: Names) -> Point | None:
    """Where the lines of the two members meet that a text names; None where it names no two."""
    members = [names.meant(word) for word in NAME.findall(text) if names.two_joints(word)]
    lines = list(dict.fromkeys(name[0] for name in members if len(name) == 1))
    if len(lines) != 2:
        return None
    ends = {name: (start, end) for name, start, end in names.members}
    (p, q), (r, s) = ([names.places[joint] for joint in ends[line]] for line in lines)
    across = (q[0] - p[0]) * (s[1] - r[1]) - (q[1] - p[1]) * (s[0] - r[0])
    if abs(across) <= NEARLY * math.dist(p, q) * math.dist(r, s):
        return None
    along = ((r[0] - p[0]) * (s[1] - r[1]) - (r[1] - p[1]) * (s[0] - r[0])) / across
    return p[0] + along * (q[0] - p[0]), p[1] + along * (q[1] - p[1])


def _beside(found: re.Match[str], names: Names) -> Point | None:
    joint = names.joint(found["joint"]) if found["joint"] else None
    way = _WAYS.get(found["way"] or "")
    if joint is None or way is None:
        return None
    x, y = names.places[joint]
    size = float(found["size"])
    return x + size * way[0], y + size * way[1]


def _size(names: Names) -> float:
    return max(1.0, *(abs(part) for place in names.places.values() for part in place))

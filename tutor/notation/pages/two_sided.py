"""Which sum do two sides name that are set equal: "ups = downs:", "Right = left, ...", "cw = ccw about A:"?

What stands before the equation says which terms stand on which side of it; it is spelled as the sum that it is.
"""

from __future__ import annotations

import re

from tutor.notation.elements.lexicon import Meaning, folded, says
from tutor.notation.elements.source import Source
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.sides.ending import wordy

_SIDE = rf"(?=[{LETTERS}←→↑↓↺↻Σ])(?:Σ|[{LETTERS}'-]++|[←→↑↓↺↻]|[ _(){{}}])+?"
_LEAD = r"^(?P<lead>(?:[^=]*?[:;,.] +)??(?:(?:so|then|now|and|for|using|taking|balancing|at|joint|node|pin) +)*(?:[A-Z][0-9]{0,2},? +)?)"
_TWO_SIDED = re.compile(
    rf"{_LEAD}(?P<one>{_SIDE}) *(?:=|(?:must +|have +to +|has +to +)?(?:equals?|balances?)|(?:is|are|must +be) +equal +to) *"
    rf"(?P<other>{_SIDE})(?P<place> +(?:at|about|around|round|for|@|um)(?: +(?:joint|node|pin|point))? +(?P<joint>[{LETTERS}]\w{{0,3}}))?"
    r" *(?:(?P<mark>[:,;|]|=>|-+>|[→⇒∴]|\.(?= ))|(?= +[^ =,;:→⇒>]+[^=,;:→⇒>]*=(?!>)))"
)
_TERM = r"(?=[-+(√.0-9]|[A-Z][\w{}]*(?! *[a-z]))"
_EACH_SIDE = re.compile(
    rf"{_LEAD}(?P<one>{_SIDE}) *:? *{_TERM}(?P<left>[^:;,∴⇒→]*?)= *(?P<other>{_SIDE}) *:? *{_TERM}"
)
"""The same with what is said beside each side: up: A_y + C_y = down: 24 + 12."""
_OPPOSITE = {"up": "down", "down": "up", "left": "right", "right": "left", "cw": "ccw", "ccw": "cw"}
_TURNS = {
    "cw": ("cw", "clockwise", "↻", "cws", "clockwises"),
    "ccw": (
        "ccw", "acw", "anticlockwise", "anti-clockwise", "counterclockwise", "counter-clockwise", "anticw", "↺",
        "ccws", "acws",
    ),
}  # fmt: skip
_ARROWS = {"↑": "up", "↓": "down", "←": "left", "→": "right"}
_ALSO = frozenset((
    "f", "σ", "σf", "σm", "total", "everything", "ones", "going", "pointing", "pulling", "pushing", "pulls", "pushes",
    "loads", "load", "pull", "push", "must", "arrows", "components", "parts", "things",
))  # fmt: skip


def with_sums_of_sides(source: Source, names: Names) -> Source:
    """The source with a heading of two opposite sides as the sum that it names."""
    if _MAY.search(source.text) is None:
        return source
    source = source.rewritten(_TWO_SIDED, lambda found: _summed(found, names))
    return source.rewritten(_EACH_SIDE, lambda found: _of_each(found, names))


_MAY = re.compile(rf"=[^=]*=|equal|balance|= *(?:[{LETTERS}]{{2}}|[←→↑↓↺↻Σ])", re.IGNORECASE)


def _summed(found: re.Match[str], names: Names) -> str | None:
    """The sum of what acts on two sides; None where they are no two opposite ways."""
    one, other = _way(found["one"], names), _way(found["other"], names)
    if one is None or other is None or _OPPOSITE[one] != other:
        return None
    joint = found["joint"]
    if joint is not None and names.joint(joint) is None:
        return None
    return f"{found['lead']}{_SUM_OF[one]}{found['place'] or ''}: "


def _of_each(found: re.Match[str], names: Names) -> str | None:
    """The equation behind the sum that what is said beside its sides names."""
    one, other = _way(found["one"], names), _way(found["other"], names)
    if one is None or other is None or _OPPOSITE[one] != other:
        return None
    return f"{found['lead']}{_SUM_OF[one]}: {found['left']}= "


_SUM_OF = {"up": "ΣF_y", "down": "ΣF_y", "left": "ΣF_x", "right": "ΣF_x", "cw": "ΣM", "ccw": "ΣM"}


def _way(side: str, names: Names) -> str | None:
    """The one way that words name besides forces, moments and their sum."""
    ways: list[str] = []
    for word in re.findall(rf"[{LETTERS}'-]+|[←→↑↓↺↻]", side):
        low = folded(word)
        way = _ARROWS.get(word) or next((way for way, them in _TURNS.items() if low in them), None)
        way = way or next(
            (each for each in _WAYS if says(low, each) or says(low.rstrip("s"), each)), None
        )
        if way is not None:
            ways.append(way)
        elif (names.plainly(word) and not wordy(word, names)) or not (
            low in _ALSO or says(low, "sum", "force", "moment", "filler", "x", "y", "whole")
        ):
            return None
    return ways[0] if len(ways) == 1 else None


_WAYS: tuple[Meaning, ...] = ("up", "down", "left", "right")

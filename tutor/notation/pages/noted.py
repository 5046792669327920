"""What is written as in notes to oneself: "w/ 23.3 at C:", "18 kN up, half of 36", "= 16 T <- compare", "a strut, 624 lb (C)"?

Each rule says what of a text it needs.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Rule, Source
from tutor.notation.elements.units import FORCES

_WITH = re.compile(r"(?<![^ ,;])w/ ?(?=[0-9A-Za-z])")
_UP_DOWN = re.compile(r"(?<=[0-9A-Z] )up/down(?= +(?:it|it['’]?s|is|we|just|only)\b)")
_LEFT_RIGHT = re.compile(r"(?<=[0-9A-Z] )left/right(?= +(?:it|it['’]?s|is|we|just|only)\b)")
_POINTS_BACK = re.compile(r" +<-+ *(?=[a-z]{3})")
_COMMA_IN_CHAIN = re.compile(r"(?<=[0-9)\w]) ?,(?= ?=(?!>) *[-+(0-9.√])")
_LEADER = re.compile(r" *(?:…|\.{2,}) *(?=[(\[] *[0-9]{1,2} *[)\]] *[;,])")
"""Dots that lead to the number of an equation, where the line goes on: ... (2); with (1), ..."""
_HALF = re.compile(
    rf", *(?P<half>half of (?:the )?[0-9][0-9.,]*(?: ?(?:{FORCES}))?)(?=[ .]*$)", re.IGNORECASE
)
_WAY_TWICE = re.compile(
    rf"(?P<name>(?<![\w}}])[A-Z][\w{{}}-]*) +is +(?:an? +|in +)?(?P<way>strut|tie|compression|tension), *"
    rf"(?P<size>[0-9][0-9.,]*(?: ?(?:{FORCES}))?) *[(\[](?P<letter>[TC])[)\]](?=[ .]*$)"
)
_WAY_THEN_SIZE = re.compile(
    rf"(?P<lead>(?:^ *|[,;] *)(?:(?:so|and|thus|hence) +)?)(?:it|this|that)(?: +is|'s) +(?:in +|under +|an? +)?(?P<way>strut|tie|compression|tension)[:,] *"
    rf"(?:of +|about +)?(?P<size>[0-9][0-9.,]*(?: ?(?:{FORCES}))?)(?=[ .]*$)",
    re.IGNORECASE,
)
"""The size behind what it does: so it's in compression: 4 kN."""
_RATIO = re.compile(
    r"\bratio of (?:the |its )?(?:components|sides) +(?:is +)?(?P<one>[0-9.]+) ?: ?(?P<two>[0-9.]+)"
)
_KNOWN_BEFORE = re.compile(
    rf"(?P<said>[,;] *[A-Z][\w{{}}-]* *= *-?[0-9][0-9.,]*(?: ?(?:{FORCES}))?(?: ?[TC]\b)?) *:(?= *[A-Z][\w{{}}-]* *=)"
)
"""A known value said in passing, with a colon before what follows: ..., BD = 0: AD = -6.75/.6."""
_LETTERS = {"strut": "C", "compression": "C", "tie": "T", "tension": "T"}


def noted(source: Source) -> Source:
    """The source with such marks and words as one types them in a line."""
    return source.by_rules(_RULES)


def _way_behind(found: re.Match[str]) -> str:
    mark = ": " if found["lead"].strip()[:1] in (",", ";") else ""
    return f"{mark}{found['size']} ({_LETTERS[found['way'].lower()]})"


def _said_once(found: re.Match[str]) -> str | None:
    """A size of which the way is said before and behind it, with the letter alone."""
    if _LETTERS[found["way"]] != found["letter"]:
        return None
    return f"{found['name']} = {found['size']} ({found['letter']})"


_RULES: tuple[Rule, ...] = (
    Rule((".. ", "..(", "…", "..["), _LEADER, " "),
    Rule(("it", "this", "that", "It", "This", "That"), _WAY_THEN_SIZE, _way_behind),
    Rule(("w/",), _WITH, "with "),
    Rule(("up/down",), _UP_DOWN, "vertically"),
    Rule(("left/right",), _LEFT_RIGHT, "horizontally"),
    Rule(("<-",), _POINTS_BACK, ", "),
    Rule((", =", ",="), _COMMA_IN_CHAIN, " "),
    Rule((":",), _KNOWN_BEFORE, lambda found: f"{found['said']}, "),
    Rule(("half of",), _HALF, lambda found: f" ({found['half']})"),
    Rule(("ratio of",), _RATIO, lambda found: f"ratio {found['one']}:{found['two']}"),
    Rule(tuple(_LETTERS), _WAY_TWICE, _said_once),
)

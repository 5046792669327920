"""Which way does a member push or pull the joint at its end: "AD = 25 kN, pushing A to the left"?

The verb says T or C. The way follows from it, and is only held against it.
"""

from __future__ import annotations

import re

from tutor.notation.elements.lexicon import folded, said
from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.elements.unreadable import Broken
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import NAME
from tutor.notation.sides.heeded import ARROWS

_WAY = r"(?:(?:left|right|up|down)(?:wards?)?\b|[←→↑↓])"
_PUSHES = re.compile(
    r"(?P<verb>\b(?P<does>push|pull)(?:es|s|ing|ed)?)(?: +(?:on|at|against))? +(?:(?:the +)?(?:joint|node|pin) +)?"
    rf"(?P<joint>[A-Z]\w?)(?P<ways>(?:,? +(?:(?:and|back|to|straight|the) +)*{_WAY})+)",
    re.IGNORECASE,
)
_OTHER = re.compile(
    r"\b(?:supports?|pins?|rollers?|walls?|ground|floor|links?|reactions?|hinges?|loads?|weights?|wind|gust|snow)\b",
    re.IGNORECASE,
)
"""What else may push a joint: the support pushes A up."""
_ONE_WAY = re.compile(_WAY, re.IGNORECASE)


def pushed(source: Source, names: Names) -> Source:
    """The source without the way that a joint is pushed or pulled. Raises Broken where that is another one."""
    for found in reversed(list(_PUSHES.finditer(source.text))):
        ends = _ends(source.text[: found.start()], found["joint"], names)
        if ends is None:
            continue
        turn = 1.0 if found["does"].lower() == "pull" else -1.0
        across, up = (turn * (there - here) for here, there in zip(*ends, strict=True))
        for way in _ONE_WAY.finditer(source.text, *found.span("ways")):
            if not _goes(way[0], across, up):
                place = source.span(*way.span())
                raise Broken("value/two", place.start, place.end)
        kept = Span(0, found.end("verb")), Span(found.end(), len(source.text))
        source = source.made_of(kept)
    return source


def _ends(before: str, joint: str, names: Names) -> tuple[tuple[float, float], ...] | None:
    """Where a joint and the other end lie of the member that was named last; None where it is no end of it."""
    said = [found for found in NAME.finditer(before) if len(names.plainly(found[0])) == 1]
    if said and _OTHER.search(before, said[-1].end()) is not None:
        return None
    named = [names.plainly(found[0]) for found in said]
    ends = {name: (start, end) for name, start, end in names.members}
    here, pair = names.joint(joint), ends.get(named[-1][0]) if named else None
    if here is None or pair is None or here not in pair or not names.places:
        return None
    other = pair[1] if here == pair[0] else pair[0]
    return names.places[here], names.places[other]


def _goes(way: str, across: float, up: float) -> bool:
    """Whether a direction goes to that side."""
    side = ARROWS.get(way) or said(folded(way), "left", "right", "up", "down")
    return {"left": -across, "right": across, "up": up, "down": -up}[str(side)] > 0.0

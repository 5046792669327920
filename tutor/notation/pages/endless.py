"""How is a decimal read that goes on: 3166.666.., 0.333…, 577.35...?

Its dots say that more figures follow; where the last of them is written twice, it is the one that follows.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.elements.units import FORCES

_GOING_ON = re.compile(
    rf"(?P<number>(?<![\w.])[0-9]*\.[0-9]+)(?:\.{{2,3}}|…)(?=(?P<ends> *(?:[-+*/^=)\]}},;→⇒∴<]|$|(?:{FORCES})\b|\(?[TC]\b))|(?P<factor> *[A-Za-z(√]))"
)
_REPEATED = re.compile(r"\.[0-9]*([1-9])\1$")
_RECURRING = re.compile(
    rf"(?P<before>^ *[A-Za-z][\w{{}}]* *= *-? ?|=[-+*/^(). 0-9]*/[-+*/^(). 0-9]*= *-? ?)(?P<number>[0-9]+\.)\((?P<again>[0-9]{{1,3}})\)(?=(?: *(?:{FORCES})\b)?(?: *\(?[TC]\)?)? *[.]? *$)"
)
"""A period in brackets right behind the point, of a value alone or of what a division gives: 9500/3 = 3166.(6)."""


def written_to_end(source: Source) -> Source:
    """The source with decimals that go on as plain ones."""
    source = source.rewritten(_RECURRING, _recurring)
    if ".." not in source.text and "…" not in source.text:
        return source
    return source.rewritten(_GOING_ON, _plain)


def _recurring(found: re.Match[str]) -> str:
    return found["before"] + found["number"] + found["again"] * 5


def _plain(found: re.Match[str]) -> str | None:
    if found["ends"] is None and "=" in found.string[: found.start()]:
        return None
    number = found["number"]
    repeated = _REPEATED.search(number)
    return number if repeated is None else number + repeated[1] * 4

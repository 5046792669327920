"""Where does the formula behind a heading start: behind a colon, an arrow, a dash that is no minus?"""

from __future__ import annotations

import re

from tutor.notation.found import Found, trimmed
from tutor.notation.symbols import LETTERS
from tutor.notation.tree import Span


def behind_heading(text: str, start: int, at: int, end: int, found: Found) -> int:
    """Where the text behind a heading, which stands from `start` to `at`, says something of its own.

    A dash behind a heading in words may be a minus or set the formula apart: that is a choice of the line.
    """
    apart = _APART.match(text, at, end)
    at = at if apart is None else apart.end()
    dash = _DASH.match(text, at, end)
    if dash is None or _IN_WORDS.search(text, start, at) is None:
        return at
    if not found.choice.dashed:
        found.open.add("dashed")
        return at
    found.taken.append(("dash", Span(*trimmed(text, start, at))))
    return dash.end()


_APART = re.compile(r"\)?(?: *[:;,|]| *(?:[-=]+>|[→⇒](?= )))|\)(?= )")
_DASH = re.compile(r" +- +(?=[^ ])")
_IN_WORDS = re.compile(rf"[{LETTERS}]{{3}}|\b(?:at|um|en) ")

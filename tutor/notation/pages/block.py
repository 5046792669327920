"""What do several rows of a page say as one line? A quoted answer, a display, a heading above its formula.

Rows follow each other as statements do; a row goes on in the next where it ends, or the next begins, in
the midst of one. Columns stay as they are.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

_BREAK = re.compile(r"\r\n?|\n")
_QUOTED = re.compile(r" *(?:> ?)+")
_DRAWN = re.compile(r" *(?:\\(?:begin|end) *\{[^{}]*\}(?:\{[^{}]*\})?|`{3}\w*|\${2}|\\[\[\]]) *")
"""What begins or ends a display."""
_GOES_ON = re.compile(r"(?:[:;,=+*/(\[{&]|[^+]-|\\\\|\\q?quad|∴|⇒|→|=>|->)\s*$")
_CONTINUES = re.compile(
    r"\s*(?:&?\s*[=+*/)\]}≈]|∴|⇒|→|=>|[-–—]+>|&?\s*\\(?:[Rr]ightarrow|implies|therefore|approx)\b)"
)


def in_a_row(text: str) -> str:
    """The rows of a text as one line, column for column; a text of one row as it is."""
    if _BREAK.search(text) is None:
        return text
    rows: list[str] = []
    at = 0
    for found in (*_BREAK.finditer(text), None):
        row = text[at : found.start() if found else len(text)]
        rows.append(_without_marks(row) + " " * (len(found[0]) if found else 0))
        at = found.end() if found else len(text)
    said = [row for row in rows if row.strip()]
    ends = {id(one): _joint(one, other) for one, other in pairwise(said)}
    ends |= {id(one): char for one, char in _fallen(said)}
    return "".join(row[:-1] + ends[id(row)] if id(row) in ends else row for row in rows)


_LETTER_LAST = re.compile(r"(?:^|Σ|[^\w])(?:[0-9.]+)?[A-Z][0-9]? *$")
_BELOW = re.compile(r" *(?:[A-Z][0-9]?){1,2} *|(?:[A-Z][0-9]?)?[xy] *")


def _fallen(rows: list[str]) -> Iterator[tuple[str, str]]:
    """Rows that are the letters below the line of the one before, and what sets them apart: F / AC / + 12."""
    below = False
    for row, following in pairwise(rows):
        after = below
        below = _LETTER_LAST.search(row.rstrip()) is not None and not after
        below = below and _BELOW.fullmatch(following) is not None
        if below:
            yield row, "_"
        elif after:
            yield row, " "


def _joint(row: str, following: str) -> str:
    """What sets two rows apart, in the place of the break between them."""
    return " " if _GOES_ON.search(row) or _CONTINUES.match(following) else ";"


def _without_marks(row: str) -> str:
    """A row without the marks of a quotation; nothing of one that only begins or ends a display."""
    if _DRAWN.fullmatch(row):
        return " " * len(row)
    quoted = _QUOTED.match(row)
    return " " * quoted.end() + row[quoted.end() :] if quoted else row

"""What do several rows of a page say as one line? A quoted answer, a display, a heading above its formula.

Rows follow each other as statements do; a row goes on in the next where it ends, or the next begins, in
the midst of one, or where a sum is not set equal to anything yet. A sign that is written at the end of a row
and again before the next one stands once; a minus may be two, and is asked about. Columns stay as they are.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise
from typing import NamedTuple

from tutor.notation.elements.unreadable import Broken
from tutor.notation.pages.encoded import is_of_mail
from tutor.notation.pages.row_marks import without_row_marks

_BREAK = re.compile(r"\r\n?|\n")
_QUOTED = re.compile(r" *(?:> ?)+")
_DRAWN = re.compile(r" *(?:\\(?:begin|end) *\{[^{}]*\}(?:\{[^{}]*\})?|`{3}\w*|\${2}|\\[\[\]]) *")
"""What begins or ends a display."""
_GOES_ON = re.compile(r"(?:[:;,=+*·×−/(\[{&]|[^+]-| –|\\\\|\\q?quad|∴|⇒|→|=>|->)\s*$|[\u2060]$")
_CONTINUES = re.compile(
    r"\s*(?:&?\s*[=+*/)\]}≈]|∴|⇒|→|=>|[-–—]+>|&?\s*\\(?:[Rr]ightarrow|implies|therefore|approx)\b)"
)


_ADDS = re.compile(r"\s*[-+−–·×*/] ?[\w(√.\\]")
_SUMMED = re.compile(
    r"[\w)\]}°.] *(?:[+−*·×/]|-(?=[0-9(])| [-–](?= )) *[\w(√.\\]|(?<![A-Za-z])(?:sin|cos|tan)(?![A-Za-z])"
    r"|[0-9] ?[*·]? ?[A-Z][A-Z_0-9]|^\s*(?:[+−] ?|-)[A-Z0-9(√]"
)
"""A sum, a product or a function, or a term with its sign."""
_VALUED = re.compile(r"= *[-+−]? ?[0-9][0-9.,]* *(?:[A-Za-z]{1,4}\b *)?(?:\(?[TC]\)?)?\s*$")
_WORDED = re.compile(r"(?<![A-Za-z])(?!(?:sin|cos|tan|sqrt|deg|kips?|lbs)(?![a-z]))[A-Z]?[a-z]{3,}")
_AGAIN = re.compile(r"(?P<sign>[-+−–=·×*])\s*$")
_CUT_WORD = re.compile(r"[a-z]{2}-$")
_GOES_ON_AS_WORD = re.compile(r"[a-z]{2}")
_MARKED_END = re.compile(r"(?:(?<=\s)\.{3}|(?<=\s)…|(?<!\\)\\|[↵⏎↩¶])\s*$")
"""What says that a row goes on, in a program or on a page that shows its marks."""
_JOINER = "\u2060"
"""In the place of a break within a word: it shows nothing, and what it joins is one word."""


def in_a_row(text: str) -> str:
    """The rows of a text as one line, column for column; a text of one row as it is. Raises Broken."""
    if _BREAK.search(text) is None:
        return text
    rows: list[str] = []
    at, of_mail = 0, is_of_mail(text)
    for found in (*_BREAK.finditer(text), None):
        row = _without_marks(text[at : found.start() if found else len(text)])
        size = len(found[0]) if found else 0
        if of_mail and found and row.endswith("="):
            rows.append(row[:-1] + _JOINER * (size + 1))
        else:
            row = _MARKED_END.sub(lambda mark: " " * len(mark[0]), row) if found else row
            rows.append(row + " " * size)
        at = found.end() if found else len(text)
    rows = without_row_marks(rows)
    said = [row for row in rows if row.strip()]
    ends = dict(_ends(said))
    ends |= {id(one): f"{one[:-1]}{char}" for one, char in _fallen(said)}
    _check_signs(rows)
    return "".join(ends.get(id(row), row) for row in rows)


def _ends(rows: list[str]) -> Iterator[tuple[int, str]]:
    """Each row but the last with what sets it apart from the next in the place of its break."""
    so_far = _Formula()
    for row, following in pairwise(rows):
        so_far = so_far.with_row(row)
        if row.endswith(_JOINER):
            continue
        bare = row.rstrip()
        if _CUT_WORD.search(bare) and _GOES_ON_AS_WORD.match(following):
            yield id(row), bare[:-1].ljust(len(row), _JOINER)
            continue
        sign = _AGAIN.search(bare)
        if sign is not None and following.lstrip()[:1] == sign["sign"]:
            yield id(row), bare[: sign.start()].ljust(len(row))
            continue
        joint = _joint(row, following) if not so_far.goes_on(following) else " "
        so_far = _Formula() if joint == ";" else so_far
        yield id(row), row[:-1] + joint


class _Formula(NamedTuple):
    """What the rows so far of a statement hold: words, an equals sign, something added up, a value at the end."""

    worded: bool = False
    equal: bool = False
    summed: bool = False
    valued: bool = False

    def with_row(self, row: str) -> _Formula:
        """The same with another row, behind its heading."""
        said = row[row.rfind(":") + 1 :]
        worded, summed = _WORDED.search(said) is not None, _SUMMED.search(said) is not None
        equal, valued = "=" in said, _VALUED.search(said) is not None
        return _Formula(self.worded or worded, self.equal or equal, self.summed or summed, valued)

    def goes_on(self, following: str) -> bool:
        """Whether the next row goes on with the sum that is not at its end yet."""
        if self.worded or self.valued or _ADDS.match(following) is None:
            return False
        left, equals, _ = following.partition("=")
        return _WORDED.search(left) is None and (not equals if self.equal else self.summed)


def _check_signs(rows: list[str]) -> None:
    """Raises Broken where a minus ends a row and another begins the next one: it may be one or two."""
    at = 0
    for row, following in pairwise(rows):
        sign = _AGAIN.search(row)
        at += len(row)
        if sign is None or _WORDED.search(row):
            continue
        if sign["sign"] in "-−–" and following.lstrip()[:1] in ("-", "−", "–"):
            start = at - len(row) + sign.start("sign")
            one, other = "one minus, written again where the row breaks", "two"
            cure = "it once, or the second one with its number in brackets"
            raise Broken("ambiguous", start, start + 1, one=one, other=other, cure=cure)


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

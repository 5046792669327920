"""Which marks stand before and behind the rows of a page? Those of a list, of who wrote them, of who checked them.

A mark is one where several rows that hold an equation have it: the same bullet, or numbers one after the other.
A plain dash may be a minus, and is left to the line. Columns stay as they are.
"""

from __future__ import annotations

import re
from itertools import pairwise

from tutor.notation.pages.markup import SENT

_BULLET = re.compile(r" *(?P<mark>[•‣◦▪▫●○■□▶►▸➢✓✔☐☑✅»*+–—]|[-*+] \[[ xX]\])\s+(?=\S)")
_COUNT = re.compile(
    r" *(?P<open>[(\[]?)(?P<count>[0-9]{1,3}|[a-h])(?P<close>[.)\]:]|\ufe0f?\u20e3)?(?P<gap>\t|  )?\s*(?=\S)"
)
_TIME = re.compile(r" *[✓✔]{0,2} *[0-9]{1,2}:[0-9]{2}(?: ?[AaPp][Mm])? *[✓✔]{0,2}\s*")
"""A row that only says when a message came."""
_LATER = re.compile(r"^ *[0-9]{1,2}[.)] +(?=[A-Za-z(√])")
"""The number of a row behind the first one, which has none or another kind."""
_DASHES = frozenset("–—")
_CHECKED = re.compile(r"(?<=[\w)\]°]) *[✓✔☑✅]+\s*$")


def without_row_marks(rows: list[str]) -> list[str]:
    """Rows without the marks before and behind them, each as long as it was."""
    rows = [
        _blank(row, found.start(), len(row)) if (found := _CHECKED.search(row)) else row
        for row in rows
    ]
    rows = [_blank(row, 0, found.end()) if (found := SENT.match(row)) else row for row in rows]
    rows = [" " * len(row) if _TIME.fullmatch(row) else row for row in rows]
    items = [row for row in rows if "=" in row]
    ends = _bulleted(items, "".join(rows)) or _counted(items)
    rows = [_blank(row, 0, ends[row]) if row in ends else row for row in rows]
    return [rows[0], *(_LATER.sub(lambda found: " " * len(found[0]), row) for row in rows[1:])]


def _blank(row: str, start: int, end: int) -> str:
    return row[:start] + " " * (end - start) + row[end:]


def _bulleted(items: list[str], text: str) -> dict[str, int]:
    """Where each row begins behind the bullet that all of them have; no long dash that is the minus of the page."""
    found = [_BULLET.match(row) for row in items]
    marks = {mark["mark"][:1] if mark else "" for mark in found}
    if len(items) < 2 or len(marks) > 1 or "" in marks:
        return {}
    dash = next(iter(marks & _DASHES), "")
    if dash and (text.count(dash) > len(items) or not any(sign in text for sign in "-−")):
        return {}
    return {row: mark.end() for row, mark in zip(items, found, strict=True) if mark}


def _counted(items: list[str]) -> dict[str, int]:
    """Where the rows begin behind numbers or letters that count them one after the other."""
    found = [(row, mark) for row in items if (mark := _COUNT.match(row)) and _counts(mark)]
    after = all(
        _place(other[1]) == _place(one[1]) + 1 and other[1]["close"] == one[1]["close"]
        for one, other in pairwise(found)
    )
    return {row: mark.end() for row, mark in found} if len(found) > 1 and after else {}


def _counts(mark: re.Match[str]) -> bool:
    """Whether a number has the sign of one that counts rows, or a gap behind it."""
    blank = mark.string[mark.end() - 1] in " \t"
    return blank and bool(mark["close"] or (mark["gap"] and mark["count"].isdigit()))


def _place(mark: re.Match[str]) -> int:
    count = mark["count"]
    return int(count) if count.isdigit() else ord(count)

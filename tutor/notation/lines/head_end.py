"""Where does the formula behind a heading start: behind a colon, an arrow, a dash that is no minus? And behind the mark of a list?"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.lines.found import Found, trimmed
from tutor.notation.naming.symbols import LETTERS


def behind_heading(text: str, start: int, at: int, end: int, found: Found) -> int:
    """Where the text behind a heading, which stands from `start` to `at`, says something of its own.

    A dash behind a heading in words may be a minus or set the formula apart: that is a choice of the line.
    """
    apart = _APART.match(text, at, end)
    at = at if apart is None else apart.end()
    if _IN_WORDS.search(text, start, at) is not None:
        return _behind_dash(text, start, at, end, found)
    return behind_long_dash(text, start, at, end, found)


def behind_long_dash(text: str, start: int, at: int, end: int, found: Found) -> int:
    """Where the text behind what stands from `start` to `at` begins, if a long dash may set it apart: ↑ — 12 + F_AC = 0."""
    dash = _DASH.match(text, at, end)
    long = dash is not None and dash.start("dash") in found.long_dashes
    return _behind_dash(text, start, at, end, found) if long else at


def _behind_dash(text: str, start: int, at: int, end: int, found: Found) -> int:
    dash = _DASH.match(text, at, end)
    if dash is None:
        return at
    if not found.choice.dashed:
        found.open.add("dashed")
        return at
    found.taken.append(("dash", Span(*trimmed(text, start, at))))
    return dash.end()


_APART = re.compile(r"\)?(?: *[:;,|]| *(?:[-=]+>|[→⇒](?= )))|\)(?= )")
_DASH = re.compile(r" *(?<= )(?P<dash>-) +(?=[^ ])")
_IN_WORDS = re.compile(rf"[{LETTERS}]{{3}}|\b(?:at|um|en) ")
_ITEM = r"[A-Za-z][\w{}]*(?! *:)"
_LIST = re.compile(rf" *(?P<dash>-) +(?={_ITEM}|[0-9(][^;\n]*[;\n] *- +[A-Za-z0-9(])")
"""A dash before a name, or before a number where another item stands behind it."""
_NEXT_LISTED = re.compile(rf"(?<=;)(?P<gap> *)-(?= +(?:{_ITEM}|[0-9(]))")


def may_be_listed(text: str) -> bool:
    """Whether a dash and a blank stand before the name that a line as it was typed begins with."""
    return _LIST.match(text) is not None


def behind_list_dash(source: Source, text: str, start: int, found: Found) -> int:
    """Where a line begins behind a dash that may be its minus or the mark of a list: that is a choice.

    `text` is what was typed: only a plain dash marks a list.
    """
    dash = _LIST.match(source.text, start)
    if dash is None or text[source.starts[dash.start("dash")]] != "-":
        return start
    found.open.add("listed")
    if not found.choice.listed:
        return start
    found.taken.append(("list", source.place(Span(*dash.span("dash")))))
    return dash.end()


def without_list_dashes(text: str) -> str:
    """A text that is read as a list without the dashes before its other items, column for column."""
    return _NEXT_LISTED.sub(lambda found: f"{found['gap']} ", text)

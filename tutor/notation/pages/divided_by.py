"""Which colon divides: B_x = −126 : 3 = −42?

Schools of many countries write division so. A colon between numbers behind an equals sign can be
nothing else; one behind a name, a heading or words is what it always was, and so is one of a
proportion. Behind = 0, or with a blank only behind it, it ends what is said before.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source

_PLAIN = r"[0-9]+(?:[.,][0-9]+)?"
_WORKED = r"(?:[-0-9.,+*/^ ()√½⅓⅔¼¾⅕⅖⅗⅘°]|sin|cos|tan|tg|sqrt)"
_COLON = re.compile(
    rf"(?: : ?|:(?=\S))(?P<under>-?(?:\({_WORKED}+\)|[0-9]+ ?/ ?[0-9]+(?![0-9.,])|√ ?\(?{_PLAIN}\)?|{_PLAIN}|[½⅓⅔¼¾⅕⅖⅗⅘]))(?![\w:])"
)
_OVER = re.compile(rf"{_WORKED}*[0-9)½⅓⅔¼¾⅕⅖⅗⅘°]")
_BEFORE = re.compile(r"[=≈](?P<over>[^=≈]*)$")
_PROPORTION = re.compile(r"[\w})|](?: : ?|:(?=\S))[^=≈]*$")


def colons_divide(source: Source) -> Source:
    """The source with a stroke for each colon that divides one number by another."""
    return source.rewritten(_COLON, _stroke) if ":" in source.text else source


def _stroke(found: re.Match[str]) -> str | None:
    text = found.string[: found.start()]
    before = _BEFORE.search(text)
    over = "" if before is None else before["over"]
    if before is None or _OVER.fullmatch(over) is None or not over.strip(" 0."):
        return None
    if over.count("(") != over.count(")"):
        return None
    if _PROPORTION.search(text, 0, before.start()) is not None:
        return None
    return f"/({found['under']})"

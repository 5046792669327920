"""Where is a number given by words of how near it is: "F_AB approx 12 kN T", "F_AB comes out at 12", "F_AB = 12.04 C, approx 12"?"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS

_NEARLY = r"(?:(?:is|comes to|equals) +)?(?:approx(?:\.|imately)?|about|roughly|circa|ca\.|c\.|~)"
_COMES = r"(?:comes|came|works|worked|turns|turned) +(?:out +)?(?:at|as|to(?: +be)?)(?: +about| +roughly)?"
_UNIT = r"(?: ?(?:k?N|MN|kips?|k|lbs?))?"
_WAY = r"(?: *[(\[]?[TCtc][)\]]?(?![\w]))?"
_OF_A_FORCE = re.compile(
    rf"(?P<before>(?:^|[,;:∴⇒→]|\b(?:so|hence|thus|and)\b) *)(?P<name>[{LETTERS}][\w{{}}'-]*) +(?:{_COMES} +|{_NEARLY} *)(?=[-+]?[0-9.])",
    re.IGNORECASE,
)
_AGAIN = re.compile(
    rf"(?P<value>(?P<size>[0-9][0-9.]*)(?P<unit>{_UNIT}) *(?P<way>{_WAY}))(?: *, *| +)(?:{_NEARLY}|call (?:it|that)) *-?(?P<again>[0-9][0-9.]*)(?P<other>{_UNIT})(?P<way_again>{_WAY}) *(?=[.]? *$)",
    re.IGNORECASE,
)
_TO_THE_LETTER = re.compile(
    rf"^ *(?:so +)?exact(?:ly)?[,:]? +(?=(?P<name>[{LETTERS}][\w{{}}'-]*) *=)", re.IGNORECASE
)


ROUNDED = 0.02
"""A value that is rounded once more is no further off."""


def approximated(source: Source, names: Names) -> Source:
    """The source with an = sign for such words behind a force, and without a value that is only rounded once more."""
    source = source.rewritten(_TO_THE_LETTER, lambda found: _without(found, names))
    source = source.rewritten(_OF_A_FORCE, lambda found: _set_equal(found, names))
    return source.rewritten(_AGAIN, _once)


def _set_equal(found: re.Match[str], names: Names) -> str | None:
    meant = len(names.meant(found["name"])) == 1
    return f"{found['before']}{found['name']} = " if meant else None


def _without(found: re.Match[str], names: Names) -> str | None:
    return "" if len(names.meant(found["name"])) == 1 else None


def _once(found: re.Match[str]) -> str | None:
    """The value, with the unit and the way that may be said only of its rounded one."""
    units = {found[name].strip() for name in ("unit", "other")} - {""}
    ways = {found[name].strip(" ()[]").upper() for name in ("way", "way_again")} - {""}
    try:
        size, again = float(found["size"]), float(found["again"])
    except ValueError:
        return None
    if len(units) > 1 or len(ways) > 1 or abs(size - again) > ROUNDED * size:
        return None
    return " ".join((found["size"], *units, *ways))

"""Which words and spaces stand for an = sign: "F_AB is 12 kN", "F_AB 12 kN", "F_AB = zero", "F_AB: 12"?"""

from __future__ import annotations

import re
from collections.abc import Sequence

from tutor.notation.elements import units
from tutor.notation.elements.lexicon import WAYS, says
from tutor.notation.elements.unreadable import Broken
from tutor.notation.lines.layout import Piece
from tutor.notation.naming.names import Names
from tutor.notation.sides.ending import WORD, phrase
from tutor.notation.sides.heeded import ARROWS, arrow

_ZERO = re.compile(
    r"((?:^|=) *)(zero|nil|null|cero)(?![\w-])(?! *(?:-?force|member|bar))", re.IGNORECASE
)
_IS = re.compile(
    r"(?<=[\w})]) +(?:is|equals|ist|est|es|vaut)(?= +(?:equal to +|gleich +)?[-+]?[0-9.])(?: +(?:equal to|gleich))?",
    re.IGNORECASE,
)
_BARE_VALUE = re.compile(
    r" *(?P<name>[^\W\d][\w{}'-]*)(?P<gap> +)(?P<number>[-+]?[0-9][0-9.,]*)(?P<rest> *[A-Za-z#]*\.?(?: *[(\[]? *[A-Za-z]+ *[)\]]?)?) *"
)


def set_equal(text: str, names: Names) -> str:
    """The text with = for "is", and for the space between a name and its value."""
    text = _ZERO.sub(lambda found: found[1] + "0".ljust(len(found[2])), text)
    if "=" in text:
        return text
    text = _IS.sub(lambda found: " = ".ljust(len(found[0])), text)
    found = _BARE_VALUE.fullmatch(text)
    if found is None and (said := _SAID_VALUE.fullmatch(text)) is not None:
        force = names.joint(said["name"]) is None and _says_value(said["rest"], names)
        found = said if force else None
    if found is None or len(names.meant(found["name"])) != 1 or not found["rest"].strip():
        return text
    if found["name"] in ("T", "C"):
        return text
    if any(len(word) > 1 and names.plainly(word) for word in WORD.findall(found["rest"])):
        return text
    at = found.start("gap")
    return text[:at] + "=" + text[at + 1 :]


_REMARKS = r"(?: *[(\[][^()\[\]=]*[)\]])*"
_SAID_VALUE = re.compile(
    r" *(?P<name>[^\W\d][\w{}'-]*)(?P<gap> +)(?P<number>[-+]?[0-9][0-9.,]*)"
    rf"(?P<rest> *[^()\[\]=+*/^0-9]*?){_REMARKS}[ .]*"
)
"""A name, its number, what is said of that, and remarks in brackets."""


def _says_value(rest: str, names: Names) -> bool:
    """Whether what stands behind a number makes it a value: the unit of a force, T or C, a way, and nothing else."""
    first, _, behind = rest.strip().partition(" ")
    unit = units.SPELLED.get(first.rstrip(",;")) in units.NEWTONS or first in ("k", "#")
    said = behind if unit else rest
    if not said.strip(" .,;-"):
        return unit
    try:
        way = phrase(said, 0, len(said), names)
    except Broken:
        return False
    words = [bit for bit in re.split(r"[ ,.;-]+", said) if bit]
    ways = all(
        word in ARROWS or arrow(word) or word in _LETTERS or says(word, *WAYS, "filler", "remark")
        for word in words
    )
    return way is not None and bool(way.letter or way.sense) and ways


_LETTERS = ("T", "C", "t", "c")


_SPACED = re.compile(
    r" *(?P<name>[^\W\d][\w{}'-]+)(?P<gap> +)[-+]?[0-9][0-9.,]*(?: ?(?:k?N|MN|kips?|k|lbs?))?"
    r"(?: +[(\[](?=[^()\[\]]*[^\W\d_]{3})[^()\[\]=]*[)\]])*[ .]*"
)


def value_spaced(text: str, names: Names, unknown: str) -> str:
    """The text with = for the space between the force that is asked for and its value: B_x 29.3.

    A letter alone may be the C of a value as well as a joint, and is left as it is.
    """
    found = _SPACED.fullmatch(text)
    if found is None or names.meant(found["name"]) != (unknown,):
        return text
    at = found.start("gap")
    return f"{text[:at]}={text[at + 1 :]}"


def is_value_said(text: str, name: str, later: Sequence[Piece], names: Names) -> bool:
    """Whether a value stands behind a name and its colon, and not what is said at a joint: E: DE pushes, DE - 12 = 0."""
    if not later or later[0].before_colon or "=" in text[later[0].start : later[0].end]:
        return False
    if names.joint(name) != name or not any("=" in text[one.start : one.end] for one in later[1:]):
        return True
    return not any(map(names.plainly, WORD.findall(text, later[0].start, later[0].end)))

"""Which side of a chain takes the sine or cosine of an angle that nothing gives: F_BD = F_DE cos β = 260 × 12/13?

The side behind it says in numbers what it comes to; the one with the letter is passed over, and told.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.lines.found import trimmed

_SIDE = r"[^=,;:∴⇒→]"
_OPEN = re.compile(
    rf"(?<==)(?P<side>{_SIDE}*?(?:sin|cos|tan) *\(? *(?P<letter>[α-ωϑϕ]|[a-z])(?![\w]){_SIDE}*)=(?= *[-+(0-9.√])(?={_SIDE}*(?:[=,;:∴⇒→]|$))"
)
_IN_NUMBERS = re.compile(r"[^=,;:∴⇒→A-Za-zα-ω]*(?:(?:sin|cos|tan|sqrt)[^=,;:∴⇒→A-Za-zα-ω]*)*")


def without_open_sides(source: Source) -> tuple[Source, tuple[Span, ...]] | None:
    """The source with blanks for such sides, and their places as typed; None where there is none."""
    text, told, gone = source.text, list[Span](), list[Span]()
    for found in _OPEN.finditer(text):
        if _given(text, found["letter"]) or not _followed_by_numbers(text, found.end()):
            continue
        told.append(source.place(Span(*trimmed(text, *found.span("side")))))
        gone.append(Span(*found.span()))
    return (source.blanked(gone), tuple(told)) if told else None


def _given(text: str, letter: str) -> bool:
    """Whether a line says of an angle how large it is, or what a function of it is."""
    begins = r"(?:^|[,;:]|\((?=[^()]*=)|\b(?:where|with|and|for|as|since)\b) *(?:(?:sin|cos|tan) *\(? *)?"
    return re.search(rf"{begins}{re.escape(letter)} *\)? *=", text) is not None


def _followed_by_numbers(text: str, at: int) -> bool:
    """Whether the side from a column on is one of numbers, with perhaps a unit behind it."""
    side = re.match(_SIDE + "*", text[at:])
    bare = re.sub(r"(?<=[0-9)]) *(?:k?N|MN|kips?|lbs?|k)\b.*$", "", side[0] if side else "")
    return bool(bare.strip()) and _IN_NUMBERS.fullmatch(bare) is not None

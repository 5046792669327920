"""Which arrows stand behind the terms of a sum and only say which way each acts: "Ay↑ + By↑ - 10↓ - 12↓ = 0"?

The signs of the sum say the same; an arrow behind a value alone is its way, and one before a sum heads it.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS

_ARROW = re.compile(
    rf"(?:(?<=[0-9)])|(?:(?<=[ 0-9])(?:k?N|MN|lbs?|kips?|k))|(?P<name>(?<![\w}}])[{LETTERS}][\w{{}}'-]*))(?P<arrow> ?[↑↓↗↘↙↖]|[←→])(?= *(?:[-+=)\]]))"
)
_WITH_ITS_ARROW = re.compile(
    rf"(?P<opened>[(\[])(?P<name> *[{LETTERS}][\w{{}}'-]*)(?P<arrow> *[←→↑↓])(?= *[)\]])"
)
"""A force in brackets with the way that it acts: (C_y ↑) + 5/13 CD = 0."""
_ARROWS = frozenset("←→↑↓↗↘↙↖")
_BOUNDS = re.compile(r"[=;,:⇒∴]")
_SUM = re.compile(rf"[0-9{LETTERS})\]}}↑↓←→↗↘↙↖] *[-+] *[0-9{LETTERS}(√.]")


def without_arrows_of_terms(source: Source, names: Names) -> Source:
    """The source with blanks for the arrows behind the terms of its sums."""
    if _ARROWS.isdisjoint(source.text):
        return source
    source = source.rewritten(_WITH_ITS_ARROW, lambda found: _bracketed(found, names))
    return source.rewritten(_ARROW, lambda found: _of_term(found, names))


def _bracketed(found: re.Match[str], names: Names) -> str | None:
    """A force in brackets without the arrow that only says the sense it is drawn with."""
    name, arrow = found["name"], found["arrow"]
    if not _as_drawn(name.strip(), arrow.strip(), names) or names.joint(name.strip()) is not None:
        return None
    return f"{found['opened']}{name}{' ' * len(arrow)}"


def _as_drawn(word: str, arrow: str, names: Names) -> bool:
    """Whether an arrow behind a force leaves it as it is: a reaction against its axis would be drawn otherwise."""
    named = names.meant(word)
    against = arrow in "←↓" and any(name in names.reactions for name in named)
    return bool(names.meanings(word)) and not against


def _of_term(found: re.Match[str], names: Names) -> str | None:
    if found["name"] is not None and not _as_drawn(found["name"], found["arrow"].strip(), names):
        return None
    text = found.string
    if text[found.end() :].lstrip()[:1] in (")", "]"):
        start, end = max(text.rfind(sign, 0, found.start()) for sign in "(["), found.end()
    else:
        before = [bound.end() for bound in _BOUNDS.finditer(text, 0, found.start())]
        behind = _BOUNDS.search(text, found.end())
        start, end = before[-1] if before else 0, behind.start() if behind else len(text)
    if _SUM.search(text, max(start, 0), end) is None:
        return None
    return found[0][: -len(found["arrow"])] + " "

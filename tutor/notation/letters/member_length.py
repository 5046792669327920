"""Which clause says by a member's joints how long it is: "the wind is ⟂ to AD and AD = 2√3, so 12 B_y = ..."?

A root, or a word for what is square to it, tells it from a force of that size; and it has to be the true length.
"""

from __future__ import annotations

import math
import re

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.lines.found import trimmed
from tutor.notation.naming.names import Names

_NEAR = 0.005
_SQUARE = re.compile(r"⟂|⊥|\b(?:perp\w*|square|normal|distance|length|long|slant)\b", re.IGNORECASE)
_SAID = re.compile(
    r"(?:^|(?<=[,;:])|(?<=\band)|(?<=\bwith)|(?<=\bwhere)|(?<=\bas)|(?<=\bsince)) *(?P<one>[A-Z][0-9]?)(?P<other>[A-Z][0-9]?) *= *"
    r"(?P<times>[0-9.]+ ?)?(?P<root>√ ?\(?(?P<under>[0-9.]+)\)?)? *(?P<mark>[,;:]|(?=so\b|hence\b|thus\b|then\b)|[⇒∴→])"
)


def without_lengths(source: Source, names: Names) -> tuple[Source, tuple[Span, ...]]:
    """The source without such clauses before its equation, and their places as typed."""
    text, told, gone = source.text, list[Span](), list[Span]()
    for found in _SAID.finditer(text):
        known = found["root"] or _SQUARE.search(text[: found.start()])
        if not known or "=" not in text[found.end() :] or not _is_its_length(found, names):
            continue
        told.append(source.span(*trimmed(text, found.start(), found.start("mark"))))
        gone.append(Span(*found.span()))
    return source.blanked(gone), tuple(told)


def _is_its_length(found: re.Match[str], names: Names) -> bool:
    ends = names.places.get(found["one"]), names.places.get(found["other"])
    if None in ends or not (found["times"] or found["root"]):
        return False
    times, under = float(found["times"] or 1.0), float(found["under"] or 1.0)
    one, other = (end for end in ends if end is not None)
    return math.isclose(times * math.sqrt(under), math.dist(one, other), rel_tol=_NEAR)

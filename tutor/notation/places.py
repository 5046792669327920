"""Which place does a heading name, and nothing else: "Joint C", "## Joint A", "At joint $U_1$:", "Reactions"?

One reader for the joint that a homework's lines follow and the one that a lesson goes to.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from tutor.notation.elements.unreadable import Unreadable
from tutor.notation.naming.names import Names
from tutor.notation.read import read_heading

REMARK_APART = re.compile(r"\s+\([^()]*\)\s*$")
"""What may stand apart behind a place: "Joint E (by symmetry)"; close to it brackets name a sum: "R(↑)"."""
OF_BODY = re.compile(
    r"^\s*(?:(?:step|part|case)\s+\w{1,3}\s*[:.)]\s*)?(?:(?:FBD|free[- ]body(?: diagram)?)\s+(?:of|for|at)\s+)?",
    re.IGNORECASE,
)
"""What may stand before it: "Free-body diagram of joint C"."""
_BEGUN = re.compile(
    r"\s*(?P<place>(?:(?:at|for|consider) +)?(?:joint|node) +[^\s.:;,]+)[.:;,] +(?P<words>[^=\d]{8,})",
    re.IGNORECASE,
)
"""A place with a sentence behind it: "Joint A. Equilibrium of the joint gives"."""
_WORD = re.compile(r"[^\W\d_]{2,}")
REACTIONS = re.compile(r"(?:(?:support|external)\s+)?reactions?|supports", re.IGNORECASE)
"""What stands above the lines of the whole truss."""


@dataclass(frozen=True)
class Place:
    """A place named in words: a joint, the whole truss (`joint` None), or a joint that is none."""

    joint: str | None = None
    missing: str = ""


def place_named(names: Names, text: str) -> Place | None:
    """The place that a text names and nothing else: "joint C", "at C", "the whole truss"."""
    bare = OF_BODY.sub("", REMARK_APART.sub("", text))
    if REACTIONS.fullmatch(bare.strip(" :.")):
        return Place()
    label = read_heading(bare, names)
    begun = _BEGUN.fullmatch(bare) if isinstance(label, Unreadable) else None
    if begun is not None and not any(map(names.meanings, _WORD.findall(begun["words"]))):
        label = read_heading(begun["place"], names)
    if isinstance(label, Unreadable):
        return Place(missing=label.found) if label.code == "label" else None
    if label.kind is not None or names.meanings(text.strip()):
        return None
    return Place(label.point if isinstance(label.point, str) else None)

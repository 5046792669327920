"""What is one symbol of a formula, and what does it look like in a text?"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from tutor.notation.elements.characters import RAISED
from tutor.notation.elements.fact import fact

LETTERS = "A-Za-zµ\u00c0-\u00d6\u00d8-\u00f6\u00f8-\u024f\u0370-\u03a2\u03a4-\u03bf\u03c1-\u03ff\u0400-\u04ff"
"""Those a word may be made of, for a class of a regular expression; not Σ and π."""

POINTS = frozenset("•·∙⋅")
"""Points at half height: signs for times, marks of a list, or decimal ones."""

NAME = re.compile(rf"[{LETTERS}][{LETTERS}0-9_'{{}}-]*+")
"""A word with what names are made of besides: figures, braces, hyphens."""

COUNT = r"(?:[0-9]{1,2}[a-z]?|[ivx]{1,4}|[a-e])"
"""What a line is numbered by, for a regular expression: 2, 3a, iv, b."""

FREE_LETTERS = frozenset("abcdehlprsuwzL")
"""Letters that may stand for a length; the others are forces, axes, units or signs."""
LOAD_LETTERS = frozenset("PQWVH")
"""Letters that may stand for the size of a load."""

SYMBOL = re.compile(
    rf"""
  \ *(?:
    (?P<number>(?:[0-9]+|\.[0-9]+)(?:[.,]+[0-9]+)*\.?(?:[eE][+-]?[0-9]+)?|\.+)
  | (?P<word>[{LETTERS}][{LETTERS}0-9'_]*(?:(?<=_)\{{[^{{}}=]*\}})?|[√π\#])
  | (?P<power>\*\*|\^)
  | (?P<raised>⁻?[⁰¹²³⁴-⁹]+)
  | (?P<operator>[-+*/=×])
  | (?P<open>[(\[{{])
  | (?P<close>[)\]}}])
  | (?P<degree>°)
  )
    """,
    re.VERBOSE,
)
"""One symbol, by the group it is in, with any spaces before it."""

OPERANDS = frozenset({"NUMBER", "PI", "NAME", "UNIT", "ANGLE", "FRACTION", "CLOSE"})
"""The terminals after which a sign joins two things."""

PARTNER = {"(": ")", "[": "]", "{": "}", ")": "(", "]": "[", "}": "{"}


class Symbol:
    """One symbol: its terminal in the grammar, what it stands for and where it stands."""

    __slots__ = ("end", "start", "type", "value")

    def __init__(self, kind: str, value: Any, start: int, end: int) -> None:
        self.type, self.value, self.start, self.end = kind, value, start, end


@fact
class Applied:
    """A function as typed: its name, and the power its result is raised to ("cos^2")."""

    name: str
    power: int = 1


def raised_number(sign: str) -> int:
    """The number that figures above the line spell ("⁻²" is -2)."""
    digits = "".join(str(RAISED[char]) for char in sign if char in RAISED)
    return -int(digits) if sign[0] == "⁻" else int(digits)


STRANGE: Mapping[str, str] = {
    **dict.fromkeys("<>≤≥≈≠≅~≃", "character/inequality"),
    "©": "character/sum",
}
"""What is said of a character that begins no symbol, where more can be said than that."""

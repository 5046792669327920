"""What of a text that was typed or pasted is really typed?"""

from __future__ import annotations

import re
import unicodedata

BIDI = frozenset("\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
REMNANT = re.compile(
    r"(?:\x1b?\[)?<\d{1,4};\d{1,4};\d{1,4}[Mm]"  # mouse, decimal reports
    r"|(?:\x1b?\[)\d{1,4};\d{1,4};\d{1,4}M"  # mouse, older decimal reports
    r"|(?:\x1b?\[)M[ -\u00ff]{3}(?=\x1b?\[M|$)"  # mouse, byte reports
    r"|(?:\x1b?\[)\d{1,4};\d{1,4}R"  # cursor position
    r"|(?:\x1b?\[)\?[\d;]{1,20}\$?[a-zA-Z]"  # answers to questions about the terminal
    r"|(?:\x1b?\[)20[01]~"  # begin and end of a paste
    r"|\x1b\[[IO]"  # focus
    r"|\x1b(?:\[[\d;]*[A-Za-z~])?"  # what is left of other escapes
)


def typed(text: str) -> tuple[str, str]:
    """What may stand in an input line of `text`, and the names of what was left out.

    Only control and direction characters are left out. Look-alikes and characters of no width stay:
    reading the line names them.
    """
    kept, dropped = [], []
    for char in text.replace("\t", " "):
        if char in BIDI or unicodedata.category(char) in ("Cc", "Cs"):
            dropped.append(f"U+{ord(char):04X}")
        else:
            kept.append(char)
    return "".join(kept), ", ".join(dict.fromkeys(dropped))


def without_remnants(text: str) -> str:
    """`text` without what a terminal sends for the mouse or the keyboard and nobody typed."""
    return REMNANT.sub("", text)

"""How do pictures and marks look in this terminal: which characters can it show?"""

from __future__ import annotations

import os
from collections.abc import Mapping
from typing import NamedTuple

GLYPHS = ("braille", "blocks", "ascii", "words")


class Looks(NamedTuple):
    """The characters of pictures ("braille", "blocks", "ascii" or "words"), and whether everything
    else has to be ASCII too."""

    glyphs: str = "braille"
    ascii_only: bool = False


def speaks_utf8(environment: Mapping[str, str] = os.environ) -> bool:
    """Whether the locale is one in UTF-8; true where none is set.

    Python itself sets LC_CTYPE to C.UTF-8 in a plain C locale; that does not make the terminal
    one, so LANG is asked then.
    """
    for name in ("LC_ALL", "LC_CTYPE", "LANG"):
        value = environment.get(name, "")
        if not value or (name == "LC_CTYPE" and value == "C.UTF-8" and environment.get("LANG")):
            continue
        return "utf-8" in value.lower() or "utf8" in value.lower()
    return True


def looks_for(chosen: str | None, utf8: bool) -> Looks:
    """The looks for a choice that was kept, or for none; ASCII wherever the locale is not UTF-8."""
    if not utf8:
        return Looks("words" if chosen == "words" else "ascii", True)
    return Looks(chosen if chosen in GLYPHS else "braille", False)

"""Which one unknown does a text write, and which letters does a line give a size?"""

from __future__ import annotations

import re
from collections.abc import Mapping

from tutor.notation.elements.unreadable import Unreadable
from tutor.notation.lines.layout import ANGLE
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.read import read_line

_NOTHING: Mapping[str, float] = {}


def read_name(text: str, names: Names) -> str | None:
    """The one unknown that `text` writes and nothing else, None for any other text."""
    line = read_line(f"{text} = 0", names)
    if isinstance(line, Unreadable) or len(line.steps) > 1 or len(line.result.sides) != 2:
        return None
    if line.label or line.passed or line.alternatives:
        return None
    return line.result.sides[0].name


_MAY_GIVE = re.compile(rf"{ANGLE}|(?<![{LETTERS}0-9_'}}])[a-zL] *(?::?=|be )", re.IGNORECASE)


def read_letters(text: str, names: Names, said: Mapping[str, float] = _NOTHING) -> dict[str, float]:
    """The angles and lengths that a line gives a letter, also where it says nothing else."""
    if _MAY_GIVE.search(text) is None:
        return {}
    line = read_line(f"0 = 0, {text}", names, said=said)
    return {} if isinstance(line, Unreadable) else dict(line.letters)

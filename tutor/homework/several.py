"""Which values stand in one line, some of them without an equals sign?"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

PARTING = " \t,;&"
_BEFORE_A_NUMBER = re.compile(r"(?<![\w}])([^\W\d_][\w{}-]*)(?:\s*[=:]\s*|\s+)(?=[-+]?[\d.])")
_COMMAS = re.compile(r"\s*[,;&](?:\s+|(?=[^\W\d_]))|\s+and\s+")
_AFTER_A_NAME = re.compile(r"\s*[=:]\s*|\s+")


@dataclass(frozen=True)
class Several:
    """The names in a line, each with what stands behind it.

    `parted` says that commas part them and each begins with a name, so that there is no doubt which
    values are meant.
    """

    pieces: tuple[tuple[str, str], ...]
    parted: bool = False


def several(line: str, is_unknown: Callable[[str], bool]) -> Several:
    """The values of a line that begins with the name of one; none where it does not."""
    named = [_AFTER_A_NAME.split(p, maxsplit=1) for p in _COMMAS.split(line.strip(PARTING))]
    if len(named) > 1 and all(len(words) == 2 and is_unknown(words[0]) for words in named):
        return Several(tuple((name, value) for name, value in named), True)
    found = [each for each in _BEFORE_A_NUMBER.finditer(line) if is_unknown(each[1])]
    if not found or line[: found[0].start()].strip(PARTING):
        return Several(())
    ends = [*(each.start() for each in found[1:]), len(line)]
    return Several(
        tuple(
            (each[1], line[each.end() : end].strip(PARTING))
            for each, end in zip(found, ends, strict=True)
        )
    )

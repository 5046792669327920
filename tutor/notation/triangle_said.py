"""Which figures of a line only name the sides of a slope triangle: "3-4-5..", "A vert (5-12-13): ..."?

Three whole numbers of which two squares add up to the third, in brackets of their own or before the line.
"""

from __future__ import annotations

import re

from tutor.notation.source import Source

_SIDES = r"(?P<a>[0-9]{1,2})[-:](?P<b>[0-9]{1,2})[-:](?P<c>[0-9]{1,2})"
_IN_BRACKETS = re.compile(
    rf"(?:(?<=^)|(?<=[\w)\]}},;:.] )) *[(\[] ?{_SIDES}(?: +(?:triangle|slope|bar|member))? ?[)\]](?= *(?:$|[,;:.=]|[A-Za-z]))"
)
_BEFORE = re.compile(rf"^ *{_SIDES}(?: *(?:\.{{2,}}|…|[,;])| *:(?= *[A-Z(\-0-9.])) *")


def without_sides(source: Source) -> Source:
    """The source without what names the sides of a slope triangle and nothing else."""
    if _MAY.search(source.text) is None:
        return source
    return source.rewritten(_IN_BRACKETS, _sides).rewritten(_BEFORE, _sides)


_MAY = re.compile(r"[0-9][-:][0-9]{1,2}[-:][0-9]")


def _sides(found: re.Match[str]) -> str | None:
    a, b, c = sorted(int(found[side]) for side in "abc")
    return "" if a and a * a + b * b == c * c else None

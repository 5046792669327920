"""Which figures and letters of a line only name a triangle: "3-4-5..", "A vert (5-12-13): ...", "θ = ∠DAB, sin θ = 3/5"?

Three whole numbers of which two squares add up to the third, in brackets of their own or before the line;
the angle at a joint, before what is said of its size.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.lines.layout import ANGLE

_SIDES = r"(?P<a>[0-9]{1,2})[-:](?P<b>[0-9]{1,2})[-:](?P<c>[0-9]{1,2})"
_IN_BRACKETS = re.compile(
    rf"(?:(?<=^)|(?<=[\w)\]}},;:.] )) *[(\[] ?{_SIDES}(?: +(?:triangle|slope|bar|member))? ?[)\]](?= *(?:$|[,;:.=∴⇒→]|[A-Za-z]))"
)
_BEFORE = re.compile(rf"^ *{_SIDES}(?: *(?:\.{{2,}}|…|[,;])| *:(?= *[A-Z(\-0-9.])) *")
_AT_JOINT = re.compile(
    rf"{ANGLE} *= *(?:∠|∡|(?:the +)?angle +)[A-Z]\w?[A-Z]\w?[A-Z]\w?(?: *,| +(?:with|where|so|and))+ +(?=(?:sin|cos|tan)\b)",
    re.IGNORECASE,
)


def without_triangles(source: Source) -> Source:
    """The source without what names a slope triangle or its angle and nothing else."""
    if _MAY.search(source.text) is None:
        return source
    source = source.rewritten(_SCALED, _scaled)
    source = source.rewritten(_IN_BRACKETS, _sides).rewritten(_BEFORE, _sides)
    return source.rewritten(_AT_JOINT, "")


_SCALED = re.compile(
    r"(?:,? *(?:because|since|as|where|with|for) +|,? *(?P<open>[(\[]) *)(?P<one>[0-9.]+ ?: ?[0-9.]+(?: ?: ?[0-9.]+)?) *= *(?P<other>[0-9.]+ ?: ?[0-9.]+(?: ?: ?[0-9.]+)?) *(?(open)[)\]])(?= *(?:$|[,;:.∴⇒→]))",
    re.IGNORECASE,
)
"""Sides of one triangle that are those of another one: since 15 : 20 : 25 = 3 : 4 : 5."""
_MAY = re.compile(r"[0-9] ?[-:] ?[0-9]{1,2}(?: ?[-:] ?[0-9]| *=)|[∠∡]|angle", re.IGNORECASE)


def _scaled(found: re.Match[str]) -> str | None:
    """Nothing for sides in proportion."""
    one, other = (re.findall(r"[0-9.]+", found[name]) for name in ("one", "other"))
    try:
        ratios = [float(a) / float(b) for a, b in zip(one, other, strict=True)]
    except (ValueError, ZeroDivisionError):
        return None
    return " " if max(ratios) - min(ratios) <= 1e-9 * max(ratios) else None


def _sides(found: re.Match[str]) -> str | None:
    a, b, c = sorted(int(found[side]) for side in "abc")
    return "" if a and a * a + b * b == c * c else None

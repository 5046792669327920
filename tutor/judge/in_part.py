"""What may be said of a line of which only a part was read?

Right is right whatever stands beside it. Wrong is said where the mistake is named, the whole of what was passed over stands
apart before the line or behind it, and no word there can be a misspelt way of a value.
"""

from __future__ import annotations

import re

from tutor.judge.verdict import Verdict
from tutor.notation import Line, Names
from tutor.notation.elements.tree import Span
from tutor.notation.naming.symbols import NAME

_APART = re.compile(r"[,;:.…!?|%/#\t–—-]")
_OF_A_WAY = frozenset(("sign", "sense", "tension-compression", "pull-push", "side", "turning"))


_DRAWN = re.compile(
    r"\b(?:drawn?|drew|taken?|taking|assum\w*|sense|arrows?|direction|ways?|positive|negative|pos|neg|sign)\b",
    re.IGNORECASE,
)


def stands_in_part(verdict: Verdict, line: Line, names: Names) -> bool:
    """Whether the verdict on the part that was read may be told as the one on the line."""
    if verdict.right:
        return True
    if verdict.kind != "wrong" or not verdict.mistakes:
        return False
    if not all(_apart(span, line) for span in line.unread):
        return False
    turned = [mistake.force for mistake in verdict.mistakes if mistake.code in _OF_A_WAY]
    if not turned:
        return True
    if any(side.numeric for side in line.steps[-1].sides) and _last(line) != "0":
        return False
    talk = " ".join(line.text[span.start : span.end] for span in line.unread)
    named = {name for word in NAME.findall(talk) for name in names.meant(word)}
    return _DRAWN.search(talk) is None and not named & set(turned)


def _last(line: Line) -> str:
    side = line.steps[-1].sides[-1].span
    return line.text[side.start : side.end].strip()


def _apart(span: Span, line: Line) -> bool:
    """Whether words stand before the first statement or behind the last one, set apart or several of them."""
    first, last = line.steps[0].span.start, line.steps[-1].span.end
    several = len(line.text[span.start : span.end].split()) > 1
    if span.end <= first:
        return several or _APART.search(line.text[span.end : first]) is not None
    return span.start >= last and _APART.search(line.text[last : span.start]) is not None

"""What may be said of a line of which only a part was read?

Right is right whatever stands beside it. Wrong is said where the mistake is named, the whole of what was passed over stands
apart before the line or behind it, and no word there can be a misspelt way of a value; with figures for letters,
12O for 120, save for O.6, which is 0.6, or decimals behind a comma, 3,125, only right is said.
"""

from __future__ import annotations

import re
from collections.abc import Collection

from tutor.judge.about import Value
from tutor.judge.verdict import Verdict
from tutor.judge.way_unread import size_alone
from tutor.notation import Line, Names
from tutor.notation.elements.lexicon import WAYS, folded, says
from tutor.notation.elements.tree import Span
from tutor.notation.naming.symbols import NAME
from tutor.notation.sentences.value_words import MEMBERS, SUPPORTS

_APART = re.compile(r"[,;:.…!?|%/#\t–—-]")
_MARKED = re.compile(r"[,;:]")
_OF_A_WAY = frozenset(("sign", "sense", "tension-compression", "pull-push", "side", "turning"))
_SETS_OTHERWISE = re.compile(
    r"\b(?:cut|cutting|section|portion|free[ -]body|(?:left|right|part) of|(?:left|right|upper|lower)(?: hand)? (?:half|part|side|piece)"
    r"|in (?:k?N|kips?|lbs?|pounds|(?:kilo)?newtons|(?:milli|centi)?met(?:re|er)s|feet|inches|mm|cm|m|ft))\b",
    re.IGNORECASE,
)
"""What of talk may give a line another body, or its numbers another unit."""
_DRAWN = re.compile(
    r"\b(?:drawn?|drew|taken?|taking|assum\w*|sense|arrows?|direction|ways?|positive|negative|pos|neg|sign)\b",
    re.IGNORECASE,
)


def stands_in_part(verdict: Verdict, line: Line, names: Names) -> bool:
    """Whether the verdict on the part that was read may be told as the one on the line."""
    if isinstance(verdict.about, Value) and _of_another_kind(verdict.about, line, names):
        return False
    if verdict.right:
        return True
    if verdict.kind == "undecided":
        return size_alone(line) is not None
    if verdict.kind != "wrong" or not verdict.mistakes:
        return False
    if any(kind in ("figures", "decimals") for kind, _ in line.taken):
        return False
    talk = " ".join(line.text[span.start : span.end] for span in line.unread)
    if not all(_apart(span, line) for span in line.unread) or _SETS_OTHERWISE.search(talk):
        return False
    turned = [mistake.force or "" for mistake in verdict.mistakes if mistake.code in _OF_A_WAY]
    if not turned:
        return True
    last = line.steps[-1].sides[-1]
    ahead = all(span.end <= line.steps[0].span.start for span in line.unread)
    if isinstance(verdict.about, Value) and (not ahead or last.letter or last.sense):
        return ahead
    return not _may_draw(talk, turned, names)


def _of_another_kind(about: Value, line: Line, names: Names) -> bool:
    """Whether a number alone is told of a support where a member is asked for, or the other way round."""
    first = line.steps[0]
    if len(first.sides) > 1:
        return False
    clause = _MARKED.split(line.text[: first.span.start])[-1]
    nouns = {folded(word) for word in NAME.findall(clause)} & (MEMBERS | SUPPORTS)
    member = any(name == about.unknown for name, _, _ in names.members)
    return bool(nouns) and not nouns & (MEMBERS if member else SUPPORTS)


def _may_draw(talk: str, turned: Collection[str], names: Names) -> bool:
    """Whether talk may say which way a force is drawn: it speaks of drawing, of a way, or of a force `turned`."""
    words = NAME.findall(talk)
    named = {name for word in words for name in names.meant(word)}
    if _DRAWN.search(talk) is not None or named & set(turned):
        return True
    return any(says(word, *WAYS) for word in words)


def _apart(span: Span, line: Line) -> bool:
    """Whether words stand before the first statement or behind the last one, set apart or several of them."""
    first, last = line.steps[0].span.start, line.steps[-1].span.end
    several = len(line.text[span.start : span.end].split()) > 1
    if span.end <= first:
        return several or _APART.search(line.text[span.end : first]) is not None
    return span.start >= last and _APART.search(line.text[last : span.start]) is not None

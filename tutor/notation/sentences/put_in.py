"""Which values are put in before an equation: "Substituting F_CD = 10 from (4): …", "With AB = 12 in (2), …"?

Each is spelled as a statement before the equation, without the words that put it in and the lines it is put in to; from
which lines it is stays, and tells what the equation follows from.
"""

from __future__ import annotations

import re

from tutor.notation.elements.lexicon import folded
from tutor.notation.elements.source import Source
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import COUNT, LETTERS
from tutor.notation.sentences.talk import PREMISE

_VALUE = (
    rf"(?<![\w}}])[{LETTERS}][\w{{}}-]* *= *[-+]? ?(?:[0-9][0-9.,]*(?<![.,])|\.[0-9]+)"
    r"(?: ?(?:k?N|MN|kips?|k|lbs?)(?!\w))?(?: *(?:\([TC]\)|[TC](?!\w)))?"
)
_LINE = rf"(?:the +)?(?:[(\[](?:eqn?s?\.? *)?{COUNT}[)\]]|(?:eqn?s?|equations?|lines?)\b\.? *[(\[]?{COUNT}(?![\w.])[)\]]?)"
_FROM = rf"(?: *,? *(?:(?:from|aus|by)\b *|(?=[(\[]))(?:{_LINE}|(?:joint|node|pin|knoten) +[A-Z]\w?(?!\w)|above|before))"
_INTO = rf"(?: *,? *(?:in|into|to|back into)\b(?: +{_LINE}|(?: +(?:the|this|that|it|here|above|equation|sum|line))*)(?!\w))"
_PUT_IN = re.compile(
    rf"(?:^ *|(?<=[:;,] )|(?<=[:;,]  ))(?P<words>(?:[{LETTERS}]+/? +){{1,4}})(?P<values>{_VALUE}(?: *(?:,|and\b|und\b|&) *(?:and +)?{_VALUE})*)"
    rf"(?P<first>{_INTO})?(?P<from>{_FROM})?(?P<into>{_INTO})?(?: *[:;,]| +(?:gives?|giving|we (?:get|have|find|obtain)|yields?):?| *(?:⇒|→|=>|-+>))(?= *[^ =][^=]*=)",
    re.IGNORECASE,
)
_EQUATION = re.compile(r"(?<=[(\[])eqn?s?\.? *", re.IGNORECASE)
_EACH = re.compile(_VALUE)
_PUTTING = PREMISE - {"since", "because", "as"}
_BESIDE = frozenset(
    (
        "in",
        "that",
        "the",
        "for",
        "value",
        "values",
        "back",
        "now",
        "then",
        "have",
        "we",
        "so",
        "and",
    )
)


def put_in_apart(source: Source, names: Names) -> Source:
    """The source with what is put in as statements before the equation behind it."""
    return source.rewritten(_PUT_IN, lambda found: _stated(found, names))


def _stated(found: re.Match[str], names: Names) -> str | None:
    words = [folded(word.strip("/")) for word in found["words"].split()]
    if not any(word in _PUTTING for word in words):
        return None
    if any(word not in _PUTTING and word not in _BESIDE for word in words):
        return None
    values = _EACH.findall(found["values"])
    if any(len(names.meant(value.partition("=")[0].strip())) != 1 for value in values):
        return None
    said_from = (found["from"] or "").lstrip(" ,")
    if said_from and said_from[0] in "([":
        said_from = f"from {_EQUATION.sub('', said_from)}"
    return f"{'; '.join(values)} {said_from}; "

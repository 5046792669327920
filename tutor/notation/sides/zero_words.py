"""Which members does a line say in words to carry nothing: "BD is a zero-force member"?"""

from __future__ import annotations

import re

from tutor.notation.elements.lexicon import DENYING, says
from tutor.notation.elements.tree import Span
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS

_ZERO_WORDS = re.compile(
    r"(?<![\w-])(?:zero(?! +(?:external +|applied +)?loads?\b)|zfm|nil|"
    r"no force(?! +(?:at|on|acts?|acting|applied|here|there)\b)|"
    r"nullst[aä]be?|keine kraft|effort nul|fuerza (?:nula|cero)|barras? nulas?|nul(?:le)?s?|0[- ]force|(?:(?<=carries )|(?<=takes )|(?<=bears )|(?<=carry )|(?<=does )|(?<=feels ))(?:no load|nothing)|(?:(?<=is )|(?<=are ))(?:idle|unstressed|spannungslos))(?![\w])",
    re.IGNORECASE,
)
INSPECTION = re.compile(r"(?<![\w-])(?:by|on|from) +inspection(?![\w])", re.IGNORECASE)
_NEGATED = re.compile(
    rf"(?:\b(?:{DENYING}|no longer|hardly|pas|wrong\w*|false\w*)|n't)(?: +(?:a|an|be|the|ein\w*|that|really)\b)* *$",
    re.IGNORECASE,
)
_IN_LINE = re.compile(
    r"\b(?:(?:in|on) (?:one |a |the same )?(?:straight )?line|coll?inear|aligned|straight)\b",
    re.IGNORECASE,
)
"""What is said of members beside a joint without a load: a reason, and no member is said to be zero."""
_COUNTS = re.compile(
    r"\b(?:plus|minus|times|half|thirds?|quarters?|fifths?|sixths?|tenths?|thirteenths?)\b",
    re.IGNORECASE,
)
"""What adds up or multiplies in words: minus 6 minus three-fifths of CD is zero."""
_MEASURED = re.compile(r" *(?:k?N|MN|lbs?|lbf|kips?|k)\b")


def says_zero(text: str) -> bool:
    """Whether a text has words for a force that is zero."""
    return _ZERO_WORDS.search(text) is not None


def says_inspection(text: str) -> bool:
    """Whether a text says that it was seen by inspection."""
    return INSPECTION.search(text) is not None


def zero_members(text: str, names: Names) -> list[tuple[str, Span]]:
    """The members that `text` says to be zero, each with its place; none where it says no such thing."""
    if "=" in text or (found := _ZERO_WORDS.search(text)) is None:
        return []
    if found[0].lower() in ("no load", "no force") and _IN_LINE.search(text) is not None:
        return []
    text = INSPECTION.sub(lambda words: " " * len(words[0]), text)
    before = re.sub(r"[:,;]", " ", text[: found.start()])
    places = [
        (match.start() + offset, match.group())
        for part, offset in ((before, 0), (text[found.end() :], found.end()))
        for match in re.finditer(rf"[{LETTERS}][\w{{}}'-]*", part)
    ]
    places = [place for place in places if not _is_place(text, *place, names)]
    named = [(at, word) for at, word in places if _names_one(word, names)]
    others = [word for at, word in places if (at, word) not in named]
    figures = re.search(r"[0-9+*/]", re.sub(r"[\w{}'-]*\d[\w{}'-]*", "", text))
    if (
        _MEASURED.match(text, found.end())
        or figures
        or _COUNTS.search(text)
        or _NEGATED.search(text, 0, found.start())
    ):
        return []
    if any(names.two_joints(word) and not word.islower() for word in others):
        return []
    return [(names.meant(word)[0], Span(at, at + len(word))) for at, word in named]


def _is_place(text: str, at: int, word: str, names: Names) -> bool:
    """Whether a word says at which joint: "joint B", "at B", "B: ..."."""
    if names.joint(word) is None:
        return False
    before = re.findall(rf"[{LETTERS}]+", text[:at])
    led = bool(before) and text[:at].rstrip().endswith(before[-1])
    heads = text[at + len(word) :].lstrip().startswith(":")
    return heads or (led and says(before[-1], "joint", "about"))


def _names_one(word: str, names: Names) -> bool:
    letter = len(word) == 1 and word.islower()
    return not letter and len(names.meant(word)) == 1 and not says(word, "filler")

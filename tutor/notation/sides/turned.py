"""Which words behind a statement make it another one: and 5, twice that, but negative, the other way round?"""

from __future__ import annotations

import re

from tutor.notation.sides.ending import COUNTING

_MORE = "|".join(sorted(COUNTING - {"one", "two", "minus", "over"}))
_CHANGES = re.compile(
    rf"^[(\[ ,;]*(?:(?:and|plus|minus|or|less|but) +[-+]?[0-9.]|(?:or +)?(?:rather +)?(?:{_MORE})\b|(?:no,? +)?wait\b|oops\b)",
    re.IGNORECASE,
)
_MULTIPLIES = re.compile(
    r"(?:^|[,;(\[]) *(?:(?:or|so|and|but|rather|really|actually) +)*(?:twice|double|half|thrice|(?:two|three|four) times) +(?:of +)?(?:that|this|it|as much)\b|\bor +rather\b|\bno,? +wait *[.!]*$",
    re.IGNORECASE,
)
_TURNS = re.compile(
    r"^[(\[ ,;.]*(?:(?:but|so|and|it|its|it's|is|should|be|the|a|an|in|with|that|really|actually|of|ie|i\.e\.|wait) +)*"
    r"(?:(?P<negative>neg|negative|minus)|backwards?|other +way)\b",
    re.IGNORECASE,
)
_NEGATIVE_BEFORE = re.compile(r"(?:^|[=(→⇒∴]|so|gives) *[-−–] *[0-9.,/*√() ]*[0-9)][^=]*$")
_NO_WAY = re.compile(
    r"\b(?:no|without|neither) +(?:t|c|tens(?:ion)?|comp(?:r(?:ession)?)?|ties?|struts?)\b",
    re.IGNORECASE,
)


def makes_another(said: str, before: str) -> bool:
    """Whether words behind a statement make it another one.

    That a number is negative changes nothing where its minus stands there.
    """
    if _CHANGES.search(said) is not None or multiplies(said):
        return True
    turn = _TURNS.match(said)
    if turn is None:
        return False
    return turn["negative"] is None or _NEGATIVE_BEFORE.search(before) is None


def multiplies(said: str) -> bool:
    """Whether words give what stands before them up for a multiple of it, or for nothing: or rather twice that."""
    return _MULTIPLIES.search(said) is not None


def denies_a_way(said: str) -> bool:
    """Whether T or C is denied with a word that may as well correct: no tension."""
    return _NO_WAY.search(said) is not None

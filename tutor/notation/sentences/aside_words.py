"""Which words and brackets stand in a line, and where is a statement of it whole?"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from tutor.notation.elements.lexicon import MEANINGS, SPEECH, folded
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS, PARTNER
from tutor.notation.sentences.aside_said import VALUE

_TOKEN = re.compile(
    rf"(?P<word>w/|[{LETTERS}][{LETTERS}0-9_'{{}}]*)|(?P<number>[0-9][0-9.,]*|\.[0-9]+)|(?P<sign>[^ ])"
)
_WORD = re.compile(rf"[{LETTERS}][\w{{}}'-]*")
_ALONE = re.compile(rf" *{VALUE} *")
_CUT = re.compile(r"[,;](?![0-9])|∴|⇒|=>|->|→|:")
_FORMULA_ENDS = re.compile(r"[0-9)\]}A-Za-z°']$")
BEHIND_BRACKET = re.compile(rf" *(?:$|[,;.:∴⇒→]|[{LETTERS}]+\b)")


@dataclass(frozen=True)
class Token:
    kind: str
    text: str
    start: int
    end: int


def tokens_of(text: str, at: int) -> Iterator[Token]:
    """Words, numbers and signs from a column on; a bracket with all in it is one."""
    while (found := _TOKEN.search(text, at)) is not None:
        start, end, kind = *found.span(), str(found.lastgroup)
        if found[0] in "([{" and (close := _closed(text, start)) is not None:
            end, kind = close, "bracket"
        yield Token(kind, text[start:end], start, end)
        at = end


def _closed(text: str, start: int) -> int | None:
    """The column behind the bracket that closes the one at `start`."""
    depth = 0
    for at in range(start, len(text)):
        depth += (text[at] in "([{") - (text[at] in ")]}")
        if depth == 0:
            return at + 1 if text[at] == PARTNER[text[start]] else None
    return None


def complete(before: str) -> bool:
    """Whether a text ends in a whole equation or in a value alone, with or without a mark behind it."""
    parts = [part for part in _CUT.split(before.rstrip(" .-–…")) if part.strip()]
    if not parts:
        return False
    last = parts[-1].strip()
    left, sign, right = last.rpartition("=")
    if sign:
        return bool(left.strip() and right.strip()) and _FORMULA_ENDS.search(last) is not None
    return len(parts) == 1 and _ALONE.fullmatch(last) is not None


def worded(inner: str, names: Names) -> bool:
    """Whether a bracket holds words of ordinary language, or works out a number, and is no factor."""
    if "=" in inner and not any(names.meanings(word) for word in _WORD.findall(inner)):
        return any(map(str.isdigit, inner))
    words = [token.text for token in tokens_of(inner, 0) if token.kind == "word"]
    spoken = [word for word in words if len(word) > 1 and not names.meanings(word)]
    return any(folded(word) in SPEECH for word in spoken) or (
        len(words) > 1 and any(folded(word) in MEANINGS for word in spoken)
    )

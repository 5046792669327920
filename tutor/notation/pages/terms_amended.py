"""Which term of a sum is put right in the same breath: "405 + 5/12 AD, no, 5/13 AD = 0", "- 204 (oops, 240) = 0"?

What is said anew stands in the place of what is of its shape right before: a number, a product of numbers, or the
same force with another factor.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS

_TAKES_BACK = (
    r"(?:oops|whoops|sorry|pardon|wait|hang on|hold on|i mean|i meant|make (?:that|it)|correction|typo"
    r"|(?:scratch|scrap|strike) (?:that|it)|(?:or )?rather)"
)
_BETWEEN = r"[ ,.:;!…]*"
_NUMBER = r"(?:[0-9]+(?:[.,][0-9]+)?|\.[0-9]+)"
_UNIT = r"(?: ?(?:kN|MN|N|lbs?|kips?|k|mm|cm|m|ft|in)\b)?"
_FACTOR = rf"(?:\({_NUMBER}(?:/{_NUMBER})?\)|{_NUMBER}(?:/{_NUMBER})?)"
_TERM = rf"(?:{_FACTOR} ?\*? ?)?[{LETTERS}][\w{{}}]*"
_PRODUCT = rf"{_NUMBER}{_UNIT}(?: ?\* ?{_NUMBER}{_UNIT})+"
_ANEW = re.compile(
    rf"(?P<run> *[,;.]? *(?P<open>[(\[] *)?(?:(?:(?:no|oh|ah),? +)*{_TAKES_BACK}(?:{_BETWEEN}(?:{_TAKES_BACK}|no|it'?s|its))*(?![\w'])|(?<=, )no(?=,)){_BETWEEN})"
    rf"(?:(?P<product>{_PRODUCT})|(?P<number>{_NUMBER}){_UNIT}|(?P<term>{_TERM}))(?P<close> *[)\]])?(?P<end>,? *(?=[-+=)]))",
    re.IGNORECASE,
)
MOST = 4
"""So many terms are put right in one line at the most."""


def terms_amended(source: Source, names: Names) -> Source:
    """The source with each term of a sum as it is said last."""
    for _ in range(MOST):
        made = _amended(source, names)
        if made is None:
            break
        source = made
    return source


def _amended(source: Source, names: Names) -> Source | None:
    text = source.text
    for found in _ANEW.finditer(text):
        if bool(found["open"]) != bool(found["close"]):
            continue
        kind = next(name for name in ("product", "number", "term") if found[name])
        old = _before(text[: found.start()], kind, found[kind], names)
        if old is not None and "=" in text:
            return source.made_of(
                [Span(0, old), Span(*found.span(kind)), " ", Span(found.end(), len(text))]
            )
    return None


def _before(before: str, kind: str, anew: str, names: Names) -> int | None:
    """The column where what is put right begins, right before the words; None where nothing of its shape stands there."""
    if kind == "term":
        name = re.search(rf"[{LETTERS}][\w{{}}]*$", anew)
        if name is None or len(names.meant(name[0])) != 1 or not any(map(str.isdigit, anew)):
            return None
        old = re.search(rf"{_FACTOR} ?\*? ?{re.escape(name[0])}$", before)
    else:
        shape = _PRODUCT if kind == "product" else rf"(?<![\w.,]){_NUMBER}{_UNIT}"
        old = re.search(rf"{shape}$", before)
    return None if old is None else old.start()

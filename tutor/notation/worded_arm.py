"""Which bracket behind a force is its arm in words: "12 (arm 4) + 18 (8 m from A)"?"""

from __future__ import annotations

import re

from tutor.notation.names import Names
from tutor.notation.source import Source
from tutor.notation.symbols import LETTERS
from tutor.notation.units import NEWTONS

_FORCES = "|".join(sorted((*NEWTONS, "kips", "lbs", "k"), key=len, reverse=True))
_LENGTH = (
    r"(?P<length>[0-9][0-9.,]*(?:/[0-9]+)?(?: ?(?:mm|cm|m|ft|in|feet|metres|meters)(?![\w']))?)"
)
_NAME = rf"[{LETTERS}][\w{{}}'-]*"
_BEFORE = rf"(?P<term>(?:^|[-+=:(]) *(?:[0-9][0-9.,]*(?: ?(?:{_FORCES}))?|{_NAME}) *)"
_SAID = re.compile(
    rf"{_BEFORE}[(\[] ?(?:(?:the |its )?(?:lever |moment )?(?:arm|lever|distance|hebelarm|abstand)(?: of| is|:| =)?|times|by|x) +{_LENGTH} ?[)\]]",
    re.IGNORECASE,
)
_FROM = re.compile(
    rf"{_BEFORE}[(\[] ?{_LENGTH} +(?:[a-z]+ +){{0,4}}(?:from|of|arm|lever|away|out|off|below|above)(?: +(?:the )?[\w']+)? ?[)\]]"
)
_ALONE = re.compile(rf"(?:^|[:=+-]) *(?P<name>{_NAME}) *(?=[-+=])")


def with_arms(source: Source, names: Names) -> Source:
    """The source with arms that are said in words as plain factors."""
    if "(" not in source.text and "[" not in source.text:
        return source

    def factor(found: re.Match[str]) -> str:
        return f"{found['term'].rstrip()}*({found['length']})"

    source = source.rewritten(_SAID, factor)
    if any(names.meanings(found["name"]) for found in _ALONE.finditer(source.text)):
        return source
    return source.rewritten(_FROM, factor)

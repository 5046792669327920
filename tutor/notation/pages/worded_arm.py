"""Which bracket behind a force is its arm in words: "12 (arm 4) + 18 (8 m from A)"?"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.elements.units import FORCES
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS

_LENGTH = r"(?P<length>[0-9][0-9.,]*(?<![.,])(?:/[0-9]+)?(?: ?(?:mm|cm|m|ft|in|feet|metres|meters)(?![\w']))?)"
_NAME = rf"[{LETTERS}][\w{{}}'-]*"
_BEFORE = rf"(?P<term>(?:^|[-+=:(]) *(?:[0-9][0-9.,]*(?: ?(?:{FORCES}))?|{_NAME}) *)"
_SAID = re.compile(
    rf"{_BEFORE}[(\[] ?(?:(?:the |its )?(?:lever |moment )?(?:arm|lever|distance|hebelarm|abstand)(?: of| is|:| =)?|times|by|x) +{_LENGTH} ?[)\]]",
    re.IGNORECASE,
)
_FROM = re.compile(
    rf"{_BEFORE}[(\[] ?{_LENGTH},? +(?:[a-z]+ +){{0,4}}(?:from|of|arm|lever|away|out|off|below|above)(?: +(?:the )?[\w']+)? ?[)\]]"
)
_OF_MOMENTS = re.compile(
    r"[↺↻]|(?<![A-Za-z])(?:(?-i:M)(?![a-z])|moments?\b|moms?\b|(?:about|abt)\b|a?c?cw\b)",
    re.IGNORECASE,
)
_TERM = re.compile(rf"(?P<factor>[0-9.]*(?: *[*·×/] *[0-9.]+)*) *[*·×(]? *(?P<name>{_NAME})")
_ARMED = re.compile(rf" *[(\[] ?{_LENGTH},? +[a-z]")
_LONG = re.compile(r"[1-9][0-9]*(?:\.[0-9]+)?")


def with_arms(source: Source, names: Names) -> Source:
    """The source with arms that are said in words as plain factors."""
    if "(" not in source.text and "[" not in source.text:
        return source

    def factor(found: re.Match[str]) -> str:
        return f"{found['term'].rstrip()}*({found['length']})"

    source = source.rewritten(_SAID, factor)
    if not (_OF_MOMENTS.search(source.text) or _has_arms(source.text, names)):
        return source
    return source.rewritten(_FROM, factor)


def _has_arms(text: str, names: Names) -> bool:
    """Whether every force of a sum stands beside a number that may be its arm, and is no component."""
    forces = [found for found in _TERM.finditer(text) if names.meanings(found["name"])]
    first = {found["name"]: found for found in reversed(forces)}
    return bool(first) and all(
        _LONG.fullmatch(found["factor"]) or _ARMED.match(text, found.end())
        for found in first.values()
    )

"""What is collected while a line is read, and how is taken what can be taken in two ways?"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from tutor.notation.elements.tree import Node, Span
from tutor.notation.formulas.evaluate import Frame
from tutor.notation.naming.names import Names

Taken = tuple[
    Literal["thousands", "decimals", "raised", "dash", "list", "figures", "nought", "noun"], Span
]
"""What of a line was taken in the less usual of two ways: the point of 4.500, that of 0·6, the dash behind a heading or of a list,
the letters of 6OO,
the letter of O.6, which can be a nought alone, the noun that stands for a force."""


@dataclass(frozen=True)
class Choice:
    """How to take what can be taken in two ways: each field says the less usual way."""

    numbered: bool = False
    heeded: bool = False
    named: bool = False
    signed: bool = False
    apart: bool = False
    pointed: bool = False
    commas: bool = False
    dashed: bool = False
    pushed: bool = False
    listed: bool = False
    raised: bool = False


@dataclass
class Found:
    """What is collected while a line is read; `open` are the choices that were met.

    `long_dashes` are the columns of the minus signs that were typed as long dashes.
    """

    names: Names
    frame: Frame
    choice: Choice
    letters: dict[str, Node] = field(default_factory=dict)
    passed: list[Span] = field(default_factory=list)
    unread: list[Span] = field(default_factory=list)
    taken: list[Taken] = field(default_factory=list)
    open: set[str] = field(default_factory=set)
    long_dashes: frozenset[int] = frozenset()


def trimmed(text: str, start: int, end: int) -> tuple[int, int]:
    """The columns from `start` to `end` without the spaces at both ends."""
    start += len(text[start:end]) - len(text[start:end].lstrip())
    return start, max(start, start + len(text[start:end].rstrip()))

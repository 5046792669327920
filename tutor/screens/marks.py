"""How is a tone marked, so that it needs no colour? A mark of one cell and a word."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple


class Mark(NamedTuple):
    """A mark for terminals with many characters, one for ASCII, the word, and the badge it stands on."""

    sign: str
    plain: str
    word: str
    badge: str

    def shown(self, ascii_only: bool) -> str:
        """The mark and its word."""
        return f"{self.plain if ascii_only else self.sign} {self.word}"


MARKS: Mapping[str, Mark] = {
    "right": Mark("✓", "+", "right", "right"),
    "wrong": Mark("✗", "x", "wrong", "wrong"),
    "remark": Mark("●", "*", "remark", "remark"),
    "hint": Mark("◆", "?", "hint", "hint"),
    "note": Mark("–", "-", "note", "note"),
    "shown": Mark("▸", ">", "shown", "note"),
    "unreadable": Mark("?", "?", "not read", "wrong"),
    "undecided": Mark("~", "~", "not decided", "remark"),
}
WIDEST = max(len(mark.shown(False)) for mark in MARKS.values())


HOW_MARKS: Mapping[str, Mark] = {
    "can do": MARKS["right"],
    "on the way": MARKS["undecided"],
    "to practise": MARKS["remark"],
    "not seen yet": MARKS["note"],
}


def in_marks(glance: Sequence[tuple[str, Sequence[str]]], ascii_only: bool) -> str:
    """How skills stand, each group behind its mark and its words."""
    parts = []
    for how, names in glance:
        mark = HOW_MARKS[how]
        parts.append(f"{mark.plain if ascii_only else mark.sign} {how}: {', '.join(names)}")
    return "   ".join(parts)

"""What is one thing done at the board: the event it is, what is written, why, and what to guess?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from tutor.lesson.reply import Option


@dataclass(frozen=True)
class Reason:
    """Why it is done, in a sentence or two, and what the sentence claims of the truss.

    `absent` are the unknown forces said to have no part in the line, `open` those said to be unknown
    in it, at a joint those said to be unknown there.
    """

    text: str
    absent: tuple[str, ...] = ()
    open: tuple[str, ...] = ()


@dataclass(frozen=True)
class Guess:
    """What may be guessed before it is shown; `right` are the keys of all good answers."""

    question: str
    options: tuple[Option, ...]
    right: frozenset[str]

    def answer(self, key: str) -> str:
        """What is said to a guess, before the board goes on."""
        chosen = next((option.words for option in self.options if option.key == key), None)
        if chosen is None:
            return ""
        if key in self.right:
            return f"Good guess, it is right: {chosen}."
        return f"Not this time: it is not {chosen}. See why below."


@dataclass(frozen=True)
class Move:
    """One thing a lecturer does: an event of the lesson, and what is said while it is done."""

    kind: str
    data: Mapping[str, Any]
    written: str
    reason: Reason
    guess: Guess | None = field(default=None)

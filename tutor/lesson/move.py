"""What is one thing done at the board: the event it is, what is written, why, and what to guess?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from tutor.lesson.reply import Option


@dataclass(frozen=True)
class Reason:
    """Why it is done, in a sentence or two, and what the sentence claims of the truss.

    `absent` are the unknown forces said to have no part in the line, `open` those said to be unknown
    in it, at a joint those said to be unknown there; `pull` and `push` are the members said to pull on
    the joint and to push on it.
    """

    text: str
    absent: tuple[str, ...] = ()
    open: tuple[str, ...] = ()
    pull: tuple[str, ...] = ()
    push: tuple[str, ...] = ()


GuessKind = Literal["support", "soundness", "equation", "joint", "value", "zero"]


@dataclass(frozen=True)
class Guess:
    """What may be guessed before it is written; `right` are the keys of all good answers.

    `of` is what a key stands for: how many forces replace a support, what the truss is, an equation, a
    joint, the sense of a value, or a member that carries no force; `subject` is the support or the
    unknown that is asked of.
    """

    of: GuessKind
    question: str
    options: tuple[Option, ...]
    right: frozenset[str]
    subject: str = ""

    def words(self, key: str) -> str:
        """An answer in words; empty where `key` is none."""
        return next((option.words for option in self.options if option.key == key), "")


@dataclass(frozen=True)
class Move:
    """One thing a lecturer does: an event of the lesson, and what is said while it is done."""

    kind: str
    data: Mapping[str, Any]
    written: str
    reason: Reason
    guess: Guess | None = field(default=None)

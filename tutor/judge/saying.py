"""What is one hint on a mistake made of? Of which thing it says what, and what to do about it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tutor.text import lowered


@dataclass(frozen=True)
class Saying:
    """A hint in one sentence: what it says, and behind a colon its advice, which has its own end.

    Where it is said `of` a thing that may be another one just as well, that stands before it.
    """

    says: str
    advice: str = ""
    of: str = ""

    @property
    def claim(self) -> str:
        """What it says is wrong, without its end and without the advice."""
        return f"{self.of} {self.says}" if self.of else self.says

    @property
    def text(self) -> str:
        return f"{self.claim}: {self.advice}" if self.advice else f"{self.claim}."


NOTHING = Saying("")
"""Said of a mistake beside which no other account of the line is told."""


def together(sayings: Sequence[Saying]) -> Saying:
    """What one says, or several as one, without their advice."""
    if len(sayings) == 1:
        return sayings[0]
    first, *rest = (saying.claim for saying in sayings)
    return Saying(", and ".join((first, *map(lowered, rest))))


def either(sayings: Sequence[Saying]) -> str:
    """One sentence that says what each of these says, as a choice.

    Where they say the same of several things, it is said once; else they stand without their advice.
    """
    if len(sayings) == 1:
        return sayings[0].text
    things = [lowered(saying.of) for saying in sayings if saying.of]
    said = {(saying.says, saying.advice) for saying in sayings}
    if len(things) == len(sayings) and len(said) == 1:
        return Saying(*said.pop(), of=f"Either {' or '.join(things)}").text
    return f"Either {'; or '.join(lowered(saying.claim) for saying in sayings)}."
